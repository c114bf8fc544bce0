import type { ReadTable } from '../../import/read-table.ts';
import { applyEdit } from '../../notebook/apply-edit.ts';
import type { EnteredColumn, Entry, NotebookDocument, TableCell } from '../../notebook/document.ts';
import type { Edit, RowEntries } from '../../notebook/edit.ts';
import { addRows, group, replaceCell, replaceColumn, replaceRows } from '../../notebook/edits.ts';
import { cellHead, findCell, isEntered, rowCount } from '../../notebook/lookup.ts';
import { countWords } from './offer-words.ts';
import { withNote } from './source-note.ts';

/** What becomes of the rows that a table has. */
export type TableWay = 'update' | 'replace' | 'below';

export interface TableImport {
  readonly read: ReadTable;
  /** Names of the table's columns that the file fills; the others are left alone. */
  readonly filled: readonly string[];
  readonly way: TableWay;
  /** Name of the column by whose text rows are told to be the same; needed to update. */
  readonly key: string | null;
  readonly fileName: string;
  readonly date: string;
}

/** The text column that tells a table's rows apart: the first that is filled from the file; null for none. */
export function keyColumn(cell: TableCell, filled: readonly string[]): string | null {
  return (
    cell.columns.filter(isEntered).find(({ kind, name }) => kind === 'text' && filled.includes(name))?.name ??
    null
  );
}

/** How many rows of the file have a row of the same name in the table. */
export function rowsInCommon(cell: TableCell, read: ReadTable, key: string | null): number {
  const there = placesOf(cell, key);
  return entriesOf(read, key).filter((entry) => there.has(keyText(entry))).length;
}

/**
 * One edit that brings a file's rows into a table: over the rows of the same name, in the place of all, or
 * below. File, date and count are noted with the table.
 *
 * @throws EditError when the rows do not fit the table
 */
export function tableEdit(document: NotebookDocument, cellId: string, wanted: TableImport): Edit {
  const cell = findCell(document, cellId) as TableCell;
  const edits =
    wanted.way === 'update' ? updateEdits(document, cell, wanted) : [rowsEdit(document, cell, wanted)];
  const after = edits.reduce(applyEdit, document);
  const now = findCell(after, cellId) as TableCell;
  const { fileName, date, read } = wanted;
  const source = withNote(now.source ?? '', { of: cellHead(cell), fileName, date, rows: read.rows });
  const note = replaceCell(after, cellId, { ...now, source });
  return group(`${cellHead(cell)}: ${countWords(read.rows, 'row', 'rows')} brought in`, [...edits, note]);
}

function rowsEdit(document: NotebookDocument, cell: TableCell, { read, filled, way }: TableImport): Edit {
  const rows = Array.from({ length: read.rows }, (_, row) => rowEntries(cell, read, filled, row));
  const count = rowCount(cell);
  return way === 'replace'
    ? replaceRows(document, cell.id, 0, count, rows)
    : addRows(document, cell.id, count, rows);
}

function updateEdits(document: NotebookDocument, cell: TableCell, wanted: TableImport): Edit[] {
  const { read, filled, key } = wanted;
  const there = placesOf(cell, key);
  const keys = entriesOf(read, key);
  const edits: Edit[] = [];
  for (const column of columnsOf(cell, filled)) {
    if (column.name === key) continue;
    const fresh = entriesOf(read, column.name);
    const entries = [...column.entries];
    keys.forEach((entry, row) => {
      const at = there.get(keyText(entry));
      // An empty field of the file says nothing against what is known.
      if (at !== undefined && fresh[row] != null) entries[at] = fresh[row]!;
    });
    if (entries.some((entry, row) => entry !== column.entries[row]))
      edits.push(replaceColumn(document, cell.id, column.id, { ...column, entries }));
  }
  const rows = keys.flatMap((entry, row) =>
    there.has(keyText(entry)) ? [] : [rowEntries(cell, read, filled, row)],
  );
  if (rows.length > 0) edits.push(addRows(edits.reduce(applyEdit, document), cell.id, rowCount(cell), rows));
  return edits;
}

const keyText = (entry: Entry | undefined): string =>
  String(entry ?? '')
    .trim()
    .toLowerCase();

function placesOf(cell: TableCell, key: string | null): ReadonlyMap<string, number> {
  const column = cell.columns.filter(isEntered).find(({ name }) => name === key);
  const places = new Map<string, number>();
  column?.entries.forEach((entry, row) => {
    const text = keyText(entry);
    if (text !== '' && !places.has(text)) places.set(text, row);
  });
  return places;
}

function columnsOf(cell: TableCell, filled: readonly string[]): readonly EnteredColumn[] {
  return cell.columns.filter(isEntered).filter(({ name }) => filled.includes(name));
}

function entriesOf(read: ReadTable, name: string | null): readonly Entry[] {
  return read.columns.find((column) => column.name === name)?.entries ?? [];
}

function rowEntries(cell: TableCell, read: ReadTable, filled: readonly string[], row: number): RowEntries {
  return Object.fromEntries(
    columnsOf(cell, filled).map((column) => [column.id, entriesOf(read, column.name)[row] ?? null]),
  );
}
