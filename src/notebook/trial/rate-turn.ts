import { withCall, withoutCall } from '../../plan/figures.ts';
import type { PlanInstance } from '../../plan/plan-instance.ts';
import type { Plan } from '../../plan/plan-result.ts';
import { costsBetween } from '../../plan/plan-tasks.ts';
import { planTotals } from '../../plan/plan-totals.ts';
import { type Look, turningPoint } from '../../plan/turning-point.ts';
import { nextShare, type RateRegion, rateRegions, withPoint } from './rate-regions.ts';
import type { TrialPoint } from './trial.ts';

/** Where a part's call turns as it wears faster or slower. */
export interface RateTurn {
  /** Times the rate now. */
  readonly share: number;
  readonly side: 'above' | 'below';
  readonly because: 'cost' | 'limit';
  /** A rule bars a call there, or no longer does, whatever it costs. */
  readonly barred: boolean;
}

/** What the search is given: the plan's instance, and ways to try a rate and to have a plan found. */
export interface RateQuestion {
  readonly instance: PlanInstance;
  readonly part: string;
  readonly call: string;
  readonly tryRate: (shares: readonly number[]) => Promise<readonly TrialPoint[]>;
  /** The best plan, or null where none meets the limits. */
  readonly best: (instance: PlanInstance) => Promise<Plan | null>;
}

/** Rates looked at first, times the rate now: the range in which a turn is looked for. */
const SHARES = [0.2, 0.35, 0.6, 0.85, 1, 1.2, 1.7, 2.8, 5];

const MOST_BAR_LOOKS = 50;
/** Bars that are crossed on each side while the call stays. */
const MOST_REGIONS = 3;
/** Times a break-even is looked at again by the notebook. */
const MOST_LOOKS = 6;
/** A prediction that is off by more than this is not the notebook's own: half a tenth of a cent. */
const SAME_MONEY = 5e-4;

/**
 * The wear rate nearest to the one now, in proportion, at which the part's call turns. Between two rates at
 * which a rule bars a call or lets it go, costs are smooth, and the call turns where two plans cost the same;
 * at such a rate itself it turns if the best plan just beyond has another call.
 *
 * @returns null where it turns nowhere between a fifth and five times the rate now
 */
export async function rateTurn(question: RateQuestion): Promise<RateTurn | null> {
  let points = await question.tryRate(SHARES);
  for (let look = 0; look < MOST_BAR_LOOKS; look += 1) {
    const share = nextShare(points);
    const [point] = share === null ? [] : await question.tryRate([share]);
    if (point === undefined) break;
    points = withPoint(points, point);
  }
  const search = new RateSearch(question, points);
  const turns = [await search.outward('above'), await search.outward('below')].filter(
    (turn) => turn !== null,
  );
  const distance = ({ share }: RateTurn): number => Math.abs(Math.log(share));
  return turns.sort((a, b) => distance(a) - distance(b))[0] ?? null;
}

class RateSearch {
  readonly #question: RateQuestion;
  readonly #regions: readonly RateRegion[];

  constructor(question: RateQuestion, points: readonly TrialPoint[]) {
    this.#question = question;
    this.#regions = rateRegions(points);
  }

  async outward(side: 'above' | 'below'): Promise<RateTurn | null> {
    const step = side === 'above' ? 1 : -1;
    const first = this.#regions.findIndex(({ least, most }) => least <= 1 && most >= 1);
    let from = 1;
    for (let at = first, crossed = 0; crossed < MOST_REGIONS; at += step, crossed += 1) {
      const region = this.#regions[at];
      if (region === undefined) return null;
      if (crossed > 0) {
        from = side === 'above' ? region.least : region.most;
        if ((await this.#callAt(region, from)) !== this.#question.call)
          return { share: from, side, because: 'cost', barred: true };
      }
      const turn = await this.#within(region, from, side);
      if (turn !== null) return turn;
    }
    return null;
  }

  async #callAt(region: RateRegion, share: number): Promise<string | undefined> {
    const plan = await this.#question.best(this.#instanceAt(region, share));
    return plan?.chosen.find(({ part }) => part === this.#question.part)?.call;
  }

  /** The turn within a region, looked at again by the notebook until what was reckoned is what it gives. */
  async #within(start: RateRegion, from: number, side: 'above' | 'below'): Promise<RateTurn | null> {
    let region = start;
    for (let look = 0; look < MOST_LOOKS; look += 1) {
      const turn = await this.#turnIn(region, from, side);
      if (turn === null) return null;
      const [point] = await this.#question.tryRate([turn.at]);
      if (point === undefined || agrees(region, point))
        return { share: turn.at, side, because: turn.because, barred: false };
      region = { ...region, points: withPoint(region.points, point) };
    }
    return null;
  }

  async #turnIn(region: RateRegion, from: number, side: 'above' | 'below') {
    const [least, most] = side === 'above' ? [from, region.most] : [region.least, from];
    if (most / least < 1 + 1e-6) return null;
    const look = (share: number): Promise<Look> => this.#look(region, share);
    const search = { now: from, least, most, straight: false, step: from * 1e-5, look };
    return turningPoint(search, await look(from));
  }

  async #look(region: RateRegion, share: number): Promise<Look> {
    const { part, call, best } = this.#question;
    const instance = this.#instanceAt(region, share);
    const chosen = await best(withCall(instance, part, call));
    const other = await best(withoutCall(instance, part, call));
    const costAt = (plan: Plan | null) => (at: number) =>
      plan === null ? Number.POSITIVE_INFINITY : planTotals(this.#instanceAt(region, at), plan).expected_cost;
    const [withCallAt, withoutAt] = [costAt(chosen), costAt(other)];
    return { withCall: withCallAt(share), without: withoutAt(share), withCallAt, withoutAt };
  }

  /** The plan's instance at a rate of this region: what the part's calls cost there, and which may be made. */
  #instanceAt(region: RateRegion, share: number): PlanInstance {
    const { instance, part } = this.#question;
    const costs = costsAt(region, share);
    const barred = new Map(region.points[0]?.calls.map((call) => [call.name, call.barred]));
    const calls = instance.calls.map((call) => {
      const cost = costs.get(call.name);
      if (call.part !== part || cost === undefined) return call;
      const held_back =
        barred.get(call.name) === true ? (call.held_back ?? 'It is barred at this rate.') : null;
      return { ...call, cost_without_cash: cost, held_back };
    });
    return { ...instance, calls };
  }
}

const costsAt = (region: RateRegion, share: number): ReadonlyMap<string, number> =>
  costsBetween(
    region.points.map((point) => ({
      rate: point.share,
      costs: point.calls.map(({ name, cost }) => [name, cost] as const),
    })),
    share,
  );

function agrees(region: RateRegion, point: TrialPoint): boolean {
  const reckoned = costsAt(region, point.share);
  return point.calls.every(
    (call) => call.barred || Math.abs((reckoned.get(call.name) ?? 0) - call.cost) <= SAME_MONEY,
  );
}
