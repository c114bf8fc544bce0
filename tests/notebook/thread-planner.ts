import type { NotebookDocument } from '../../src/notebook/document.ts';
import type { Planner } from '../../src/notebook/graph/planner.ts';
import { TrialNotebook } from '../../src/notebook/trial/trial-notebook.ts';
import { inThreadRunner } from '../../src/plan/solver/plan-runner.ts';
import { PlanSolver } from '../../src/plan/solver/plan-solver.ts';

/** Plans in the test's own thread. */
export function threadPlanner(): Planner {
  const solver = new PlanSolver(inThreadRunner());
  const questions = inThreadRunner();
  // Kept from trial to trial, as on the page: to open one costs more than a trial.
  let open: { document: NotebookDocument; plan: string; notebook: TrialNotebook | null } | null = null;
  return {
    // A busy machine may need more than the page would give it.
    plan: (instance) => solver.ask({ kind: 'plan', instance, timeLimitS: 60 }),
    cancel: () => solver.cancel(),
    ask: async (task, signal) => {
      signal.throwIfAborted();
      return new PlanSolver(questions).ask(task);
    },
    tryFigure: async (document, trial, signal) => {
      signal.throwIfAborted();
      if (open === null || open.document !== document || open.plan !== trial.plan) {
        open?.notebook?.dispose();
        open = { document, plan: trial.plan, notebook: TrialNotebook.open(document, trial.plan) };
      }
      return (await open.notebook?.tryFigure(trial)) ?? [];
    },
  };
}
