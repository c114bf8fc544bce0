import { applyEdit } from './apply-edit.ts';
import type { Cell, Entry, NotebookDocument, TableCell, TableColumn } from './document.ts';
import type { Edit, Placed } from './edit.ts';
import { EditError } from './edit-error.ts';
import { cellHead, columnsOf, findCell, findColumn, isEntered, rowCount } from './lookup.ts';
import { same } from './same.ts';

type EditOf<K extends Edit['kind']> = Extract<Edit, { kind: K }>;

/**
 * An edit made on one state of a notebook (`mine`), put so that it does the same to another state of it
 * (`theirs`, which another tab has edited meanwhile): rows and cells are found again where they now stand, and
 * a cell that both have changed is merged field by field.
 *
 * @param mine the notebook as it was just before the edit
 * @throws EditError when both changed the same thing, or what was edited is gone
 */
export function rebaseEdit(edit: Edit, mine: NotebookDocument, theirs: NotebookDocument): Edit {
  switch (edit.kind) {
    case 'entry':
      return { ...edit, row: rowIn(edit.cell, edit.row, mine, theirs) };
    case 'rows':
      return rebaseRows(edit, mine, theirs);
    case 'cell':
      return rebaseCell(edit, theirs);
    case 'column':
      return rebaseColumn(edit, theirs);
    case 'group':
      return rebaseGroup(edit, mine, theirs);
    default:
      return edit;
  }
}

/** The later edits of a group are made on what the earlier ones leave, in both notebooks. */
function rebaseGroup(edit: EditOf<'group'>, mine: NotebookDocument, theirs: NotebookDocument): Edit {
  const edits: Edit[] = [];
  let [mineNow, theirsNow] = [mine, theirs];
  for (const part of edit.edits) {
    const rebased = rebaseEdit(part, mineNow, theirsNow);
    edits.push(rebased);
    mineNow = applyEdit(mineNow, part);
    theirsNow = applyEdit(theirsNow, rebased);
  }
  return { ...edit, edits };
}

function tablesOf(cellId: string, mine: NotebookDocument, theirs: NotebookDocument): [TableCell, TableCell] {
  const [a, b] = [findCell(mine, cellId), findCell(theirs, cellId)];
  if (a?.kind !== 'table' || b?.kind !== 'table')
    throw new EditError('The table was removed in another tab.');
  return [a, b];
}

type EntryPairs = readonly (readonly [readonly Entry[], readonly Entry[]])[];

/** Entries of the columns that both tables have, side by side. */
function sharedColumns(a: TableCell, b: TableCell): EntryPairs {
  return a.columns.filter(isEntered).flatMap((column) => {
    const other = findColumn(b, column.id);
    return other !== null && isEntered(other) ? [[column.entries, other.entries] as const] : [];
  });
}

/**
 * Where a row of my table stands in theirs: where it stood, when both have as many rows and none became another
 * row; or where it stands counted from an end up to which nothing changed; or where the one row stands that
 * reads the same.
 */
function rowIn(cellId: string, row: number, mine: NotebookDocument, theirs: NotebookDocument): number {
  const [a, b] = tablesOf(cellId, mine, theirs);
  const [rows, theirRows] = [rowCount(a), rowCount(b)];
  const pairs = sharedColumns(a, b);
  const reads = (at: number, other: number): boolean =>
    pairs.every(([entries, others]) => same(entries[at], others[other]));
  if (rows === theirRows && keepsRows(pairs, rows)) return row;
  const shift = theirRows - rows;
  if (row < theirRows && allRows(0, row, (at) => reads(at, at))) return row;
  if (row + shift >= 0 && allRows(row, rows - 1, (at) => reads(at, at + shift))) return row + shift;
  const found: number[] = [];
  for (let at = 0; at < theirRows && found.length < 2; at += 1) if (reads(row, at)) found.push(at);
  if (found.length === 1) return found[0]!;
  throw new EditError(
    `Row ${row + 1} of '${cellHead(a)}' cannot be found again: another tab added or removed rows.`,
  );
}

function allRows(first: number, last: number, holds: (at: number) => boolean): boolean {
  for (let at = first; at <= last; at += 1) if (!holds(at)) return false;
  return true;
}

/**
 * As many rows can still be other rows, when some were added and as many removed: a row of which no field is
 * as it was counts as another row. With a single column there is nothing to tell the two by.
 */
function keepsRows(pairs: EntryPairs, rows: number): boolean {
  if (pairs.length < 2) return true;
  return allRows(0, rows - 1, (at) => pairs.some(([entries, others]) => same(entries[at], others[at])));
}

function rebaseRows(edit: EditOf<'rows'>, mine: NotebookDocument, theirs: NotebookDocument): Edit {
  const [a, b] = tablesOf(edit.cell, mine, theirs);
  if (edit.before.length > 0) {
    const at = rowIn(edit.cell, edit.at, mine, theirs);
    const last = rowIn(edit.cell, edit.at + edit.before.length - 1, mine, theirs);
    if (last - at !== edit.before.length - 1) {
      throw new EditError(
        `The rows removed from '${cellHead(a)}' are no longer together: another tab changed them.`,
      );
    }
    return { ...edit, at };
  }
  if (edit.at === rowCount(a)) return { ...edit, at: rowCount(b) };
  return { ...edit, at: edit.at === 0 ? 0 : rowIn(edit.cell, edit.at - 1, mine, theirs) + 1 };
}

function rebaseCell(edit: EditOf<'cell'>, theirs: NotebookDocument): Edit {
  const placed = rebasePlaced(edit.before, edit.after, theirs.cells, mergeFields<Cell>);
  return { ...edit, ...placed };
}

function rebaseColumn(edit: EditOf<'column'>, theirs: NotebookDocument): Edit {
  const cell = findCell(theirs, edit.cell);
  if (cell === null) throw new EditError('The table was removed in another tab.');
  const placed = rebasePlaced(edit.before, edit.after, columnsOf(cell), mergeFields<TableColumn>);
  return { ...edit, ...placed };
}

function rebasePlaced<T extends { readonly id: string }>(
  before: Placed<T> | null,
  after: Placed<T> | null,
  list: readonly T[],
  merge: (mine: T, changed: T, other: T) => T,
): { before: Placed<T> | null; after: Placed<T> | null } {
  if (before === null) {
    return { before, after: after === null ? null : { ...after, at: Math.min(after.at, list.length) } };
  }
  const at = list.findIndex((item) => item.id === before.item.id);
  const other = list[at];
  if (other === undefined) throw new EditError('What was changed here was removed in another tab.');
  if (after === null) {
    // What another tab has changed meanwhile is not thrown away unseen.
    if (!same(other, before.item)) throw new EditError('What was removed here was changed in another tab.');
    return { before: { item: other, at }, after };
  }
  const place = after.at === before.at ? at : Math.min(after.at, list.length - 1);
  return { before: { item: other, at }, after: { item: merge(before.item, after.item, other), at: place } };
}

/** Each field from whoever changed it; both changing one field alike is no conflict. */
function mergeFields<T extends object>(mine: T, changed: T, other: T): T {
  const [was, is, theirs] = [mine, changed, other] as unknown as Record<string, unknown>[];
  const merged: Record<string, unknown> = {};
  for (const field of new Set([...Object.keys(is!), ...Object.keys(theirs!)])) {
    const [before, after, now] = [was![field], is![field], theirs![field]];
    if (same(before, after) || same(after, now)) merged[field] = now;
    else if (same(before, now)) merged[field] = after;
    else throw new EditError(`Another tab has changed the ${field} of the same thing.`);
  }
  return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined)) as T;
}
