import { expect, test } from 'vitest';
import { type FindPlan, findPlan } from '../../src/plan/find-plan.ts';
import type { PlanLimits } from '../../src/plan/plan-instance.ts';
import { isSolved, type PlanTotals } from '../../src/plan/plan-result.ts';
import { costsBetween } from '../../src/plan/plan-tasks.ts';
import { highsSolver } from '../../src/plan/solver/solve-programme.ts';
import { frontier, whatOneMoreSaves, whatPinsCost } from '../../src/plan/what-if.ts';
import { bruteForce } from './brute-force.ts';
import { randomInstance } from './random-instance.ts';
import { call, instanceOf, offer, pack, part, supplier } from './small-instance.ts';

const solve = highsSolver();
const find: FindPlan = (instance, options) => findPlan(instance, solve, options);

/** Each of three parts costs 100 when left; replacing takes 40, 50, 60 EUR, carrying 1 kg and 1 EUR. */
const three = instanceOf({
  parts: ['A', 'B', 'C'].map((name) => part(name)),
  calls: ['A', 'B', 'C'].flatMap((name) => [
    call(name, 'leave', 100, { strand_chance: 0.1 }),
    call(name, 'replace', 0, { need: 1, shed_hours: 1 }),
  ]),
  offers: [offer('a', 's', 40, [['A', 1]]), offer('b', 's', 50, [['B', 1]]), offer('c', 's', 60, [['C', 1]])],
  suppliers: [supplier('s')],
  limits: { cash: 90, shed_hours: 2, trip_risk: null, packs: [pack({ mass_kg: 3 })] },
});

test('what one more saves: by solving again with that limit alone raised', async () => {
  // 90 EUR and 2 h: A and B, 90 + 100 = 190. With 3 h still 90 EUR. With 150 EUR and 2 h still A and B.
  const savings = await whatOneMoreSaves(three, { cash: 60, shed_hours: 1, mass_kg: 1 }, find);
  expect(savings.map(({ limit, saves }) => [limit, saves])).toEqual([
    ['cash', 0],
    ['shed_hours', 0],
    ['mass_kg', 0],
  ]);
  const roomy = { ...three, limits: { ...three.limits, shed_hours: null } };
  const [saving] = await whatOneMoreSaves(roomy, { cash: 60, shed_hours: 1 }, find);
  // 150 EUR replace all three: 150 against 190.
  expect(saving).toMatchObject({ limit: 'cash', more: 60, saves: 40, proven: true });
  expect(saving?.sentence).toBe('Cash: 60.00 EUR more would save 40.00 EUR.');
});

test('what more of each bag saves is what solving with that bag alone raised gives, on random plans with bags', async () => {
  const more = { mass_kg: 1, volume_L: 1 };
  let [lines, solvedTogether] = [0, 0];
  for (let seed = 1; seed <= 50; seed += 1) {
    const instance = randomInstance(seed);
    const { limits } = instance;
    if (limits.packs.every(({ bags }) => bags.length < 2)) continue;
    let solves = 0;
    const counted: FindPlan = (one, options) => {
      solves += 1;
      return find(one, options);
    };
    const all = await whatOneMoreSaves(instance, more, counted);
    const savings = all.filter(({ bag }) => bag !== null);
    const base = await find(instance);
    if (solves < 1 + all.length) solvedTogether += 1;
    for (const { limit, rider, bag, saves } of savings) {
      if (limit !== 'mass_kg' && limit !== 'volume_L') throw new Error(`a bag has no ${limit}`);
      const packs = limits.packs.map((one) =>
        one.rider !== rider
          ? one
          : {
              ...one,
              bags: one.bags.map((in_) => (in_.name === bag ? { ...in_, [limit]: in_[limit]! + 1 } : in_)),
            },
      );
      const alone = await find({ ...instance, limits: { ...limits, packs } });
      if (!isSolved(alone) || !isSolved(base)) throw new Error(`seed ${seed} has no plan`);
      if (saves === null) expect(alone.meets_limits && base.meets_limits, `seed ${seed}`).toBe(false);
      else {
        const saved = base.totals.expected_cost - alone.totals.expected_cost;
        expect(Math.abs(saves - saved), `seed ${seed}, ${bag}`).toBeLessThan(0.005);
      }
      lines += 1;
    }
  }
  expect(lines).toBeGreaterThan(10);
  expect(solvedTogether).toBeGreaterThan(0);
}, 60_000);

/** 0.7 of what a plan takes as the limit of one thing, another one from seed to seed. */
function tightened(limits: PlanLimits, { cash, shed_hours, packs }: PlanTotals, seed: number): PlanLimits {
  if (seed % 4 === 0) return { ...limits, cash: 0.7 * cash };
  if (seed % 4 === 1) return { ...limits, shed_hours: 0.7 * shed_hours };
  const kind = seed % 4 === 2 ? 'mass_kg' : 'volume_L';
  return {
    ...limits,
    packs: limits.packs.map((one, index) => ({ ...one, [kind]: 0.7 * packs[index]![kind] })),
  };
}

test('on random plans what one more saves is what trying everything within the wider limit saves', async () => {
  const more = { cash: 50, shed_hours: 1, mass_kg: 1, volume_L: 1 };
  const saving = new Map<string, number>();
  for (let seed = 1; seed <= 60; seed += 1) {
    const plain = randomInstance(seed);
    const roomy = plain.parts.length <= 5 ? await find(plain) : null;
    if (roomy === null || !isSolved(roomy)) continue;
    // Less of one of them than the best plan takes, so that more of it is often worth something.
    const instance = { ...plain, limits: tightened(plain.limits, roomy.totals, seed) };
    const found = await find(instance);
    if (!isSolved(found) || !found.meets_limits) continue;
    const base = bruteForce(instance)!;
    const { limits } = instance;
    for (const { limit, rider, bag, more: by, saves } of await whatOneMoreSaves(instance, more, find)) {
      const raise = <Of extends object>(of: Of): Of => ({
        ...of,
        [limit]: (of as Record<string, number>)[limit]! + by,
      });
      const packs = limits.packs.map((pack) =>
        pack.rider !== rider
          ? pack
          : bag === null
            ? raise(pack)
            : { ...pack, bags: pack.bags.map((one) => (one.name === bag ? raise(one) : one)) },
      );
      const wider = bruteForce({
        ...instance,
        limits: rider === null ? raise(limits) : { ...limits, packs },
      })!;
      expect(saves, `seed ${seed}, ${limit} ${rider} ${bag}`).toBeCloseTo(base.cost - wider.cost, 4);
      saving.set(limit, (saving.get(limit) ?? 0) + (saves! > 0.005 ? 1 : 0));
    }
  }
  // Worth nothing unless more of each limit saves something somewhere.
  for (const limit of Object.keys(more)) expect(saving.get(limit), limit).toBeGreaterThan(0);
}, 60_000);

test('more of a limit that no plan meets says whether it is enough', async () => {
  const short = {
    ...three,
    pins: ['A', 'B'].map((name) => ({ part: name, call: 'replace' })),
    limits: { ...three.limits, cash: 50 },
  };
  const [little] = await whatOneMoreSaves(short, { cash: 10 }, find);
  expect(little?.sentence).toBe('Cash: 10.00 EUR more is not enough to meet every limit.');
  const [enough] = await whatOneMoreSaves(short, { cash: 40 }, find);
  expect(enough).toMatchObject({
    saves: null,
    sentence: 'Cash: 40.00 EUR more is enough to meet every limit.',
  });
});

test('the frontier: each sum to spend with its least expected total and its chance of a stranding', async () => {
  const points = await frontier(three, [90, 0, 45, 200], find);
  expect(points.map(({ budget, cash, expected_cost }) => [budget, cash, expected_cost])).toEqual([
    [0, 0, 300],
    [45, 40, 240],
    [90, 90, 190],
    [200, 90, 190],
  ]);
  expect(points[0]?.trip_risk).toBeCloseTo(0.271, 12); // 1 - 0.9^3
});

test('on random plans a frontier never rises, and its reused points are what solving them gives', async () => {
  for (let seed = 1; seed <= 15; seed += 1) {
    const instance = randomInstance(seed);
    const budgets = [0, 20, 40, 60, 80, 100, 140];
    const points = (await frontier(instance, budgets, find)).filter(({ meets_limits }) => meets_limits);
    for (const [index, point] of points.entries()) {
      const before = points[index - 1];
      if (before)
        expect(point.expected_cost, `seed ${seed}`).toBeLessThanOrEqual(before.expected_cost + 1e-6);
      const alone = await find({ ...instance, limits: { ...instance.limits, cash: point.budget } });
      expect(isSolved(alone) ? alone.totals.expected_cost : Number.NaN).toBeCloseTo(point.expected_cost, 4);
    }
  }
}, 60_000);

test('what the pins cost, in money and in risk', async () => {
  const pinned = { ...three, pins: [{ part: 'A', call: 'leave' }] };
  const withPins = await find(pinned);
  if (!isSolved(withPins)) throw new Error(withPins.sentence);
  const difference = await whatPinsCost(pinned, withPins, find);
  // With A left only 60 EUR for C or 50 for B fit into 90: 100 + 50 + 100 = 250 against 190; a second part at risk.
  expect(difference?.more_cost).toBeCloseTo(60, 9);
  expect(difference?.more_risk).toBeCloseTo(0.09, 9); // 1 - 0.9^2 - 0.1
  expect(difference?.sentence).toBe(
    'The calls set by hand cost 60.00 EUR more than the proposed plan, with 9.00 points more chance of a stranding.',
  );
});

test('what calls ruled out by hand cost counts with the pins', async () => {
  const without = { ...three, forbidden: [{ part: 'A', call: 'replace' }] };
  const found = await find(without);
  if (!isSolved(found)) throw new Error(found.sentence);
  // A can only be left: the same plan as with that pin, 60 EUR dearer.
  expect((await whatPinsCost(without, found, find))?.more_cost).toBeCloseTo(60, 9);
});

test('costs at a wear rate between two given ones lie on the line between them, and stop at the ends', () => {
  const costs = [
    { rate: 1, costs: [['leave', 10]] as const },
    { rate: 2, costs: [['leave', 30]] as const },
  ];
  expect([0.5, 1, 1.5, 2, 9].map((rate) => costsBetween(costs, rate).get('leave'))).toEqual([
    10, 10, 20, 30, 30,
  ]);
  expect(costsBetween([], 1).size).toBe(0);
});
