import { DomainError } from '../../trade/domain-error.ts';
import type { Fault } from '../fault.ts';
import type { RowFault } from './arithmetic.ts';
import { keyIndex } from './key-index.ts';
import { type FigureVector, figures, joinFaults, type Vector, waitsFor, withFaults } from './vector.ts';

/** One argument of a kernel: its column, and whether a missing figure is handed on to the kernel. */
export interface KernelPart {
  readonly column: FigureVector | null;
  readonly mayBeMissing: boolean;
}

function kernelFault(error: unknown, row: number, name: string, rowFault: RowFault): Fault {
  if (error instanceof DomainError) return rowFault(row, `${name}(): ${error.message}`, error.mend);
  throw error;
}

/** Runs a function of single figures down the rows. A domain error is a fault of its row alone. */
export function runRows(
  name: string,
  compute: (...figures: number[]) => number,
  parts: readonly KernelPart[],
  rows: number,
  wanted: Uint8Array | null,
  rowFault: RowFault,
): FigureVector {
  const columns = parts.map((part) => part.column?.values ?? null);
  const steps = columns.map((values) => (values !== null && values.length === rows && rows > 1 ? 1 : 0));
  const held = new Array<number>(parts.length).fill(Number.NaN);
  const out = new Float64Array(rows);
  const own = new Map<number, Fault>();
  const inherited = parts.reduce<FigureVector['faults']>(
    (all, part) => joinFaults(all, part.column?.faults ?? null),
    null,
  );
  const strict = parts.map((part) => part.column !== null && !part.mayBeMissing);
  for (let row = 0; row < rows; row++) {
    out[row] = Number.NaN;
    if ((wanted !== null && wanted[row] === 0) || inherited?.has(row)) continue;
    let missing = false;
    for (let k = 0; k < columns.length; k++) {
      const values = columns[k];
      const figure = values == null ? Number.NaN : (values[row * (steps[k] as number)] as number);
      held[k] = figure;
      if (Number.isNaN(figure) && strict[k]) missing = true;
    }
    if (missing) continue;
    try {
      out[row] = compute(...held);
    } catch (error) {
      own.set(row, kernelFault(error, row, name, rowFault));
    }
  }
  return figures('number', out, withFaults(own, inherited));
}

/**
 * Runs a function of whole groups of rows, in table order. A domain error is a fault of the group's rows.
 * `wanted` holds all rows of a group or none.
 */
export function runGroups(
  name: string,
  compute: (columns: readonly (Float64Array | null)[]) => Float64Array,
  by: Vector,
  parts: readonly KernelPart[],
  wanted: Uint8Array | null,
  rowFault: RowFault,
): FigureVector {
  const index = keyIndex(by);
  const rows = by.values.length;
  const out = new Float64Array(rows).fill(Number.NaN);
  const faults = new Map<number, Fault>();
  const inherited = parts.reduce<FigureVector['faults']>(
    (all, part) => joinFaults(all, part.column?.faults ?? null),
    by.faults,
  );
  for (let g = 0; g < index.groups; g++) {
    const members = index.rows.subarray(index.start[g] as number, index.start[g + 1] as number);
    if (wanted !== null && wanted[members[0] as number] === 0) continue;
    const blocked = inherited === null ? undefined : blocking(members, inherited);
    if (blocked !== undefined) {
      for (const row of members) faults.set(row, waitsFor(blocked, row));
      continue;
    }
    const columns = parts.map((part) => columnOf(part.column, members));
    if (parts.some((part, k) => !part.mayBeMissing && hasMissing(columns[k] ?? null))) continue;
    try {
      const result = compute(columns);
      for (let i = 0; i < members.length; i++) out[members[i] as number] = result[i] as number;
    } catch (error) {
      for (const row of members) faults.set(row, kernelFault(error, row, name, rowFault));
    }
  }
  return figures('number', out, withFaults(faults, null));
}

function blocking(members: Int32Array, faults: ReadonlyMap<number, Fault>): string | undefined {
  for (const row of members) {
    const fault = faults.get(row);
    if (fault !== undefined) return fault.root ?? 'a figure';
  }
  return undefined;
}

function columnOf(column: FigureVector | null, members: Int32Array): Float64Array | null {
  if (column === null) return null;
  if (column.values.length === 1) return new Float64Array(members.length).fill(column.values[0] as number);
  const first = members[0] as number;
  // The rows of a pairing lie together part by part: a view of them needs no copy.
  if ((members[members.length - 1] as number) - first === members.length - 1) {
    return column.values.subarray(first, first + members.length);
  }
  const out = new Float64Array(members.length);
  for (let i = 0; i < out.length; i++) out[i] = column.values[members[i] as number] as number;
  return out;
}

function hasMissing(values: Float64Array | null): boolean {
  if (values === null) return false;
  for (const figure of values) if (Number.isNaN(figure)) return true;
  return false;
}
