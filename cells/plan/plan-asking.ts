import type { PlanSolution } from '../../src/notebook/graph/node-spec.ts';

/**
 * One question at a time about the plan that is shown: asked anew when the plan is another, given up when it
 * changes or the card goes. What was answered is kept with its plan.
 */
export class PlanAsking<Answer> {
  readonly #changed: () => void;
  #about: { readonly solution: PlanSolution; readonly key: string } | null = null;
  #stopper: AbortController | null = null;
  /** The answer so far, and whether it is of the plan that is shown. */
  answer: Answer | null = null;
  failure = '';

  /** @param changed called when there is something new to draw */
  constructor(changed: () => void) {
    this.#changed = changed;
  }

  get busy(): boolean {
    return this.#stopper !== null;
  }

  /** Is the answer about this plan (and not the one before)? */
  isAbout(solution: PlanSolution | null): boolean {
    return solution !== null && this.#about?.solution === solution;
  }

  /**
   * Asks unless this very question was asked already.
   *
   * @param key tells questions about the same plan apart
   * @param ask `tell` shows what is known before the end
   */
  about(
    solution: PlanSolution,
    key: string,
    ask: (signal: AbortSignal, tell: (answer: Answer) => void) => Promise<Answer | null>,
  ): void {
    if (this.#about?.solution === solution && this.#about.key === key) return;
    if (this.#about?.key !== key) this.answer = null;
    this.stop();
    this.#about = { solution, key };
    this.failure = '';
    const stopper = new AbortController();
    this.#stopper = stopper;
    const tell = (answer: Answer | null): void => {
      if (this.#stopper !== stopper) return;
      this.answer = answer;
      this.#changed();
    };
    ask(stopper.signal, tell).then(
      (answer) => {
        if (this.#stopper !== stopper) return;
        this.#stopper = null;
        this.answer = answer;
        this.#changed();
      },
      (error: unknown) => {
        if (this.#stopper !== stopper) return;
        this.#stopper = null;
        this.failure = error instanceof Error ? error.message : 'The solver did not say why.';
        this.#changed();
      },
    );
  }

  /** Gives up what is under way; the same may be asked again. */
  stop(): void {
    if (this.#stopper === null) return;
    const stopper = this.#stopper;
    this.#stopper = null;
    this.#about = null;
    stopper.abort(new Error('It was given up.'));
  }
}
