import { showNumber } from '../../src/formula/show.ts';
import type { FrontierPoint } from '../../src/plan/what-if.ts';

/** Width and height of the drawing, in its own units; the place of the plot in it. */
export const FRONTIER_SIZE = { width: 640, height: 290, left: 62, right: 622, top: 44, bottom: 232 } as const;

export interface Tick {
  readonly at: number;
  readonly shown: string;
}

export interface DrawnPoint {
  readonly x: number;
  readonly y: number;
  readonly point: FrontierPoint;
}

/** Places of everything in the drawing of spending against risk. */
export interface FrontierDrawing {
  readonly points: readonly DrawnPoint[];
  /** Line through the points that keep the limits. */
  readonly line: string;
  readonly xTicks: readonly Tick[];
  readonly yTicks: readonly Tick[];
  /** Places of a sum and of a chance. */
  readonly x: (sum: number) => number;
  readonly y: (chance: number) => number;
}

/** What is drawn upwards: the chance of a recovery, or the expected cost of the calls. */
export type FrontierSide = 'risk' | 'cost';

/**
 * Lays out spending (across) against the chance of a recovery or the expected cost (up).
 *
 * @param budgets all the sums that are looked at, so that the axis stays while points come in
 * @param today figures of the plan that is shown, so that its mark is inside
 */
export function frontierDrawing(
  points: readonly FrontierPoint[],
  budgets: readonly number[],
  today: { readonly cash: number; readonly up: number },
  side: FrontierSide,
): FrontierDrawing {
  const { left, right, top, bottom } = FRONTIER_SIZE;
  const most = Math.max(...budgets, today.cash, 1);
  const ups = [...points.map((point) => upOf(point, side)), today.up];
  const low = side === 'risk' ? 0 : Math.min(...ups);
  const high = Math.max(...ups, low + (side === 'risk' ? 0.05 : 1));
  const yTicks = ticksOver(low, high, 5);
  const from = Math.min(low, yTicks[0] ?? low);
  const to = Math.max(high, yTicks.at(-1) ?? high);
  const x = (sum: number): number => left + ((right - left) * sum) / most;
  const y = (up: number): number => bottom - ((bottom - top) * (up - from)) / (to - from);
  const drawn = points.map((point) => ({ x: x(point.budget), y: y(upOf(point, side)), point }));
  const within = drawn.filter(({ point }) => point.meets_limits);
  return {
    points: drawn,
    line: within.map((one, at) => `${at === 0 ? 'M' : 'L'}${one.x.toFixed(1)} ${one.y.toFixed(1)}`).join(''),
    xTicks: ticks(0, most, 6).map((sum) => ({ at: x(sum), shown: showNumber(sum, 0) })),
    yTicks: yTicks.map((up) => ({
      at: y(up),
      shown: side === 'risk' ? showNumber(up * 100, 0) : showNumber(up, 0),
    })),
    x,
    y,
  };
}

export const upOf = (point: FrontierPoint, side: FrontierSide): number =>
  side === 'risk' ? point.trip_risk : point.expected_cost;

/** Round figures from one to the first that is not below the other: what is drawn has a line over it. */
function ticksOver(low: number, high: number, about: number): readonly number[] {
  const found = ticks(low, high, about);
  const [last = high, before = low] = [found.at(-1), found.at(-2)];
  return last < high && found.length > 1 ? [...found, Number((2 * last - before).toPrecision(12))] : found;
}

/**
 * Round figures between two, about so many: ticks(0, 0.6, 5) is 0, 0.2, 0.4, 0.6.
 */
export function ticks(low: number, high: number, about: number): readonly number[] {
  const rough = (high - low) / about;
  const size = 10 ** Math.floor(Math.log10(rough));
  const step = size * ([1, 2, 5, 10].find((one) => one * size >= rough - 1e-12) ?? 10);
  const found: number[] = [];
  for (let at = Math.ceil(low / step - 1e-9); at * step <= high + step * 1e-9; at += 1)
    found.push(Number((at * step).toPrecision(12)));
  return found;
}
