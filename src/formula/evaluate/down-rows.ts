import type { Fault } from '../fault.ts';
import { keyIndex } from './key-index.ts';
import { type FigureVector, figures, joinFaults, type Vector, waitsFor, withFaults } from './vector.ts';

/** Group of each row: of the key column, or one group for all rows without one. */
function groupsOf(rows: number, group: Vector | null): { group: Int32Array; groups: number } {
  return group === null ? { group: new Int32Array(rows), groups: 1 } : keyIndex(group);
}

/** Running total down the rows of each group. A missing figure makes all that follow it missing. */
export function running(x: FigureVector, by: Vector | null): FigureVector {
  const { group, groups } = groupsOf(x.values.length, by);
  const totals = new Float64Array(groups);
  const out = new Float64Array(x.values.length);
  for (let i = 0; i < out.length; i++) {
    const g = group[i] as number;
    if (g < 0) {
      out[i] = Number.NaN;
      continue;
    }
    const total = (totals[g] as number) + (x.values[i] as number);
    totals[g] = total;
    out[i] = total;
  }
  return figures(x.kind, out, carriedDown(x, by, group), x.skipped);
}

/** After a faulty row, every later row of the group waits. */
function carriedDown(x: FigureVector, by: Vector | null, group: Int32Array): FigureVector['faults'] {
  const given = joinFaults(x.faults, by?.faults ?? null);
  if (given === null) return null;
  const blocked = new Map<number, string>();
  const faults = new Map<number, Fault>();
  for (let i = 0; i < group.length; i++) {
    const g = group[i] as number;
    const fault = given.get(i);
    if (fault !== undefined && !blocked.has(g)) blocked.set(g, fault.root ?? 'a figure');
    const root = blocked.get(g);
    if (root !== undefined) faults.set(i, waitsFor(root, i));
  }
  return faults;
}

/** The value in the previous row of the group; missing in its first row. */
export function before(x: Vector, by: Vector | null): Vector {
  const rows = x.values.length;
  const { group, groups } = groupsOf(rows, by);
  const last = new Int32Array(groups).fill(-1);
  const source = new Int32Array(rows).fill(-1);
  const faults = new Map<number, Fault>();
  for (let i = 0; i < rows; i++) {
    const g = group[i] as number;
    if (g < 0) continue;
    const from = last[g] as number;
    source[i] = from;
    last[g] = i;
    const fault = from < 0 ? undefined : x.faults?.get(from);
    if (fault !== undefined) faults.set(i, waitsFor(fault.root ?? 'a figure', i));
  }
  const joined = withFaults(faults, by?.faults ?? null);
  if (x.kind === 'text') {
    return {
      kind: 'text',
      values: Array.from(source, (from) => (from < 0 ? null : (x.values[from] ?? null))),
      faults: joined,
    };
  }
  const out = new Float64Array(rows);
  for (let i = 0; i < rows; i++)
    out[i] = (source[i] as number) < 0 ? Number.NaN : (x.values[source[i] as number] as number);
  return figures(x.kind, out, joined);
}
