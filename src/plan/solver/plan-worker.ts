import { findPlan } from '../find-plan.ts';
import { doTask } from '../plan-tasks.ts';
import type { AnswerMessage, TaskMessage } from './plan-messages.ts';
import { withRememberedStarts } from './remembered-starts.ts';
import { highsSolver } from './solve-programme.ts';

/** What this file needs of the worker it runs in. */
interface WorkerScope {
  onmessage: ((event: { readonly data: TaskMessage }) => void) | null;
  postMessage(message: AnswerMessage): void;
}

const scope = globalThis as unknown as WorkerScope;
const solve = withRememberedStarts(highsSolver());

scope.onmessage = ({ data: { id, task } }) => {
  doTask(task, (instance, options) => findPlan(instance, solve, options)).then(
    (answer) => scope.postMessage({ id, answer }),
    (error: unknown) =>
      scope.postMessage({ id, error: error instanceof Error ? error.message : String(error) }),
  );
};
