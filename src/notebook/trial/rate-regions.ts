import type { TrialPoint } from './trial.ts';

/** Two rates this close together tell where a call is barred: to three figures. */
const CLOSE = 1.001;

/** Rates between which the same calls may be made. */
export interface RateRegion {
  /** Rising; the first and the last are its ends. */
  readonly points: readonly TrialPoint[];
  readonly least: number;
  readonly most: number;
}

/**
 * A share between two neighbouring points at which to look next, because some call may be made at one of them
 * and not at the other and they are not close together yet; null when all such places are found.
 *
 * Example: leave allowed at 1 and barred at 1.25: 1.118, half-way in proportion.
 */
export function nextShare(points: readonly TrialPoint[]): number | null {
  for (const [at, upper] of points.entries()) {
    const lower = points[at - 1];
    if (lower === undefined || upper.share / lower.share <= CLOSE) continue;
    if (barsDiffer(lower, upper)) return Math.sqrt(lower.share * upper.share);
  }
  return null;
}

function barsDiffer(a: TrialPoint, b: TrialPoint): boolean {
  return a.calls.some((call, at) => call.barred !== b.calls[at]?.barred);
}

/** The points with another one in its place, rising. */
export function withPoint(points: readonly TrialPoint[], more: TrialPoint): readonly TrialPoint[] {
  return [...points.filter((point) => point.share !== more.share), more].sort((a, b) => a.share - b.share);
}

/** Cuts rising points into regions at the places where a call is barred or may be made again. */
export function rateRegions(points: readonly TrialPoint[]): readonly RateRegion[] {
  const runs: TrialPoint[][] = [];
  for (const point of points) {
    const run = runs.at(-1);
    const last = run?.at(-1);
    if (run !== undefined && last !== undefined && !barsDiffer(last, point)) run.push(point);
    else runs.push([point]);
  }
  return runs.map((run) => ({
    points: run,
    least: run[0]?.share ?? Number.NaN,
    most: run.at(-1)?.share ?? Number.NaN,
  }));
}
