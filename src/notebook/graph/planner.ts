import type { PlanInstance } from '../../plan/plan-instance.ts';
import type { PlanResult } from '../../plan/plan-result.ts';
import type { PlanAnswers, PlanTask } from '../../plan/plan-tasks.ts';
import type { NotebookDocument } from '../document.ts';
import type { FigureTrial, TrialPoint } from '../trial/trial.ts';

/**
 * Finds plans for the notebook. In the page a worker does it, in Node the thread itself; the notebook only
 * asks. Asking again gives up what is under way.
 */
export interface Planner {
  /** Where there is a page: ends when the figures that an edit changed are painted. A plan is begun after that. */
  painted?(): Promise<void>;
  plan(instance: PlanInstance): Promise<PlanResult>;
  /** Gives up what is under way: its figures have changed. */
  cancel(): void;
  /**
   * Answers a question about a plan, after those asked before it: questions never push the plan aside.
   * Rejects with the signal's reason when it is given up.
   */
  ask<Task extends PlanTask>(task: Task, signal: AbortSignal): Promise<PlanAnswers[Task['kind']]>;
  /**
   * What the calls of one part cost when one figure is another: worked out by a notebook at work apart, whose
   * edits nobody sees. Rejects with the signal's reason when it is given up.
   */
  tryFigure(
    document: NotebookDocument,
    trial: FigureTrial,
    signal: AbortSignal,
  ): Promise<readonly TrialPoint[]>;
}
