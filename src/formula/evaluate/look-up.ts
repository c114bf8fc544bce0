import type { Fault } from '../fault.ts';
import { jointIndex, jointKey, type KeyIndex, keyIndex } from './key-index.ts';
import { type FigureVector, figures, joinFaults, type Vector, waitsFor, withFaults } from './vector.ts';

interface Matched {
  readonly index: KeyIndex;
  /** For each row of the asking side: the group of the asked side that its keys name; -1 for none, -2 for a missing key. */
  readonly match: Int32Array;
}

interface HeldMatch extends Matched {
  readonly keys: readonly unknown[];
  readonly asked: readonly unknown[];
}

/** Look-ups by the same keys, by the first key's array: keys seldom change, and several columns look up by the same. */
const held = new WeakMap<object, HeldMatch[]>();
const MOST_HELD = 4;

/** Finds for each row of the asking side the group of the asked side that its key (or keys) names. */
export function matchGroups(keys: readonly Vector[], asked: readonly Vector[]): Matched {
  const first = (keys[0] as Vector).values;
  // What a run has made on its way may be written over by the next.
  if ([...keys, ...asked].some((column) => 'own' in column && column.own)) return findGroups(keys, asked);
  const known = held.get(first) ?? [];
  const found = known.find((one) => sameValues(one.keys, keys) && sameValues(one.asked, asked));
  if (found !== undefined) return found;
  const made = {
    ...findGroups(keys, asked),
    keys: keys.map(({ values }) => values),
    asked: asked.map(({ values }) => values),
  };
  held.set(first, [made, ...known.slice(0, MOST_HELD - 1)]);
  return made;
}

const sameValues = (values: readonly unknown[], columns: readonly Vector[]): boolean =>
  values.length === columns.length && columns.every((column, k) => column.values === values[k]);

function findGroups(keys: readonly Vector[], asked: readonly Vector[]): Matched {
  const index = jointIndex(keys);
  const singles = keys.map(keyIndex);
  const rows = asked.reduce((most, column) => Math.max(most, column.values.length), 1);
  const match = new Int32Array(rows);
  const ids = new Array<number>(keys.length);
  for (let i = 0; i < rows; i++) {
    let missing = false;
    for (let k = 0; k < keys.length; k++) {
      const values = (asked[k] as Vector).values;
      const key = values[values.length === 1 ? 0 : i];
      if (key === null || key === undefined || Number.isNaN(key)) missing = true;
      else ids[k] = (singles[k] as KeyIndex).groupOf.get(key) ?? -1;
    }
    if (missing) match[i] = -2;
    else if (keys.length === 1) match[i] = ids[0] as number;
    else {
      const joint = jointKey(ids, singles);
      match[i] = Number.isNaN(joint) ? -1 : (index.groupOf.get(joint) ?? -1);
    }
  }
  return { index, match };
}

export type Fold = 'total' | 'most_of' | 'least_of' | 'count_of';

/** Figure of each group, NaN where the group has rows but every entry is missing. */
function foldGroups(fold: Fold, x: Vector, index: KeyIndex): { perGroup: Float64Array; skipped: Int32Array } {
  const perGroup = new Float64Array(index.groups).fill(Number.NaN);
  const skipped = new Int32Array(index.groups);
  for (let i = 0; i < index.group.length; i++) {
    const g = index.group[i] as number;
    if (g < 0) continue;
    const entry = x.values[i];
    const here = perGroup[g] as number;
    if (entry === null || entry === undefined || Number.isNaN(entry)) {
      skipped[g] = (skipped[g] as number) + 1;
      if (fold === 'count_of' && Number.isNaN(here)) perGroup[g] = 0;
      continue;
    }
    const step = fold === 'count_of' ? (x.kind === 'yes_no' ? (entry as number) : 1) : (entry as number);
    if (Number.isNaN(here)) perGroup[g] = step;
    else if (fold === 'most_of') perGroup[g] = Math.max(step, here);
    else if (fold === 'least_of') perGroup[g] = Math.min(step, here);
    else perGroup[g] = here + step;
  }
  return { perGroup, skipped };
}

/**
 * total(), most_of(), least_of(), count_of(): for each asking row, the figure over the rows whose keys match.
 * No matching row: 0 for total and count_of, missing for the others. Rows that all are missing: missing.
 * A faulty row makes its group's figure wait, so a wrong row never counts as nothing.
 */
export function foldMatches(
  fold: Fold,
  x: Vector,
  keys: readonly Vector[],
  asked: readonly Vector[],
): FigureVector {
  const { index, match } = matchGroups(keys, asked);
  const { perGroup, skipped } = foldGroups(fold, x, index);
  const blocked = blockedGroups(x, keys, index);
  const out = new Float64Array(match.length);
  const faults = new Map<number, Fault>();
  const none = fold === 'total' || fold === 'count_of' ? 0 : Number.NaN;
  let left = 0;
  for (let i = 0; i < out.length; i++) {
    const g = match[i] as number;
    if (g === -2) out[i] = Number.NaN;
    else if (g < 0) out[i] = none;
    else {
      out[i] = perGroup[g] as number;
      left += skipped[g] as number;
    }
    const root =
      blocked === null || g === -2
        ? undefined
        : (blocked.get(g) ?? (g < 0 ? unplacedRoot(keys, asked, i) : undefined));
    if (root !== undefined) {
      out[i] = Number.NaN;
      faults.set(i, waitsFor(root, i));
    }
  }
  const inherited = asked.reduce<FigureVector['faults']>(
    (all, column) => joinFaults(all, column.faults),
    null,
  );
  return figures(
    x.kind === 'date' && fold !== 'count_of' ? 'date' : 'number',
    out,
    withFaults(faults, inherited),
    left,
  );
}

/**
 * Groups that hold a faulty row, with the root of the fault. A row whose key is faulty could belong to any
 * group that agrees with its other keys, so it blocks all of those and no others.
 */
function blockedGroups(
  x: Vector | null,
  keys: readonly Vector[],
  index: KeyIndex,
): ReadonlyMap<number, string> | null {
  if ((x?.faults ?? null) === null && keys.every((key) => key.faults === null)) return null;
  const blocked = new Map<number, string>();
  for (const [row, fault] of x?.faults ?? []) {
    const g = index.group[row] as number;
    if (g >= 0) blocked.set(g, fault.root ?? 'a figure');
  }
  for (const key of keys) {
    for (const [row, fault] of key.faults ?? []) {
      for (let g = 0; g < index.groups; g++) {
        if (couldBelong(row, index.rows[index.start[g] as number] as number, keys))
          blocked.set(g, fault.root ?? 'a key');
      }
    }
  }
  return blocked;
}

/** Root of a row whose faulty key could be the one asked for, where no other row has it. */
function unplacedRoot(keys: readonly Vector[], asked: readonly Vector[], asking: number): string | undefined {
  const wanted = asked.map((column) => column.values[column.values.length === 1 ? 0 : asking]);
  for (const key of keys) {
    for (const [row, fault] of key.faults ?? []) {
      if (keys.every((other, k) => other.faults?.has(row) || other.values[row] === wanted[k]))
        return fault.root ?? 'a key';
    }
  }
  return undefined;
}

/** Whether a row with a faulty key agrees with a row of the group in every key that is not faulty. */
function couldBelong(row: number, member: number, keys: readonly Vector[]): boolean {
  return keys.every((key) => key.faults?.has(row) || key.values[row] === key.values[member]);
}

export type MatchFault = (row: number, key: string, matches: number) => Fault;

/** pick(): the one value whose keys match; none or several is a fault of the asking row. */
export function pickMatches(
  x: Vector,
  keys: readonly Vector[],
  asked: readonly Vector[],
  wanted: Uint8Array | null,
  notOne: MatchFault,
): Vector {
  const { index, match } = matchGroups(keys, asked);
  const blocked = blockedGroups(null, keys, index);
  const faults = new Map<number, Fault>();
  const rows = match.length;
  const source = new Int32Array(rows).fill(-1);
  for (let i = 0; i < rows; i++) {
    const g = match[i] as number;
    if (g === -2 || (wanted !== null && wanted[i] === 0)) continue;
    const root =
      blocked === null ? undefined : (blocked.get(g) ?? (g < 0 ? unplacedRoot(keys, asked, i) : undefined));
    if (root !== undefined) {
      faults.set(i, waitsFor(root, i));
      continue;
    }
    const found = g < 0 ? 0 : (index.start[g + 1] as number) - (index.start[g] as number);
    if (found === 1) {
      const from = index.rows[index.start[g] as number] as number;
      source[i] = from;
      const fault = x.faults?.get(from);
      if (fault !== undefined) faults.set(i, waitsFor(fault.root ?? 'a figure', i));
    } else faults.set(i, notOne(i, keyWords(asked, i), found));
  }
  const inherited = asked.reduce<Vector['faults']>((all, column) => joinFaults(all, column.faults), null);
  return gather(x, source, withFaults(faults, inherited));
}

function keyWords(asked: readonly Vector[], row: number): string {
  return asked.map((column) => String(column.values[column.values.length === 1 ? 0 : row])).join(', ');
}

/** The rows of x named by `source`, -1 for missing. */
export function gather(x: Vector, source: Int32Array, faults: Vector['faults']): Vector {
  if (x.kind === 'text') {
    const out: (string | null)[] = new Array(source.length);
    for (let i = 0; i < out.length; i++)
      out[i] = (source[i] as number) < 0 ? null : (x.values[source[i] as number] ?? null);
    return { kind: 'text', values: out, faults };
  }
  const out = new Float64Array(source.length);
  for (let i = 0; i < out.length; i++) {
    const from = source[i] as number;
    out[i] = from < 0 || faults?.has(i) ? Number.NaN : (x.values[from] as number);
  }
  return figures(x.kind, out, faults);
}
