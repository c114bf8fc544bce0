import { sameDimensions } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import { convertFigure } from '../tables/convert-figure.ts';
import { differenceEdit } from './difference-edit.ts';
import type { Cell, EnteredColumn, Entry, NotebookDocument, TableCell, TableColumn } from './document.ts';
import type { Edit } from './edit.ts';
import { findCell, findColumn, isEntered, rowCount } from './lookup.ts';
import { matchRows } from './merge-rows.ts';
import { carriesEntries, type Slot } from './merge-slots.ts';
import { same } from './same.ts';

/**
 * One edit, undone in one step, that takes what was chosen of their state of the notebook into mine; all else
 * stays as it is. It may not fit, when what it takes needs something else of theirs: applyEdit then says so.
 *
 * @param slots those of `slotsOf(mine, theirs)` that are taken
 */
export function takeEdit(
  mine: NotebookDocument,
  theirs: NotebookDocument,
  slots: readonly Slot[],
  label: string,
): Edit {
  return differenceEdit(mine, taken(mine, theirs, slots), label);
}

/** My state with what was chosen of theirs. */
export function taken(
  mine: NotebookDocument,
  theirs: NotebookDocument,
  slots: readonly Slot[],
): NotebookDocument {
  let document = mine;
  for (const slot of slots) {
    if (slot.kind !== 'field') continue;
    const { [slot.field]: _, ...others } = document;
    const word = theirs[slot.field];
    document = { ...others, ...(word === undefined ? {} : { [slot.field]: word }) } as NotebookDocument;
  }
  const whole = new Set(slots.flatMap((slot) => (slot.kind === 'cell' ? [slot.cell] : [])));
  const byCell = new Map<string, Slot[]>();
  for (const slot of slots)
    if (slot.kind !== 'field' && slot.kind !== 'cell' && slot.cell !== undefined)
      byCell.set(slot.cell, [...(byCell.get(slot.cell) ?? []), slot]);
  const cells = document.cells.flatMap((cell) => {
    const other = findCell(theirs, cell.id);
    if (whole.has(cell.id)) return other === null ? [] : [other];
    const chosen = byCell.get(cell.id);
    return chosen === undefined || other === null ? [cell] : [takenCell(cell, other, chosen)];
  });
  const added = theirs.cells.filter(({ id }) => whole.has(id) && findCell(mine, id) === null);
  const all = placed(cells, added, theirs.cells);
  const isOrdered = slots.some((slot) => slot.kind === 'order' && slot.cell === undefined);
  const ordered = isOrdered ? inOrder(all, theirs.cells) : all;
  return { ...document, cells: ordered };
}

/** Puts what is new behind what it stands behind in the other list. */
function placed<T extends { readonly id: string }>(
  list: readonly T[],
  added: readonly T[],
  other: readonly T[],
): T[] {
  const next = list.slice();
  for (const item of added) {
    const before = other
      .slice(
        0,
        other.findIndex(({ id }) => id === item.id),
      )
      .reverse();
    const at = before.map(({ id }) => next.findIndex((one) => one.id === id)).find((place) => place !== -1);
    next.splice((at ?? -1) + 1, 0, item);
  }
  return next;
}

/** The items that both have stand as in the other list; the rest stay behind what they stood behind. */
function inOrder<T extends { readonly id: string }>(list: readonly T[], other: readonly T[]): T[] {
  const shared = other.flatMap(({ id }) => list.filter((item) => item.id === id));
  const own = list.filter((item) => !shared.includes(item));
  return placed(shared, own, list);
}

function takenCell(mine: Cell, theirs: Cell, slots: readonly Slot[]): Cell {
  const has = (kind: Slot['kind']): boolean => slots.some((slot) => slot.kind === kind);
  let cell = has('settings') ? withSettings(mine, theirs) : mine;
  if (cell.kind === 'value' && theirs.kind === 'value' && has('value'))
    cell = { ...cell, content: theirs.content };
  if (cell.kind === 'formula' && theirs.kind === 'formula' && has('formula'))
    cell = { ...cell, formula: theirs.formula };
  if (cell.kind === 'calls' && theirs.kind === 'calls') {
    const pins: Record<string, string> = { ...cell.pins };
    for (const slot of slots) {
      if (slot.kind !== 'pin') continue;
      delete pins[slot.part];
      if (Object.hasOwn(theirs.pins, slot.part)) pins[slot.part] = theirs.pins[slot.part]!;
    }
    cell = same(pins, cell.pins) ? cell : { ...cell, pins };
  }
  if (cell.kind === 'pairing' && theirs.kind === 'pairing')
    return { ...cell, columns: takenColumns(cell.columns, theirs.columns, slots) };
  return cell.kind === 'table' && theirs.kind === 'table' ? takenTable(cell, theirs, slots) : cell;
}

/** Their settings with my figures. */
function withSettings(mine: Cell, theirs: Cell): Cell {
  switch (theirs.kind) {
    case 'value':
      return mine.kind === 'value' ? { ...theirs, content: mine.content } : theirs;
    case 'formula':
      return mine.kind === 'formula' ? { ...theirs, formula: mine.formula } : theirs;
    case 'calls':
      return mine.kind === 'calls' ? { ...theirs, pins: mine.pins } : theirs;
    case 'table':
      return mine.kind === 'table' ? { ...theirs, columns: mine.columns } : theirs;
    case 'pairing':
      return mine.kind === 'pairing' ? { ...theirs, columns: mine.columns } : theirs;
    default:
      return theirs;
  }
}

function takenColumns<C extends TableColumn>(
  mine: readonly C[],
  theirs: readonly C[],
  slots: readonly Slot[],
  keep: (own: C, other: C) => C = (_, other) => other,
): C[] {
  const ids = new Set(slots.flatMap((slot) => (slot.kind === 'column' ? [slot.column] : [])));
  const kept = mine.flatMap((column) => {
    if (!ids.has(column.id)) return [column];
    const other = theirs.find(({ id }) => id === column.id);
    return other === undefined ? [] : [keep(column, other)];
  });
  const added = theirs.filter(({ id }) => ids.has(id) && !mine.some((column) => column.id === id));
  const all = placed(kept, added, theirs);
  return slots.some(({ kind }) => kind === 'order') ? inOrder(all, theirs) : all;
}

/** Where a row of the new table comes from. */
interface From {
  readonly mine: number;
  readonly theirs: number;
}

function takenTable(mine: TableCell, theirs: TableCell, slots: readonly Slot[]): TableCell {
  const rows = takenRows(mine, theirs, slots);
  const fields = new Set(
    slots.flatMap((slot) => (slot.kind === 'entry' ? [`${slot.column} ${slot.mine}`] : [])),
  );
  const columns = takenColumns<TableColumn>(mine.columns, theirs.columns, slots, (own, other) =>
    isEntered(own) && isEntered(other) ? { ...other, entries: own.entries } : other,
  );
  return {
    ...mine,
    columns: columns.map((column) => {
      if (!isEntered(column)) return column;
      const [own, other] = [enteredOf(mine, column.id), enteredOf(theirs, column.id)];
      const carried = own !== null && carriesEntries(own, column);
      const entryAt = (row: From): Entry => {
        if (own === null || row.mine === -1) return other?.entries[row.theirs] ?? null;
        if (carried && row.theirs === -1) return turned(own.entries[row.mine]!, own, column);
        const fromTheirs = carried || fields.has(`${column.id} ${row.mine}`);
        return (fromTheirs ? other?.entries[row.theirs] : own.entries[row.mine]) ?? null;
      };
      const entries = rows.map(entryAt);
      return same(entries, column.entries) ? column : { ...column, entries };
    }),
  };
}

/** A figure of a row that only I have, in a column that now has another unit; empty where it cannot be turned. */
function turned(entry: Entry, from: EnteredColumn, to: EnteredColumn): Entry {
  const [old, next] = [tryUnit(from.unit ?? ''), tryUnit(to.unit ?? '')];
  if (from.kind !== to.kind || typeof entry !== 'number' || old === null || next === null) return null;
  return sameDimensions(old, next) ? convertFigure(entry, old, next) : null;
}

function enteredOf(table: TableCell, id: string): EnteredColumn | null {
  const column = findColumn(table, id);
  return column !== null && isEntered(column) ? column : null;
}

/** My rows without those that are removed, and the new ones behind what they stand behind in theirs. */
function takenRows(mine: TableCell, theirs: TableCell, slots: readonly Slot[]): readonly From[] {
  const match = matchRows(mine, theirs);
  const removed = new Set<number>();
  const added: number[] = [];
  for (const slot of slots) {
    if (slot.kind !== 'row') continue;
    if (slot.mine !== -1) removed.add(slot.mine);
    else added.push(slot.theirs);
  }
  const kept: From[] = [];
  for (let row = 0; row < rowCount(mine); row += 1)
    if (!removed.has(row)) kept.push({ mine: row, theirs: match.theirs[row]! });
  const rows = slots.some(({ kind }) => kind === 'order') ? ordered(kept) : kept;
  for (const theirRow of added.sort((a, b) => a - b)) {
    let at = -1;
    for (let before = theirRow - 1; before >= 0 && at === -1; before -= 1)
      at = rows.findIndex((one) => one.theirs === before);
    rows.splice(at + 1, 0, { mine: -1, theirs: theirRow });
  }
  return rows;
}

/** In the order of theirs; a row that only I have stays behind the one it stood behind. */
function ordered(rows: readonly From[]): From[] {
  const next = rows.filter(({ theirs }) => theirs !== -1).sort((a, b) => a.theirs - b.theirs);
  rows.forEach((row, at) => {
    if (row.theirs !== -1) return;
    const before = rows[at - 1];
    next.splice(before === undefined ? 0 : next.indexOf(before) + 1, 0, row);
  });
  return next;
}
