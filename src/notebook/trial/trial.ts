/** Figures that a call may turn on: the part's price, its wear rate, what a stranding by it costs. */
export type TrialFigure = 'price' | 'stranding' | 'rate';

/** One figure of one part, tried at other values. Plain data, so that a worker can do it. */
export interface FigureTrial {
  /** Name of the plan cell that says which columns the figures are. */
  readonly plan: string;
  readonly part: string;
  readonly figure: TrialFigure;
  /** Times the figure as it is now: 1.5 is half as much again. */
  readonly shares: readonly number[];
}

/** What the calls of the part cost there. */
export interface TrialPoint {
  readonly share: number;
  readonly calls: readonly TrialCall[];
}

export interface TrialCall {
  readonly name: string;
  /** Expected cost less its cash, in the notebook's money. */
  readonly cost: number;
  /** The call may not be made there, or cannot be worked out. */
  readonly barred: boolean;
}
