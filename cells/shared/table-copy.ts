import { plainNumber } from '../../src/formula/show.ts';
import { writeBlock } from '../../src/tables/block.ts';
import { safeText } from '../../src/tables/safe-text.ts';
import type { Block } from './table-block.ts';
import type { RowAt } from './table-fields.ts';
import { figureText } from './table-figure.ts';
import type { Grid, GridColumn } from './table-model.ts';
import { typedText } from './typed-entry.ts';

/** A block of figures as other programs take it. */
export interface CopiedBlock {
  /** Fields parted by tabs, rows by line breaks; a single field stands alone. */
  readonly text: string;
  /** The same as an HTML table. */
  readonly html: string;
}

/** A figure in full, without unit and group marks; nothing where it is missing or has a fault. */
function fieldText(column: GridColumn, row: number): string {
  if (column.entered !== null) {
    const entry = column.entered.entries[row] ?? null;
    if (typeof entry === 'string') return safeText(entry);
    // A figure that is shown in another unit is copied in that one, as it will be read where it is pasted.
    return typeof entry === 'number' && column.as !== null
      ? plainNumber(column.as.toShown(entry))
      : typedText(entry);
  }
  const figures = column.shown?.column;
  if (figures === undefined || figures.faults?.has(row)) return '';
  if (figures.kind === 'text') return safeText(figures.values[row] ?? '');
  const figure = figures.values[row] ?? Number.NaN;
  if (Number.isNaN(figure)) return '';
  return figures.kind === 'number' ? plainNumber(figure) : figureText(column, row);
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => ENTITIES[sign]!);

/**
 * A block for the clipboard. A text that a sheet would run as a formula gets an apostrophe before it, which
 * pasting it here takes off again.
 */
export function copyBlock(grid: Grid, block: Block, rowAt: RowAt): CopiedBlock {
  const columns = grid.columns.slice(block.left, block.right + 1);
  const fields: string[][] = [];
  for (let place = block.top; place <= block.bottom; place += 1) {
    const row = rowAt(place);
    fields.push(columns.map((column) => fieldText(column, row)));
  }
  const rows = fields.map((row) => `<tr>${row.map((text) => `<td>${escaped(text)}</td>`).join('')}</tr>`);
  const only = fields.length === 1 && fields[0]!.length === 1 ? fields[0]![0]! : null;
  return { text: only ?? writeBlock(fields), html: `<table>${rows.join('')}</table>` };
}
