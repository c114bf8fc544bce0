import type { PartCall } from './plan-instance.ts';

/** One plan, whole figures only; what it comes to is reckoned from it in plain code. */
export interface Plan {
  readonly chosen: readonly ChosenCall[];
  readonly bought: readonly BoughtOffer[];
}

export interface ChosenCall {
  readonly part: string;
  readonly call: string;
  /** The bag its spares go into; null without bags, or where nothing is packed. */
  readonly bag: string | null;
}

export interface BoughtOffer {
  readonly offer: string;
  readonly packs: number;
}

/** What a plan comes to. Money in the notebook's own. */
export interface PlanTotals {
  /** Goods and freight. */
  readonly cash: number;
  readonly goods: number;
  readonly freight: number;
  readonly suppliers: readonly SupplierTotal[];
  readonly packs: readonly PackTotal[];
  /** With the setting up of each open job, once. */
  readonly shed_hours: number;
  readonly open_jobs: readonly string[];
  /** What the plan makes least: cash, every chosen call's expected cost without cash, and setting up jobs. */
  readonly expected_cost: number;
  /** Chance that anything strands the trip, 0 to 1. */
  readonly trip_risk: number;
}

export interface SupplierTotal {
  readonly supplier: string;
  readonly goods: number;
  readonly freight: number;
  /** The goods reach the sum from which freight is free. */
  readonly free: boolean;
}

export interface PackTotal {
  readonly rider: string;
  /** The spares of all bags, and what the limits of the whole pack count as packed already. */
  readonly mass_kg: number;
  readonly volume_L: number;
  /** Each with what was in it already. */
  readonly bags: readonly { readonly name: string; readonly mass_kg: number; readonly volume_L: number }[];
}

export type LimitKind = 'cash' | 'shed_hours' | 'trip_risk' | 'mass_kg' | 'volume_L';

/** A limit that the nearest plan does not meet. */
export interface Shortfall {
  readonly limit: LimitKind;
  /** The rider and bag, for a pack; null otherwise. */
  readonly rider: string | null;
  readonly bag: string | null;
  readonly allowed: number;
  readonly needed: number;
  /** needed - allowed */
  readonly short: number;
  readonly sentence: string;
}

export interface RefusedPin extends PartCall {
  readonly sentence: string;
}

/** A part that no call is open to: left out of the plan, which then does not meet its limits. */
export interface UndecidedPart {
  readonly part: string;
  readonly sentence: string;
}

export type PlanFaultKind = 'name' | 'figure' | 'text';

export interface PlanFault {
  readonly kind: PlanFaultKind;
  /** One plain sentence: what is wrong, and with what. */
  readonly message: string;
  /** What would mend it. */
  readonly mend: string;
}

/**
 * - `optimal`: the solver proved that no plan is better.
 * - `gap`: the best plan found in the time; no plan is cheaper than `expected_cost - gap`.
 * - `unverified`: what the solver gave breaks a rule when reckoned in plain code; `problems` says which.
 *   Never to be shown as a plan to follow.
 */
export type SolvedStatus = 'optimal' | 'gap' | 'unverified';

export interface SolvedPlan {
  readonly status: SolvedStatus;
  readonly plan: Plan;
  readonly totals: PlanTotals;
  /** False for the nearest plan when none fits, and where a part is undecided. */
  readonly meets_limits: boolean;
  readonly shortfalls: readonly Shortfall[];
  /** Money between this plan and the least that any plan can cost; 0 when optimal, null when unknown. */
  readonly gap: number | null;
  /** Equal plans were told apart (fewer purchases, then the order of the calls) and not by chance. */
  readonly ties_settled: boolean;
  readonly refused_pins: readonly RefusedPin[];
  readonly undecided: readonly UndecidedPart[];
  /** Offers left off the table because they come too late. */
  readonly late_offers: readonly string[];
  readonly problems: readonly string[];
  readonly seconds: number;
}

/** No plan: the data is faulty, the rules leave none whatever the limits, or none was found in time. */
export interface NoPlan {
  readonly status: 'faulty' | 'impossible' | 'out-of-time';
  readonly sentence: string;
  readonly faults: readonly PlanFault[];
  readonly refused_pins: readonly RefusedPin[];
  readonly undecided: readonly UndecidedPart[];
}

export type PlanResult = SolvedPlan | NoPlan;

export const isSolved = (result: PlanResult): result is SolvedPlan => 'plan' in result;
