import type { Cell, NotebookDocument, TableCell } from './document.ts';
import type { Edit } from './edit.ts';
import { isEntered, rowCount } from './lookup.ts';
import { same } from './same.ts';

/** Past this many fields, one table is replaced by the other as a whole. */
const MOST_ENTRIES = 500;

/**
 * One group that turns a notebook into another state of itself, saved elsewhere: cells that are the same are
 * left alone, and a table whose fields alone differ is changed field by field, so that little is recomputed.
 *
 * @param label what the reader reads in the log, such as 'Changes from another tab'
 */
export function differenceEdit(before: NotebookDocument, after: NotebookDocument, label: string): Edit {
  const edits: Edit[] = [];
  for (const field of ['title', 'gist', 'money', 'measures', 'shown_money'] as const) {
    const [was, is] = [before[field] ?? '', after[field] ?? ''];
    if (was !== is) edits.push({ kind: 'notebook', field, before: was, after: is });
  }
  const cells = before.cells.slice();
  const kept = new Set(after.cells.map((cell) => cell.id));
  for (let at = cells.length - 1; at >= 0; at -= 1) {
    const item = cells[at]!;
    if (kept.has(item.id)) continue;
    edits.push({ kind: 'cell', id: item.id, before: { item, at }, after: null });
    cells.splice(at, 1);
  }
  edits.push(...freeNames(cells, after));
  for (let at = 0; at < after.cells.length; at += 1) edits.push(...settle(cells, at, after.cells[at]!));
  return { kind: 'group', label, edits };
}

/**
 * Cells that take another name are taken out first, so that two that swap their names never have one name at
 * a time between.
 */
function freeNames(cells: Cell[], after: NotebookDocument): Edit[] {
  const edits: Edit[] = [];
  for (let at = cells.length - 1; at >= 0; at -= 1) {
    const item = cells[at]!;
    const next = after.cells.find((cell) => cell.id === item.id);
    if (next === undefined || nameOf(next) === nameOf(item)) continue;
    edits.push({ kind: 'cell', id: item.id, before: { item, at }, after: null });
    cells.splice(at, 1);
  }
  return edits;
}

function nameOf(cell: Cell): string | undefined {
  return 'name' in cell ? cell.name : undefined;
}

/** Brings `item` to place `at` of the list, which is settled up to there, and says with which edits. */
function settle(cells: Cell[], at: number, item: Cell): Edit[] {
  const found = cells.findIndex((cell) => cell.id === item.id);
  if (found === -1) {
    cells.splice(at, 0, item);
    return [{ kind: 'cell', id: item.id, before: null, after: { item, at } }];
  }
  const old = cells[found]!;
  if (found === at && same(old, item)) return [];
  const entries = found === at ? entriesOnly(old, item) : null;
  cells.splice(found, 1);
  cells.splice(at, 0, item);
  return entries ?? [{ kind: 'cell', id: item.id, before: { item: old, at: found }, after: { item, at } }];
}

/** Edits of single fields, when nothing but the entries of a table differ and few of them do. */
function entriesOnly(old: Cell, next: Cell): Edit[] | null {
  if (old.kind !== 'table' || next.kind !== 'table') return null;
  if (rowCount(old) !== rowCount(next) || !same(bare(old), bare(next))) return null;
  const edits: Edit[] = [];
  for (let place = 0; place < old.columns.length; place += 1) {
    const [was, is] = [old.columns[place]!, next.columns[place]!];
    if (!isEntered(was) || !isEntered(is)) continue;
    for (let row = 0; row < was.entries.length; row += 1) {
      const [before, after] = [was.entries[row]!, is.entries[row]!];
      if (same(before, after)) continue;
      edits.push({ kind: 'entry', cell: old.id, column: was.id, row, before, after });
      if (edits.length > MOST_ENTRIES) return null;
    }
  }
  return edits;
}

function bare(table: TableCell): unknown {
  return {
    ...table,
    columns: table.columns.map((column) => (isEntered(column) ? { ...column, entries: [] } : column)),
  };
}
