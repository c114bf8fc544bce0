import { priceFigure, strandingFigure } from '../../plan/figures.ts';
import type { PlanInstance } from '../../plan/plan-instance.ts';
import { isSolved, type Plan, type SolvedPlan } from '../../plan/plan-result.ts';
import type { PartWhy, Turn } from '../../plan/why-result.ts';
import type { NotebookDocument, PlanCell } from '../document.ts';
import type { Planner } from '../graph/planner.ts';
import type { FiguresNow } from './figures-now.ts';
import { rateTurn } from './rate-turn.ts';
import type { TrialFigure, TrialPoint } from './trial.ts';

/** Where a part's call turns, and to which other call. */
export interface CallTurn extends Turn {
  /** The call that the plan has beyond it; null where the plan has none there that meets the limits. */
  readonly other: string | null;
  /** Turns because a rule bars a call there, or no longer does: safety comes before cost. */
  readonly barred: boolean;
  /** Unit of the figure as written: 'EUR', '1/(1000 km)'. */
  readonly unit: string;
}

/** Why a part has its call, with break-evens that the notebook itself confirms. */
export interface CallWhy {
  readonly why: PartWhy;
  readonly turns: readonly CallTurn[];
  /** Figures that were looked at, whether or not the call turns on them. */
  readonly asked: readonly TrialFigure[];
  /** False for a first answer, while the break-evens are still being worked out. */
  readonly done: boolean;
}

/** What is to be explained: the notebook as it is now, and its plan. */
export interface CallQuestion {
  readonly document: NotebookDocument;
  readonly plan: PlanCell;
  readonly instance: PlanInstance;
  readonly solved: SolvedPlan;
  readonly part: string;
  readonly now: FiguresNow;
}

/** The share at which slopes are taken first; costs are straight lines over prices and strandings, mostly. */
const SLOPE_SHARE = 1.5;

/** A prediction that is off by more than this is not the notebook's own: half a tenth of a cent. */
const SAME_MONEY = 5e-4;

/** Looks at the notebook at a break-even, and reckons anew from there, at most so often. */
const MOST_LOOKS = 8;

/**
 * Why the plan has its call for the part, and at what price, cost of a stranding and wear rate it would turn.
 * What the calls cost at another figure is worked out by the notebook's own formulas, and each break-even is
 * looked at there again, until both agree to a tenth of a cent.
 *
 * @param tell a first answer, without break-evens and with the other parts' calls as they are
 * @returns null for a part that the plan leaves out
 * Rejects with the signal's reason when it is given up.
 */
export async function explainCall(
  asked: CallQuestion,
  planner: Planner,
  signal: AbortSignal,
  tell: (first: CallWhy) => void = () => undefined,
): Promise<CallWhy | null> {
  const { instance, solved, part } = asked;
  // Without offers nothing is looked for but the runner-up, which is what comes first.
  const quick = await planner.ask({ kind: 'why-part', instance, solved, part, scope: 'this part' }, signal);
  if (quick === null) return null;
  tell({ why: { ...quick, turns: [] }, turns: [], asked: [], done: false });
  return new Explaining(asked, planner, signal).run();
}

class Explaining {
  readonly #asked: CallQuestion;
  readonly #planner: Planner;
  readonly #signal: AbortSignal;
  /** What the part's calls cost now, and at the share that was looked at last. */
  readonly #points: Record<'price' | 'stranding', readonly TrialPoint[]> = { price: [], stranding: [] };
  /** What one piece of the part costs now, as the plans buy it that are set against each other. */
  #priceNow: number | null;

  constructor(asked: CallQuestion, planner: Planner, signal: AbortSignal) {
    this.#asked = asked;
    this.#planner = planner;
    this.#signal = signal;
    this.#priceNow = priceFigure(asked.instance, asked.part, [asked.solved.plan])?.now ?? null;
  }

  async run(): Promise<CallWhy | null> {
    const { now } = this.#asked;
    if (this.#priceNow !== null) this.#points.price = await this.#try('price', [1, SLOPE_SHARE]);
    if (now.stranding !== null) this.#points.stranding = await this.#try('stranding', [1, SLOPE_SHARE]);
    let why = await this.#why();
    for (let look = 0; look < MOST_LOOKS && why !== null; look += 1) {
      if (!(await this.#lookAgain(why.turns))) break;
      why = await this.#why();
    }
    if (why === null) return null;
    const turns = await this.#lineTurns(why);
    const rate = await this.#rateTurn(why);
    const asked = (['price', 'stranding'] as const).filter((figure) => this.#points[figure].length > 0);
    return {
      why,
      turns: rate === null ? turns : [...turns, rate],
      asked: now.rate === null ? asked : [...asked, 'rate'],
      done: true,
    };
  }

  #try(figure: TrialFigure, shares: readonly number[]): Promise<readonly TrialPoint[]> {
    const { document, plan, part } = this.#asked;
    return this.#planner.tryFigure(document, { plan: plan.name, part, figure, shares }, this.#signal);
  }

  #why(): Promise<PartWhy | null> {
    const { solved, part } = this.#asked;
    return this.#planner.ask({ kind: 'why-part', instance: this.#instance(), solved, part }, this.#signal);
  }

  /** The plan's instance, with the slopes of the part's costs. */
  #instance(): PlanInstance {
    const { instance, part, now } = this.#asked;
    return {
      ...instance,
      parts: instance.parts.map((one) =>
        one.name === part ? { ...one, stranding_cost: now.stranding } : one,
      ),
      calls: instance.calls.map((call) =>
        call.part !== part
          ? call
          : {
              ...call,
              per_price: this.#slope('price', call.name, this.#priceNow),
              per_stranding: this.#slope('stranding', call.name, now.stranding),
            },
      ),
    };
  }

  /** The line through the figure now and the point that was looked at last. */
  #slope(figure: 'price' | 'stranding', name: string, now: number | null): number {
    const [base, other] = this.#points[figure];
    if (base === undefined || other === undefined || now === null) return 0;
    return (costAt(other, name) - costAt(base, name)) / ((other.share - base.share) * now);
  }

  /** Looks at the notebook at each break-even; true when some cost there is not what was reckoned. */
  async #lookAgain(turns: readonly Turn[]): Promise<boolean> {
    let isOff = false;
    for (const { figure, now, at } of turns) {
      if (figure === 'rate') continue;
      if (figure === 'price') this.#priceNow = now;
      const [base, other] = this.#points[figure];
      const share = at / now;
      if (base === undefined || share === base.share || share === other?.share) continue;
      const reckoned = this.#instance();
      const [point] = await this.#try(figure, [share]);
      if (point === undefined || !this.#differs(figure, at - now, point, reckoned)) continue;
      isOff = true;
      this.#points[figure] = [base, point];
    }
    return isOff;
  }

  #differs(figure: 'price' | 'stranding', by: number, point: TrialPoint, { calls }: PlanInstance): boolean {
    const slope = figure === 'price' ? 'per_price' : 'per_stranding';
    return calls.some(
      (call) =>
        call.part === this.#asked.part &&
        call.held_back === null &&
        Math.abs(call.cost_without_cash + call[slope] * by - costAt(point, call.name)) > SAME_MONEY,
    );
  }

  async #lineTurns(why: PartWhy): Promise<CallTurn[]> {
    const { part, solved, instance } = this.#asked;
    const plans = why.runner_up === null ? [solved.plan] : [solved.plan, why.runner_up.plan];
    const sloped = this.#instance();
    const turns: CallTurn[] = [];
    for (const turn of why.turns) {
      const figure =
        turn.figure === 'price' ? priceFigure(sloped, part, plans) : strandingFigure(sloped, part);
      if (figure === null) continue;
      const further = Math.max(turn.at * 1e-4, Math.abs(turn.at - turn.now) * 1e-3, 0.01);
      const at = Math.max(0, turn.side === 'above' ? turn.at + further : turn.at - further);
      const other = await this.#callIn(figure.instanceAt(at));
      if (other !== why.call) turns.push({ ...turn, other, barred: false, unit: instance.money });
    }
    return turns;
  }

  async #rateTurn({ call }: PartWhy): Promise<CallTurn | null> {
    const { instance, part, now } = this.#asked;
    if (now.rate === null) return null;
    const { rate } = now;
    const found = await rateTurn({
      instance,
      part,
      call,
      tryRate: (shares) => this.#try('rate', shares),
      best: (at) => this.#best(at),
    });
    if (found === null) return null;
    const { share, side, because, barred } = found;
    const [beyond] = await this.#try('rate', [side === 'above' ? share * 1.002 : share / 1.002]);
    const other = beyond === undefined ? null : await this.#callIn(this.#instanceOf(beyond));
    return {
      figure: 'rate',
      now: rate.now,
      at: share * rate.now,
      side,
      because,
      barred,
      unit: rate.unit,
      other: other === call ? null : other,
    };
  }

  /** The instance with the part's calls as the notebook gives them at a point. */
  #instanceOf(point: TrialPoint): PlanInstance {
    const { instance, part } = this.#asked;
    const calls = instance.calls.map((call) => {
      const there = point.calls.find(({ name }) => name === call.name);
      if (call.part !== part || there === undefined) return call;
      return {
        ...call,
        cost_without_cash: there.cost,
        held_back: there.barred ? (call.held_back ?? 'It is barred at this rate.') : null,
      };
    });
    return { ...instance, calls };
  }

  async #callIn(instance: PlanInstance): Promise<string | null> {
    const plan = await this.#best(instance);
    return plan?.chosen.find(({ part }) => part === this.#asked.part)?.call ?? null;
  }

  async #best(instance: PlanInstance): Promise<Plan | null> {
    const result = await this.#planner.ask({ kind: 'plan', instance, settleTies: false }, this.#signal);
    return isSolved(result) && result.meets_limits ? result.plan : null;
  }
}

const costAt = (point: TrialPoint, name: string): number =>
  point.calls.find((call) => call.name === name)?.cost ?? 0;
