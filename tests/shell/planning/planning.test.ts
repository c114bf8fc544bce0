import { describe, expect, test } from 'vitest';
import type { PlanTask } from '../../../src/plan/plan-tasks.ts';
import type { PlanRunner } from '../../../src/plan/solver/plan-runner.ts';
import { PlanSolver } from '../../../src/plan/solver/plan-solver.ts';
import { QuestionQueue } from '../../../src/shell/planning/question-queue.ts';
import { TrialDesk, type TrialWorkerLike } from '../../../src/shell/planning/trial-desk.ts';
import type { TrialMessage } from '../../../src/shell/planning/trial-messages.ts';
import { instanceOf } from '../../plan/small-instance.ts';
import { demo } from '../../starter/support.ts';

const task = (timeLimitS: number): PlanTask => ({ kind: 'plan', instance: instanceOf({}), timeLimitS });
const turn = () => new Promise((resolve) => setTimeout(resolve));

/** A runner that answers by hand, and notes what it is given and what is stopped. */
function handRunner() {
  const given: { task: PlanTask; answer: (value: never) => void; stopped: boolean }[] = [];
  const runner: PlanRunner = {
    run(asked) {
      const one = { task: asked, answer: (_value: never) => {}, stopped: false };
      const answer = new Promise<never>((resolve) => {
        one.answer = resolve;
      });
      given.push(one);
      return {
        answer,
        stop: () => {
          one.stopped = true;
        },
      };
    },
    dispose() {},
  };
  return { given, queue: new QuestionQueue(new PlanSolver(runner)) };
}

describe('questions about plans', () => {
  test('are answered one after another, none pushing another aside', async () => {
    const { given, queue } = handRunner();
    const { signal } = new AbortController();
    const [first, second] = [queue.ask(task(1), signal), queue.ask(task(2), signal)];
    await turn();
    expect(given.map((one) => one.task.timeLimitS)).toEqual([1]);
    given[0]?.answer('one' as never);
    expect(await first).toBe('one');
    await turn();
    given[1]?.answer('two' as never);
    expect(await second).toBe('two');
  });

  test('one that is given up under way is stopped, one that waits is passed over, the next is answered', async () => {
    const { given, queue } = handRunner();
    const stoppers = [new AbortController(), new AbortController(), new AbortController()] as const;
    const asked = stoppers.map(({ signal }, at) => queue.ask(task(at), signal));
    const failed = [asked[0], asked[1]].map((one) => expect(one).rejects.toThrow('given up'));
    await turn();
    stoppers[1].abort(new Error('given up'));
    stoppers[0].abort(new Error('given up'));
    await Promise.all(failed);
    await turn();
    expect(given.map((one) => [one.task.timeLimitS, one.stopped])).toEqual([
      [0, true],
      [2, false],
    ]);
    given[1]?.answer('last' as never);
    expect(await asked[2]).toBe('last');
  });
});

/** A worker that is answered by hand. */
class HandWorker implements TrialWorkerLike {
  onmessage: TrialWorkerLike['onmessage'] = null;
  onerror: TrialWorkerLike['onerror'] = null;
  readonly got: TrialMessage[] = [];
  terminated = false;
  postMessage(message: TrialMessage): void {
    this.got.push(message);
  }
  terminate(): void {
    this.terminated = true;
  }
}

describe('the desk that has figures tried', () => {
  const trial = { plan: 'plan', part: 'Battery', figure: 'price', shares: [2] } as const;

  test('sends the notebook once, and again only when it is another', async () => {
    const worker = new HandWorker();
    const desk = new TrialDesk(() => worker);
    const { signal } = new AbortController();
    const [document, other] = [demo(), demo()];
    const asked = [document, document, other].map((one) => desk.tryFigure(one, trial, signal));
    expect(worker.got.map((message) => message.document)).toEqual([document, null, other]);
    for (const { id } of worker.got) worker.onmessage?.({ data: { id, points: [{ share: id, calls: [] }] } });
    expect((await Promise.all(asked)).map(([point]) => point?.share)).toEqual([1, 2, 3]);
  });

  test('given up: its answer finds nobody waiting; failed: a new worker gets the notebook again', async () => {
    const workers: HandWorker[] = [];
    const desk = new TrialDesk(() => {
      const worker = new HandWorker();
      workers.push(worker);
      return worker;
    });
    const document = demo();
    const stopper = new AbortController();
    const given = desk.tryFigure(document, trial, stopper.signal);
    stopper.abort(new Error('given up'));
    await expect(given).rejects.toThrow('given up');
    const failing = desk.tryFigure(document, trial, new AbortController().signal);
    workers[0]?.onerror?.({ message: 'out of memory' });
    await expect(failing).rejects.toThrow('out of memory');
    void desk.tryFigure(document, trial, new AbortController().signal);
    expect(workers.map((worker) => worker.terminated)).toEqual([true, false]);
    expect(workers[1]?.got[0]?.document).toBe(document);
  });
});
