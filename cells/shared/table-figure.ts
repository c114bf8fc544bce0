import { showFigure } from '../../src/formula/show.ts';
import type { EnteredColumn, Entry } from '../../src/notebook/document.ts';
import type { GridColumn } from './table-model.ts';

/** What stands in the cell of a grid, without unit: '–' when it is missing. */
export function figureText(column: GridColumn, row: number): string {
  if (column.shown === null) return '';
  return showFigure(column.shown.column, row, column.shown.type, column.decimals);
}

/** The share of 0 to 1 that a bar is drawn for; NaN when there is none. */
export function shareAt(column: GridColumn, row: number): number {
  const figures = column.shown?.column;
  return figures === undefined || figures.kind === 'text' ? Number.NaN : (figures.values[row] ?? Number.NaN);
}

/**
 * An entry as text to be written over: in full, without group marks.
 *
 * @example entryText(1020.5) // '1020.5'
 */
export function entryText(entry: Entry | undefined): string {
  if (entry === null || entry === undefined) return '';
  if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
  return String(entry);
}

/** The texts that a drop-down offers for a column of choices, or yes and no; null for other columns. */
export function optionsOf(column: EnteredColumn): readonly string[] | null {
  if (column.kind === 'yes_no') return ['yes', 'no'];
  return column.kind === 'choice' ? (column.options ?? []) : null;
}
