import type { Planner } from '../../notebook/graph/planner.ts';
import { type PlanRunner, type WorkerLike, workerRunner } from '../../plan/solver/plan-runner.ts';
import { PlanSolver } from '../../plan/solver/plan-solver.ts';
import planWorkerAddress from '../../plan/solver/plan-worker.ts?worker&url';
import { afterPaint } from '../after-paint.ts';
import { painted } from '../first-paint.ts';
import { ownScript } from '../own-script.ts';
import { QuestionQueue } from './question-queue.ts';
import { TrialDesk, type TrialWorkerLike } from './trial-desk.ts';
import trialWorkerAddress from './trial-worker.ts?worker&url';

const startWorker = (address: string): Worker =>
  new Worker(ownScript(new URL(address, import.meta.url)), { type: 'module' });

const startPlanWorker = (): WorkerLike => startWorker(planWorkerAddress) as unknown as WorkerLike;

/** To end a worker at work takes the page milliseconds, which belong to what an edit has to show. */
const planRunner = (): PlanRunner =>
  workerRunner(startPlanWorker, (worker) => void painted().then(() => worker.terminate()));

/**
 * Plans for the notebook on the page: one worker for the plan, one for questions about it, one that tries
 * figures, each started when it is first needed. None of them holds up the page.
 */
export class PagePlanner implements Planner {
  readonly #plans = new PlanSolver(planRunner());
  readonly #questionSolver = new PlanSolver(planRunner());
  readonly #questions = new QuestionQueue(this.#questionSolver);
  readonly #trials = new TrialDesk(() => startWorker(trialWorkerAddress) as unknown as TrialWorkerLike);

  readonly painted = afterPaint();

  readonly plan: Planner['plan'] = (instance) => this.#plans.ask({ kind: 'plan', instance });
  readonly ask: Planner['ask'] = (task, signal) => this.#questions.ask(task, signal);
  readonly tryFigure: Planner['tryFigure'] = (document, trial, signal) =>
    this.#trials.tryFigure(document, trial, signal);

  cancel(): void {
    this.#plans.cancel();
  }

  dispose(): void {
    this.#plans.dispose();
    this.#questionSolver.dispose();
    this.#trials.dispose();
  }
}
