import type { Column, FigureColumn } from '../column.ts';
import { changedRows, wholeGroups } from '../evaluate/changed-rows.ts';
import { type Input, release } from '../evaluate/vector.ts';
import type { Fault } from '../fault.ts';
import type { Typed } from './typed.ts';

/** What a formula was worked out from the last time, and what came of it. */
export interface LastRun {
  readonly inputs: readonly (Input | Fault)[];
  readonly result: Column | Fault;
}

/** How the rows of a worked column hang together. */
export interface RowDependence {
  readonly typed: Typed;
  /** Whether each input is a column of the formula's own table. */
  readonly own: readonly boolean[];
  /** A row needs the other rows of its groups by these keys. */
  readonly groupKeys: readonly Typed[];
}

/** Below this many rows all are worked out in less time than it takes to tell which have changed. */
const FEW_ROWS = 128;
/** With a larger share of the rows to be worked out, all are. */
const MOST_SHARE = 0.6;

/**
 * Works out only the rows of a column that an edit can have changed, and takes the others from the last run.
 * @returns null where all rows must be worked out: a figure outside the table has changed, the rows
 *   themselves, or most of them; the last result itself if no row differs from it.
 */
export function runChanged(of: RowDependence, inputs: readonly Input[], last: LastRun): Column | null {
  const { result } = last;
  if (!isFigures(result) || result.values.length < FEW_ROWS || result.skipped) return null;
  const rows = rowsToRun(of, inputs, last.inputs, result.values.length);
  if (rows === null) return null;
  if (!rows.includes(1)) return result;
  const worked = of.typed.evaluate({ inputs, wanted: rows });
  if (worked.kind === 'text' || worked.values.length !== rows.length || worked.skipped) return null;
  const merged = mergeRows(result, worked, rows);
  release(worked);
  return merged;
}

const isFigures = (result: Column | Fault): result is FigureColumn =>
  'values' in result && result.kind !== 'text';

function rowsToRun(
  of: RowDependence,
  inputs: readonly Input[],
  before: LastRun['inputs'],
  length: number,
): Uint8Array | null {
  const most = length * MOST_SHARE;
  const rows = new Uint8Array(length);
  for (let i = 0; i < inputs.length; i++) {
    const [was, is] = [before[i] as Input | Fault, inputs[i] as Input];
    if (was === is) continue;
    if (!of.own[i] || !('values' in was) || !('values' in is) || is.values.length !== length) return null;
    const differing = changedRows(was, is);
    if (differing === null || differing.count > most) return null;
    for (let row = 0; row < length; row++) if (differing.mask[row] === 1) rows[row] = 1;
  }
  const wide = widen(of, inputs, before as readonly Input[], rows);
  return wide === null || countOf(wide) > most ? null : wide;
}

function countOf(rows: Uint8Array): number {
  let count = 0;
  for (let row = 0; row < rows.length; row++) count += rows[row] as number;
  return count;
}

/** All rows that hang on the changed ones by the groups; null where the groups themselves have changed. */
function widen(
  { groupKeys }: RowDependence,
  inputs: readonly Input[],
  before: readonly Input[],
  rows: Uint8Array,
): Uint8Array | null {
  let wide = rows;
  // Groups by one key may reach into groups by another.
  for (let round = 0; round < groupKeys.length; round++) {
    for (const key of groupKeys) {
      const by = key.evaluate({ inputs, wanted: null });
      if (by.values !== key.evaluate({ inputs: before, wanted: null }).values) return null;
      wide = wholeGroups(by, wide);
    }
  }
  return wide;
}

function mergeRows(last: FigureColumn, worked: FigureColumn, rows: Uint8Array): FigureColumn {
  const values = last.values.slice();
  const faults = new Map([...(last.faults ?? [])].filter(([row]) => rows[row] === 0));
  for (let row = 0; row < rows.length; row++) if (rows[row] === 1) values[row] = worked.values[row] as number;
  for (const [row, fault] of worked.faults ?? []) if (rows[row] === 1) faults.set(row, fault);
  return { ...last, values, faults: faults.size === 0 ? null : faults };
}
