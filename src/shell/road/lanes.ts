/** What a lane draws beside one stop. */
export interface LanePieces {
  /** Passes the stop without a turn. */
  readonly through: boolean;
  /** Reaches the stop from above, or leaves it upwards. */
  readonly above: boolean;
  readonly below: boolean;
  /** Turns at the stop towards the lane above it, or below it. */
  readonly bendUp: boolean;
  readonly bendDown: boolean;
}

const NONE: LanePieces = { through: false, above: false, below: false, bendUp: false, bendDown: false };

/**
 * The pieces of one lane at one stop, where the lane joins the selected stop with others. Stops are counted
 * along the road from 0.
 *
 * @example lanePieces(1, 3, [0]) // { through: true, above: true, below: true, bendUp: false, bendDown: false }
 */
export function lanePieces(at: number, selected: number, others: readonly number[]): LanePieces {
  const spans = others.map((other) => [Math.min(other, selected), Math.max(other, selected)] as const);
  const above = spans.some(([top, bottom]) => top < at && at <= bottom);
  const below = spans.some(([top, bottom]) => top <= at && at < bottom);
  if (!above && !below) return NONE;
  const joins = at === selected ? others : others.includes(at) ? [selected] : [];
  return {
    through: spans.some(([top, bottom]) => top < at && at < bottom),
    above,
    below,
    bendUp: joins.some((other) => other < at),
    bendDown: joins.some((other) => other > at),
  };
}
