import type { EnteredColumn, Entry, TableColumn, WorkedColumn } from '../notebook/document.ts';
import { columnOf, type TripFile } from './trip-file.ts';

/** How a column looks; its id is its name, so that the notebook is the same on every device. */
export interface ColumnLook {
  readonly title?: string;
  readonly unit?: string;
  readonly decimals?: number;
  readonly draw?: 'share' | 'surface';
  readonly folded?: boolean;
  readonly options?: readonly string[];
  readonly unit_column?: string;
}

type EnteredKind = EnteredColumn['kind'];

function entryOf(kind: EnteredKind, text: string): Entry {
  if (text === '') return null;
  if (kind === 'number') return Number(text);
  if (kind === 'yes_no') return text === 'yes';
  return text;
}

/**
 * An entered column from texts.
 * @example entered('mass', 'number', ['1.7', ''], { unit: 'kg' }).entries // [1.7, null]
 */
export function entered(
  name: string,
  kind: EnteredKind,
  texts: readonly string[],
  look: ColumnLook = {},
): EnteredColumn {
  return { id: name, name, kind, ...look, entries: texts.map((text) => entryOf(kind, text)) };
}

/**
 * An entered column as it stands in a trip file, unit and all.
 * @example from(readTripFile({ 'a.csv': 'mass (kg)\n1.7\n' }, 'a.csv'), 'mass', 'number').unit // 'kg'
 */
export function from(file: TripFile, name: string, kind: EnteredKind, look: ColumnLook = {}): EnteredColumn {
  const { unit, texts } = columnOf(file, name);
  return entered(name, kind, texts, unit === '' ? look : { unit, ...look });
}

/** One formula for a whole column. */
export function worked(name: string, formula: string, look: ColumnLook = {}): WorkedColumn {
  return { id: name, name, kind: 'worked', formula, ...look };
}

/** Columns of working, folded away until asked for. */
export function folded<C extends TableColumn>(columns: readonly C[]): C[] {
  return columns.map((column) => ({ ...column, folded: true }));
}
