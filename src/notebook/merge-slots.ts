import type { Cell, EnteredColumn, NotebookDocument, TableCell, TableColumn } from './document.ts';
import type { NotebookField } from './edit.ts';
import { columnsOf, findCell, findColumn, isEntered } from './lookup.ts';
import { matchRows } from './merge-rows.ts';
import { same } from './same.ts';

/** One thing that differs between two states of a notebook, taken over or left by itself. */
export type Slot =
  | { readonly kind: 'field'; readonly field: NotebookField }
  /** A whole cell: added, removed, or of another kind. */
  | { readonly kind: 'cell'; readonly cell: string }
  /** What a cell has beside its figures: heading, name, unit, text, what it reads. */
  | { readonly kind: 'settings'; readonly cell: string }
  | { readonly kind: 'value'; readonly cell: string }
  | { readonly kind: 'formula'; readonly cell: string }
  | { readonly kind: 'pin'; readonly cell: string; readonly part: string }
  /** A column without its entries: added, removed, or changed. */
  | { readonly kind: 'column'; readonly cell: string; readonly column: string }
  /** A row of theirs that is new, or one of mine that they removed; -1 stands for none. */
  | { readonly kind: 'row'; readonly cell: string; readonly mine: number; readonly theirs: number }
  | {
      readonly kind: 'entry';
      readonly cell: string;
      readonly column: string;
      readonly mine: number;
      readonly theirs: number;
    }
  /** The order of the cells, or of the columns and rows of one. */
  | { readonly kind: 'order'; readonly cell?: string };

export const NOTEBOOK_FIELDS: readonly NotebookField[] = [
  'title',
  'gist',
  'money',
  'measures',
  'shown_money',
];

/** Everything in which their state of a notebook differs from mine, in the order of the cells. */
export function slotsOf(mine: NotebookDocument, theirs: NotebookDocument): readonly Slot[] {
  const slots: Slot[] = [];
  for (const field of NOTEBOOK_FIELDS)
    if ((mine[field] ?? '') !== (theirs[field] ?? '')) slots.push({ kind: 'field', field });
  for (const cell of mine.cells) {
    const other = findCell(theirs, cell.id);
    if (other === null || other.kind !== cell.kind) slots.push({ kind: 'cell', cell: cell.id });
    else slots.push(...insideCell(cell, other));
  }
  for (const { id } of theirs.cells) if (findCell(mine, id) === null) slots.push({ kind: 'cell', cell: id });
  if (!sameOrder(mine.cells, theirs.cells)) slots.push({ kind: 'order' });
  return slots;
}

interface WithId {
  readonly id: string;
}

/** What both have stands in the same order. */
function sameOrder(a: readonly WithId[], b: readonly WithId[]): boolean {
  const shared = (of: readonly WithId[], other: readonly WithId[]): string[] => {
    const ids = new Set(other.map(({ id }) => id));
    return of.filter(({ id }) => ids.has(id)).map(({ id }) => id);
  };
  return same(shared(a, b), shared(b, a));
}

function insideCell(mine: Cell, theirs: Cell): Slot[] {
  if (same(mine, theirs)) return [];
  const cell = mine.id;
  const slots: Slot[] = [];
  if (!same(settingsOf(mine), settingsOf(theirs))) slots.push({ kind: 'settings', cell });
  if (mine.kind === 'value' && theirs.kind === 'value' && !same(mine.content, theirs.content))
    slots.push({ kind: 'value', cell });
  if (mine.kind === 'formula' && theirs.kind === 'formula' && mine.formula !== theirs.formula)
    slots.push({ kind: 'formula', cell });
  if (mine.kind === 'calls' && theirs.kind === 'calls')
    for (const part of new Set([...Object.keys(mine.pins), ...Object.keys(theirs.pins)]))
      if (mine.pins[part] !== theirs.pins[part]) slots.push({ kind: 'pin', cell, part });
  slots.push(...columnSlots(mine, theirs));
  if (mine.kind === 'table' && theirs.kind === 'table') slots.push(...rowSlots(mine, theirs));
  const falls = mine.kind === 'table' && theirs.kind === 'table' && !isRising(matchRows(mine, theirs).theirs);
  if (falls || !sameOrder(columnsOf(mine), columnsOf(theirs))) slots.push({ kind: 'order', cell });
  return slots;
}

function isRising(rows: readonly number[]): boolean {
  const found = rows.filter((row) => row !== -1);
  return found.every((row, at) => at === 0 || row > found[at - 1]!);
}

function columnSlots(mine: Cell, theirs: Cell): Slot[] {
  const ids = new Set([...columnsOf(mine), ...columnsOf(theirs)].map(({ id }) => id));
  return [...ids]
    .filter((id) => {
      const [a, b] = [findColumn(mine, id), findColumn(theirs, id)];
      return !same(a === null ? null : columnSettings(a), b === null ? null : columnSettings(b));
    })
    .map((column) => ({ kind: 'column', cell: mine.id, column }));
}

function rowSlots(mine: TableCell, theirs: TableCell): Slot[] {
  const cell = mine.id;
  const match = matchRows(mine, theirs);
  const slots: Slot[] = [];
  match.theirs.forEach((other, row) => {
    if (other === -1) slots.push({ kind: 'row', cell, mine: row, theirs: -1 });
    else
      for (const column of mine.columns) {
        const their = findColumn(theirs, column.id);
        if (their === null || !isEntered(column) || !isEntered(their)) continue;
        // In another unit or of another kind its entries come with the column.
        if (carriesEntries(column, their)) continue;
        if (!same(column.entries[row], their.entries[other]))
          slots.push({ kind: 'entry', cell, column: column.id, mine: row, theirs: other });
      }
  });
  match.mine.forEach((row, other) => {
    if (row === -1) slots.push({ kind: 'row', cell, mine: -1, theirs: other });
  });
  return slots;
}

/** A cell without what has slots of its own. */
export function settingsOf(cell: Cell): unknown {
  switch (cell.kind) {
    case 'value':
      return { ...cell, content: null };
    case 'formula':
      return { ...cell, formula: '' };
    case 'calls':
      return { ...cell, pins: {} };
    case 'table':
    case 'pairing':
      return { ...cell, columns: [] };
    default:
      return cell;
  }
}

/** Whether a changed column brings its entries along: they would mean something else without it. */
export function carriesEntries(mine: EnteredColumn, theirs: EnteredColumn): boolean {
  return mine.kind !== theirs.kind || (mine.unit ?? '') !== (theirs.unit ?? '');
}

/** A column without its entries. */
export function columnSettings(column: TableColumn): unknown {
  return isEntered(column) ? { ...column, entries: [] } : column;
}
