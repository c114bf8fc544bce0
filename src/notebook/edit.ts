import type { Cell, Entry, NotebookDocument, TableColumn, ValueContent } from './document.ts';

/** Entries of one row by column id (entered columns only). */
export type RowEntries = Readonly<Record<string, Entry>>;

/**
 * An edit is a value: what kind, on what, before and after. Turning it round (swap before and after) undoes
 * it, so undo, history and storage are built on it alone. Targets are ids, so edits survive renaming.
 */
export type Edit =
  | {
      readonly kind: 'entry';
      readonly cell: string;
      readonly column: string;
      readonly row: number;
      readonly before: Entry;
      readonly after: Entry;
    }
  | {
      readonly kind: 'value';
      readonly cell: string;
      readonly before: ValueContent;
      readonly after: ValueContent;
    }
  /** Formula of a formula cell, or of a worked column when `column` is given. */
  | {
      readonly kind: 'formula';
      readonly cell: string;
      readonly column?: string;
      readonly before: string;
      readonly after: string;
    }
  /** null before = added, null after = removed; both = moved, renamed or otherwise replaced. */
  | {
      readonly kind: 'cell';
      readonly id: string;
      readonly before: Placed<Cell> | null;
      readonly after: Placed<Cell> | null;
    }
  | {
      readonly kind: 'column';
      readonly cell: string;
      readonly id: string;
      readonly before: Placed<TableColumn> | null;
      readonly after: Placed<TableColumn> | null;
    }
  /** Rows from `at` on: `before` are taken out, `after` are put in. */
  | {
      readonly kind: 'rows';
      readonly cell: string;
      readonly at: number;
      readonly before: readonly RowEntries[];
      readonly after: readonly RowEntries[];
    }
  /** The call of one part set by hand; null = as proposed. */
  | {
      readonly kind: 'pin';
      readonly cell: string;
      readonly part: string;
      readonly before: string | null;
      readonly after: string | null;
    }
  /** Whether one call of one part is ruled out by hand. */
  | {
      readonly kind: 'forbid';
      readonly cell: string;
      readonly part: string;
      readonly call: string;
      readonly before: boolean;
      readonly after: boolean;
    }
  | {
      readonly kind: 'notebook';
      readonly field: NotebookField;
      readonly before: string;
      readonly after: string;
    }
  | { readonly kind: 'group'; readonly label: string; readonly edits: readonly Edit[] };

/** Whether an edit changes figures alone, so that whoever shows none of them shows what it did before. */
export function isOfFigures(edit: Edit): boolean {
  return edit.kind === 'group'
    ? edit.edits.every(isOfFigures)
    : edit.kind === 'entry' || edit.kind === 'value';
}

/** A text of the notebook as a whole; `measures` and `shown_money` are '' where they are not chosen. */
export type NotebookField = 'title' | 'gist' | 'money' | 'measures' | 'shown_money';

export interface Placed<T> {
  readonly item: T;
  /** Place in the list, counted from 0, after the edit (for `after`) or before it (for `before`). */
  readonly at: number;
}

export type ApplyEdit = (document: NotebookDocument, edit: Edit) => NotebookDocument;
