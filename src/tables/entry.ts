/** What stands in one field of an entered column. null = empty. Dates are text, YYYY-MM-DD. */
export type Entry = number | string | boolean | null;

export type EntryKind = 'number' | 'text' | 'choice' | 'date' | 'yes_no';

/** What a field takes. */
export interface EntryColumn {
  readonly kind: EntryKind;
  /** Unit of a number; figures typed in another unit of the same kind are converted. */
  readonly unit?: string;
  /** For a choice: the texts that are allowed. */
  readonly options?: readonly string[];
}

/** Longest text that a field holds, in characters. */
export const ENTRY_LENGTH = 4_000;
/** Most rows and columns of a table. */
export const MOST_ROWS = 200_000;
export const MOST_COLUMNS = 400;
