import { expect, test } from 'vitest';
import { findPlan } from '../../src/plan/find-plan.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import type { Programme, SolveProgramme } from '../../src/plan/programme.ts';
import { allows, withRememberedStarts } from '../../src/plan/solver/remembered-starts.ts';
import { highsSolver } from '../../src/plan/solver/solve-programme.ts';
import { randomInstance } from './random-instance.ts';

const cold = highsSolver();

test('columns found before are a start, and the plan is the one that is found without them, edit after edit', async () => {
  let [started, plans] = [0, 0];
  const counted: SolveProgramme = (programme, options) => {
    if (options.start !== undefined) {
      started += 1;
      expect(allows(programme, options.start)).toBe(true);
    }
    return cold(programme, options);
  };
  const warm = withRememberedStarts(counted);
  for (let seed = 1; seed <= 25; seed += 1) {
    const first = randomInstance(seed);
    // As edits do it: costs other, then less to spend, then a kilogram less, then as it was.
    const edited = {
      ...first,
      calls: first.calls.map((one, index) => ({
        ...one,
        cost_without_cash: one.cost_without_cash * (1 + (index % 3) / 10),
      })),
    };
    const { cash } = edited.limits;
    const poorer = { ...edited, limits: { ...edited.limits, cash: cash === null ? 50 : cash * 0.8 } };
    for (const instance of [first, edited, poorer, first]) {
      const [one, other] = [await findPlan(instance, warm), await findPlan(instance, cold)];
      expect(one.status, `seed ${seed}`).toBe(other.status);
      if (!isSolved(one) || !isSolved(other)) continue;
      plans += 1;
      expect(one.meets_limits).toBe(other.meets_limits);
      expect(one.totals.expected_cost, `seed ${seed}`).toBeCloseTo(other.totals.expected_cost, 4);
    }
  }
  expect(plans).toBeGreaterThan(50);
  // Beside those with which ties are settled, which bring their own start.
  expect(started).toBeGreaterThan(plans * 1.3);
});

test('only columns that keep every bound and row are a start', () => {
  const programme: Programme = {
    cost: [1, 1],
    lower: [0, 0],
    upper: [1, 2],
    whole: [true, true],
    rows: [
      {
        lower: 2,
        upper: 3,
        terms: [
          [0, 1],
          [1, 1],
        ],
      },
    ],
  };
  expect(allows(programme, [1, 1])).toBe(true);
  expect(allows(programme, [0.9999999999, 2])).toBe(true);
  expect(allows(programme, [0, 1])).toBe(false); // the row asks for 2
  expect(allows(programme, [1.5, 1])).toBe(false); // past its bound
  expect(allows(programme, [1, 1, 0])).toBe(false); // of another programme
});
