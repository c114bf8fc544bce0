import type { PlanAnswer, PlanTask } from '../plan-tasks.ts';

/** To the worker: one task, with a number to know its answer by. There is no cancelling: end the worker. */
export interface TaskMessage {
  readonly id: number;
  readonly task: PlanTask;
}

/** From the worker: the answer, or why there is none. */
export type AnswerMessage =
  | { readonly id: number; readonly answer: PlanAnswer }
  | { readonly id: number; readonly error: string };
