import { afterEach, expect, test, vi } from 'vitest';
import type { PlanTask } from '../../src/plan/plan-tasks.ts';
import type { AnswerMessage, TaskMessage } from '../../src/plan/solver/plan-messages.ts';
import { inThreadRunner, type WorkerLike, workerRunner } from '../../src/plan/solver/plan-runner.ts';
import { PlanSolver, PlanSuperseded } from '../../src/plan/solver/plan-solver.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { largeInstance } from './large-instance.ts';
import { call, instanceOf, part } from './small-instance.ts';

const small = (cost: number) => instanceOf({ parts: [part('A')], calls: [call('A', 'leave', cost)] });
const task = (cost: number): PlanTask & { kind: 'plan' } => ({ kind: 'plan', instance: small(cost) });

/** Workers that answer when told to. */
class HandWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  readonly got: TaskMessage[] = [];
  terminated = false;
  postMessage(message: TaskMessage): void {
    this.got.push(message);
  }
  terminate(): void {
    this.terminated = true;
  }
  say(message: AnswerMessage): void {
    this.onmessage?.({ data: message });
  }
}

function handWorkers(): { workers: HandWorker[]; solver: PlanSolver } {
  const workers: HandWorker[] = [];
  const start = (): HandWorker => {
    const worker = new HandWorker();
    workers.push(worker);
    return worker;
  };
  return { workers, solver: new PlanSolver(workerRunner(start)) };
}

afterEach(() => vi.unstubAllGlobals());

test('in Node the plan comes from this thread', async () => {
  const solver = new PlanSolver(inThreadRunner());
  const result = await solver.ask(task(7));
  expect(result).toMatchObject({ status: 'optimal', totals: { expected_cost: 7 } });
  expect(solver.busy).toBe(false);
  solver.dispose();
});

test('a newer question gives up the one under way, by name, and is answered itself', async () => {
  const solver = new PlanSolver(inThreadRunner());
  const older = solver.ask(task(1));
  const newer = solver.ask(task(2));
  await expect(older).rejects.toThrow(PlanSuperseded);
  expect(await newer).toMatchObject({ totals: { expected_cost: 2 } });
});

test('a worker is kept from question to question, and ended when its question is given up', async () => {
  const { workers, solver } = handWorkers();
  const first = solver.ask(task(1));
  workers[0]!.say({ id: 1, answer: [] });
  expect(await first).toEqual([]);
  const second = solver.ask(task(2));
  expect(workers).toHaveLength(1);
  const third = solver.ask(task(3));
  await expect(second).rejects.toThrow('A newer plan was asked for');
  expect(workers.map(({ terminated }) => terminated)).toEqual([true, false]);
  // What the ended worker had on its way is for nobody, and so is an answer to another question.
  workers[0]!.say({ id: 2, answer: [] });
  workers[1]!.say({ id: 2, answer: [] });
  expect(solver.busy).toBe(true);
  workers[1]!.say({ id: 3, answer: null });
  expect(await third).toBeNull();
});

test('a solver that fails says why, and the next question starts afresh', async () => {
  const { workers, solver } = handWorkers();
  const failed = solver.ask(task(1));
  workers[0]!.say({ id: 1, error: 'The solver could not be loaded.' });
  await expect(failed).rejects.toThrow('The solver could not be loaded.');
  const broken = solver.ask(task(2));
  workers[0]!.onerror?.({ message: 'no such file' });
  await expect(broken).rejects.toThrow('no such file');
  const good = solver.ask(task(3));
  workers[1]!.say({ id: 3, answer: null });
  expect(await good).toBeNull();
});

test('disposing gives up what is under way and ends the worker', async () => {
  const { workers, solver } = handWorkers();
  const asked = solver.ask(task(1));
  solver.dispose();
  await expect(asked).rejects.toThrow(PlanSuperseded);
  expect(workers[0]?.terminated).toBe(true);
  await expect(solver.ask(task(2))).rejects.toThrow('shut down');
});

test('the worker answers each task under its number, as plain data', async () => {
  const said: AnswerMessage[] = [];
  vi.stubGlobal('postMessage', (message: AnswerMessage) => said.push(structuredClone(message)));
  vi.stubGlobal('onmessage', null);
  await import('../../src/plan/solver/plan-worker.ts');
  const receive = (
    globalThis as unknown as WorkerLike & { onmessage: (event: { data: TaskMessage }) => void }
  ).onmessage;
  receive({ data: { id: 5, task: task(9) } });
  await expect.poll(() => said).toHaveLength(1);
  expect(said[0]).toMatchObject({ id: 5, answer: { status: 'optimal', totals: { expected_cost: 9 } } });
  // A plan that cannot be reckoned with this instance is an error under the task's own number.
  const alien = { plan: { chosen: [{ part: 'A', call: 'sell', bag: null }], bought: [] } };
  receive({
    data: { id: 6, task: { kind: 'why-part', instance: small(1), part: 'A', solved: alien as never } },
  });
  await expect.poll(() => said).toHaveLength(2);
  expect(said[1]).toMatchObject({ id: 6 });
});

test('a solve is stopped by its signal, with the reason given', async () => {
  const stopper = new AbortController();
  stopper.abort(new PlanSuperseded());
  await expect(solvePlan(small(1), { signal: stopper.signal })).rejects.toThrow(PlanSuperseded);
});

test('when the time is up the best so far is given as such, never as the optimum', async () => {
  const result = await solvePlan(largeInstance({ parts: 60, offers: 240, seed: 1 }), { timeLimitS: 0.3 });
  expect(['gap', 'out-of-time']).toContain(result.status);
  if (!('plan' in result)) return;
  expect(result.problems).toEqual([]);
  expect(result.ties_settled).toBe(false);
  expect(result.gap === null || result.gap > 0).toBe(true);
});
