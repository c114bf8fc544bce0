import type { Planner } from '../../src/notebook/graph/planner.ts';
import { TrialNotebook } from '../../src/notebook/trial/trial-notebook.ts';
import { inThreadRunner } from '../../src/plan/solver/plan-runner.ts';
import { PlanSolver } from '../../src/plan/solver/plan-solver.ts';

/** Plans in the test's own thread. */
export function threadPlanner(): Planner {
  const solver = new PlanSolver(inThreadRunner());
  const questions = inThreadRunner();
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
      const notebook = TrialNotebook.open(document, trial.plan);
      try {
        return (await notebook?.tryFigure(trial)) ?? [];
      } finally {
        notebook?.dispose();
      }
    },
  };
}
