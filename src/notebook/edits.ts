import { describeEdit } from './describe-edit.ts';
import type { Cell, Entry, NotebookDocument, TableColumn, ValueContent } from './document.ts';
import { cellWords } from './document-rules.ts';
import type { Edit, NotebookField, RowEntries } from './edit.ts';
import { EditError } from './edit-error.ts';
import { invertEdit } from './invert-edit.ts';
import { columnsOf, findCell, findColumn, forbiddenOf, isEntered, placeOfCell, rowCount } from './lookup.ts';
import { renameEdit } from './rename-edit.ts';

/**
 * Makers of edits: each reads what is there now, so that the edit knows how to undo itself. All throw
 * EditError, with a sentence, when the cell or column they speak of is not in the notebook; whether the edit
 * may be made at all is for applyEdit to say.
 */

function cellOf(document: NotebookDocument, cellId: string): Cell {
  const cell = findCell(document, cellId);
  if (cell === null) throw new EditError('The cell to be changed is no longer in the notebook.');
  return cell;
}

function columnOf(document: NotebookDocument, cellId: string, columnId: string): TableColumn {
  const cell = cellOf(document, cellId);
  const column = findColumn(cell, columnId);
  if (column === null) throw new EditError(`The column to be changed is no longer in ${cellWords(cell)}.`);
  return column;
}

const clamped = (at: number, most: number): number => Math.max(0, Math.min(most, Math.trunc(at)));

/** Writes one field of an entered column; `row` counts from 0. */
export function entryEdit(
  document: NotebookDocument,
  cellId: string,
  columnId: string,
  row: number,
  after: Entry,
): Edit {
  const column = columnOf(document, cellId, columnId);
  if (!isEntered(column)) {
    throw new EditError(`Column '${column.name}' is worked out; change its formula instead.`);
  }
  const before = column.entries[row];
  if (before === undefined) throw new EditError(`Column '${column.name}' has no row ${row + 1}.`);
  return { kind: 'entry', cell: cellId, column: columnId, row, before, after };
}

/** Changes what a value cell holds: its figure, unit, bounds or control. */
export function valueEdit(document: NotebookDocument, cellId: string, after: ValueContent): Edit {
  const cell = cellOf(document, cellId);
  if (cell.kind !== 'value') throw new EditError(`${cellWords(cell)} is not a value.`);
  return { kind: 'value', cell: cellId, before: cell.content, after };
}

/** Changes the formula of a formula cell, or of a worked column when `columnId` is given. */
export function formulaEdit(
  document: NotebookDocument,
  cellId: string,
  columnId: string | undefined,
  after: string,
): Edit {
  if (columnId === undefined) {
    const cell = cellOf(document, cellId);
    if (cell.kind !== 'formula') throw new EditError(`${cellWords(cell)} is not a formula.`);
    return { kind: 'formula', cell: cellId, before: cell.formula, after };
  }
  const column = columnOf(document, cellId, columnId);
  if (isEntered(column))
    throw new EditError(`Column '${column.name}' is entered by hand; it has no formula.`);
  return { kind: 'formula', cell: cellId, column: columnId, before: column.formula, after };
}

/** Puts a new cell at place `at` of the notebook, counted from 0; past the end it goes last. */
export function addCell(document: NotebookDocument, cell: Cell, at: number): Edit {
  return {
    kind: 'cell',
    id: cell.id,
    before: null,
    after: { item: cell, at: clamped(at, document.cells.length) },
  };
}

export function removeCell(document: NotebookDocument, cellId: string): Edit {
  const item = cellOf(document, cellId);
  return { kind: 'cell', id: cellId, before: { item, at: placeOfCell(document, cellId) }, after: null };
}

/** Moves a cell so that it then stands at place `to`, counted from 0. */
export function moveCell(document: NotebookDocument, cellId: string, to: number): Edit {
  const item = cellOf(document, cellId);
  const at = placeOfCell(document, cellId);
  const after = { item, at: clamped(to, document.cells.length - 1) };
  return { kind: 'cell', id: cellId, before: { item, at }, after };
}

/** Replaces a cell by a changed one with the same id; use `rename` for its name, so that readers follow. */
export function replaceCell(document: NotebookDocument, cellId: string, after: Cell): Edit {
  const item = cellOf(document, cellId);
  const at = placeOfCell(document, cellId);
  return { kind: 'cell', id: cellId, before: { item, at }, after: { item: { ...after, id: cellId }, at } };
}

/** Adds a column; an entered one whose entries are left out or too few is filled up with empty fields. */
export function addColumn(document: NotebookDocument, cellId: string, column: TableColumn, at: number): Edit {
  const cell = cellOf(document, cellId);
  const columns = columnsOf(cell);
  const item = cell.kind === 'table' && isEntered(column) ? filledUp(column, rowCount(cell)) : column;
  return {
    kind: 'column',
    cell: cellId,
    id: item.id,
    before: null,
    after: { item, at: clamped(at, columns.length) },
  };
}

function filledUp<C extends { readonly entries: readonly Entry[] }>(column: C, rows: number): C {
  const short = rows - column.entries.length;
  return short <= 0
    ? column
    : { ...column, entries: column.entries.concat(new Array<Entry>(short).fill(null)) };
}

export function removeColumn(document: NotebookDocument, cellId: string, columnId: string): Edit {
  const item = columnOf(document, cellId, columnId);
  return {
    kind: 'column',
    cell: cellId,
    id: columnId,
    before: { item, at: placeOfColumn(document, cellId, columnId) },
    after: null,
  };
}

/** Replaces a column by a changed one (unit, kind, decimals, title); use `rename` for its name. */
export function replaceColumn(
  document: NotebookDocument,
  cellId: string,
  columnId: string,
  after: TableColumn,
): Edit {
  const item = columnOf(document, cellId, columnId);
  const at = placeOfColumn(document, cellId, columnId);
  return {
    kind: 'column',
    cell: cellId,
    id: columnId,
    before: { item, at },
    after: { item: { ...after, id: columnId }, at },
  };
}

/** Moves a column so that it then stands at place `to`, counted from 0. */
export function moveColumn(document: NotebookDocument, cellId: string, columnId: string, to: number): Edit {
  const item = columnOf(document, cellId, columnId);
  const at = placeOfColumn(document, cellId, columnId);
  const last = columnsOf(cellOf(document, cellId)).length - 1;
  return {
    kind: 'column',
    cell: cellId,
    id: columnId,
    before: { item, at },
    after: { item, at: clamped(to, last) },
  };
}

function placeOfColumn(document: NotebookDocument, cellId: string, columnId: string): number {
  return columnsOf(cellOf(document, cellId)).findIndex((column) => column.id === columnId);
}

/** Puts rows in before row `at`, counted from 0; fields that a row does not name stay empty. */
export function addRows(
  document: NotebookDocument,
  cellId: string,
  at: number,
  rows: readonly RowEntries[],
): Edit {
  return replaceRows(document, cellId, at, 0, rows);
}

export function removeRows(document: NotebookDocument, cellId: string, at: number, count: number): Edit {
  return replaceRows(document, cellId, at, count, []);
}

/** Takes `count` rows out from row `at` on and puts others in their place: a pasted block, an import. */
export function replaceRows(
  document: NotebookDocument,
  cellId: string,
  at: number,
  count: number,
  rows: readonly RowEntries[],
): Edit {
  const cell = cellOf(document, cellId);
  if (cell.kind !== 'table') throw new EditError(`${cellWords(cell)} is not a table of entered rows.`);
  const start = clamped(at, rowCount(cell));
  const end = clamped(start + count, rowCount(cell));
  const columns = cell.columns.filter(isEntered);
  const before: RowEntries[] = [];
  for (let row = start; row < end; row += 1) {
    before.push(Object.fromEntries(columns.map((column) => [column.id, column.entries[row]!])));
  }
  return { kind: 'rows', cell: cellId, at: start, before, after: rows };
}

/** Sets the call of one part by hand; null goes back to the proposed one. */
export function pinEdit(document: NotebookDocument, cellId: string, part: string, call: string | null): Edit {
  const cell = cellOf(document, cellId);
  if (cell.kind !== 'calls') throw new EditError(`${cellWords(cell)} does not hold calls.`);
  const before = Object.hasOwn(cell.pins, part) ? cell.pins[part]! : null;
  return { kind: 'pin', cell: cellId, part, before, after: call };
}

/** Rules one call of a part out by hand, or allows it again. A pin to that very call is taken away with it. */
export function forbidEdit(
  document: NotebookDocument,
  cellId: string,
  part: string,
  call: string,
  after: boolean,
): Edit {
  const cell = cellOf(document, cellId);
  if (cell.kind !== 'calls') throw new EditError(`${cellWords(cell)} does not hold calls.`);
  const before = forbiddenOf(cell, part).includes(call);
  const forbid: Edit = { kind: 'forbid', cell: cellId, part, call, before, after };
  const isPinned = after && Object.hasOwn(cell.pins, part) && cell.pins[part] === call;
  if (!isPinned) return forbid;
  return group(`${part}: ${call} forbidden`, [pinEdit(document, cellId, part, null), forbid]);
}

export function notebookEdit(document: NotebookDocument, field: NotebookField, after: string): Edit {
  return { kind: 'notebook', field, before: document[field] ?? '', after };
}

/** Several edits as one step of undo. Each must have been made for the document as the ones before leave it. */
export function group(label: string, edits: readonly Edit[]): Edit {
  return { kind: 'group', label, edits };
}

/** Gives a cell (columnId undefined) or a column a new name and rewrites all that reads it, as one step. */
export function rename(
  document: NotebookDocument,
  cellId: string,
  columnId: string | undefined,
  newName: string,
): Edit {
  return renameEdit(document, cellId, columnId, newName);
}

/** The edit that undoes this one. */
export function invert(edit: Edit): Edit {
  return invertEdit(edit);
}

/** One line for the log: `Front brake pads, now: 3.1 to 2.9 mm`. `document` is the notebook before the edit. */
export function describe(document: NotebookDocument, edit: Edit): string {
  const { what, change } = describeEdit(document, edit);
  return change === '' ? what : `${what}: ${change}`;
}
