import { renameInFormula } from '../formula/rename.ts';
import { lookUpUnit } from '../formula/unit-text.ts';
import { applyEdit } from './apply-edit.ts';
import {
  type Cell,
  isNamed,
  type NotebookDocument,
  type PictureCell,
  PLAN_ROLES,
  type TableCell,
  type TallyFigure,
} from './document.ts';
import { cellWords } from './document-rules.ts';
import type { Edit } from './edit.ts';
import { EditError } from './edit-error.ts';
import {
  cellNamed,
  columnNamed,
  columnsOf,
  findCell,
  findColumn,
  isEntered,
  isWorked,
  placeOfCell,
} from './lookup.ts';
import { nameRefusal } from './names.ts';
import { CALLS_FIELDS, type Meaning, meaningOfMember, meaningOfName, sameMeaning } from './references.ts';

interface Renaming {
  readonly before: NotebookDocument;
  /** The notebook with the new name in place, then also where cells refer to it; formulas not yet rewritten. */
  readonly after: NotebookDocument;
  readonly target: Meaning;
  readonly newName: string;
}

/**
 * One group that gives a cell, or a column of a table or pairing, a new name and rewrites all that reads it:
 * formulas, tallies, pairings, calls cells, the caution column of a table and the units of its rows.
 *
 * @param columnId undefined to rename the cell itself
 * @throws EditError when the name is not plain, is taken, or would make a formula mean something else
 */
export function renameEdit(
  document: NotebookDocument,
  cellId: string,
  columnId: string | undefined,
  newName: string,
): Edit {
  const cell = findCell(document, cellId);
  if (cell === null) throw new EditError('The cell to be renamed is no longer in the notebook.');
  const oldName = columnId === undefined ? nameOfCell(cell) : nameOfColumn(cell, columnId);
  const label = `Rename ${oldName} to ${newName}`;
  if (newName === oldName) return { kind: 'group', label, edits: [] };
  refuseName(document, cell, columnId, newName);
  const naming =
    columnId === undefined ? nameCell(document, cell, newName) : nameColumn(cell, columnId, newName);
  const named: Renaming = {
    before: document,
    after: applyEdit(document, naming),
    target: columnId === undefined ? { cell: cellId } : { cell: cellId, column: columnId },
    newName,
  };
  const references = named.after.cells.flatMap((each, at) => referenceEdit(named, each, at));
  const renaming: Renaming = { ...named, after: references.reduce(applyEdit, named.after) };
  const formulas = document.cells.flatMap((each) => formulaEdits(renaming, each));
  return { kind: 'group', label, edits: [naming, ...references, ...formulas] };
}

function nameOfCell(cell: Cell): string {
  if (isNamed(cell)) return cell.name;
  throw new EditError(`${cellWords(cell)} has no name that formulas read; change its title instead.`);
}

function nameOfColumn(cell: Cell, columnId: string): string {
  const column = findColumn(cell, columnId);
  if (column === null) throw new EditError(`The column to be renamed is no longer in ${cellWords(cell)}.`);
  return column.name;
}

function refuseName(
  document: NotebookDocument,
  cell: Cell,
  columnId: string | undefined,
  newName: string,
): void {
  const refusal = nameRefusal(newName);
  if (refusal !== null) throw new EditError(`Not renamed: ${refusal}.`);
  if (columnId === undefined && cellNamed(document, newName) !== null) {
    throw new EditError(`Not renamed: another cell is named '${newName}' already; choose another name.`);
  }
  if (columnId !== undefined && columnNamed(cell, newName) !== null) {
    throw new EditError(
      `Not renamed: ${cellWords(cell)} has a column '${newName}' already; choose another name.`,
    );
  }
}

function nameCell(document: NotebookDocument, cell: Cell, newName: string): Edit {
  const at = placeOfCell(document, cell.id);
  const after = { ...cell, name: newName } as Cell;
  return { kind: 'cell', id: cell.id, before: { item: cell, at }, after: { item: after, at } };
}

function nameColumn(cell: Cell, columnId: string, newName: string): Edit {
  const columns = columnsOf(cell);
  const at = columns.findIndex((column) => column.id === columnId);
  const item = columns[at]!;
  return {
    kind: 'column',
    cell: cell.id,
    id: columnId,
    before: { item, at },
    after: { item: { ...item, name: newName }, at },
  };
}

function referenceEdit(named: Renaming, cell: Cell, at: number): Edit[] {
  const columns = cell.kind === 'table' ? unitColumnEdits(named, cell) : [];
  const before = columns.reduce(applyEdit, named.after).cells[at]!;
  const item = withReferences(named, before);
  if (item === before) return columns;
  return [...columns, { kind: 'cell', id: cell.id, before: { item: before, at }, after: { item, at } }];
}

/** Columns whose rows have their units in the renamed one. */
function unitColumnEdits(named: Renaming, table: TableCell): Edit[] {
  if (table.id !== named.target.cell || named.target.column === undefined) return [];
  const was = findColumn(findCell(named.before, table.id)!, named.target.column)?.name;
  return table.columns.flatMap((column, at): Edit[] => {
    if (!isEntered(column) || column.unit_column === undefined || column.unit_column !== was) return [];
    const item = { ...column, unit_column: named.newName };
    const before = { item: column, at };
    return [{ kind: 'column', cell: table.id, id: column.id, before, after: { item, at } }];
  });
}

/** Rewrites of one cell's formulas. */
function formulaEdits(renaming: Renaming, before: Cell): Edit[] {
  const edits: Edit[] = [];
  if (before.kind === 'formula') {
    const after = rewritten(renaming, null, before.formula, cellWords(before));
    if (after !== before.formula)
      edits.push({ kind: 'formula', cell: before.id, before: before.formula, after });
  }
  for (const column of columnsOf(before).filter(isWorked)) {
    const where = `column '${column.name}' of ${cellWords(before)}`;
    const after = rewritten(renaming, before, column.formula, where);
    if (after === column.formula) continue;
    edits.push({ kind: 'formula', cell: before.id, column: column.id, before: column.formula, after });
  }
  return edits;
}

/**
 * A formula with the new name wherever it meant the old one. Names are resolved in the notebook before and
 * after: if a name would come to mean another figure, the renaming is refused rather than changing a result.
 */
function rewritten(renaming: Renaming, here: Cell | null, formula: string, where: string): string {
  const { before, after, target, newName } = renaming;
  const hereAfter = here === null ? null : findCell(after, here.id);
  const keepMeaning = (was: Meaning | null, is: Meaning | null, words: string): void => {
    const wasUnit = was === null && is !== null && lookUpUnit(words) !== null;
    if (wasUnit || (was !== null && !sameMeaning(was, is))) {
      throw new EditError(
        `Not renamed: in ${where}, '${words}' would come to mean another figure; choose another name.`,
      );
    }
  };
  return renameInFormula(formula, {
    name(plain) {
      const was = meaningOfName(before, here, plain);
      const next = sameMeaning(was, target) ? newName : plain;
      keepMeaning(was, meaningOfName(after, hereAfter, next), next);
      return next;
    },
    member(table, column) {
      const was = meaningOfMember(before, table, column);
      const next = renamedMember(renaming, table, column);
      keepMeaning(was, meaningOfMember(after, next[0], next[1]), next.join('.'));
      return next;
    },
  });
}

function renamedTable(renaming: Renaming, table: string): string {
  const cell = cellNamed(renaming.before, table);
  return cell !== null && sameMeaning({ cell: cell.id }, renaming.target) ? renaming.newName : table;
}

function renamedMember(renaming: Renaming, table: string, column: string): [string, string] {
  const means = meaningOfMember(renaming.before, table, column);
  return [renamedTable(renaming, table), sameMeaning(means, renaming.target) ? renaming.newName : column];
}

/** The cell with its references by name put right; the same object when it has none that change. */
function withReferences(renaming: Renaming, cell: Cell): Cell {
  switch (cell.kind) {
    case 'pairing': {
      const left = renamedTable(renaming, cell.left);
      const right = renamedTable(renaming, cell.right);
      return left === cell.left && right === cell.right ? cell : { ...cell, left, right };
    }
    case 'table': {
      if (cell.caution_column === undefined || renaming.target.cell !== cell.id) return cell;
      const old = columnNamed(findCell(renaming.before, cell.id)!, cell.caution_column);
      return old === null || old.id !== renaming.target.column
        ? cell
        : { ...cell, caution_column: renaming.newName };
    }
    case 'calls': {
      const fields = { pairing: renamedTable(renaming, cell.pairing) } as Record<string, string>;
      for (const field of CALLS_FIELDS) fields[field] = renamedMember(renaming, cell.pairing, cell[field])[1];
      if (cell.plan !== undefined) fields.plan = renamedTable(renaming, cell.plan);
      return Object.entries(fields).every(([field, name]) => cell[field as 'part'] === name)
        ? cell
        : { ...cell, ...fields };
    }
    case 'tally': {
      const figures = cell.figures.map((figure) => withFigureNames(renaming, figure));
      return figures.every((figure, i) => figure === cell.figures[i]) ? cell : { ...cell, figures };
    }
    case 'plan': {
      const calls = renamedTable(renaming, cell.calls);
      const reads = { ...cell.reads };
      for (const role of PLAN_ROLES) reads[role] = renamedReference(renaming, cell.reads[role]);
      const kept = calls === cell.calls && PLAN_ROLES.every((role) => reads[role] === cell.reads[role]);
      return kept ? cell : { ...cell, calls, reads };
    }
    case 'picture':
      return withPictureNames(renaming, cell);
    case 'prep': {
      const calls = renamedTable(renaming, cell.calls);
      const reads = renamedReads(renaming, cell.reads);
      return calls === cell.calls && reads === cell.reads ? cell : { ...cell, calls, reads };
    }
    default:
      return cell;
  }
}

function withPictureNames(renaming: Renaming, cell: PictureCell): PictureCell {
  const { plan } = cell.reads;
  const named = renamedReads(renaming, cell.reads);
  // A plan is no figure, so that its name alone means the cell.
  const planAfter = plan === undefined ? undefined : renamedTable(renaming, plan);
  const reads = planAfter === plan ? named : { ...named, plan: planAfter };
  const figures = cell.figures.map((figure) => renamedReference(renaming, figure));
  const kept = reads === cell.reads && figures.every((figure, i) => figure === cell.figures[i]);
  return kept ? cell : { ...cell, reads, figures };
}

/** References by role, put right; the same object when none of them changes. */
function renamedReads<R extends string>(
  renaming: Renaming,
  reads: Readonly<Partial<Record<R, string>>>,
): Readonly<Partial<Record<R, string>>> {
  const roles = Object.entries(reads) as [R, string][];
  const after = roles.map(([role, name]) => [role, renamedReference(renaming, name)] as const);
  return after.every(([role, name]) => name === reads[role])
    ? reads
    : (Object.fromEntries(after) as typeof reads);
}

function withFigureNames(renaming: Renaming, figure: TallyFigure): TallyFigure {
  const name = renamedReference(renaming, figure.figure);
  const limit = figure.limit === undefined ? undefined : renamedReference(renaming, figure.limit);
  if (name === figure.figure && limit === figure.limit) return figure;
  return limit === undefined ? { ...figure, figure: name } : { ...figure, figure: name, limit };
}

/** A name as a tally writes it: `budget`, or `wear.rate`. */
function renamedReference(renaming: Renaming, reference: string): string {
  const [table, column] = reference.split('.');
  if (column !== undefined) return renamedMember(renaming, table!, column).join('.');
  const means = meaningOfName(renaming.before, null, reference);
  return sameMeaning(means, renaming.target) ? renaming.newName : reference;
}
