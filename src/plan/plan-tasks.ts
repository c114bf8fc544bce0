import type { FindPlan, PlanOptions } from './find-plan.ts';
import type { PlanInstance } from './plan-instance.ts';
import type { PlanResult, SolvedPlan } from './plan-result.ts';
import {
  type FrontierPoint,
  frontier,
  type More,
  type PinsDifference,
  type Saving,
  whatOneMoreSaves,
  whatPinsCost,
} from './what-if.ts';
import { whyAll, whyPart } from './why.ts';
import type { PartWhy, Scope } from './why-result.ts';

/** What can be asked of a plan, as plain data, so that it can be sent to a worker. */
export type PlanTask = { readonly instance: PlanInstance; readonly timeLimitS?: number } & (
  | { readonly kind: 'plan'; readonly settleTies?: boolean }
  | { readonly kind: 'one-more'; readonly more: More }
  | { readonly kind: 'frontier'; readonly budgets: readonly number[] }
  | { readonly kind: 'pins'; readonly solved: SolvedPlan }
  | { readonly kind: 'why-all'; readonly solved: SolvedPlan; readonly scope?: Scope }
  | {
      readonly kind: 'why-part';
      readonly solved: SolvedPlan;
      readonly part: string;
      readonly scope?: Scope;
      /** The part's wear rate now, and its calls' costs at other rates, rising: read on a line between two. */
      readonly rate?: { readonly now: number; readonly costs: readonly RateCosts[] };
    }
);

/** What each call costs without cash at one wear rate. */
export interface RateCosts {
  readonly rate: number;
  readonly costs: readonly (readonly [call: string, cost: number])[];
}

/** The answer to each kind of task. */
export interface PlanAnswers {
  readonly plan: PlanResult;
  readonly 'one-more': readonly Saving[];
  readonly frontier: readonly FrontierPoint[];
  readonly pins: PinsDifference | null;
  readonly 'why-all': readonly PartWhy[];
  readonly 'why-part': PartWhy | null;
}

export type PlanAnswer = PlanAnswers[PlanTask['kind']];

/** Does one task with the given way to find plans. Rejects as that does, and when the signal says so. */
export function doTask(task: PlanTask, find: FindPlan, signal?: AbortSignal): Promise<PlanAnswer> {
  const { instance, timeLimitS } = task;
  const options: PlanOptions = { ...(signal && { signal }), ...(timeLimitS !== undefined && { timeLimitS }) };
  switch (task.kind) {
    case 'plan':
      return find(instance, { ...options, settleTies: task.settleTies ?? true });
    case 'one-more':
      return whatOneMoreSaves(instance, task.more, find, options);
    case 'frontier':
      return frontier(instance, task.budgets, find, options);
    case 'pins':
      return whatPinsCost(instance, task.solved, find, options);
    case 'why-all':
      return whyAll(instance, task.solved, find, { ...options, ...(task.scope && { scope: task.scope }) });
    case 'why-part': {
      const { rate, scope } = task;
      return whyPart(instance, task.solved, task.part, find, {
        ...options,
        ...(scope && { scope }),
        ...(rate && { rate: { now: rate.now, costsAt: (at: number) => costsBetween(rate.costs, at) } }),
      });
    }
  }
}

/**
 * Costs at a rate between two given ones, on the straight line between them; at the ends, those of the end.
 * Example: leave costs 10 at rate 1 and 30 at rate 2: at 1.5 it costs 20.
 */
export function costsBetween(costs: readonly RateCosts[], rate: number): ReadonlyMap<string, number> {
  const above = costs.findIndex((one) => one.rate >= rate);
  const upper = costs[above === -1 ? costs.length - 1 : above];
  const lower = costs[above === -1 ? costs.length - 1 : Math.max(0, above - 1)];
  if (!upper || !lower) return new Map();
  const span = upper.rate - lower.rate;
  const share = span > 0 ? (rate - lower.rate) / span : 0;
  const from = new Map(lower.costs);
  return new Map(
    upper.costs.map(([call, cost]) => {
      const start = from.get(call) ?? cost;
      return [call, start + share * (cost - start)];
    }),
  );
}
