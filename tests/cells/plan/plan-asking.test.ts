import { expect, test } from 'vitest';
import { PlanAsking } from '../../../cells/plan/plan-asking.ts';
import type { PlanSolution } from '../../../src/notebook/graph/node-spec.ts';
import { instanceOf } from '../../plan/small-instance.ts';

const solution = (): PlanSolution => ({ instance: instanceOf({}), rowOfOffer: new Map(), result: null });

function asking() {
  let drawn = 0;
  const held = new PlanAsking<string>(() => {
    drawn += 1;
  });
  return { held, drawn: () => drawn };
}

/** A question that is answered by hand. */
function question() {
  let answer: (text: string) => void = () => undefined;
  let fail: (error: Error) => void = () => undefined;
  let given: AbortSignal | null = null;
  let tell: (text: string) => void = () => undefined;
  const ask = (signal: AbortSignal, told: (text: string) => void) => {
    given = signal;
    tell = told;
    return new Promise<string>((resolve, reject) => {
      answer = resolve;
      fail = reject;
    });
  };
  return {
    ask,
    answer: (text: string) => answer(text),
    fail: (error: Error) => fail(error),
    tell: (text: string) => tell(text),
    isGivenUp: () => given?.aborted,
  };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

test('the same question is asked once, and its answer kept with its plan', async () => {
  const { held, drawn } = asking();
  const [plan, first] = [solution(), question()];
  held.about(plan, 'Battery', first.ask);
  held.about(plan, 'Battery', () => Promise.reject(new Error('asked twice')));
  first.tell('at first');
  expect([held.answer, held.busy]).toEqual(['at first', true]);
  first.answer('in the end');
  await settled();
  expect([held.answer, held.busy, held.isAbout(plan), held.isAbout(solution())]).toEqual([
    'in the end',
    false,
    true,
    false,
  ]);
  expect(drawn()).toBe(2);
});

test('a newer plan gives up the question under way, whose late answer concerns nobody', async () => {
  const { held } = asking();
  const [first, second] = [question(), question()];
  held.about(solution(), 'Battery', first.ask);
  held.about(solution(), 'Battery', second.ask);
  expect(first.isGivenUp()).toBe(true);
  second.answer('new');
  first.answer('old');
  first.tell('older still');
  await settled();
  expect(held.answer).toBe('new');
});

test('stopped, the same may be asked again; a failure is kept as its sentence', async () => {
  const { held } = asking();
  const [plan, first, second] = [solution(), question(), question()];
  held.about(plan, 'Battery', first.ask);
  held.stop();
  first.fail(new Error('given up'));
  await settled();
  expect([held.failure, held.busy]).toEqual(['', false]);
  held.about(plan, 'Battery', second.ask);
  second.fail(new Error('The solver could not be loaded.'));
  await settled();
  expect([held.failure, held.busy]).toEqual(['The solver could not be loaded.', false]);
});
