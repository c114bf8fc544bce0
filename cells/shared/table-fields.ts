import { showCount } from '../../src/formula/show.ts';
import type { EnteredColumn, Entry, NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit, RowEntries } from '../../src/notebook/edit.ts';
import {
  addRows,
  entryEdit,
  group,
  removeRows,
  replaceColumn,
  replaceRows,
} from '../../src/notebook/edits.ts';
import { readEntry } from '../../src/tables/read-entry.ts';
import { isCountedPer } from './gauge-unit.ts';
import type { Block } from './table-block.ts';
import { entryText } from './table-figure.ts';
import type { Grid } from './table-model.ts';

/** Fields to be written, by column id and row; rows are counted as they stand in the table. */
export type FieldWrites = ReadonlyMap<string, ReadonlyMap<number, Entry>>;

/** Rows shown, as they stand in the table: `rowAt(place)`. */
export type RowAt = (place: number) => number;

/** More fields than this are written column by column. */
const MOST_SINGLE_FIELDS = 100;

function enteredColumns(grid: Grid): readonly EnteredColumn[] {
  return [...grid.columns, ...grid.folded].flatMap((column) => column.entered ?? []);
}

/** The entered columns of a block, with nulls where a column is worked out. */
export function columnsOfBlock(grid: Grid, block: Block): readonly (EnteredColumn | null)[] {
  return grid.columns.slice(block.left, block.right + 1).map((column) => column.entered);
}

/** Only what differs from what stands there. */
function changedWrites(grid: Grid, writes: FieldWrites): Map<string, Map<number, Entry>> {
  const changed = new Map<string, Map<number, Entry>>();
  for (const column of enteredColumns(grid)) {
    const fields = [...(writes.get(column.id) ?? [])].filter(([row, entry]) => column.entries[row] !== entry);
    if (fields.length > 0) changed.set(column.id, new Map(fields));
  }
  return changed;
}

/**
 * The one edit that writes so many fields of a table; null when every one holds its entry already. Few fields
 * are written one by one, so that they stand beside another tab's edits of other fields.
 */
export function fieldsEdit(
  document: NotebookDocument,
  grid: Grid,
  writes: FieldWrites,
  label: string,
): Edit | null {
  const changed = changedWrites(grid, writes);
  const count = [...changed.values()].reduce((sum, fields) => sum + fields.size, 0);
  if (count === 0) return null;
  const edits = [...changed].flatMap(([columnId, fields]) =>
    count <= MOST_SINGLE_FIELDS
      ? [...fields].map(([row, entry]) => entryEdit(document, grid.cellId, columnId, row, entry))
      : columnEdit(document, grid, columnId, fields),
  );
  return group(label, edits);
}

function columnEdit(
  document: NotebookDocument,
  grid: Grid,
  columnId: string,
  fields: ReadonlyMap<number, Entry>,
): Edit[] {
  const column = enteredColumns(grid).find((each) => each.id === columnId);
  if (column === undefined) return [];
  const entries = column.entries.slice();
  for (const [row, entry] of fields) entries[row] = entry;
  return [replaceColumn(document, grid.cellId, columnId, { ...column, entries })];
}

/** A row as it stands. */
function rowOf(grid: Grid, row: number): RowEntries {
  return Object.fromEntries(enteredColumns(grid).map((column) => [column.id, column.entries[row] ?? null]));
}

/** How many fields of a block are entered by hand. */
export function enteredFields(grid: Grid, block: Block): number {
  const columns = columnsOfBlock(grid, block).filter((column) => column !== null);
  return columns.length * (block.bottom - block.top + 1);
}

/** Empties the entered fields of a block. */
export function clearBlock(document: NotebookDocument, grid: Grid, block: Block, rowAt: RowAt): Edit | null {
  const writes = new Map<string, Map<number, Entry>>();
  for (const column of columnsOfBlock(grid, block)) {
    if (column === null) continue;
    const fields = new Map<number, Entry>();
    for (let place = block.top; place <= block.bottom; place += 1) fields.set(rowAt(place), null);
    writes.set(column.id, fields);
  }
  return fieldsEdit(document, grid, writes, `${grid.title}: fields emptied`);
}

/**
 * An entry carried from one column into another: between units it is converted, between kinds it is read again;
 * what cannot be read there stays as its text, and shows its fault.
 */
export function carriedEntry(entry: Entry, from: EnteredColumn, to: EnteredColumn): Entry {
  if (entry === null || from === to) return entry;
  const isSame = from.kind === to.kind && (from.unit ?? '') === (to.unit ?? '');
  if (isSame && to.kind !== 'choice') return entry;
  const unit = typeof entry === 'number' && from.unit !== undefined ? ` ${from.unit}` : '';
  const read = readEntry(`${entryText(entry)}${unit}`, to);
  return 'entry' in read ? read.entry : entryText(entry);
}

/** A column as it is in one row: with the row's own unit, where it has one. */
function inRow(grid: Grid, column: EnteredColumn, row: number): EnteredColumn {
  if (column.unit_column === undefined || isCountedPer(column.unit)) return column;
  const held = [...grid.columns, ...grid.folded].find(({ id }) => id === column.id);
  return { ...column, unit: held?.rowUnits?.at(row) || undefined };
}

/**
 * Fills a block with its first row, or across with its first column. A block of one row (or one column) is
 * filled from the row above it (or the column before it). null when there is nothing to fill from or into.
 */
export function fillBlock(
  document: NotebookDocument,
  grid: Grid,
  block: Block,
  way: 'down' | 'across',
  rowAt: RowAt,
): Edit | null {
  const label = `${grid.title}: filled ${way}`;
  const writes = way === 'down' ? fillsDown(grid, block, rowAt) : fillsAcross(grid, block, rowAt);
  return fieldsEdit(document, grid, writes, label);
}

function fillsDown(grid: Grid, block: Block, rowAt: RowAt): FieldWrites {
  const from = block.top === block.bottom ? block.top - 1 : block.top;
  const writes = new Map<string, Map<number, Entry>>();
  if (from < 0) return writes;
  for (const column of columnsOfBlock(grid, block)) {
    if (column === null) continue;
    const source = rowAt(from);
    const entry = column.entries[source] ?? null;
    const fields = new Map<number, Entry>();
    for (let place = from + 1; place <= block.bottom; place += 1) {
      const row = rowAt(place);
      const carried = carriedEntry(entry, inRow(grid, column, source), inRow(grid, column, row));
      // Into a unit of another kind the figure goes as it is, as if it were typed there again.
      fields.set(row, typeof entry === 'number' && typeof carried !== 'number' ? entry : carried);
    }
    writes.set(column.id, fields);
  }
  return writes;
}

function fillsAcross(grid: Grid, block: Block, rowAt: RowAt): FieldWrites {
  const from = block.left === block.right ? block.left - 1 : block.left;
  const source = grid.columns[from]?.entered ?? null;
  const writes = new Map<string, Map<number, Entry>>();
  if (source === null) return writes;
  for (const column of columnsOfBlock(grid, { ...block, left: from + 1 })) {
    if (column === null) continue;
    const fields = new Map<number, Entry>();
    for (let place = block.top; place <= block.bottom; place += 1) {
      const row = rowAt(place);
      const entry = source.entries[row] ?? null;
      fields.set(row, carriedEntry(entry, inRow(grid, source, row), inRow(grid, column, row)));
    }
    writes.set(column.id, fields);
  }
  return writes;
}

const rowsInWords = (count: number): string => `${showCount(count)} ${count === 1 ? 'row' : 'rows'}`;

/** Takes rows out of a table, wherever they stand, as one step. */
export function removeTheseRows(document: NotebookDocument, grid: Grid, rows: readonly number[]): Edit {
  const falling = [...rows].sort((a, b) => b - a);
  const edits: Edit[] = [];
  for (let i = 0; i < falling.length; ) {
    let count = 1;
    while (falling[i + count] === falling[i]! - count) count += 1;
    // Made from the end: the rows before stand as they did, so each edit fits after the ones before it.
    edits.push(removeRows(document, grid.cellId, falling[i]! - count + 1, count));
    i += count;
  }
  return group(`${grid.title}: ${rowsInWords(rows.length)} removed`, edits);
}

/** Puts as many empty rows in before `at`. */
export function insertRows(document: NotebookDocument, grid: Grid, at: number, count: number): Edit {
  const rows = Array.from({ length: count }, (): RowEntries => ({}));
  return group(`${grid.title}: ${rowsInWords(count)} added`, [addRows(document, grid.cellId, at, rows)]);
}

/**
 * Moves a run of rows one place up (-1) or down (1) past its neighbour; null at the end of the table.
 */
export function moveRows(
  document: NotebookDocument,
  grid: Grid,
  first: number,
  last: number,
  step: -1 | 1,
): Edit | null {
  const from = step === -1 ? first - 1 : first;
  const to = step === -1 ? last : last + 1;
  if (from < 0 || to >= grid.rowCount) return null;
  const rows = Array.from({ length: to - from + 1 }, (_, i) => rowOf(grid, from + i));
  const moved = step === -1 ? [...rows.slice(1), rows[0]!] : [rows.at(-1)!, ...rows.slice(0, -1)];
  const edit = replaceRows(document, grid.cellId, from, rows.length, moved);
  return group(`${grid.title}: ${rowsInWords(last - first + 1)} moved ${step === -1 ? 'up' : 'down'}`, [
    edit,
  ]);
}
