import type { FindPlan, PlanOptions } from './find-plan.ts';
import { limitLines } from './limit-lines.ts';
import { limitName, moneyWords } from './limit-words.ts';
import type { PlanInstance, PlanLimits } from './plan-instance.ts';
import { isSolved, type LimitKind, type PlanResult, type SolvedPlan } from './plan-result.ts';

/** How much more of each limit to ask about, in its own unit; what is absent is not asked. */
export type More = Partial<Record<Exclude<LimitKind, 'trip_risk'>, number>>;

/** What more of one limit would save. */
export interface Saving {
  readonly limit: LimitKind;
  readonly rider: string | null;
  readonly bag: string | null;
  readonly more: number;
  /** Money; null where one of the two plans meets no limits, so that their costs do not compare. */
  readonly saves: number | null;
  /** Both plans are proven to be the best. */
  readonly proven: boolean;
  readonly sentence: string;
}

const UNITS = { shed_hours: 'h', mass_kg: 'kg', volume_L: 'L' } as const;

/** Half a cent: what is shown as nothing. */
const LEAST_SAVING = 0.005;

/** Rounding of a sum of costs, money. */
const SAME_COST = 1e-6;

/** Costs are compared here, so that equal plans need not be told apart. */
const COSTS_ALONE: PlanOptions = { settleTies: false };

/**
 * What more of each limit that is set would save, by solving again with that limit alone raised.
 *
 * Example: { cash: 50, mass_kg: 1, volume_L: 1, shed_hours: 1 } gives a saving for the cash, the hours and
 * each rider's and bag's kilograms and litres. Rejects as `find` does.
 */
export async function whatOneMoreSaves(
  instance: PlanInstance,
  more: More,
  find: FindPlan,
  options: PlanOptions = {},
): Promise<readonly Saving[]> {
  const solveWith = (limits: PlanLimits): Promise<PlanResult> =>
    find({ ...instance, limits }, { ...options, ...COSTS_ALONE });
  const base = await solveWith(instance.limits);
  if (!isSolved(base)) return [];
  const raises = limitLines(instance).flatMap(({ kind, rider, bag }): Raise[] => {
    const by = kind === 'trip_risk' ? undefined : more[kind];
    return kind === 'trip_risk' || by === undefined || by === 0 ? [] : [{ kind, rider, bag, by }];
  });
  // Bags are many, and most often none of them binds: what saves nothing together saves nothing one by one.
  const ofBags = raises.filter(({ bag }) => bag !== null);
  const together = ofBags.length > 1 ? await solveWith(ofBags.reduce(raised, instance.limits)) : null;
  const bagsSaveNothing = together !== null && provenToSaveNothing(base, together);
  const savings: Saving[] = [];
  for (const raise of raises) {
    const { kind, rider, bag, by } = raise;
    const isIdle = bagsSaveNothing && bag !== null;
    const raisedResult = isIdle ? together : await solveWith(raised(instance.limits, raise));
    const amount = kind === 'cash' ? moneyWords(by, instance.money) : `${by} ${UNITS[kind]}`;
    const what = `${limitName({ kind, rider, bag })}: ${amount} more`;
    savings.push({ limit: kind, rider, bag, more: by, ...saved(base, raisedResult, what, instance.money) });
  }
  return savings;
}

/** One limit and how much more of it is given. */
interface Raise {
  readonly kind: Exclude<LimitKind, 'trip_risk'>;
  readonly rider: string | null;
  readonly bag: string | null;
  readonly by: number;
}

function provenToSaveNothing(base: SolvedPlan, more: PlanResult): boolean {
  if (!isSolved(more) || base.status !== 'optimal' || more.status !== 'optimal') return false;
  if (!base.meets_limits || !more.meets_limits) return false;
  return base.totals.expected_cost - more.totals.expected_cost < SAME_COST;
}

function saved(
  base: SolvedPlan,
  raisedResult: PlanResult,
  what: string,
  money: string,
): Pick<Saving, 'saves' | 'proven' | 'sentence'> {
  if (!isSolved(raisedResult))
    return { saves: null, proven: false, sentence: `${what} could not be worked out.` };
  const proven = base.status === 'optimal' && raisedResult.status === 'optimal';
  if (!raisedResult.meets_limits)
    return { saves: null, proven, sentence: `${what} is not enough to meet every limit.` };
  if (!base.meets_limits) return { saves: null, proven, sentence: `${what} is enough to meet every limit.` };
  // A raised limit leaves every plan open that was: a figure below 0 is rounding, or time that ran out.
  const saves = Math.max(0, base.totals.expected_cost - raisedResult.totals.expected_cost);
  const about = proven ? '' : 'about ';
  const sentence =
    saves < LEAST_SAVING
      ? `${what} would save nothing.`
      : `${what} would save ${about}${moneyWords(saves, money)}.`;
  return { saves, proven, sentence };
}

function raised(limits: PlanLimits, { kind, rider, bag, by }: Raise): PlanLimits {
  if (kind === 'cash') return { ...limits, cash: (limits.cash ?? 0) + by };
  if (kind === 'shed_hours') return { ...limits, shed_hours: (limits.shed_hours ?? 0) + by };
  const packs = limits.packs.map((pack) => {
    if (pack.rider !== rider) return pack;
    if (bag === null) return { ...pack, [kind]: (pack[kind] ?? 0) + by };
    const bags = pack.bags.map((one) => (one.name === bag ? { ...one, [kind]: (one[kind] ?? 0) + by } : one));
    return { ...pack, bags };
  });
  return { ...limits, packs };
}

/** The best plan for one sum to spend. */
export interface FrontierPoint {
  readonly budget: number;
  readonly cash: number;
  readonly expected_cost: number;
  /** Chance that anything strands the trip, 0 to 1. */
  readonly trip_risk: number;
  readonly meets_limits: boolean;
  readonly status: SolvedPlan['status'];
}

/**
 * Spending against risk: the best plan for each sum to spend, in rising order. Sums for which nothing could
 * be worked out are left out. A plan that spends less than a smaller sum is the best for that one as well,
 * so it is not worked out twice.
 *
 * Example: frontier(instance, [100, 200, 300], find)
 */
export async function frontier(
  instance: PlanInstance,
  budgets: readonly number[],
  find: FindPlan,
  options: PlanOptions = {},
): Promise<readonly FrontierPoint[]> {
  const points: FrontierPoint[] = [];
  let above: SolvedPlan | null = null;
  for (const budget of [...new Set(budgets)].sort((a, b) => b - a)) {
    const serves: boolean =
      above !== null && above.status === 'optimal' && above.meets_limits && above.totals.cash <= budget;
    if (!serves) {
      const limits = { ...instance.limits, cash: budget };
      const result = await find({ ...instance, limits }, { ...options, ...COSTS_ALONE });
      above = isSolved(result) ? result : null;
    }
    if (above === null) continue;
    const { totals, meets_limits, status } = above;
    const { cash, expected_cost, trip_risk } = totals;
    points.push({ budget, cash, expected_cost, trip_risk, meets_limits, status });
  }
  return points.reverse();
}

/** What the calls set and forbidden by hand cost, against the plan without them. */
export interface PinsDifference {
  /** Money that the pins cost more; below 0 only where the time ran out. */
  readonly more_cost: number;
  /** Points of chance of a stranding that they add, or take off. */
  readonly more_risk: number;
  readonly free: SolvedPlan;
  readonly sentence: string;
}

/** Solves without the pins and the forbidden calls; null when that cannot be solved. `withPins` is the plan that is shown. */
export async function whatPinsCost(
  instance: PlanInstance,
  withPins: SolvedPlan,
  find: FindPlan,
  options: PlanOptions = {},
): Promise<PinsDifference | null> {
  const free = await find({ ...instance, pins: [], forbidden: [] }, options);
  if (!isSolved(free)) return null;
  const more_cost = withPins.totals.expected_cost - free.totals.expected_cost;
  const more_risk = withPins.totals.trip_risk - free.totals.trip_risk;
  const risk = `${Math.abs(more_risk * 100).toFixed(2)} points ${more_risk < 0 ? 'less' : 'more'}`;
  const cost = `${moneyWords(Math.abs(more_cost), instance.money)} ${more_cost < 0 ? 'less' : 'more'}`;
  const sentence = `The calls set by hand cost ${cost} than the proposed plan, with ${risk} chance of a stranding.`;
  return { more_cost, more_risk, free, sentence };
}
