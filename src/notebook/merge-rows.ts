import type { EnteredColumn, Entry, TableCell } from './document.ts';
import { findColumn, isEntered, rowCount } from './lookup.ts';

/** Which row of one table is which row of another state of it; rows are counted from 0. */
export interface RowMatch {
  /** Their row of each of mine; -1 where it is gone. */
  readonly theirs: readonly number[];
  /** My row of each of theirs; -1 where it is new. */
  readonly mine: readonly number[];
}

/**
 * Finds rows again by what names them: the first column of texts that names every row once in both states, or
 * else the first one, counting those of one name. Rows left over that stand at the same place are one row
 * that was given another name.
 */
export function matchRows(a: TableCell, b: TableCell): RowMatch {
  const theirs = new Array<number>(rowCount(a)).fill(-1);
  const mine = new Array<number>(rowCount(b)).fill(-1);
  const pair = (row: number, other: number): void => {
    theirs[row] = other;
    mine[other] = row;
  };
  const key = keyColumns(a, b);
  if (key !== null) {
    const rows = keysOf(key[1]);
    keysOf(key[0]).forEach((at, name) => {
      const other = rows.get(name);
      if (other !== undefined) pair(at, other);
    });
  }
  for (let row = 0; row < Math.min(theirs.length, mine.length); row += 1)
    if (theirs[row] === -1 && mine[row] === -1) pair(row, row);
  return { theirs, mine };
}

function keyColumns(a: TableCell, b: TableCell): readonly [EnteredColumn, EnteredColumn] | null {
  const shared = a.columns.filter(isEntered).flatMap((column) => {
    const other = findColumn(b, column.id);
    const names = column.kind === 'text' || column.kind === 'choice';
    return names && other !== null && isEntered(other) ? [[column, other] as const] : [];
  });
  return shared.find((pair) => pair.every(namesEachOnce)) ?? shared[0] ?? null;
}

function namesEachOnce({ entries }: EnteredColumn): boolean {
  return !entries.includes(null) && new Set(entries).size === entries.length;
}

/** Rows by name; the second of one name has the name and a number. */
function keysOf({ entries }: EnteredColumn): ReadonlyMap<string, number> {
  const met = new Map<Entry, number>();
  const rows = new Map<string, number>();
  entries.forEach((entry, row) => {
    const before = met.get(entry) ?? 0;
    met.set(entry, before + 1);
    rows.set(JSON.stringify([entry, before]), row);
  });
  return rows;
}
