import type { Column, RowFaults } from '../column.ts';
import type { Fault } from '../fault.ts';
import { keyIndex } from './key-index.ts';
import type { Vector } from './vector.ts';

/** Rows at which a column differs from what it was: 1 where it does. */
export interface ChangedRows {
  readonly mask: Uint8Array;
  readonly count: number;
}

interface Told {
  readonly after: WeakRef<Column>;
  readonly changed: ChangedRows | null;
}

/**
 * A column is compared once with what became of it, whoever reads it: columns are never changed in place.
 * Neither holds the other, or whoever keeps one would keep all that came before or after it.
 */
const told = new WeakMap<Column, Told>();

/**
 * Rows at which `after` has another figure or fault than `before`. Missing and missing are the same; 0 and -0
 * are not, because 1 divided by them is not.
 * @returns null where the two cannot be compared row by row: another kind, another number of rows, or another
 *   count of entries left out.
 */
export function changedRows(before: Column, after: Column): ChangedRows | null {
  const held = told.get(before);
  if (held?.after.deref() === after) return held.changed;
  const changed = compare(before, after);
  told.set(before, { after: new WeakRef(after), changed });
  return changed;
}

/** Whether two columns hold the same figures, faults and count of entries left out. */
export function isSameColumn(a: Column, b: Column): boolean {
  if (a.kind !== b.kind || a.values.length !== b.values.length) return false;
  if ((a.skipped ?? 0) !== (b.skipped ?? 0)) return false;
  for (let i = 0; i < a.values.length; i++) if (!Object.is(a.values[i], b.values[i])) return false;
  if (a.faults === b.faults) return true;
  const [few, many] = [a.faults ?? NO_FAULTS, b.faults ?? NO_FAULTS];
  return few.size === many.size && [...few].every(([row, fault]) => sameFault(fault, many.get(row)));
}

const NO_FAULTS: RowFaults = new Map();

function compare(before: Column, after: Column): ChangedRows | null {
  const rows = after.values.length;
  if (before.kind !== after.kind || before.values.length !== rows) return null;
  if ((before.skipped ?? 0) !== (after.skipped ?? 0)) return null;
  const mask = new Uint8Array(rows);
  if (before.kind === 'text' || after.kind === 'text') {
    for (let i = 0; i < rows; i++) if (before.values[i] !== after.values[i]) mask[i] = 1;
  } else markFigures(before.values, after.values, mask);
  if (before.faults !== after.faults) {
    markFaults(before.faults, after.faults, mask);
    markFaults(after.faults, before.faults, mask);
  }
  let count = 0;
  for (let i = 0; i < rows; i++) count += mask[i] as number;
  return { mask, count };
}

function markFigures(before: Float64Array, after: Float64Array, mask: Uint8Array): void {
  for (let i = 0; i < mask.length; i++) {
    const a = before[i] as number;
    const b = after[i] as number;
    if (a === b ? a === 0 && !Object.is(a, b) : !(Number.isNaN(a) && Number.isNaN(b))) mask[i] = 1;
  }
}

function markFaults(here: RowFaults | null, there: RowFaults | null, mask: Uint8Array): void {
  for (const [row, fault] of here ?? []) if (!sameFault(fault, there?.get(row))) mask[row] = 1;
}

function sameFault(a: Fault, b: Fault | undefined): boolean {
  return a === b || (a.kind === b?.kind && a.message === b.message && a.root === b.root);
}

/** Widens a choice of rows to all rows of the groups that have one of them. Rows without a group stay as they are. */
export function wholeGroups(by: Vector, rows: Uint8Array): Uint8Array {
  const { group, groups } = keyIndex(by);
  const met = new Uint8Array(groups);
  for (let i = 0; i < rows.length; i++) {
    const of = group[i] as number;
    if (rows[i] === 1 && of >= 0) met[of] = 1;
  }
  const wide = rows.slice();
  for (let i = 0; i < wide.length; i++) if (met[group[i] as number] === 1) wide[i] = 1;
  return wide;
}
