import type { PlanAnswer, PlanAnswers, PlanTask } from '../../plan/plan-tasks.ts';
import type { PlanSolver } from '../../plan/solver/plan-solver.ts';

interface Waiting {
  readonly task: PlanTask;
  readonly signal: AbortSignal;
  readonly resolve: (answer: PlanAnswer) => void;
  readonly reject: (reason: unknown) => void;
}

/**
 * Questions about plans, answered one after another in the order in which they were asked. One that is given
 * up while it waits is passed over; one that is given up under way ends its solver's work.
 *
 * Example: `new QuestionQueue(new PlanSolver(inThreadRunner())).ask(task, signal)`
 */
export class QuestionQueue {
  readonly #solver: PlanSolver;
  readonly #waiting: Waiting[] = [];
  #running = false;

  constructor(solver: PlanSolver) {
    this.#solver = solver;
  }

  /** Rejects with the signal's reason when given up, and as the solver does. */
  ask<Task extends PlanTask>(task: Task, signal: AbortSignal): Promise<PlanAnswers[Task['kind']]> {
    return new Promise((resolve, reject) => {
      // The solver answers the task it was given, so its answer has the task's kind.
      this.#waiting.push({ task, signal, resolve: resolve as Waiting['resolve'], reject });
      if (!this.#running) void this.#run();
    });
  }

  async #run(): Promise<void> {
    this.#running = true;
    for (let next = this.#waiting.shift(); next !== undefined; next = this.#waiting.shift())
      await this.#answer(next);
    this.#running = false;
  }

  async #answer({ task, signal, resolve, reject }: Waiting): Promise<void> {
    if (signal.aborted) return reject(signal.reason);
    const giveUp = (): void => this.#solver.cancel();
    signal.addEventListener('abort', giveUp, { once: true });
    try {
      resolve(await this.#solver.ask(task));
    } catch (error) {
      reject(signal.aborted ? signal.reason : error);
    } finally {
      signal.removeEventListener('abort', giveUp);
    }
  }
}
