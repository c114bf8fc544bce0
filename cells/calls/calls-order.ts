import { CALL_KINDS, type CallKind } from './call-kind.ts';
import { cheapestOpen, type PartCalls } from './calls-reading.ts';

/**
 * What a wrong call would cost: the dearer of leaving and replacing over the cheapest call; 0 when nothing
 * has a cost. Parts with most at stake stand first.
 */
export function atStake(part: PartCalls): number {
  const best = cheapestOpen(part);
  if (best === null) return 0;
  let worst = best.cost;
  for (const call of part.calls) {
    const plain = call.kind === 'leave' || call.kind === 'replace';
    if (plain && call.cost > worst) worst = call.cost;
  }
  return worst - best.cost;
}

/** The parts with most at stake first; equal ones stay as the table has them. */
export function byStake(parts: readonly PartCalls[]): PartCalls[] {
  return [...parts].sort((a, b) => atStake(b) - atStake(a) || a.row - b.row);
}

/** Parts that are shown whatever is at stake: set by hand, or without a call. */
function isSpecial(part: PartCalls): boolean {
  return part.state !== 'proposed' && part.state !== 'waits';
}

/**
 * The parts shown before all are asked for: the first `most` of the order, giving way from the end to those
 * that were set by hand or have no call.
 */
export function firstParts(ordered: readonly PartCalls[], most: number): PartCalls[] {
  if (ordered.length <= most) return [...ordered];
  let room = Math.max(0, most - ordered.filter(isSpecial).length);
  return ordered.filter((part) => isSpecial(part) || room-- > 0);
}

/** The kinds of call that occur, in their order. */
export function kindsOf(parts: readonly PartCalls[]): readonly CallKind[] {
  return CALL_KINDS.filter((kind) => parts.some((part) => part.calls.some((call) => call.kind === kind)));
}
