import type { Figure } from './figures.ts';
import type { Plan } from './plan-result.ts';
import type { TurningPoint } from './turning-point.ts';

/**
 * What the plan without the call may change. `everything`: the best of all plans without it. `this part`:
 * the other parts keep their calls (those of its set aside), what is bought is chosen anew; quick, and the
 * sentence says so. Both are solved exactly.
 */
export type Scope = 'everything' | 'this part';

/** Why a part has its call: the next best call, by how much it is worse, and where the two turn. */
export interface PartWhy {
  readonly part: string;
  readonly call: string;
  readonly by_hand: boolean;
  readonly critical: boolean;
  readonly scope: Scope;
  /** Both plans are proven to be the best of their kind; otherwise the sentence says "about". */
  readonly proven: boolean;
  readonly runner_up: RunnerUp | null;
  readonly turns: readonly Turn[];
  readonly sentence: string;
}

export interface RunnerUp {
  readonly call: string;
  /** By how much its plan costs more, money; below 0 where a call set by hand is not the best. */
  readonly costs_more: number;
  readonly plan: Plan;
}

export interface Turn extends TurningPoint {
  readonly figure: Figure['kind'];
  readonly now: number;
}
