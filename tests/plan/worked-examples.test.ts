import { describe, expect, test } from 'vitest';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { call, instanceOf, offer, pack, part, supplier } from './small-instance.ts';

async function solved(instance: PlanInstance): Promise<SolvedPlan> {
  const result = await solvePlan(instance);
  if (!isSolved(result)) throw new Error(result.sentence);
  expect(result.status).toBe('optimal');
  expect(result.problems).toEqual([]);
  return result;
}

const offersOf = (result: SolvedPlan): string[] => result.plan.bought.map(({ offer: id }) => id);
const callOf = (result: SolvedPlan, name: string): string | undefined =>
  result.plan.chosen.find((one) => one.part === name)?.call;

/** Chain, front and rear sprocket: leaving any of them costs 300, so all three are replaced. */
const drive = (kitPrice: number): PlanInstance =>
  instanceOf({
    parts: ['Chain', 'Front', 'Rear'].map((name) => part(name, { set: 'drive' })),
    calls: ['Chain', 'Front', 'Rear'].flatMap((name) => [
      call(name, 'leave', 300),
      call(name, 'replace', 0, { need: 1 }),
    ]),
    offers: [
      offer('chain', 'Northgate', 70, [['Chain', 1]]),
      offer('front', 'Northgate', 15, [['Front', 1]]),
      offer('rear', 'Quayside', 40, [['Rear', 1]]),
      offer('kit', 'Dray', kitPrice, [
        ['Chain', 1],
        ['Front', 1],
        ['Rear', 1],
      ]),
    ],
    suppliers: [supplier('Northgate', 9.5), supplier('Quayside', 6.8), supplier('Dray', 24)],
  });

describe('a kit', () => {
  // Singly: 70 + 15 + 9.50 freight and 40 + 6.80 freight = 141.30. The kit: its price + 24 freight.
  test('is bought when it is a cent cheaper over all that it covers', async () => {
    const result = await solved(drive(117.29));
    expect(offersOf(result)).toEqual(['kit']);
    expect(result.totals.cash).toBeCloseTo(141.29, 9); // 117.29 + 24
  });

  test('is not bought when it is a cent dearer', async () => {
    const result = await solved(drive(117.31));
    expect(offersOf(result)).toEqual(['chain', 'front', 'rear']);
    expect(result.totals.cash).toBeCloseTo(141.3, 9); // 70 + 15 + 9.50 + 40 + 6.80
  });

  test('at the same price is bought, as one pack is fewer than three', async () => {
    const result = await solved(drive(117.3));
    expect(offersOf(result)).toEqual(['kit']);
    expect(result.ties_settled).toBe(true);
  });
});

/** Two parts to be replaced: the lever is to be had at 50 (freight free from 100) or at 48 elsewhere. */
const order = (tyrePrice: number, freeFrom: number | null = 100): PlanInstance =>
  instanceOf({
    parts: [part('Tyre'), part('Lever')],
    calls: ['Tyre', 'Lever'].flatMap((name) => [
      call(name, 'leave', 500),
      call(name, 'replace', 0, { need: 1 }),
    ]),
    offers: [
      offer('tyre', 'Northgate', tyrePrice, [['Tyre', 1]]),
      offer('lever', 'Northgate', 50, [['Lever', 1]]),
      offer('cheap lever', 'Millrace', 48, [['Lever', 1]]),
    ],
    suppliers: [supplier('Northgate', 12, freeFrom), supplier('Millrace', 0)],
  });

describe('free freight', () => {
  test('pulls an order together: the dearer lever saves 12 of freight', async () => {
    // Together 60 + 50 = 110, freight free. Apart 60 + 12 + 48 = 120.
    const result = await solved(order(60));
    expect(offersOf(result)).toEqual(['tyre', 'lever']);
    expect(result.totals).toMatchObject({ cash: 110, freight: 0 });
  });

  test('does not when it is never free', async () => {
    const result = await solved(order(60, null));
    expect(offersOf(result)).toEqual(['tyre', 'cheap lever']);
    expect(result.totals).toMatchObject({ cash: 120, freight: 12 });
  });

  test('is reached exactly at the sum', async () => {
    const result = await solved(order(50));
    expect(result.totals).toMatchObject({ cash: 100, freight: 0 });
    expect(result.totals.suppliers).toEqual([{ supplier: 'Northgate', goods: 100, freight: 0, free: true }]);
  });

  test('is not reached a cent below it', async () => {
    // Together 49.99 + 50 + 12 = 111.99; apart 49.99 + 12 + 48 = 109.99.
    const result = await solved(order(49.99));
    expect(offersOf(result)).toEqual(['tyre', 'cheap lever']);
    expect(result.totals.cash).toBeCloseTo(109.99, 9);
  });

  test('is nothing to an empty basket', async () => {
    const empty = order(60);
    const result = await solved({
      ...empty,
      calls: empty.calls.map((one) => ({ ...one, cost_without_cash: 0 })),
    });
    expect(result.plan.bought).toEqual([]);
    expect(result.totals).toMatchObject({ cash: 0, freight: 0, expected_cost: 0, suppliers: [] });
  });
});

describe('time', () => {
  const seals = (days: number): PlanInstance =>
    instanceOf({
      days_to_cut_off: 14,
      margin_days: 3,
      parts: [part('Seals')],
      calls: [call('Seals', 'leave', 100), call('Seals', 'replace', 10, { need: 1 })],
      offers: [
        offer('cheap', 'Dray', 20, [['Seals', 1]], { arrives_in_days: days }),
        offer('dear', 'Quayside', 35, [['Seals', 1]]),
      ],
      suppliers: [supplier('Dray'), supplier('Quayside')],
    });

  test('an offer on the last good day is used: 14 days less 3 of margin', async () => {
    const result = await solved(seals(11));
    expect(offersOf(result)).toEqual(['cheap']);
    expect(result.late_offers).toEqual([]);
  });

  test('a supplier a day later is left out, and named', async () => {
    const result = await solved(seals(12));
    expect(offersOf(result)).toEqual(['dear']);
    expect(result.late_offers).toEqual(['cheap']);
    expect(result.totals.expected_cost).toBe(45); // 35 + 10
  });
});

test('work sent out is paid and takes no shed hours; what is on hand does not stand in for it', async () => {
  const fork = instanceOf({
    parts: [part('Fork seals', { on_hand: 1 })],
    calls: [
      call('Fork seals', 'leave', 200),
      call('Fork seals', 'replace', 0, { need: 1, shed_hours: 4 }),
      call('Fork seals', 'replace at the workshop', 0, { sent_out: 1 }),
    ],
    offers: [offer('bench', 'Workshop', 90, [['Fork seals', 1]], { kind: 'workshop' })],
    suppliers: [supplier('Workshop')],
    limits: { cash: null, shed_hours: 3, trip_risk: null, packs: [pack()] },
  });
  const short = await solved(fork);
  expect(callOf(short, 'Fork seals')).toBe('replace at the workshop');
  expect(short.totals).toMatchObject({ cash: 90, shed_hours: 0 });
  const long = await solved({ ...fork, limits: { ...fork.limits, shed_hours: 4 } });
  expect(callOf(long, 'Fork seals')).toBe('replace');
  expect(long.totals).toMatchObject({ cash: 0, shed_hours: 4 });
});

test('the wheel is taken out once for the bearings and the tyre', async () => {
  const wheel = instanceOf({
    parts: [part('Bearings', { on_hand: 1 }), part('Tyre', { on_hand: 1 })],
    calls: ['Bearings', 'Tyre'].flatMap((name) => [
      call(name, 'leave', 100),
      call(name, 'replace', 0, { need: 1, shed_hours: 1, jobs: ['rear wheel out'] }),
    ]),
    jobs: [{ name: 'rear wheel out', setup_hours: 0.5, setup_cost: 0 }],
    limits: { cash: null, shed_hours: 2.5, trip_risk: null, packs: [pack()] },
  });
  const both = await solved(wheel);
  expect(both.totals).toMatchObject({ shed_hours: 2.5, expected_cost: 0, open_jobs: ['rear wheel out'] });
  const one = await solved({ ...wheel, limits: { ...wheel.limits, shed_hours: 2.49 } });
  expect(one.totals).toMatchObject({ shed_hours: 1.5, expected_cost: 100 });
});

test('setting up once saves its cost as well: two jobs at 100 each alone, 12 of it shared', async () => {
  // Alone each is left: 95 against 88 + 12. Together 88 + 88 + 12 = 188 beats 190.
  const wheel = (names: readonly string[]): PlanInstance =>
    instanceOf({
      parts: names.map((name) => part(name, { on_hand: 1 })),
      calls: names.flatMap((name) => [
        call(name, 'leave', 95),
        call(name, 'replace', 88, { need: 1, shed_hours: 1, jobs: ['rear wheel out'] }),
      ]),
      jobs: [{ name: 'rear wheel out', setup_hours: 0.5, setup_cost: 12 }],
    });
  expect((await solved(wheel(['Bearings']))).totals).toMatchObject({ expected_cost: 95, shed_hours: 0 });
  expect((await solved(wheel(['Bearings', 'Tyre']))).totals).toMatchObject({
    expected_cost: 188,
    shed_hours: 2.5,
  });
});

test('like parts of two bikes share the shelf and a pack of two', async () => {
  const bikes = (onShelf: number): PlanInstance =>
    instanceOf({
      parts: [
        part('Tyre, Ann', { stock: 'Tyre', on_hand: onShelf }),
        part('Tyre, Bo', { stock: 'Tyre', rider: 'Bo' }),
      ],
      calls: ['Tyre, Ann', 'Tyre, Bo'].flatMap((name) => [
        call(name, 'leave', 90),
        call(name, 'replace', 0, { need: 1 }),
      ]),
      offers: [offer('one', 'Northgate', 50, [['Tyre', 1]]), offer('two', 'Northgate', 80, [['Tyre', 2]])],
      suppliers: [supplier('Northgate')],
      limits: {
        cash: null,
        shed_hours: null,
        trip_risk: null,
        packs: [pack(), pack({ rider: 'Bo' })],
      },
    });
  expect(offersOf(await solved(bikes(0)))).toEqual(['two']);
  // The one on Ann's shelf serves one of the two, so one more is bought.
  const shared = await solved(bikes(1));
  expect(offersOf(shared)).toEqual(['one']);
  expect(shared.totals.expected_cost).toBe(50);
  expect(offersOf(await solved(bikes(2)))).toEqual([]);
});

test('two riders: a shared spare goes into the pack that has room, and is bought once', async () => {
  const tubes = instanceOf({
    parts: [part('Tube, both bikes')],
    calls: [
      call('Tube, both bikes', 'leave', 80),
      call('Tube, both bikes', 'carry 1', 20, { need: 1, mass_kg: 1 }),
      call('Tube, both bikes', 'carry 1 in the other pack', 20, { need: 1, mass_kg: 1, carried_by: 'Bo' }),
    ],
    offers: [offer('tube', 'Northgate', 9, [['Tube, both bikes', 1]])],
    suppliers: [supplier('Northgate')],
    limits: {
      cash: null,
      shed_hours: null,
      trip_risk: null,
      packs: [pack({ mass_kg: 10, packed_kg: 9.5 }), pack({ rider: 'Bo', mass_kg: 10, packed_kg: 9 })],
    },
  });
  const result = await solved(tubes);
  expect(callOf(result, 'Tube, both bikes')).toBe('carry 1 in the other pack');
  expect(result.totals.cash).toBe(9);
  expect(result.totals.packs.map(({ mass_kg }) => mass_kg)).toEqual([9.5, 10]);
});

test('bags: what the pack could hold in all is left where no one bag holds it', async () => {
  const bags = (left: number): PlanInstance =>
    instanceOf({
      parts: [part('Tyre', { on_hand: 1 })],
      calls: [call('Tyre', 'leave', 50), call('Tyre', 'carry 1', 0, { need: 1, volume_L: 30 })],
      limits: {
        cash: null,
        shed_hours: null,
        trip_risk: null,
        packs: [
          pack({
            volume_L: 60,
            bags: [
              { name: 'left', mass_kg: null, volume_L: left, packed_kg: 0, packed_L: 5 },
              { name: 'right', mass_kg: null, volume_L: 20, packed_kg: 0, packed_L: 0 },
            ],
          }),
        ],
      },
    });
  expect((await solved(bags(35))).plan.chosen).toEqual([{ part: 'Tyre', call: 'carry 1', bag: 'left' }]);
  expect((await solved(bags(34))).plan.chosen).toEqual([{ part: 'Tyre', call: 'leave', bag: null }]);
});

test('the chance of a stranding: 1 - 0.9 * 0.8 = 0.28 is too much for 0.25, so the dearer call is made', async () => {
  const risky = (trip_risk: number | null): PlanInstance =>
    instanceOf({
      parts: [part('Clutch'), part('Cable')],
      calls: [
        call('Clutch', 'leave', 0, { strand_chance: 0.1 }),
        call('Cable', 'leave', 0, { strand_chance: 0.2 }),
        call('Cable', 'way', 30, { strand_chance: 0.05 }),
      ],
      limits: { cash: null, shed_hours: null, trip_risk, packs: [pack()] },
    });
  const free = await solved(risky(null));
  expect(free.totals.trip_risk).toBeCloseTo(0.28, 12);
  const held = await solved(risky(0.25));
  expect(callOf(held, 'Cable')).toBe('way');
  expect(held.totals.trip_risk).toBeCloseTo(0.145, 12); // 1 - 0.9 * 0.95
});

describe('equal plans', () => {
  test('take the call that stands first', async () => {
    const names = ['leave', 'way', 'carry 1'];
    for (const first of names) {
      const listed = [first, ...names.filter((name) => name !== first)];
      const result = await solved(
        instanceOf({ parts: [part('Cable')], calls: listed.map((name) => call('Cable', name, 5)) }),
      );
      expect(callOf(result, 'Cable')).toBe(first);
    }
  });

  test('take one pack of two before two singles at the same price', async () => {
    const result = await solved(
      instanceOf({
        parts: [part('Tube')],
        calls: [call('Tube', 'leave', 99), call('Tube', 'carry 2', 0, { need: 2 })],
        offers: [offer('single', 'Dray', 8, [['Tube', 1]]), offer('pair', 'Dray', 16, [['Tube', 2]])],
        suppliers: [supplier('Dray')],
      }),
    );
    expect(result.plan.bought).toEqual([{ offer: 'pair', packs: 1 }]);
  });
});
