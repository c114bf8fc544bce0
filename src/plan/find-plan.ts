import { checkInstance } from './check-instance.ts';
import { type OpenTable, openTable } from './open-calls.ts';
import { bagsAsOne, packBags } from './pack-bags.ts';
import type { PlanInstance } from './plan-instance.ts';
import { type Aim, type PlanModel, planModel } from './plan-model.ts';
import type { NoPlan, PlanResult, Shortfall, SolvedPlan } from './plan-result.ts';
import { planTotals } from './plan-totals.ts';
import type { ProgrammeAnswer, SolveProgramme } from './programme.ts';
import { readPlan } from './read-plan.ts';
import { verifyPlan } from './verify-plan.ts';

/** Plans within a hundred-thousandth of a money unit of the least are equal: no one can tell them apart. */
const EQUAL_MONEY = 1e-5;

/** Beyond this, the plan's plain reckoning and the solver's sum differ by more than rounding. */
const AGREE_MONEY = 1e-4;

/** Shares of limits: the shortfall found may be passed by this much while the cost is made least. */
const EQUAL_SHORTFALL = 1e-7;

export interface PlanOptions {
  /** Stops between two solves; the promise is rejected with the signal's reason. */
  readonly signal?: AbortSignal;
  /** For the whole of it, seconds; 10 if absent. */
  readonly timeLimitS?: number;
  /** Whether equal plans are told apart; yes if absent. Figures that compare costs alone can do without. */
  readonly settleTies?: boolean;
}

/** Finds the best plan of an instance: `findPlan` with its solver. */
export type FindPlan = (instance: PlanInstance, options?: PlanOptions) => Promise<PlanResult>;

/** A plan, or the best found and how far off it may be, is there within ten seconds: a little is kept for the rest. */
const DEFAULT_TIME_LIMIT_S = 9.5;

/**
 * The plan of least total expected cost within all the limits (model, section 7), by the given solver.
 *
 * - No plan fits: the limits are passed by as little as can be, each in shares of itself, and the cheapest
 *   plan at that shortfall is given with `meets_limits: false` and a sentence for each limit passed.
 * - Equal plans: a second solve over all plans of the same cost takes the one with the fewest packs bought,
 *   then the one whose calls stand earliest in their lists (the sum of their places). When its time runs
 *   out, the first plan stands, just as good, and `ties_settled` is false.
 * - Bags: first all bags of a pack are taken as one. Where the plan's spares then find places in the bags, it
 *   is the best with them too; otherwise the programme chooses bags as well, which takes longer.
 * - What the solver gives is rounded, then verified and added up in plain code.
 *
 * Rejects with the signal's reason when stopped, and with the solver's error when that fails.
 */
export async function findPlan(
  instance: PlanInstance,
  solve: SolveProgramme,
  options: PlanOptions = {},
): Promise<PlanResult> {
  const faults = checkInstance(instance);
  if (faults.length > 0)
    return {
      status: 'faulty',
      sentence: 'The plan waits until its tables are put right.',
      faults,
      refused_pins: [],
      undecided: [],
    };
  return new PlanSearch(instance, openTable(instance), solve, options).run();
}

interface Found {
  readonly aim: Aim;
  readonly model: PlanModel;
  readonly answer: ProgrammeAnswer;
  readonly columns: readonly number[];
}

/** Money between what was found and the least that any plan can cost; null where nothing is known of that. */
const gapOf = ({ answer: { cost, bound } }: Found): number | null =>
  Number.isFinite(bound) ? Math.max(0, cost - bound) : null;

/** One search, with its clock. */
class PlanSearch {
  readonly #instance: PlanInstance;
  readonly #table: OpenTable;
  readonly #solve: SolveProgramme;
  readonly #options: PlanOptions;
  readonly #startMs = performance.now();
  readonly #endMs: number;

  constructor(instance: PlanInstance, table: OpenTable, solve: SolveProgramme, options: PlanOptions) {
    this.#instance = instance;
    this.#table = table;
    this.#solve = solve;
    this.#options = options;
    this.#endMs = this.#startMs + (options.timeLimitS ?? DEFAULT_TIME_LIMIT_S) * 1000;
  }

  async run(): Promise<PlanResult> {
    const aim: Aim = { kind: 'cost' };
    const asOne = await this.#withBagsAsOne(aim);
    if (asOne === 'infeasible') return this.#nearest();
    if (asOne !== null) return asOne;
    const first = await this.#look(aim);
    if (first === 'infeasible') return this.#nearest();
    if (first === 'out-of-time') return this.#none(first);
    return this.#settled(first, aim);
  }

  /** The best plan with a pack's bags taken as one, where its spares fit them; null where they do not. */
  async #withBagsAsOne(aim: Aim): Promise<SolvedPlan | 'infeasible' | null> {
    if (this.#instance.limits.packs.every(({ bags }) => bags.length === 0)) return null;
    const asOne = bagsAsOne(this.#instance);
    const first = await this.#look(aim, undefined, undefined, asOne);
    // Nothing that fits the bags is left out here, so that nothing fits them either.
    if (first === 'infeasible') return first;
    if (first === 'out-of-time' || !this.#fits(first)) return null;
    if (first.answer.status !== 'optimal') return this.#solved(first, false, gapOf(first));
    if (this.#options.settleTies === false) return this.#solved(first, false, 0);
    const tie = { costAtMost: first.answer.cost + EQUAL_MONEY };
    const second = await this.#look(aim, first.columns, tie, asOne);
    if (typeof second === 'string') return this.#solved(first, false, 0);
    if (!this.#fits(second)) return null;
    return this.#solved({ ...second, answer: first.answer }, second.answer.status === 'optimal', 0);
  }

  #fits({ model, columns }: Found): boolean {
    return packBags(this.#instance, readPlan(model, columns)) !== null;
  }

  /** When nothing fits: the least shortfall, then the least cost at that shortfall. */
  async #nearest(): Promise<PlanResult> {
    const least = await this.#look({ kind: 'shortfall' });
    if (typeof least === 'string') return this.#none(least);
    const aim: Aim = { kind: 'cost-at-shortfall', atMost: Math.max(0, least.answer.cost) + EQUAL_SHORTFALL };
    const cheapest = await this.#look(aim, least.columns);
    if (typeof cheapest === 'string') return this.#solved(least, false, null);
    // A shortfall that is not proven least is no proven answer, whatever its cost.
    if (least.answer.status !== 'optimal') return this.#solved(cheapest, false, null);
    return this.#settled(cheapest, aim);
  }

  async #settled(found: Found, aim: Aim): Promise<SolvedPlan> {
    const { status, cost } = found.answer;
    if (status !== 'optimal') return this.#solved(found, false, gapOf(found));
    if (this.#options.settleTies === false) return this.#solved(found, false, 0);
    const tie = { costAtMost: cost + EQUAL_MONEY };
    const second = await this.#look(aim, found.columns, tie);
    if (typeof second === 'string') return this.#solved(found, false, 0);
    return this.#solved({ ...second, answer: found.answer }, second.answer.status === 'optimal', 0);
  }

  async #look(
    aim: Aim,
    start?: readonly number[],
    tie?: { readonly costAtMost: number },
    instance: PlanInstance = this.#instance,
  ): Promise<Found | 'infeasible' | 'out-of-time'> {
    this.#options.signal?.throwIfAborted();
    const timeLimitS = (this.#endMs - performance.now()) / 1000;
    if (timeLimitS <= 0) return 'out-of-time';
    const model = planModel(instance, this.#table, aim, tie ?? null);
    const answer = await this.#solve(model.programme, { timeLimitS, ...(start ? { start } : {}) });
    this.#options.signal?.throwIfAborted();
    if (answer.columns) return { aim, model, answer, columns: answer.columns };
    return answer.status === 'infeasible' ? 'infeasible' : 'out-of-time';
  }

  #solved(found: Found, tiesSettled: boolean, gap: number | null): SolvedPlan {
    const read = readPlan(found.model, found.columns);
    const plan = packBags(this.#instance, read) ?? read;
    const totals = planTotals(this.#instance, plan);
    const { problems, shortfalls } = verifyPlan(this.#instance, plan);
    const wrong = [...problems, ...this.#disagreements(found, totals.expected_cost, shortfalls)];
    return {
      status:
        wrong.length > 0 ? 'unverified' : gap === 0 && found.answer.status === 'optimal' ? 'optimal' : 'gap',
      plan,
      totals,
      meets_limits: shortfalls.length === 0 && this.#table.undecided.length === 0,
      shortfalls,
      gap,
      ties_settled: tiesSettled,
      refused_pins: this.#table.refusedPins,
      undecided: this.#table.undecided,
      late_offers: this.#table.lateOffers,
      problems: wrong,
      seconds: (performance.now() - this.#startMs) / 1000,
    };
  }

  /** Where the plan, reckoned in plain code, is not what the solver said it was. */
  #disagreements({ aim, answer }: Found, cost: number, shortfalls: readonly Shortfall[]): string[] {
    if (aim.kind === 'cost' && shortfalls.length > 0) return shortfalls.map(({ sentence }) => sentence);
    if (aim.kind === 'shortfall' || cost <= answer.cost + AGREE_MONEY) return [];
    return [`The plan costs ${cost}, and the solver made it ${answer.cost}.`];
  }

  #none(why: 'infeasible' | 'out-of-time'): NoPlan {
    return {
      status: why === 'infeasible' ? 'impossible' : 'out-of-time',
      sentence:
        why === 'infeasible'
          ? 'No plan keeps all that is set by hand, whatever the limits: free a call that is set or forbidden, most likely of parts that are changed as a set.'
          : 'No plan was found in the time there was.',
      faults: [],
      refused_pins: this.#table.refusedPins,
      undecided: this.#table.undecided,
    };
  }
}
