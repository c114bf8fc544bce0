import type { PlanAnswers, PlanTask } from '../plan-tasks.ts';
import type { PlanRun, PlanRunner } from './plan-runner.ts';

/** A task was given up for a newer one, or because its solver was disposed of: no failure. */
export class PlanSuperseded extends Error {
  constructor(message = 'A newer plan was asked for before this one was ready.') {
    super(message);
    this.name = 'PlanSuperseded';
  }
}

/**
 * Asks for plans, the newest question first: asking again gives up the one under way, whose promise is
 * rejected with PlanSuperseded. The same in a page (workerRunner) and in Node (inThreadRunner).
 *
 * Questions that should not push each other aside need a solver each: one for the plan, one for the reasons.
 *
 * Example: const result = await new PlanSolver(inThreadRunner()).ask({ kind: 'plan', instance });
 */
export class PlanSolver {
  readonly #runner: PlanRunner;
  #current: { readonly run: PlanRun; readonly giveUp: (error: PlanSuperseded) => void } | null = null;
  #disposed = false;

  constructor(runner: PlanRunner) {
    this.#runner = runner;
  }

  get busy(): boolean {
    return this.#current !== null;
  }

  /** Rejects with PlanSuperseded when a newer question came, with an Error when the solver failed. */
  ask<Task extends PlanTask>(task: Task): Promise<PlanAnswers[Task['kind']]> {
    if (this.#disposed) return Promise.reject(new PlanSuperseded('The solver of plans is shut down.'));
    this.cancel();
    const run = this.#runner.run(task);
    return new Promise((resolve, reject) => {
      const own = { run, giveUp: reject };
      this.#current = own;
      const settle = (finish: () => void): void => {
        // What a run that was given up says later, answer or failure, concerns nobody.
        if (this.#current !== own) return;
        this.#current = null;
        finish();
      };
      run.answer.then(
        // The runner answers the task it was given, so its answer has the task's kind.
        (answer) => settle(() => resolve(answer as PlanAnswers[Task['kind']])),
        (error: unknown) => settle(() => reject(error)),
      );
    });
  }

  /** Gives up the question under way, if there is one. */
  cancel(): void {
    const current = this.#current;
    if (!current) return;
    this.#current = null;
    current.run.stop();
    current.giveUp(new PlanSuperseded());
  }

  dispose(): void {
    this.cancel();
    this.#disposed = true;
    this.#runner.dispose();
  }
}
