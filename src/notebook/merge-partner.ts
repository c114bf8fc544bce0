import { describeEdit, type EditWords } from './describe-edit.ts';
import type { Cell, NotebookDocument, TableCell, TableColumn } from './document.ts';
import type { RowEntries } from './edit.ts';
import { cellHead, columnsOf, findCell, findColumn, isEntered } from './lookup.ts';
import { movedInWords } from './merge-order.ts';
import { matchRows } from './merge-rows.ts';
import { columnSettings, type Slot, settingsOf, slotsOf } from './merge-slots.ts';
import { same } from './same.ts';

/** One thing in which the partner's file differs, in words. */
export interface Difference {
  readonly slot: Slot;
  /** Heading of the cell it belongs to. */
  readonly of: string;
  readonly words: EditWords;
  /** Who has changed it since the common state: 'both' where both have, and then taking it gives up mine. */
  readonly by: 'theirs' | 'both';
}

/**
 * What the partner's state of a notebook has otherwise than mine, one by one.
 *
 * @param base a state that both began from, where one is known: what only I have changed since is then no
 *   difference of the partner's, and what both have changed says so
 */
export function partnerDifferences(
  mine: NotebookDocument,
  theirs: NotebookDocument,
  base: NotebookDocument | null = null,
): readonly Difference[] {
  return slotsOf(mine, theirs).flatMap((slot): Difference[] => {
    const by = base === null ? 'theirs' : changedBy(slot, mine, theirs, base);
    if (by === 'mine') return [];
    return [{ slot, of: headOf(slot, mine, theirs), words: wordsOf(slot, mine, theirs), by }];
  });
}

function headOf(slot: Slot, mine: NotebookDocument, theirs: NotebookDocument): string {
  const id = slot.kind === 'field' ? undefined : slot.cell;
  const cell = id === undefined ? null : (findCell(mine, id) ?? findCell(theirs, id));
  return cell === null ? 'The notebook' : cellHead(cell);
}

function changedBy(
  slot: Slot,
  mine: NotebookDocument,
  theirs: NotebookDocument,
  base: NotebookDocument,
): Difference['by'] | 'mine' {
  const was = heldBy(base, slot, mine, theirs);
  if (same(was, heldBy(mine, slot, mine, theirs))) return 'theirs';
  return same(was, heldBy(theirs, slot, mine, theirs)) ? 'mine' : 'both';
}

/** What a state holds where a difference of two others is, to be compared. */
function heldBy(
  state: NotebookDocument,
  slot: Slot,
  mine: NotebookDocument,
  theirs: NotebookDocument,
): unknown {
  if (slot.kind === 'field') return state[slot.field] ?? '';
  if (slot.cell === undefined) return state.cells.map(({ id }) => id);
  const cell = findCell(state, slot.cell);
  if (cell === null) return null;
  switch (slot.kind) {
    case 'cell':
      return cell;
    case 'settings':
      return settingsOf(cell);
    case 'value':
      return cell.kind === 'value' ? cell.content : null;
    case 'formula':
      return cell.kind === 'formula' ? cell.formula : null;
    case 'pin':
      return cell.kind === 'calls' ? (cell.pins[slot.part] ?? null) : null;
    case 'column': {
      const column = findColumn(cell, slot.column);
      return column === null ? null : columnSettings(column);
    }
    case 'order':
      return columnsOf(cell).map(({ id }) => id);
    default:
      return heldInRow(state, cell, slot, mine, theirs);
  }
}

function heldInRow(
  state: NotebookDocument,
  cell: ReturnType<typeof findCell>,
  slot: Extract<Slot, { kind: 'row' | 'entry' }>,
  mine: NotebookDocument,
  theirs: NotebookDocument,
): unknown {
  const [from, at] = slot.mine === -1 ? [theirs, slot.theirs] : [mine, slot.mine];
  const own = findCell(from, slot.cell);
  if (cell?.kind !== 'table' || own?.kind !== 'table') return null;
  const row = state === theirs ? slot.theirs : state === mine ? slot.mine : matchRows(own, cell).theirs[at]!;
  if (row === -1) return null;
  if (slot.kind === 'row') return rowOf(cell, row);
  const column = findColumn(cell, slot.column);
  return column !== null && isEntered(column) ? (column.entries[row] ?? null) : null;
}

function rowOf(table: TableCell, row: number): RowEntries {
  return Object.fromEntries(
    table.columns.filter(isEntered).map((column) => [column.id, column.entries[row] ?? null]),
  );
}

/** The row's own words: its first text. */
function rowName(table: TableCell, row: number): string {
  for (const column of table.columns) {
    if (!isEntered(column) || (column.kind !== 'text' && column.kind !== 'choice')) continue;
    const entry = column.entries[row];
    if (typeof entry === 'string' && entry !== '') return entry;
  }
  return `row ${row + 1}`;
}

function wordsOf(slot: Slot, mine: NotebookDocument, theirs: NotebookDocument): EditWords {
  if (slot.kind === 'field') {
    const { field } = slot;
    return describeEdit(mine, {
      kind: 'notebook',
      field,
      before: mine[field] ?? '',
      after: theirs[field] ?? '',
    });
  }
  if (slot.cell === undefined)
    return { what: 'Cards', change: movedItems(mine.cells, theirs.cells, cellHead) };
  const [own, other] = [findCell(mine, slot.cell), findCell(theirs, slot.cell)];
  const placed = <T>(item: T | null) => (item === null ? null : { item, at: 0 });
  switch (slot.kind) {
    case 'cell':
      return describeEdit(mine, { kind: 'cell', id: slot.cell, before: placed(own), after: placed(other) });
    case 'settings':
      return describeEdit(mine, { kind: 'cell', id: slot.cell, before: placed(own), after: placed(other) });
    case 'value':
      if (own?.kind !== 'value' || other?.kind !== 'value') break;
      return describeEdit(mine, {
        kind: 'value',
        cell: slot.cell,
        before: own.content,
        after: other.content,
      });
    case 'formula':
      if (own?.kind !== 'formula' || other?.kind !== 'formula') break;
      return { what: cellHead(own), change: `${own.formula} to ${other.formula}` };
    case 'pin':
      if (own?.kind !== 'calls' || other?.kind !== 'calls') break;
      return {
        what: slot.part,
        change: `${own.pins[slot.part] ?? 'as proposed'} to ${other.pins[slot.part] ?? 'as proposed'}`,
      };
    case 'order':
      if (own === null || other === null) break;
      return { what: 'Order', change: movedInside(own, other) };
    default:
      if (own !== null && other !== null) return wordsInTable(slot, mine, theirs);
  }
  return { what: 'A cell', change: 'changed' };
}

/** Which of the things that both have stand elsewhere. */
function movedItems<T extends { readonly id: string }>(
  mine: readonly T[],
  theirs: readonly T[],
  nameOf: (item: T) => string,
): string {
  const places = new Map(theirs.map(({ id }, at) => [id, at]));
  const shared = mine.filter(({ id }) => places.has(id));
  return movedInWords(
    shared.map(nameOf),
    shared.map(({ id }) => places.get(id)!),
  );
}

function movedInside(own: Cell, other: Cell): string {
  const columns = movedItems<TableColumn>(
    columnsOf(own),
    columnsOf(other),
    ({ title, name }) => `column ${title ?? name}`,
  );
  if (own.kind !== 'table' || other.kind !== 'table') return columns;
  const rows = matchRows(own, other).theirs.flatMap((place, row) => (place === -1 ? [] : [{ place, row }]));
  const moved = movedInWords(
    rows.map(({ row }) => rowName(own, row)),
    rows.map(({ place }) => place),
  );
  return [columns, moved].filter((words) => words !== '').join('; ');
}

function wordsInTable(
  slot: Extract<Slot, { kind: 'column' | 'row' | 'entry' }>,
  mine: NotebookDocument,
  theirs: NotebookDocument,
): EditWords {
  const [own, other] = [findCell(mine, slot.cell)!, findCell(theirs, slot.cell)!];
  if (slot.kind === 'column') {
    const [a, b] = [findColumn(own, slot.column), findColumn(other, slot.column)];
    if (a?.kind === 'worked' && b?.kind === 'worked' && a.formula !== b.formula)
      return { what: a.title ?? a.name, change: `${a.formula} to ${b.formula}` };
    return describeEdit(mine, {
      kind: 'column',
      cell: slot.cell,
      id: slot.column,
      before: a === null ? null : { item: a, at: 0 },
      after: b === null ? null : { item: b, at: 0 },
    });
  }
  if (own.kind !== 'table' || other.kind !== 'table') return { what: cellHead(own), change: 'changed' };
  if (slot.kind === 'row')
    return slot.mine === -1
      ? { what: rowName(other, slot.theirs), change: 'row added' }
      : { what: rowName(own, slot.mine), change: 'row removed' };
  const [a, b] = [findColumn(own, slot.column), findColumn(other, slot.column)];
  const entry = (column: typeof a, row: number) =>
    column !== null && isEntered(column) ? (column.entries[row] ?? null) : null;
  return describeEdit(mine, {
    kind: 'entry',
    cell: slot.cell,
    column: slot.column,
    row: slot.mine,
    before: entry(a, slot.mine),
    after: entry(b, slot.theirs),
  });
}
