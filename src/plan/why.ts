import {
  type CostsAtRate,
  type Figure,
  othersHeld,
  priceFigure,
  rateFigure,
  strandingFigure,
  withCall,
  withoutCall,
} from './figures.ts';
import type { FindPlan, PlanOptions } from './find-plan.ts';
import { openTable } from './open-calls.ts';
import type { PlanInstance } from './plan-instance.ts';
import { isSolved, type Plan, type SolvedPlan } from './plan-result.ts';
import { planTotals } from './plan-totals.ts';
import { type Look, turningPoint } from './turning-point.ts';
import type { PartWhy, RunnerUp, Scope, Turn } from './why-result.ts';
import { whySentence } from './why-words.ts';

export interface WhyOptions extends PlanOptions {
  /** `everything` if absent. */
  readonly scope?: Scope;
  /** The part's wear rate now, and its calls' costs at another: for the break-even in the wear rate. */
  readonly rate?: { readonly now: number; readonly costsAt: CostsAtRate };
}

/**
 * Why the plan has its call for the part. Break-evens hold to a cent: at the figure, the best plan with the
 * call and the best plan without it cost the same; on the other side of it the call turns.
 *
 * @returns null for a part that the plan leaves out
 * Rejects as `find` does.
 */
export async function whyPart(
  instance: PlanInstance,
  solved: SolvedPlan,
  part: string,
  find: FindPlan,
  options: WhyOptions = {},
): Promise<PartWhy | null> {
  const call = solved.plan.chosen.find((chosen) => chosen.part === part)?.call;
  if (call === undefined) return null;
  const { scope = 'everything', rate, ...planOptions } = options;
  const field = scope === 'everything' ? instance : othersHeld(instance, part, solved.plan);
  const findCost: FindPlan = (one) => find(one, { ...planOptions, settleTies: false });
  const other = await findCost(withoutCall(field, part, call));
  const known = {
    part,
    call,
    by_hand: openTable(instance).parts.some((open) => open.part.name === part && open.pinned !== null),
    critical: instance.parts.some(({ name, critical }) => name === part && critical),
    scope,
    proven: solved.status === 'optimal' && (!isSolved(other) || other.status === 'optimal'),
  };
  const runnerCall = isSolved(other)
    ? other.plan.chosen.find((chosen) => chosen.part === part)?.call
    : undefined;
  if (!isSolved(other) || runnerCall === undefined || !other.meets_limits || !solved.meets_limits) {
    const reason = runnerCall === undefined || !isSolved(other) ? 'only' : 'limits';
    return {
      ...known,
      runner_up: null,
      turns: [],
      sentence: whySentence(known, null, [], instance.money, reason),
    };
  }
  const costs_more = other.totals.expected_cost - solved.totals.expected_cost;
  const runner_up: RunnerUp = { call: runnerCall, costs_more, plan: other.plan };
  const figures = [
    priceFigure(field, part, [solved.plan, other.plan]),
    strandingFigure(field, part),
    rate ? rateFigure(field, part, rate.now, rate.costsAt) : null,
  ].filter((figure) => figure !== null);
  const turns: Turn[] = [];
  for (const figure of figures) {
    const first = lookOf(figure, solved.plan, other.plan, figure.now);
    const look = (value: number): Promise<Look> => lookAt(figure, value, part, call, findCost);
    const point = await turningPoint({ ...figure, look }, first);
    if (point) turns.push({ figure: figure.kind, now: figure.now, ...point });
  }
  return {
    ...known,
    runner_up,
    turns,
    sentence: whySentence(known, runner_up, turns, instance.money, 'costs'),
  };
}

/** `whyPart` for every part of the plan, the quick way unless told otherwise; stops between two parts. */
export async function whyAll(
  instance: PlanInstance,
  solved: SolvedPlan,
  find: FindPlan,
  options: Omit<WhyOptions, 'rate'> = {},
): Promise<readonly PartWhy[]> {
  const all: PartWhy[] = [];
  for (const { part } of solved.plan.chosen) {
    options.signal?.throwIfAborted();
    const why = await whyPart(instance, solved, part, find, { scope: 'this part', ...options });
    if (why) all.push(why);
  }
  return all;
}

/** Two plans, as they stand, over a figure. */
function lookOf(figure: Figure, chosen: Plan | null, other: Plan | null, value: number): Look {
  const costAt = (plan: Plan | null) => (at: number) =>
    plan === null ? Number.POSITIVE_INFINITY : planTotals(figure.instanceAt(at), plan).expected_cost;
  const withCallAt = costAt(chosen);
  const withoutAt = costAt(other);
  return { withCall: withCallAt(value), without: withoutAt(value), withCallAt, withoutAt };
}

/** The best plan with the call and the best without it, at another value of the figure. */
async function lookAt(
  figure: Figure,
  value: number,
  part: string,
  call: string,
  find: FindPlan,
): Promise<Look> {
  const instance = figure.instanceAt(value);
  const best = async (one: PlanInstance): Promise<Plan | null> => {
    const result = await find(one);
    return isSolved(result) && result.meets_limits ? result.plan : null;
  };
  const chosen = await best(withCall(instance, part, call));
  const other = await best(withoutCall(instance, part, call));
  return lookOf(figure, chosen, other, value);
}
