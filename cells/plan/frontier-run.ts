import type { Planner } from '../../src/notebook/graph/planner.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import type { FrontierPoint } from '../../src/plan/what-if.ts';

/** How many sums are looked at. */
const SUMS = 12;

/**
 * The sums to spend that are looked at, rising: from next to nothing to half as much again as the budget or
 * the plan, in round steps.
 *
 * Example: budgetsAround(1050, 1007) is 150, 300, ..., 1650, 1800, and the budget itself.
 *
 * @param budget null where there is no limit  @param cash what today's plan spends
 */
export function budgetsAround(budget: number | null, cash: number): readonly number[] {
  const most = Math.max(1.5 * Math.max(budget ?? 0, cash), SUMS);
  const step = roundUp(most / SUMS);
  const sums = Array.from({ length: SUMS }, (_, at) => (at + 1) * step);
  return [...new Set(budget === null || budget <= 0 ? sums : [...sums, budget])].sort((a, b) => a - b);
}

/** Up to the next 1, 1.5, 2, 2.5, 5 or 10 of its own size: roundUp(131) is 150. */
export function roundUp(sum: number): number {
  const size = 10 ** Math.floor(Math.log10(sum));
  return size * ([1, 1.5, 2, 2.5, 5, 10].find((step) => step * size >= sum - 1e-9) ?? 10);
}

/**
 * Works out the best plan for each sum, one question at a time, so that others get their turn between them.
 * From the largest sum down: a plan that spends less than a smaller sum is the best for that one as well.
 *
 * @param tell the points so far, in rising order
 * Rejects with the signal's reason when it is stopped.
 */
export async function runFrontier(
  planner: Planner,
  instance: PlanInstance,
  budgets: readonly number[],
  signal: AbortSignal,
  tell: (points: readonly FrontierPoint[]) => void,
): Promise<readonly FrontierPoint[]> {
  let points: readonly FrontierPoint[] = [];
  let above: FrontierPoint | null = null;
  for (const budget of [...budgets].sort((a, b) => b - a)) {
    signal.throwIfAborted();
    const serves: boolean =
      above !== null && above.status === 'optimal' && above.meets_limits && above.cash <= budget;
    const [found]: readonly FrontierPoint[] =
      serves && above !== null
        ? [above]
        : await planner.ask({ kind: 'frontier', instance, budgets: [budget] }, signal);
    above = found ?? null;
    if (above !== null) points = [{ ...above, budget }, ...points];
    tell(points);
  }
  return points;
}
