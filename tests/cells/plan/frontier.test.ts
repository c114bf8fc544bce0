import { expect, test } from 'vitest';
import { FRONTIER_SIZE, frontierDrawing, ticks } from '../../../cells/plan/frontier-drawing.ts';
import { budgetsAround, roundUp, runFrontier } from '../../../cells/plan/frontier-run.ts';
import type { Planner } from '../../../src/notebook/graph/planner.ts';
import type { FrontierPoint } from '../../../src/plan/what-if.ts';
import { threadPlanner } from '../../notebook/thread-planner.ts';
import { call, instanceOf, offer, part, supplier } from '../../plan/small-instance.ts';

/** Replacing A costs 30 and saves 100, replacing B costs 60 and saves 80. */
const instance = instanceOf({
  parts: [part('A'), part('B')],
  calls: [
    call('A', 'leave', 100, { strand_chance: 0.2 }),
    call('A', 'replace', 0, { need: 1 }),
    call('B', 'leave', 80, { strand_chance: 0.5 }),
    call('B', 'replace', 0, { need: 1 }),
  ],
  offers: [offer('a', 'Shop', 30, [['A', 1]]), offer('b', 'Shop', 60, [['B', 1]])],
  suppliers: [supplier('Shop')],
  limits: { cash: 50, shed_hours: null, trip_risk: null, packs: [] },
});

const stopper = () => new AbortController();

test('sums in round steps around the budget, with the budget among them', () => {
  const sums = budgetsAround(1050, 1007);
  expect(sums).toContain(1050);
  expect(sums.at(-1)).toBe(1800);
  expect(sums).toEqual([...sums].sort((a, b) => a - b));
  expect(budgetsAround(null, 0).length).toBe(12);
  expect([roundUp(131), roundUp(2), roundUp(0.7), roundUp(9.5)]).toEqual([150, 2, 1, 10]);
});

test('the best plan for each sum, told as they come, a cheap plan serving smaller sums as well', async () => {
  const planner = threadPlanner();
  let questions = 0;
  const counted: Planner = {
    ...planner,
    ask: (task, signal) => {
      questions += 1;
      return planner.ask(task, signal);
    },
  };
  const told: number[] = [];
  const withPacks = { ...instance, parts: instance.parts.map((one) => ({ ...one, rider: '' })) };
  const rides = {
    ...withPacks,
    limits: {
      ...withPacks.limits,
      packs: [{ rider: '', mass_kg: null, volume_L: null, packed_kg: 0, packed_L: 0, bags: [] }],
    },
  };
  const points = await runFrontier(counted, rides, [20, 40, 70, 100, 200], stopper().signal, (so_far) =>
    told.push(so_far.length),
  );
  // 20 buys nothing; 40 and 70 buy A; 100 buys both for 90.
  expect(points.map((point) => [point.budget, point.cash, point.expected_cost])).toEqual([
    [20, 0, 180],
    [40, 30, 110],
    [70, 30, 110],
    [100, 90, 90],
    [200, 90, 90],
  ]);
  // Chance that something strands: 1 - 0.8 * 0.5 = 0.6 with nothing bought.
  expect(points[0]?.trip_risk).toBeCloseTo(0.6, 12);
  expect(told).toEqual([1, 2, 3, 4, 5]);
  expect(questions).toBe(3);
});

test('stopped, it asks no further', async () => {
  const controller = stopper();
  const asked = runFrontier(threadPlanner(), instance, [10, 20], controller.signal, () => undefined);
  controller.abort(new Error('stopped'));
  await expect(asked).rejects.toThrow('stopped');
});

test('the drawing keeps to its frame, more money to the right, more risk upwards', () => {
  const point = (budget: number, trip_risk: number, meets_limits = true): FrontierPoint => ({
    budget,
    cash: budget,
    expected_cost: 500 - budget,
    trip_risk,
    meets_limits,
    status: 'optimal',
  });
  const points = [point(100, 0.6, false), point(200, 0.4), point(300, 0.2)];
  const drawing = frontierDrawing(points, [100, 200, 300], { cash: 250, up: 0.3 }, 'risk');
  const { left, right, top, bottom } = FRONTIER_SIZE;
  for (const { x, y } of drawing.points) {
    expect(x).toBeGreaterThanOrEqual(left);
    expect(x).toBeLessThanOrEqual(right);
    expect(y).toBeGreaterThanOrEqual(top - 1e-9);
    expect(y).toBeLessThanOrEqual(bottom);
  }
  expect(drawing.points.map(({ x }) => x)).toEqual(
    [...drawing.points.map(({ x }) => x)].sort((a, b) => a - b),
  );
  expect(drawing.y(0.6)).toBeLessThan(drawing.y(0.2));
  // The line leaves out what does not meet the limits.
  expect(drawing.line.split('L').length).toBe(2);
  expect(drawing.yTicks.map((tick) => tick.shown)).toEqual(['0', '20', '40', '60']);
});

test('round ticks', () => {
  expect(ticks(0, 0.6, 5)).toEqual([0, 0.2, 0.4, 0.6]);
  expect(ticks(-595, 368, 5)).toEqual([-400, -200, 0, 200]);
  expect(ticks(0, 1800, 6)).toEqual([0, 500, 1000, 1500]);
});
