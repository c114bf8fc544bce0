import { sameDimensions } from '../../src/formula/unit.ts';
import { tryUnit } from '../../src/formula/unit-text.ts';
import type { EnteredColumn, Entry, TableColumn } from '../../src/notebook/document.ts';
import { convertFigure } from '../../src/tables/convert-figure.ts';
import { readEntry } from '../../src/tables/read-entry.ts';
import { isCountedPer } from './gauge-unit.ts';
import { entryText } from './table-figure.ts';

/** A change of a column's settings that cannot be made, in words. */
export interface Refusal {
  readonly reason: string;
  readonly mend: string;
}

export type ColumnChange = { readonly column: TableColumn } | Refusal;

/** Most decimals that a column may be shown with. */
const MOST_DECIMALS = 10;

/**
 * The column with its figures shown to so many decimals; empty text goes back to as many as they need.
 *
 * @example changeDecimals(column, '2') // { column: { ...column, decimals: 2 } }
 */
export function changeDecimals(column: TableColumn, text: string): ColumnChange {
  const bare = text.trim();
  if (bare === '') return { column: { ...column, decimals: undefined } };
  const decimals = Number(bare);
  if (Number.isInteger(decimals) && decimals >= 0 && decimals <= MOST_DECIMALS) {
    return { column: { ...column, decimals } };
  }
  return {
    reason: `'${bare.slice(0, 20)}' is no count of decimals`,
    mend: `Write a whole number from 0 to ${MOST_DECIMALS}, or nothing.`,
  };
}

/** Whether figures in one unit can be turned into the other: both are known, and measure the same thing. */
export function canConvert(from: string | undefined, to: string): boolean {
  const before = tryUnit(from ?? '');
  const after = tryUnit(to);
  return before !== null && after !== null && (from ?? '').trim() !== '' && sameDimensions(before, after);
}

/**
 * The column in another unit. With `convert`, entered figures are turned into the new unit; without it only
 * the unit changes and the figures stay as they were typed.
 *
 * @example changeUnit({ kind: 'number', unit: 'mi', entries: [4] }, 'km', true) // entries: [6.437376]
 */
export function changeUnit(column: TableColumn, text: string, convert: boolean): ColumnChange {
  const unit = text.trim();
  if (tryUnit(unit) === null) {
    return {
      reason: `'${unit.slice(0, 40)}' is no unit that is known here`,
      mend: 'Write it like km, mm, EUR/kg or 1/(1000 km), or nothing for a plain number.',
    };
  }
  const one = { ...column, unit: unit === '' ? undefined : unit };
  const changed =
    one.kind === 'worked' || unit === '' || isCountedPer(unit) ? one : { ...one, unit_column: undefined };
  if (changed.kind === 'worked' || !convert || !canConvert(column.unit, unit)) return { column: changed };
  const from = tryUnit(column.unit ?? '')!;
  const to = tryUnit(unit)!;
  const entries = changed.entries.map((entry) =>
    typeof entry === 'number' ? convertFigure(entry, from, to) : entry,
  );
  return { column: { ...changed, entries } };
}

/**
 * The column with its numbers in the unit that another column gives for each row; '' for one unit again. What the
 * numbers are counted per stays. The figures stay as they were typed.
 *
 * @example changeUnitColumn({ kind: 'number', unit: 'mm', entries: [4] }, 'gauge_unit')
 * // { kind: 'number', unit_column: 'gauge_unit', entries: [4] }
 */
export function changeUnitColumn(column: EnteredColumn, name: string): EnteredColumn {
  return name === ''
    ? { ...column, unit_column: undefined }
    : { ...column, unit: isCountedPer(column.unit) ? column.unit : undefined, unit_column: name };
}

/** An entry read again as another kind; what cannot be read stays as its text, and shows its fault. */
function rereadEntry(
  entry: Entry,
  kind: EnteredColumn['kind'],
  options: readonly string[] | undefined,
): Entry {
  if (entry === null) return null;
  const text = entryText(entry);
  const read = readEntry(text, { kind, options });
  return 'entry' in read ? read.entry : text;
}

/**
 * An entered column as another kind; its entries are read again. A new choice offers the texts that are in
 * the column.
 *
 * @example changeKind({ kind: 'text', entries: ['4.5', 'new'] }, 'number') // entries: [4.5, 'new']
 */
export function changeKind(column: EnteredColumn, kind: EnteredColumn['kind']): EnteredColumn {
  const options =
    kind === 'choice'
      ? (column.options ?? [...new Set(column.entries.filter((entry) => entry !== null).map(entryText))])
      : undefined;
  const unit = kind === 'number' ? column.unit : undefined;
  const unit_column = kind === 'number' ? column.unit_column : undefined;
  const entries = column.entries.map((entry) => rereadEntry(entry, kind, options));
  return { ...column, kind, unit, unit_column, options, entries };
}

/**
 * The choices of a column, written one after another with commas.
 *
 * @example changeOptions(column, 'sealed, gravel,, sand') // options: ['sealed', 'gravel', 'sand']
 */
export function changeOptions(column: EnteredColumn, text: string): ColumnChange {
  const options = [...new Set(text.split(',').map((option) => option.trim()))].filter((each) => each !== '');
  if (options.length === 0) {
    return {
      reason: 'a choice needs at least one text',
      mend: 'Write the choices with commas between them.',
    };
  }
  return { column: { ...column, options } };
}

/** How the figures of a column may be drawn beside their number. */
export type Drawing = 'figure' | 'share' | 'surface';

export function changeDrawing(column: TableColumn, drawing: Drawing): TableColumn {
  return { ...column, draw: drawing === 'figure' ? undefined : drawing };
}
