import type { Entry, NotebookDocument } from '../../src/notebook/document.ts';
import type { Edit, RowEntries } from '../../src/notebook/edit.ts';
import { addRows, group } from '../../src/notebook/edits.ts';
import { bareText } from '../../src/tables/safe-text.ts';
import { type Block, blockColumns, blockRows } from './table-block.ts';
import { fieldsEdit, type RowAt } from './table-fields.ts';
import { type Grid, type GridColumn, typedColumn } from './table-model.ts';
import { readTyped } from './typed-entry.ts';

export interface Paste {
  /** null when every field holds already what was pasted. */
  readonly edit: Edit | null;
  /** Rows that were written over, and rows that came new after the last. */
  readonly over: number;
  readonly added: number;
  /** Fields that could not be read: they stand as their text, with their fault. */
  readonly unread: number;
  /** Where the pasted fields stand now. */
  readonly block: Block;
}

/** Where a block is pasted: what is marked (or one figure), and how many rows are shown below its head. */
export interface PasteInto {
  readonly block: Block;
  readonly placeCount: number;
  readonly rowAt: RowAt;
}

/** A pasted block that fits the marked one a whole number of times fills it: one field fills every field. */
function repeated(fields: readonly (readonly string[])[], into: Block): readonly (readonly string[])[] {
  const width = Math.max(0, ...fields.map((row) => row.length));
  const rows = blockRows(into) % fields.length === 0 ? blockRows(into) / fields.length : 1;
  const columns = width > 0 && blockColumns(into) % width === 0 ? blockColumns(into) / width : 1;
  if (rows === 1 && columns === 1) return fields;
  const wide = fields.map((row) => {
    const whole = Array.from({ length: width }, (_, i) => row[i] ?? '');
    return Array.from({ length: columns }, () => whole).flat();
  });
  return Array.from({ length: rows }, () => wide).flat();
}

/** The unit of a row that is pasted along with its figure; undefined for the one that stands there. */
function pastedUnit(
  column: GridColumn,
  columns: readonly (GridColumn | null)[],
  fields: readonly string[],
): string | undefined {
  const by = column.entered?.unit_column;
  const at = by === undefined ? -1 : columns.findIndex((each) => each?.name === by);
  const text = at < 0 ? undefined : fields[at];
  return text === undefined ? undefined : bareText(text).trim();
}

/**
 * The one edit that puts a block of text fields into a table, its first field at the first marked one. Fields
 * are read as if typed; those that fall on worked columns or beyond the last column are left out; rows beyond
 * the last row shown are added at the end of the table. null when nothing of the block falls on an entered
 * column.
 *
 * @example pasteBlock(document, grid, into, [['240', 'gravel'], ['90', 'sand']])
 */
export function pasteBlock(
  document: NotebookDocument,
  grid: Grid,
  into: PasteInto,
  pasted: readonly (readonly string[])[],
): Paste | null {
  if (pasted.length === 0) return null;
  const block = repeated(pasted, into.block);
  const { top, left } = into.block;
  const width = Math.max(0, ...block.map((fields) => fields.length));
  const columns = grid.columns
    .slice(left, left + width)
    .map((column) => (column.entered === null ? null : column));
  if (!columns.some((column) => column !== null)) return null;
  let unread = 0;
  const read = (text: string, column: GridColumn, row: number, fields: readonly string[]): Entry => {
    const bare = bareText(text);
    const entry = readTyped(bare, typedColumn(grid, column, row, pastedUnit(column, columns, fields)));
    if ('entry' in entry) return entry.entry;
    unread++;
    return bare.trim();
  };
  const writes = new Map<string, Map<number, Entry>>();
  const added: RowEntries[] = [];
  block.forEach((fields, i) => {
    const entries: Record<string, Entry> = {};
    const isNew = top + i >= into.placeCount;
    const row = isNew ? grid.rowCount + added.length : into.rowAt(top + i);
    fields.forEach((text, j) => {
      const column = columns[j];
      if (column !== null && column !== undefined) entries[column.id] = read(text, column, row, fields);
    });
    if (isNew) {
      added.push(entries);
      return;
    }
    for (const [id, entry] of Object.entries(entries)) {
      const held = writes.get(id) ?? new Map<number, Entry>();
      writes.set(id, held.set(row, entry));
    }
  });
  const label = `${grid.title}: block pasted`;
  const over = fieldsEdit(document, grid, writes, label);
  // Added after the last row: what was written over stands where it did.
  const edits = added.length > 0 ? [addRows(document, grid.cellId, grid.rowCount, added)] : [];
  return {
    edit: edits.length === 0 ? over : group(label, over === null ? edits : [over, ...edits]),
    over: block.length - added.length,
    added: added.length,
    unread,
    block: {
      top,
      left,
      bottom: top + block.length - 1,
      right: Math.min(left + width, grid.columns.length) - 1,
    },
  };
}

/**
 * What a paste did, for a screen reader.
 *
 * @example pasteInWords({ over: 2, added: 1, unread: 0, edit, block }) // '2 rows written over, 1 row added'
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
