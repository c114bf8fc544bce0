import { type Cell, isNamed, type NotebookDocument, PLAN_ROLES, type TableColumn } from '../document.ts';
import { isEntered } from '../lookup.ts';

/** Whether two states of a notebook differ in figures, pins and words alone: every name, type and formula as it was. */
export function sameButData(before: NotebookDocument, after: NotebookDocument): boolean {
  return (
    before.money === after.money &&
    before.cells.length === after.cells.length &&
    before.cells.every((cell, i) => cell === after.cells[i] || sameCell(cell, after.cells[i] as Cell))
  );
}

function sameCell(a: Cell, b: Cell): boolean {
  if (!isNamed(a)) return b.kind === a.kind;
  if (b.kind !== a.kind || !isNamed(b) || a.name !== b.name) return false;
  if (a.kind === 'formula' && b.kind === 'formula') return a.formula === b.formula && a.unit === b.unit;
  if (a.kind === 'pairing' && b.kind === 'pairing')
    return a.left === b.left && a.right === b.right && sameColumns(a.columns, b.columns);
  if (a.kind === 'table' && b.kind === 'table') return sameColumns(a.columns, b.columns);
  if (a.kind === 'calls' && b.kind === 'calls') {
    return (['pairing', 'part', 'call', 'cost', 'allowed', 'reason', 'plan'] as const).every(
      (field) => a[field] === b[field],
    );
  }
  if (a.kind === 'plan' && b.kind === 'plan') {
    return a.calls === b.calls && PLAN_ROLES.every((role) => a.reads[role] === b.reads[role]);
  }
  if (a.kind === 'value' && b.kind === 'value') {
    const [x, y] = [a.content, b.content];
    if (x.type === 'number' && y.type === 'number') return x.unit === y.unit;
    if (x.type === 'choice' && y.type === 'choice') return sameTexts(x.options, y.options);
    return x.type === y.type;
  }
  return false;
}

function sameColumns(a: readonly TableColumn[], b: readonly TableColumn[]): boolean {
  return (
    a.length === b.length &&
    a.every((column, i) => column === b[i] || sameColumn(column, b[i] as TableColumn))
  );
}

function sameColumn(a: TableColumn, b: TableColumn): boolean {
  if (a.name !== b.name || a.kind !== b.kind || a.unit !== b.unit) return false;
  if (isEntered(a) && isEntered(b)) return sameTexts(a.options ?? [], b.options ?? []);
  return a.kind === 'worked' && b.kind === 'worked' && a.formula === b.formula;
}

const sameTexts = (a: readonly string[], b: readonly string[]): boolean =>
  a === b || (a.length === b.length && a.every((text, i) => text === b[i]));
