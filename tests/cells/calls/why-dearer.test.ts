import { expect, test } from 'vitest';
import { whyDearer } from '../../../cells/calls/why-dearer.ts';
import type { PlanInstance } from '../../../src/plan/plan-instance.ts';
import { solvePlan } from '../../../src/plan/solver/solve-plan.ts';
import { call, instanceOf, offer, pack, part, supplier } from '../../plan/small-instance.ts';
import { decision } from './parts-and-calls.ts';

const pair = instanceOf({
  parts: [part('A'), part('B')],
  calls: [
    call('A', 'leave', 50),
    call('A', 'replace', 0, { need: 1 }),
    call('B', 'leave', 50),
    call('B', 'replace', 0, { need: 1 }),
  ],
  offers: [
    offer('a', 'Shop', 40, [['A', 1]]),
    offer('kit', 'Shop', 45, [
      ['A', 1],
      ['B', 1],
    ]),
  ],
  suppliers: [supplier('Shop')],
});

async function why(instance: PlanInstance, name: string) {
  const result = await solvePlan(instance);
  const solution = { instance, rowOfOffer: new Map(), result };
  const notebook = { planOf: () => ({ working: false, solution, fault: null }) };
  return whyDearer(notebook, { ...decision, plan: 'plan' }, name);
}

test('in a kit with others', async () => {
  expect(await why(pair, 'B')).toEqual({ word: 'kit', title: 'it is bought in a kit with A' });
});

test('where the limits leave no room, the limit that is all but used up is named', async () => {
  const tight = {
    ...pair,
    offers: pair.offers.filter(({ id }) => id === 'a'),
    limits: { ...pair.limits, cash: 40, packs: [pack()] },
  };
  expect(await why(tight, 'B')).toEqual({
    word: 'limits',
    title: 'the plan keeps its limits (Cash, 40.00 of 40.00 EUR)',
  });
});

test('otherwise it is the plan as a whole', async () => {
  const roomy = { ...pair, offers: pair.offers.filter(({ id }) => id === 'a') };
  expect((await why(roomy, 'B')).word).toBe('plan');
});
