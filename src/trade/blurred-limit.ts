import erfc from '@stdlib/math-base-special-erfc';
import { gaussRule } from './gauss-rule.ts';
import { HASH_START, hashFigure } from './hash-figures.ts';
import { likelyPoints } from './likely-points.ts';

/**
 * An allowance known only through a reading with an error: 201 equally likely allowances, written as few
 * weighted ones. `nodes` are ln(allowance) / (spread sqrt 2); `weights` and `due` sum to 1, `due` being the
 * share of the 201 that are used up already.
 */
export interface BlurredLimit {
  readonly allowance: number;
  readonly spread: number;
  readonly readingError: number;
  readonly due: number;
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const POINT_COUNT = 201;
let points: Float64Array | null = null;
/** Reckoned when first asked for: a page that starts has better things to do. */
const likely = (): Float64Array => {
  points ??= likelyPoints(POINT_COUNT);
  return points;
};
/** Widest stretch of ln(allowance), in spreads, that one Gauss rule stands for. */
const STRETCH = 6;
/** Bound on the absolute error of the chance that the Gauss rules may add. */
const ALLOWED_ERROR = 1e-13;

/**
 * Number of nodes that keep the chance within ALLOWED_ERROR over a stretch of half-width h spreads. With N =
 * 2 * nodes: a Gauss rule errs at most twice the best polynomial of degree N - 1, which errs at most
 * 2 (h/2)^N max|f^(N)| / N! (Chebyshev nodes); the N-th derivative of Phi is at most 1.0865 sqrt((N-1)!) /
 * sqrt(2 pi) (Cramer's inequality for Hermite polynomials, Abramowitz and Stegun 22.14.17).
 */
function nodesFor(halfWidth: number): number {
  let bound = 4 * 0.43345;
  for (let n = 1; ; n += 1) {
    bound *= halfWidth / (2 * Math.sqrt(n));
    // bound / sqrt(n) is 4 * 0.43345 (h/2)^n sqrt((n-1)!) / n!
    if (n % 2 === 0 && bound / Math.sqrt(n) <= ALLOWED_ERROR) return n / 2;
  }
}

/** Adds the logs from `from` up to `to` (exclusive, rising) as nodes, compressed where that saves any. */
function addStretch(
  logs: Float64Array,
  from: number,
  to: number,
  scale: number,
  nodes: number[],
  weights: number[],
) {
  const low = logs[from]!;
  const half = (logs[to - 1]! - low) / 2;
  const order = nodesFor((half * Math.SQRT2) / scale);
  const share = 1 / POINT_COUNT;
  // Few points, or all but equal ones: they are their own best rule.
  if (to - from <= 2 * order || !(half > 0)) {
    for (let k = from; k < to; k += 1) {
      nodes.push(logs[k]! / scale);
      weights.push(share);
    }
    return;
  }
  const rule = gaussRule(
    logs.subarray(from, to).map((log) => (log - low) / half - 1),
    order,
  );
  for (let k = 0; k < order; k += 1) {
    nodes.push((low + half * (1 + rule.nodes[k]!)) / scale);
    weights.push(rule.weights[k]! * (to - from) * share);
  }
}

function build(allowance: number, spread: number, readingError: number): BlurredLimit {
  const rising = likely().map((e) => allowance + readingError * e);
  const firstLeft = rising.findIndex((a) => a > 0);
  const due = firstLeft < 0 ? rising.length : firstLeft;
  const logs = rising.subarray(due).map(Math.log);
  const nodes: number[] = [];
  const weights: number[] = [];
  let to = logs.length;
  while (to > 0) {
    let from = to - 1;
    while (from > 0 && logs[to - 1]! - logs[from - 1]! <= STRETCH * spread) from -= 1;
    addStretch(logs, from, to, spread * Math.SQRT2, nodes, weights);
    to = from;
  }
  return {
    allowance,
    spread,
    readingError,
    due: due / POINT_COUNT,
    nodes: Float64Array.from(nodes),
    weights: Float64Array.from(weights),
  };
}

/** Limits met lately, by hash: a part's legs all ask for the same one. */
const SLOTS = 1024;
const lately: (BlurredLimit | undefined)[] = new Array(SLOTS).fill(undefined);

/**
 * The limit of a part whose reading has a standard uncertainty, ready for `blurredChance`.
 * @param allowance what is left to the limit by the reading, any sign.
 * @param spread log-sd of the rate, above 0.
 * @param readingError standard uncertainty of the reading, above 0, in the unit of `allowance`.
 * Source: model 2, 201 equally likely points; compressed with an added absolute error below 1e-13 by bound.
 * @example blurredLimit(-1, 0.3, 0.1).due = 1
 * (By hand: ten standard uncertainties past the limit, all points are due.)
 */
export function blurredLimit(allowance: number, spread: number, readingError: number): BlurredLimit {
  const hash = hashFigure(hashFigure(hashFigure(HASH_START, allowance), spread), readingError);
  const known = lately[hash % SLOTS];
  if (
    known &&
    known.allowance === allowance &&
    known.spread === spread &&
    known.readingError === readingError
  ) {
    return known;
  }
  const limit = build(allowance, spread, readingError);
  lately[hash % SLOTS] = limit;
  return limit;
}

/**
 * Chance that wear with median exp(logWear) has reached the blurred limit.
 * @param limit from `blurredLimit`.
 * @param logWear natural logarithm of the median wear, in the unit of the allowance; -Infinity for no wear.
 * @returns plain number, 0 to 1, within 1e-12 of the mean over all 201 points.
 */
export function blurredChance(limit: BlurredLimit, logWear: number): number {
  const { nodes, weights } = limit;
  const wear = logWear / (limit.spread * Math.SQRT2);
  let chance = 0;
  for (let k = 0; k < nodes.length; k += 1) chance += weights[k]! * erfc(nodes[k]! - wear);
  return Math.min(1, limit.due + 0.5 * chance);
}

/** As `blurredChance`, for a rate without spread: the share of the 201 allowances that the wear has reached. */
export function blurredChanceWithoutSpread(allowance: number, readingError: number, wear: number): number {
  let reached = 0;
  for (const e of likely()) {
    const left = allowance + readingError * e;
    if (left <= 0 || (wear > 0 && wear >= left)) reached += 1;
  }
  return reached / POINT_COUNT;
}
