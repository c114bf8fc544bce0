import { BOUNDS, countWords } from './bounds.ts';
import { entryRefusal, forbiddenRefusal, pinRefusal } from './cell-schema.ts';
import type {
  CallsCell,
  Cell,
  EnteredColumn,
  Entry,
  FormulaCell,
  NotebookDocument,
  TableCell,
  TableColumn,
  ValueCell,
  WorkedColumn,
} from './document.ts';
import { isNamed } from './document.ts';
import { cellRuleBroken, cellWords } from './document-rules.ts';
import type { Edit, Placed, RowEntries } from './edit.ts';
import { EditError } from './edit-error.ts';
import { columnsOf, findColumn, forbiddenOf, isEntered, placeOfCell, rowCount } from './lookup.ts';
import { same } from './same.ts';
import { cellRefusal, columnRefusal, contentRefusal, fieldRefusal } from './schema.ts';

type EditOf<K extends Edit['kind']> = Extract<Edit, { kind: K }>;

/**
 * The document after an edit; the one given stays as it is, and what the edit does not touch is shared.
 *
 * An edit fits when its target is there, `before` is what is there now, and the result is a notebook that can
 * be saved and opened again (names used once, columns of equal length, within the bounds).
 *
 * @throws EditError with a sentence for the reader, when it does not fit
 * @example applyEdit(doc, { kind: 'notebook', field: 'title', before: 'Plateau', after: 'Plateau loop' }).title
 * // 'Plateau loop'
 */
export function applyEdit(document: NotebookDocument, edit: Edit): NotebookDocument {
  switch (edit.kind) {
    case 'entry':
      return withCell(document, edit.cell, (cell) => applyEntry(cell, edit));
    case 'value':
      return withCell(document, edit.cell, (cell) => applyValue(cell, edit));
    case 'formula':
      return withCell(document, edit.cell, (cell) => applyFormula(cell, edit));
    case 'cell':
      return applyCell(document, edit);
    case 'column':
      return withCell(document, edit.cell, (cell) => applyColumn(cell, edit));
    case 'rows':
      return withCell(document, edit.cell, (cell) => applyRows(cell, edit));
    case 'pin':
      return withCell(document, edit.cell, (cell) => applyPin(cell, edit));
    case 'forbid':
      return withCell(document, edit.cell, (cell) => applyForbid(cell, edit));
    case 'notebook':
      return applyNotebook(document, edit);
    case 'group':
      return edit.edits.reduce(applyEdit, document);
  }
}

function withCell(
  document: NotebookDocument,
  cellId: string,
  change: (cell: Cell) => Cell,
): NotebookDocument {
  const at = placeOfCell(document, cellId);
  const cell = document.cells[at];
  if (cell === undefined)
    throw new EditError('The cell that this edit changes is no longer in the notebook.');
  return { ...document, cells: document.cells.with(at, change(cell)) };
}

function expectBefore(before: unknown, found: unknown, where: string): void {
  if (!same(before, found)) {
    throw new EditError(`${where} has been changed since, so this edit no longer fits; make it again.`);
  }
}

function refuseIf(refusal: string | null, where: string): void {
  if (refusal !== null) throw new EditError(`${where}: ${refusal}.`);
}

function expectTable(cell: Cell): TableCell {
  if (cell.kind !== 'table') throw new EditError(`${cellWords(cell)} is not a table of entered rows.`);
  return cell;
}

function expectColumn(cell: Cell, columnId: string): TableColumn {
  const column = findColumn(cell, columnId);
  if (column === null)
    throw new EditError(`The column that this edit changes is no longer in ${cellWords(cell)}.`);
  return column;
}

function withColumn(cell: Cell, column: TableColumn): Cell {
  if (cell.kind === 'pairing') {
    const worked = expectWorked(column, cell);
    return { ...cell, columns: cell.columns.map((other) => (other.id === worked.id ? worked : other)) };
  }
  const table = expectTable(cell);
  return { ...table, columns: table.columns.map((other) => (other.id === column.id ? column : other)) };
}

function expectWorked(column: TableColumn, cell: Cell): WorkedColumn {
  if (column.kind === 'worked') return column;
  throw new EditError(`Column '${column.name}' of ${cellWords(cell)} is entered by hand; it has no formula.`);
}

function applyEntry(cell: Cell, edit: EditOf<'entry'>): Cell {
  const table = expectTable(cell);
  const column = expectColumn(table, edit.column);
  if (!isEntered(column)) {
    throw new EditError(
      `Column '${column.name}' of ${cellWords(cell)} is worked out; change its formula instead.`,
    );
  }
  const where = `${cellWords(cell)}, column '${column.name}', row ${edit.row + 1}`;
  if (!Number.isInteger(edit.row) || edit.row < 0 || edit.row >= column.entries.length) {
    throw new EditError(`${where}: the table has no such row.`);
  }
  expectBefore(edit.before, column.entries[edit.row], where);
  refuseIf(entryRefusal(column.kind, edit.after), where);
  return withColumn(table, { ...column, entries: column.entries.with(edit.row, edit.after) });
}

function applyValue(cell: Cell, edit: EditOf<'value'>): ValueCell {
  if (cell.kind !== 'value') throw new EditError(`${cellWords(cell)} is not a value.`);
  expectBefore(edit.before, cell.content, cellWords(cell));
  const after: ValueCell = { ...cell, content: edit.after };
  refuseIf(contentRefusal(edit.after) ?? cellRuleBroken(after), cellWords(cell));
  return after;
}

function applyFormula(cell: Cell, edit: EditOf<'formula'>): Cell {
  if (edit.after.length > BOUNDS.formulaLength) {
    throw new EditError(
      `${cellWords(cell)}: the formula is ${countWords(edit.after.length)} characters long; at most ${countWords(BOUNDS.formulaLength)} are allowed. Split it into steps.`,
    );
  }
  if (edit.column === undefined) {
    if (cell.kind !== 'formula') throw new EditError(`${cellWords(cell)} is not a formula.`);
    expectBefore(edit.before, cell.formula, cellWords(cell));
    return { ...cell, formula: edit.after } satisfies FormulaCell;
  }
  const column = expectWorked(expectColumn(cell, edit.column), cell);
  expectBefore(edit.before, column.formula, `${cellWords(cell)}, column '${column.name}'`);
  return withColumn(cell, { ...column, formula: edit.after });
}

/** The list with `before` taken out and `after` put in; the place of `before` must be where it stands. */
function replaced<T extends { readonly id: string }>(
  list: readonly T[],
  before: Placed<T> | null,
  after: Placed<T> | null,
  words: (item: T) => string,
): T[] {
  const next = list.slice();
  if (before !== null) {
    const found = next[before.at];
    if (found?.id !== before.item.id) {
      throw new EditError(
        `${words(before.item)} is no longer where this edit found it; make the edit again.`,
      );
    }
    expectBefore(before.item, found, words(before.item));
    next.splice(before.at, 1);
  }
  if (after !== null) {
    if (!Number.isInteger(after.at) || after.at < 0 || after.at > next.length) {
      throw new EditError(
        `${words(after.item)} cannot be put at place ${after.at + 1}; there are ${next.length}.`,
      );
    }
    if (next.some((other) => other.id === after.item.id)) {
      throw new EditError(`${words(after.item)} is in the notebook already.`);
    }
    next.splice(after.at, 0, after.item);
  }
  return next;
}

function applyCell(document: NotebookDocument, edit: EditOf<'cell'>): NotebookDocument {
  const after = edit.after?.item;
  if (after !== undefined && after !== edit.before?.item) refuseIf(cellRefusal(after), cellWords(after));
  const cells = replaced(document.cells, edit.before, edit.after, cellWords);
  if (cells.length > BOUNDS.cells) {
    throw new EditError(`A notebook may hold at most ${countWords(BOUNDS.cells)} cells; remove one first.`);
  }
  if (after !== undefined && isNamed(after)) {
    const twin = cells.find((cell) => cell !== after && isNamed(cell) && cell.name === after.name);
    if (twin !== undefined) {
      throw new EditError(`Another cell is named '${after.name}' already; choose another name.`);
    }
  }
  return { ...document, cells };
}

function applyColumn(cell: Cell, edit: EditOf<'column'>): Cell {
  const after = edit.after?.item;
  if (after !== undefined) refuseIf(columnRefusal(after), `${cellWords(cell)}, column '${after.name}'`);
  const columns = replaced<TableColumn>(
    columnsOf(cell),
    edit.before,
    edit.after,
    (column) => `Column '${column.name}'`,
  );
  if (columns.length > BOUNDS.columns) {
    throw new EditError(`A table may hold at most ${BOUNDS.columns} columns; remove one first.`);
  }
  const next: Cell =
    cell.kind === 'pairing'
      ? { ...cell, columns: columns.map((column) => expectWorked(column, cell)) }
      : { ...expectTable(cell), columns };
  refuseIf(cellRuleBroken(next), cellWords(cell));
  return next;
}

function applyRows(cell: Cell, edit: EditOf<'rows'>): TableCell {
  const table = expectTable(cell);
  const length = rowCount(table);
  const where = cellWords(cell);
  if (!table.columns.some(isEntered)) {
    throw new EditError(`${where} has no columns to enter rows in; add a column first.`);
  }
  if (!Number.isInteger(edit.at) || edit.at < 0 || edit.at + edit.before.length > length) {
    throw new EditError(
      `${where}: rows ${edit.at + 1} to ${edit.at + edit.before.length} are not all there; it has ${length}.`,
    );
  }
  if (length - edit.before.length + edit.after.length > BOUNDS.rows) {
    throw new EditError(`${where}: a table may hold at most ${countWords(BOUNDS.rows)} rows.`);
  }
  refuseStrangeColumns(table, edit.after, where);
  const columns = table.columns.map((column) => (isEntered(column) ? withRows(column, edit, where) : column));
  return { ...table, columns };
}

function refuseStrangeColumns(table: TableCell, rows: readonly RowEntries[], where: string): void {
  const known = new Set(table.columns.filter(isEntered).map((column) => column.id));
  for (const row of rows) {
    for (const id of Object.keys(row)) {
      if (!known.has(id))
        throw new EditError(`${where}: the rows bring an entry for a column that is not there.`);
    }
  }
}

function withRows(column: EnteredColumn, edit: EditOf<'rows'>, where: string): EnteredColumn {
  for (let i = 0; i < edit.before.length; i += 1) {
    const place = `${where}, column '${column.name}', row ${edit.at + i + 1}`;
    expectBefore(entryOf(edit.before[i]!, column.id), column.entries[edit.at + i], place);
  }
  const fresh = edit.after.map((row, i) => {
    const entry = entryOf(row, column.id);
    refuseIf(entryRefusal(column.kind, entry), `${where}, column '${column.name}', row ${edit.at + i + 1}`);
    return entry;
  });
  const rest = column.entries.slice(edit.at + edit.before.length);
  return { ...column, entries: column.entries.slice(0, edit.at).concat(fresh, rest) };
}

/** A row that does not speak of a column leaves its field empty. */
function entryOf(row: RowEntries, columnId: string): Entry {
  return Object.hasOwn(row, columnId) ? (row[columnId] ?? null) : null;
}

function applyPin(cell: Cell, edit: EditOf<'pin'>): CallsCell {
  if (cell.kind !== 'calls') throw new EditError(`${cellWords(cell)} does not hold calls.`);
  const found = Object.hasOwn(cell.pins, edit.part) ? cell.pins[edit.part]! : null;
  const where = `${cellWords(cell)}, the call of '${edit.part}'`;
  expectBefore(edit.before, found, where);
  const others = Object.entries(cell.pins).filter(([part]) => part !== edit.part);
  if (edit.after === null) return { ...cell, pins: Object.fromEntries(others) };
  refuseIf(pinRefusal(edit.part, edit.after), where);
  if (others.length >= BOUNDS.pins) throw new EditError(`${where}: too many calls are set by hand.`);
  return { ...cell, pins: { ...cell.pins, [edit.part]: edit.after } };
}

function applyForbid(cell: Cell, edit: EditOf<'forbid'>): CallsCell {
  if (cell.kind !== 'calls') throw new EditError(`${cellWords(cell)} does not hold calls.`);
  const { part, call } = edit;
  const found = forbiddenOf(cell, part);
  const where = `${cellWords(cell)}, the calls of '${part}'`;
  expectBefore(edit.before, found.includes(call), where);
  const calls = found.filter((name) => name !== call);
  // In one order always, so that a call that is allowed again and forbidden once more stands where it did.
  if (edit.after) calls.push(call);
  calls.sort();
  refuseIf(forbiddenRefusal(part, calls), where);
  const others = Object.entries(cell.forbidden ?? {}).filter(([name]) => name !== part);
  if (edit.after && others.length >= BOUNDS.pins)
    throw new EditError(`${where}: too many calls are forbidden by hand.`);
  const { forbidden: _before, ...rest } = cell;
  const forbidden = Object.fromEntries(calls.length === 0 ? others : [...others, [part, calls]]);
  return Object.keys(forbidden).length === 0 ? rest : { ...rest, forbidden };
}

function applyNotebook(document: NotebookDocument, edit: EditOf<'notebook'>): NotebookDocument {
  const { field, after } = edit;
  expectBefore(edit.before, document[field] ?? '', `The notebook's ${field}`);
  refuseIf(fieldRefusal(field, after), 'This notebook');
  if (after !== '' || (field !== 'measures' && field !== 'shown_money'))
    return { ...document, [field]: after };
  const { [field]: _, ...others } = document;
  return others;
}
