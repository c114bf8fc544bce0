import { type FindPlan, findPlan } from '../find-plan.ts';
import { doTask, type PlanAnswer, type PlanTask } from '../plan-tasks.ts';
import type { AnswerMessage, TaskMessage } from './plan-messages.ts';
import { withRememberedStarts } from './remembered-starts.ts';
import { highsSolver } from './solve-programme.ts';

/** A task under way. */
export interface PlanRun {
  readonly answer: Promise<PlanAnswer>;
  /** Ends it; `answer` may then never settle. */
  stop(): void;
}

/** Where tasks are done: in this thread or in a worker. One at a time. */
export interface PlanRunner {
  run(task: PlanTask): PlanRun;
  dispose(): void;
}

/** What is needed of a web worker, so that tests can bring their own. */
export interface WorkerLike {
  postMessage(message: TaskMessage): void;
  terminate(): void;
  onmessage: ((event: { readonly data: AnswerMessage }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
}

/** Runs tasks in this thread, for Node and tests: it is busy while HiGHS works, and stops between two solves. */
export function inThreadRunner(find: FindPlan = inThreadFind()): PlanRunner {
  return {
    run(task) {
      const stopper = new AbortController();
      return { answer: doTask(task, find, stopper.signal), stop: () => stopper.abort() };
    },
    dispose() {},
  };
}

function inThreadFind(): FindPlan {
  const solve = withRememberedStarts(highsSolver());
  return (instance, options) => findPlan(instance, solve, options);
}

/**
 * Runs tasks in a worker of its own, which is kept from task to task, so that HiGHS is loaded once. HiGHS
 * cannot be asked to stop, so stopping ends the worker, and the next task starts another.
 * @param start makes a worker that runs plan-worker.ts
 * @param terminate ends one that is no longer listened to, at once unless said otherwise
 */
export function workerRunner(
  start: () => WorkerLike,
  terminate: (worker: WorkerLike) => void = (worker) => worker.terminate(),
): PlanRunner {
  let worker: WorkerLike | null = null;
  let lastId = 0;
  const end = (): void => {
    if (worker === null) return;
    worker.onmessage = null;
    worker.onerror = null;
    terminate(worker);
    worker = null;
  };
  return {
    run(task) {
      const own = worker ?? start();
      worker = own;
      lastId += 1;
      const id = lastId;
      const answer = new Promise<PlanAnswer>((resolve, reject) => {
        own.onmessage = ({ data }) => {
          if (data.id !== id) return;
          if ('answer' in data) resolve(data.answer);
          else reject(new Error(data.error));
        };
        own.onerror = (event) => {
          // A worker that failed to load answers nothing more: the next task gets a new one.
          if (worker === own) end();
          reject(new Error(event.message ?? 'The worker that solves the plan failed.'));
        };
      });
      own.postMessage({ id, task });
      return {
        answer,
        stop: () => {
          if (worker === own) end();
        },
      };
    },
    dispose: end,
  };
}
