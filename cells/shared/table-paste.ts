import type { EnteredColumn, Entry, NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit, RowEntries } from '../../src/notebook/edit.ts';
import { replaceRows } from '../../src/notebook/edits.ts';
import { readEntry } from '../../src/tables/read-entry.ts';
import type { GridPlace } from './table-keys.ts';
import type { Grid } from './table-model.ts';

export interface Paste {
  readonly edit: Edit;
  /** Rows that were written over, and rows that came new after the last. */
  readonly over: number;
  readonly added: number;
  /** Fields that could not be read: they stand as their text, with their fault. */
  readonly unread: number;
}

/**
 * The one edit that puts a block of text fields into a table, its first field at `at`. Fields are read as if
 * typed; those that fall on worked columns or beyond the last column are left out; rows beyond the last row
 * are added. null when nothing of the block falls on an entered column.
 *
 * @example pasteBlock(document, grid, { row: 0, column: 1 }, [['240', 'gravel'], ['90', 'sand']])
 */
export function pasteBlock(
  document: NotebookDocument,
  grid: Grid,
  at: GridPlace,
  block: readonly (readonly string[])[],
): Paste | null {
  const columns = grid.columns.slice(at.column).map((column) => column.entered);
  const width = Math.max(0, ...block.map((fields) => fields.length));
  if (!columns.slice(0, width).some((column) => column !== null)) return null;
  let unread = 0;
  const read = (text: string, column: EnteredColumn): Entry => {
    const entry = readEntry(text, column);
    if ('entry' in entry) return entry.entry;
    unread++;
    return text.trim();
  };
  const all = [...grid.columns, ...grid.folded].flatMap((column) => column.entered ?? []);
  const rows = block.map((fields, i): RowEntries => {
    const row: Record<string, Entry> = {};
    for (const column of all) row[column.id] = column.entries[at.row + i] ?? null;
    fields.forEach((text, j) => {
      const column = columns[j];
      if (column !== null && column !== undefined) row[column.id] = read(text, column);
    });
    return row;
  });
  const over = Math.min(rows.length, grid.rowCount - at.row);
  return {
    edit: replaceRows(document, grid.cellId, at.row, over, rows),
    over,
    added: rows.length - over,
    unread,
  };
}

/**
 * What a paste did, for a screen reader.
 *
 * @example pasteInWords({ over: 2, added: 1, unread: 0, edit }) // '2 rows written over, 1 row added'
 */
export function pasteInWords(paste: Paste): string {
  const rows = (count: number): string => `${count} ${count === 1 ? 'row' : 'rows'}`;
  const parts = [
    paste.over > 0 ? `${rows(paste.over)} written over` : '',
    paste.added > 0 ? `${rows(paste.added)} added` : '',
    paste.unread > 0 ? `${paste.unread} could not be read` : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}
