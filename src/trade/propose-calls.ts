/** Calls of all parts, a row for every part met with every call. */
export interface CallRows {
  readonly parts: number;
  /** Part of each row, counted from 0. */
  readonly partOf: Int32Array;
  /** Call of each row, counted from 0. */
  readonly callOf: Int32Array;
  /** Expected cost in money; NaN = cannot be worked out (no price). */
  readonly cost: Float64Array;
  /** 1 = allowed, 0 = not, NaN = cannot be told. */
  readonly allowed: Float64Array;
  /** Call set by hand for each part, counted from 0; -1 = none. */
  readonly pinned: Int32Array;
  /** 1 = ruled out by hand; one for each row. */
  readonly forbidden: Uint8Array;
}

export type CallState =
  | 'proposed'
  | 'by hand'
  | 'needs a price'
  | 'no call meets the limit'
  | 'forbidden by hand'
  | 'not allowed by hand';

export interface PartCall {
  /** Row of the call in force; -1 = none can be made. */
  readonly row: number;
  /** Row of the cheapest allowed call; -1 = none. */
  readonly proposedRow: number;
  /** By how much the cheapest allowed call beats the next one, in money; NaN with fewer than two. */
  readonly bestBy: number;
  readonly state: CallState;
}

/** Whether the call of the row may be made: allowed, and not ruled out by hand. */
export const isOpen = (rows: CallRows, row: number): boolean =>
  rows.allowed[row] === 1 && rows.forbidden[row] !== 1;

/**
 * One call a part, each for itself: the cheapest that is open (the first of equals), or the one set by hand
 * if it is open. A part of which an allowed call cannot be priced needs a price before any call is proposed:
 * a missing price must not make another call look best.
 *
 * Example: costs 914 (leave, not allowed) and 144 (replace): the call is replace, state 'proposed'.
 */
export function proposeCalls(rows: CallRows): PartCall[] {
  const byPart = Array.from({ length: rows.parts }, (): number[] => []);
  for (let row = 0; row < rows.partOf.length; row++) byPart[rows.partOf[row] as number]?.push(row);
  return byPart.map((own, part) => proposeOne(rows, own, rows.pinned[part] as number));
}

function proposeOne(rows: CallRows, own: readonly number[], pinned: number): PartCall {
  const left = own.filter((row) => rows.forbidden[row] !== 1);
  const allowed = left.filter((row) => rows.allowed[row] === 1);
  const untold = left.some((row) => Number.isNaN(rows.allowed[row]));
  if (untold || allowed.some((row) => Number.isNaN(rows.cost[row]))) {
    return { row: -1, proposedRow: -1, bestBy: Number.NaN, state: 'needs a price' };
  }
  if (allowed.length === 0) {
    const isByHand = own.some((row) => rows.forbidden[row] === 1 && rows.allowed[row] === 1);
    const state = isByHand ? 'forbidden by hand' : 'no call meets the limit';
    return { row: -1, proposedRow: -1, bestBy: Number.NaN, state };
  }
  // Sorting is stable, so the first of equal calls stays first.
  const ranked = [...allowed].sort((a, b) => (rows.cost[a] as number) - (rows.cost[b] as number));
  const proposedRow = ranked[0] as number;
  const next = ranked[1];
  const bestBy =
    next === undefined ? Number.NaN : (rows.cost[next] as number) - (rows.cost[proposedRow] as number);
  if (pinned < 0) return { row: proposedRow, proposedRow, bestBy, state: 'proposed' };
  const byHand = allowed.find((row) => rows.callOf[row] === pinned);
  if (byHand === undefined) return { row: proposedRow, proposedRow, bestBy, state: 'not allowed by hand' };
  return { row: byHand, proposedRow, bestBy, state: 'by hand' };
}
