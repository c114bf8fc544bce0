import type { Vector } from './vector.ts';

/** Rows of a key column by what stands in them, so that look-ups and groups need one pass. */
export interface KeyIndex {
  /** Group of each row, in order of first appearance; -1 for a missing key. */
  readonly group: Int32Array;
  readonly groups: number;
  readonly groupOf: ReadonlyMap<string | number, number>;
  /** Rows of group g: rows[start[g] .. start[g + 1]), in table order. */
  readonly start: Int32Array;
  readonly rows: Int32Array;
}

/** Columns are never changed in place, so an index holds for as long as its array lives. */
const held = new WeakMap<object, KeyIndex>();

export function keyIndex(keys: Vector): KeyIndex {
  const found = held.get(keys.values);
  if (found !== undefined) return found;
  const index = buildIndex(keys);
  held.set(keys.values, index);
  return index;
}

function buildIndex(keys: Vector): KeyIndex {
  const { values } = keys;
  const group = new Int32Array(values.length);
  const groupOf = new Map<string | number, number>();
  for (let i = 0; i < values.length; i++) {
    const key = values[i];
    if (key === null || key === undefined || Number.isNaN(key)) {
      group[i] = -1;
      continue;
    }
    let id = groupOf.get(key);
    if (id === undefined) {
      id = groupOf.size;
      groupOf.set(key, id);
    }
    group[i] = id;
  }
  return { group, groups: groupOf.size, groupOf, ...rowLists(group, groupOf.size) };
}

function rowLists(group: Int32Array, groups: number): { start: Int32Array; rows: Int32Array } {
  const start = new Int32Array(groups + 1);
  for (const id of group) if (id >= 0) start[id + 1] = (start[id + 1] as number) + 1;
  for (let g = 0; g < groups; g++) start[g + 1] = (start[g + 1] as number) + (start[g] as number);
  const rows = new Int32Array(start[groups] as number);
  const next = start.slice();
  for (let i = 0; i < group.length; i++) {
    const id = group[i] as number;
    if (id < 0) continue;
    const at = next[id] as number;
    rows[at] = i;
    next[id] = at + 1;
  }
  return { start, rows };
}

/** One index over several key columns of the same length. */
export function jointIndex(columns: readonly Vector[]): KeyIndex {
  const [first, ...rest] = columns as readonly [Vector, ...Vector[]];
  if (rest.length === 0) return keyIndex(first);
  const rows = first.values.length;
  const indexes = columns.map(keyIndex);
  const joined = new Float64Array(rows);
  const ids = new Array<number>(indexes.length);
  for (let i = 0; i < rows; i++) {
    for (let k = 0; k < ids.length; k++) ids[k] = (indexes[k] as KeyIndex).group[i] as number;
    joined[i] = jointKey(ids, indexes);
  }
  return buildIndex({ kind: 'number', values: joined, faults: null });
}

/** A single number for one place in several indexes; NaN where any key is missing or unknown. */
export function jointKey(ids: readonly number[], indexes: readonly KeyIndex[]): number {
  let key = 0;
  for (let k = 0; k < ids.length; k++) {
    const id = ids[k] as number;
    if (id < 0) return Number.NaN;
    key = key * (indexes[k] as KeyIndex).groups + id;
  }
  return key;
}
