import type { Column, ColumnType } from '../../formula/column.ts';
import type { Fault } from '../../formula/fault.ts';
import type { EnteredColumn, Entry } from '../document.ts';

const DAY_MS = 86_400_000;

/** Whole days since 1970-01-01 of an ISO 8601 date; NaN if it is none. */
export function daysOfDate(text: string): number {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return Number.NaN;
  const time = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(time) || new Date(time).toISOString().slice(0, 10) !== text
    ? Number.NaN
    : time / DAY_MS;
}

const WANTED = { number: 'a number', date: 'a date', yes_no: 'yes or no' } as const;
const MENDS = {
  number: 'Type a figure, such as 31.5.',
  date: 'Type a date, such as 2027-04-19.',
  yes_no: 'Type yes or no.',
} as const;

/** The figure of one entry: NaN when empty, null when it cannot be read as the kind. */
export function figureOfEntry(kind: 'number' | 'date' | 'yes_no', entry: Entry): number | null {
  if (entry === null || entry === '') return Number.NaN;
  if (kind === 'number') return typeof entry === 'number' && Number.isFinite(entry) ? entry : null;
  if (kind === 'yes_no') return typeof entry === 'boolean' ? Number(entry) : null;
  if (typeof entry !== 'string') return null;
  const days = daysOfDate(entry);
  return Number.isNaN(days) ? null : days;
}

export function unreadEntry(kind: 'number' | 'date' | 'yes_no', entry: Entry, row?: number): Fault {
  return {
    kind: 'unread-entry',
    message: `"${String(entry).slice(0, 40)}" is not ${WANTED[kind]}.`,
    mend: MENDS[kind],
    place: row === undefined ? {} : { row },
  };
}

const held = new WeakMap<EnteredColumn, Column>();

/** The figures of an entered column. Entries that cannot be read are faults of their rows, never blanks. */
export function enteredColumn(column: EnteredColumn): Column {
  const found = held.get(column);
  if (found !== undefined) return found;
  const made =
    column.kind === 'text' || column.kind === 'choice'
      ? textColumn(column)
      : figureColumn(column, column.kind);
  held.set(column, made);
  return made;
}

function figureColumn(column: EnteredColumn, kind: 'number' | 'date' | 'yes_no'): Column {
  const values = new Float64Array(column.entries.length);
  const faults = new Map<number, Fault>();
  column.entries.forEach((entry, row) => {
    const figure = figureOfEntry(kind, entry);
    values[row] = figure ?? Number.NaN;
    if (figure === null) faults.set(row, unreadEntry(kind, entry, row));
  });
  return { kind, values, faults: faults.size === 0 ? null : faults };
}

function textColumn(column: EnteredColumn): Column {
  const faults = new Map<number, Fault>();
  const values = column.entries.map((entry, row) => {
    if (entry === null || entry === '') return null;
    const text = String(entry);
    if (column.kind === 'choice' && column.options !== undefined && !column.options.includes(text)) {
      faults.set(row, {
        kind: 'unread-entry',
        message: `"${text.slice(0, 40)}" is none of the choices: ${column.options.slice(0, 12).join(', ')}.`,
        mend: 'Take one of the choices, or add this one to the column.',
        place: { row },
      });
      return null;
    }
    return text;
  });
  return { kind: 'text', values, faults: faults.size === 0 ? null : faults };
}

/** Kind of figure a column of the document holds. */
export function kindOfColumn(kind: EnteredColumn['kind']): ColumnType['kind'] {
  return kind === 'choice' ? 'text' : kind;
}
