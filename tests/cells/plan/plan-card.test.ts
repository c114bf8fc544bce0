import { describe, expect, test } from 'vitest';
import { limitRows, ONE_MORE, tightLimits } from '../../../cells/plan/plan-limits.ts';
import { lateOffers, ordersOf } from '../../../cells/plan/plan-orders.ts';
import { dayAfter, orderByWords, verdictOf } from '../../../cells/plan/plan-words.ts';
import { isSolved, type SolvedPlan } from '../../../src/plan/plan-result.ts';
import { solvePlan } from '../../../src/plan/solver/solve-plan.ts';
import { whatOneMoreSaves } from '../../../src/plan/what-if.ts';
import { call, instanceOf, offer, pack, part, supplier } from '../../plan/small-instance.ts';

/** Two parts wanted new: B and C are cheapest in a kit of Near; Far is cheaper and comes too late. */
const shop = instanceOf({
  days_to_cut_off: 19,
  margin_days: 3,
  parts: [part('A'), part('B'), part('C')],
  calls: [
    call('A', 'leave', 200),
    call('A', 'replace', 0, { need: 1, shed_hours: 2 }),
    call('B', 'leave', 100),
    call('B', 'replace', 0, { need: 1, shed_hours: 1 }),
    call('C', 'leave', 100),
    call('C', 'carry 1', 0, { need: 1, mass_kg: 1.9 }),
  ],
  offers: [
    offer('N-1', 'Near', 50, [['A', 1]], { arrives_in_days: 6 }),
    offer(
      'N-K',
      'Near',
      40,
      [
        ['B', 1],
        ['C', 2],
      ],
      { arrives_in_days: 8 },
    ),
    offer('F-1', 'Far', 10, [['A', 1]], { arrives_in_days: 18 }),
  ],
  suppliers: [supplier('Near', 9, 80), supplier('Far', 2)],
  limits: {
    cash: 100,
    shed_hours: 3,
    trip_risk: null,
    packs: [pack({ rider: '', mass_kg: 2 })],
  },
});
const inPack = { ...shop, parts: shop.parts.map((one) => ({ ...one, rider: '' })) };

async function solved(instance = inPack): Promise<SolvedPlan> {
  const result = await solvePlan(instance);
  if (!isSolved(result)) throw new Error(result.sentence);
  return result;
}

describe('what may be said of a plan', () => {
  test('proven only where the solver proved it', async () => {
    const plan = await solved();
    expect(verdictOf(plan, inPack)).toMatchObject({ kind: 'proven', word: 'Proven best' });
    expect(verdictOf({ ...plan, status: 'gap', gap: 3.2 }, inPack)).toMatchObject({
      kind: 'found',
      sentence: 'The time ran out before it was proven: at most 3.20 EUR better is possible.',
    });
    expect(verdictOf({ ...plan, status: 'gap', gap: null }, inPack).sentence).toMatch(/is not known/);
    expect(
      verdictOf({ ...plan, status: 'unverified', problems: ['It breaks a set.'] }, inPack),
    ).toMatchObject({
      kind: 'none',
      word: 'Not to be followed',
    });
    expect(verdictOf(null, inPack).kind).toBe('waits');
  });

  test('limits that cannot be met are not passed over', async () => {
    const poor = {
      ...inPack,
      limits: { ...inPack.limits, cash: 10 },
      pins: [{ part: 'A', call: 'replace' }],
    };
    const plan = await solved(poor);
    expect(verdictOf(plan, poor)).toMatchObject({ kind: 'short', word: 'Does not meet the limits' });
    expect(plan.shortfalls.map((one) => one.sentence).join(' ')).toMatch(
      /^Cash: the nearest plan takes 59.00 EUR/,
    );
  });

  test('without a plan its own sentence and mends', () => {
    const none = {
      status: 'faulty' as const,
      sentence: 'The plan waits.',
      faults: [{ kind: 'name' as const, message: 'The part "A" is there twice.', mend: 'Rename one.' }],
      refused_pins: [],
      undecided: [],
    };
    expect(verdictOf(none, inPack).sentence).toBe('The plan waits. The part "A" is there twice. Rename one.');
  });
});

describe('the orders', () => {
  test('lines with kits named, freight free over its sum, order by the slowest line', async () => {
    const [order, ...others] = ordersOf(inPack, await solved());
    expect(others).toEqual([]);
    // 50 + 40 = 90 is over 80, so freight is free; 19 days - 3 in hand - 8 for the slowest line = 8.
    expect(order).toMatchObject({
      supplier: 'Near',
      goods: 90,
      freight: 0,
      free: true,
      arrivesInDays: 8,
      orderWithinDays: 8,
    });
    expect(order?.lines.find((line) => line.isKit)).toMatchObject({
      covers: ['B', 'C, 2'],
      packs: 1,
      sum: 40,
    });
  });

  test('what comes too late is told with by how much', async () => {
    expect(lateOffers(inPack, await solved())).toEqual([
      { supplier: 'Far', partNumber: 'F-1', covers: ['A'], arrivesInDays: 18, lateByDays: 2 },
    ]);
  });

  test('a date where today is known, days where it is not', () => {
    expect(orderByWords(8, '2027-04-12')).toBe('order by 2027-04-20');
    expect(orderByWords(8, null)).toBe('order within 8 days');
    expect(orderByWords(0, null)).toBe('order today');
    expect(orderByWords(-1, '2027-04-12')).toBe('too late to order');
    expect(dayAfter('2027-02-27', 2)).toBe('2027-03-01');
  });
});

describe('the limits', () => {
  test('used, limit, level and what one more saves', async () => {
    const plan = await solved();
    const savings = await whatOneMoreSaves(inPack, ONE_MORE, solvePlan);
    const rows = limitRows(inPack, plan.totals, savings);
    expect(rows.map((row) => [row.name, row.used, row.limit, row.unit, row.level])).toEqual([
      ['Cash', '90.00', '100.00', 'EUR', 'near'],
      ['Shed hours', '3.00', '3.00', 'h', 'near'],
      ['Weight in the pack', '1.90', '2.00', 'kg', 'near'],
    ]);
    expect(rows.map((row) => row.more)).toEqual([
      '50 EUR more saves nothing',
      '1 h more saves nothing',
      '1 kg more saves nothing',
    ]);
    expect(tightLimits(inPack, plan.totals)).toEqual(['Shed hours, 3.00 of 3.00 h']);
  });

  test('a limit that binds: more of it saves what the next call is worth', async () => {
    // With 60 to spend only A (59 with freight) or the kit (49) can be had: 50 more buys both.
    const poor = { ...inPack, limits: { ...inPack.limits, cash: 60 } };
    const plan = await solved(poor);
    const rows = limitRows(poor, plan.totals, await whatOneMoreSaves(poor, ONE_MORE, solvePlan));
    // The kit saves 200 for 49, A saves 200 for 59: the kit is bought; both for 90 cost 90 in all, not 249.
    expect(plan.totals.cash).toBeCloseTo(49, 9);
    expect(rows[0]).toMatchObject({ used: '49.00', more: '50 EUR more saves 159.00 EUR' });
  });

  test('over its limit', async () => {
    const plan = await solved();
    const tight = { ...inPack, limits: { ...inPack.limits, shed_hours: 2 } };
    expect(limitRows(tight, plan.totals, null)[1]).toMatchObject({ level: 'over', more: '' });
  });
});
