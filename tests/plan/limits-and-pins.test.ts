import { describe, expect, test } from 'vitest';
import { checkInstance } from '../../src/plan/check-instance.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { verifyPlan } from '../../src/plan/verify-plan.ts';
import { call, instanceOf, offer, pack, part, supplier } from './small-instance.ts';

async function solved(instance: PlanInstance): Promise<SolvedPlan> {
  const result = await solvePlan(instance);
  if (!isSolved(result)) throw new Error(result.sentence);
  return result;
}

/** Both parts are past leaving: pads cost 60 and 1 h; the tyre 100 and 2 h, or at the workshop 130. */
const tight = (cash: number, shed_hours: number): PlanInstance =>
  instanceOf({
    parts: [part('Pads', { critical: true }), part('Tyre')],
    calls: [
      call('Pads', 'leave', 0, { held_back: 'They are past their limit.' }),
      call('Pads', 'replace', 0, { need: 1, shed_hours: 1 }),
      call('Tyre', 'replace', 0, { need: 1, shed_hours: 2 }),
      call('Tyre', 'replace at the workshop', 0, { need: 1, sent_out: 1 }),
    ],
    offers: [
      offer('pads', 'Northgate', 60, [['Pads', 1]]),
      offer('tyre', 'Northgate', 100, [['Tyre', 1]]),
      offer('fitting', 'Workshop', 30, [['Tyre', 1]], { kind: 'workshop' }),
    ],
    suppliers: [supplier('Northgate'), supplier('Workshop')],
    limits: { cash, shed_hours, trip_risk: null, packs: [pack()] },
  });

describe('when no plan fits', () => {
  test('the limit that is passed by the least share of itself is named, with the nearest plan', async () => {
    // In the shed: 160 of 150 EUR, a share of 0.0667, and 3 of 3 h. At the workshop: 190 of 150 EUR.
    const result = await solved(tight(150, 3));
    expect(result.status).toBe('optimal');
    expect(result.meets_limits).toBe(false);
    expect(result.plan.chosen.map((one) => one.call)).toEqual(['replace', 'replace']);
    expect(result.shortfalls).toMatchObject([{ limit: 'cash', allowed: 150, needed: 160, short: 10 }]);
    expect(result.shortfalls[0]?.sentence).toBe(
      'Cash: the nearest plan takes 160.00 EUR of 150.00 EUR, 10.00 EUR too much.',
    );
  });

  test('two limits that cannot be met together are both named', async () => {
    // In the shed 160 of 150 EUR and 3 of 2.9 h: 0.0667 + 0.0345; at the workshop 190 of 150 EUR: 0.267.
    const result = await solved(tight(150, 2.9));
    expect(result.shortfalls.map(({ limit }) => limit)).toEqual(['cash', 'shed_hours']);
    expect(result.shortfalls[1]?.sentence).toBe(
      'Shed hours: the nearest plan takes 3.00 h of 2.90 h, 0.10 h too much.',
    );
  });

  test('limits of nothing, a pack that is full already and the risk are measured and named too', async () => {
    const full = instanceOf({
      parts: [part('Tube', { on_hand: 1 })],
      calls: [call('Tube', 'carry 1', 0, { need: 1, mass_kg: 1, strand_chance: 0.2 })],
      limits: {
        cash: 0,
        shed_hours: null,
        trip_risk: 0,
        packs: [pack({ mass_kg: 5, packed_kg: 5.5, volume_L: 0 })],
      },
    });
    const result = await solved(full);
    expect(result.shortfalls.map(({ limit, short }) => [limit, Number(short.toFixed(6))])).toEqual([
      ['trip_risk', 0.2],
      ['mass_kg', 1.5],
    ]);
    expect(result.shortfalls[1]?.sentence).toBe(
      'Weight in the pack of Ann: the nearest plan takes 6.50 kg of 5.00 kg, 1.50 kg too much.',
    );
  });

  test('a plan that just fits, fits', async () => {
    const result = await solved(tight(160, 3));
    expect(result.meets_limits).toBe(true);
    expect(result.shortfalls).toEqual([]);
  });
});

describe('pins', () => {
  test('a pin is kept, at its cost', async () => {
    const result = await solved({
      ...tight(200, 9),
      pins: [{ part: 'Tyre', call: 'replace at the workshop' }],
    });
    expect(result.totals.expected_cost).toBe(190); // 60 + 100 + 30
    expect(result.refused_pins).toEqual([]);
  });

  test('a pin on a critical part past its limit is refused with its caution, and the plan goes on', async () => {
    const result = await solved({ ...tight(200, 9), pins: [{ part: 'Pads', call: 'leave' }] });
    expect(result.plan.chosen[0]).toEqual({ part: 'Pads', call: 'replace', bag: null });
    expect(result.refused_pins).toEqual([
      { part: 'Pads', call: 'leave', sentence: 'Pads cannot be set to "leave": They are past their limit.' },
    ]);
  });

  test('a pin on what nobody delivers in time is refused', async () => {
    const late = {
      ...tight(200, 9),
      days_to_cut_off: 5,
      pins: [{ part: 'Tyre', call: 'replace at the workshop' }],
    };
    const offers = late.offers.map((one) => (one.id === 'fitting' ? { ...one, arrives_in_days: 6 } : one));
    const result = await solved({ ...late, offers });
    expect(result.refused_pins[0]?.sentence).toBe(
      'Tyre cannot be set to "replace at the workshop": No workshop has it back in time.',
    );
  });

  test('a part with no open call is left out and named, and the plan does not meet its limits', async () => {
    const result = await solved({ ...tight(200, 9), forbidden: [{ part: 'Pads', call: 'replace' }] });
    expect(result.plan.chosen.map((one) => one.part)).toEqual(['Tyre']);
    expect(result.meets_limits).toBe(false);
    expect(result.undecided[0]?.sentence).toBe(
      'No call is open to Pads, so the plan leaves it out. leave: They are past their limit. replace: It is forbidden by hand.',
    );
  });

  test('with no part left at all there is an empty plan, and a pack that is too full already is named', async () => {
    const nothing = instanceOf({
      parts: [part('Tyre')],
      calls: [call('Tyre', 'replace', 0, { need: 1 })],
      limits: { cash: 10, shed_hours: 1, trip_risk: 0.1, packs: [pack({ mass_kg: 5, packed_kg: 7 })] },
    });
    const result = await solved(nothing);
    expect(result.plan).toEqual({ chosen: [], bought: [] });
    expect(result.undecided.map((one) => one.part)).toEqual(['Tyre']);
    expect(result.shortfalls).toMatchObject([{ limit: 'mass_kg', needed: 7, short: 2 }]);
    const empty = await solved(instanceOf({}));
    expect([empty.status, empty.meets_limits, empty.totals.expected_cost]).toEqual(['optimal', true, 0]);
  });

  test('pins that pull a set apart leave no plan, and that is said', async () => {
    const set = instanceOf({
      parts: ['Chain', 'Rear'].map((name) => part(name, { set: 'drive', on_hand: 1 })),
      calls: ['Chain', 'Rear'].flatMap((name) => [
        call(name, 'leave', 0),
        call(name, 'replace', 0, { need: 1 }),
      ]),
      pins: [
        { part: 'Chain', call: 'leave' },
        { part: 'Rear', call: 'replace' },
      ],
    });
    const result = await solvePlan(set);
    expect(result.status).toBe('impossible');
    expect(isSolved(result) ? '' : result.sentence).toMatch(/free a call that is set or forbidden/);
  });

  test('a set counts replace and replace and keep old as the same change', async () => {
    const set = instanceOf({
      parts: ['Chain', 'Rear'].map((name) => part(name, { set: 'drive', on_hand: 1 })),
      calls: [
        call('Chain', 'leave', 90),
        call('Chain', 'replace and keep old', 0, { kind: 'keep', need: 1 }),
        call('Rear', 'leave', 0),
        call('Rear', 'replace', 10, { need: 1 }),
      ],
    });
    const result = await solved(set);
    expect(result.plan.chosen.map((one) => one.call)).toEqual(['replace and keep old', 'replace']);
  });
});

describe('data that cannot be used', () => {
  const good = tight(100, 1);

  test('nothing is wrong with good data', () => {
    expect(checkInstance(good)).toEqual([]);
    const alone = { ...good, parts: good.parts.map((one) => ({ ...one, rider: '' })) };
    expect(checkInstance({ ...alone, limits: { ...good.limits, packs: [pack({ rider: '' })] } })).toEqual([]);
  });

  test.each<[string, Partial<PlanInstance>, RegExp]>([
    [
      'an unknown supplier',
      { suppliers: [supplier('Northgate')] },
      /"fitting" names the supplier "Workshop"/,
    ],
    ['a part without a name', { parts: [...good.parts, part('')] }, /There is a part without a name/],
    ['a part twice', { parts: [...good.parts, part('Tyre')] }, /The part "Tyre" is there twice/],
    [
      'a call twice',
      { calls: [...good.calls, call('Tyre', 'replace', 1)] },
      /call of Tyre "replace" is there twice/,
    ],
    [
      'a price that is no number',
      { offers: [offer('x', 'Northgate', Number.NaN, [['Tyre', 1]])] },
      /price of the offer "x" is NaN/,
    ],
    [
      'a price below 0',
      { offers: [offer('x', 'Northgate', -1, [['Tyre', 1]])] },
      /price of the offer "x" is -1/,
    ],
    [
      'half a piece',
      { offers: [offer('x', 'Northgate', 1, [['Tyre', 0.5]])] },
      /number of Tyre in the offer "x" is 0.5/,
    ],
    ['an unknown part', { offers: [offer('x', 'Northgate', 1, [['Tyer', 1]])] }, /names the part "Tyer"/],
    ['a certain risk as limit', { limits: { ...good.limits, trip_risk: 1 } }, /chance of a stranding is 1\./],
    [
      'a rider without a pack',
      { parts: [part('Pads', { rider: 'Bo' }), part('Tyre')] },
      /pack of the rider "Bo"/,
    ],
    ['a bag that is not there', { parts: [part('Pads', { bag: 'roll' }), part('Tyre')] }, /the bag "roll"/],
    ['an unknown job', { calls: [call('Tyre', 'leave', 1, { jobs: ['wheel'] })] }, /the job "wheel"/],
    [
      'a pin on an unknown call',
      { pins: [{ part: 'Tyre', call: 'sell' }] },
      /pin of Tyre names the call "sell"/,
    ],
    [
      'two pins on a part',
      {
        pins: [
          { part: 'Pads', call: 'replace' },
          { part: 'Pads', call: 'leave' },
        ],
      },
      /"Pads" is there twice/,
    ],
  ])('%s', async (_, change, message) => {
    const instance = { ...good, ...change };
    expect(checkInstance(instance).map((fault) => fault.message)).toContainEqual(
      expect.stringMatching(message),
    );
    const result = await solvePlan(instance);
    expect(result.status).toBe('faulty');
  });

  test('names that mean something to JavaScript are only names', async () => {
    const odd = instanceOf({
      parts: [part('__proto__', { set: 'constructor', rider: 'toString' })],
      calls: [
        call('__proto__', 'leave', 5),
        call('__proto__', 'replace', 1, { need: 1, jobs: ['hasOwnProperty'] }),
      ],
      offers: [offer('valueOf', 'a b;<= 1', 1, [['__proto__', 1]])],
      suppliers: [supplier('a b;<= 1', 1, 2)],
      jobs: [{ name: 'hasOwnProperty', setup_hours: 1, setup_cost: 0 }],
      limits: { cash: null, shed_hours: null, trip_risk: null, packs: [pack({ rider: 'toString' })] },
    });
    const result = await solved(odd);
    expect(result.totals.expected_cost).toBe(3); // 1 + price 1 + freight 1
  });
});

describe('verifyPlan', () => {
  const instance = tight(160, 3);
  const good = {
    chosen: [
      { part: 'Pads', call: 'replace', bag: null },
      { part: 'Tyre', call: 'replace', bag: null },
    ],
    bought: [
      { offer: 'pads', packs: 1 },
      { offer: 'tyre', packs: 1 },
    ],
  };

  test('finds nothing wrong with the best plan', () => {
    expect(verifyPlan(instance, good)).toEqual({ problems: [], shortfalls: [] });
  });

  test.each([
    ['a part without a call', { ...good, chosen: good.chosen.slice(1) }, /Pads has 0 calls/],
    [
      'a call that is held back',
      { ...good, chosen: [{ part: 'Pads', call: 'leave', bag: null }, good.chosen[1]!] },
      /Pads has the call "leave", which is not open/,
    ],
    ['too few pieces', { ...good, bought: good.bought.slice(1) }, /Pads needs 1 pieces and gets 0/],
    [
      'work that is not paid for',
      { ...good, chosen: [good.chosen[0]!, { part: 'Tyre', call: 'replace at the workshop', bag: null }] },
      /Tyre is sent out 1 times, and 0 are paid for/,
    ],
    [
      'more packs than can serve',
      { ...good, bought: [...good.bought, { offer: 'fitting', packs: 2 }] },
      /bought 2 times; 0 to 1/,
    ],
    [
      'half a pack',
      { ...good, bought: [good.bought[0]!, { offer: 'tyre', packs: 1.5 }] },
      /bought 1.5 times/,
    ],
  ])('finds %s', (_, plan, message) => {
    expect(verifyPlan(instance, plan).problems).toContainEqual(expect.stringMatching(message));
  });

  test('finds a limit that is passed, by how much, and a pin and a set that are broken', () => {
    const changed = {
      ...tight(159.99, 3),
      parts: [part('Pads', { set: 's' }), part('Tyre', { set: 's' })],
      calls: instance.calls.map((one) =>
        one.part === 'Tyre' && one.sent_out > 0 ? { ...one, kind: 'way' as const } : one,
      ),
      pins: [{ part: 'Tyre', call: 'replace' }],
    };
    const plan = {
      chosen: [good.chosen[0]!, { part: 'Tyre', call: 'replace at the workshop', bag: null }],
      bought: [...good.bought, { offer: 'fitting', packs: 1 }],
    };
    const { problems, shortfalls } = verifyPlan(changed, plan);
    expect(problems).toEqual([
      'Tyre is set by hand to "replace", and the plan has "replace at the workshop".',
      'The set "s" is changed in part only.',
    ]);
    expect(shortfalls.map(({ limit, needed }) => [limit, needed])).toEqual([['cash', 190]]);
  });
});
