import { describe, expect, test } from 'vitest';
import { priceFigure, rateFigure, strandingFigure, withCall, withoutCall } from '../../src/plan/figures.ts';
import { type FindPlan, findPlan } from '../../src/plan/find-plan.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { highsSolver } from '../../src/plan/solver/solve-programme.ts';
import { whyAll, whyPart } from '../../src/plan/why.ts';
import { seeded } from '../trade/seeded.ts';
import { randomInstance } from './random-instance.ts';
import { call, instanceOf, offer, part, supplier } from './small-instance.ts';

const solve = highsSolver();
const find: FindPlan = (instance, options) => findPlan(instance, solve, options);

async function solved(instance: PlanInstance): Promise<SolvedPlan> {
  const result = await find(instance);
  if (!isSolved(result)) throw new Error(result.sentence);
  return result;
}

/**
 * A cable to be had at 31: carry comes to 5 + 31 = 36, way to 40.20, leave to 60; a stranding costs 100 now,
 * and each call is to be stranded per_stranding times.
 */
const cable = instanceOf({
  parts: [part('Cable', { stranding_cost: 100 }), part('Lever')],
  calls: [
    call('Cable', 'leave', 60, { per_stranding: 0.5 }),
    call('Cable', 'carry 1', 5, { need: 1, per_stranding: 0.1 }),
    call('Cable', 'way', 40.2, { per_stranding: 0.3 }),
    call('Lever', 'leave', 3),
  ],
  offers: [offer('cable', 'Northgate', 31, [['Cable', 1]])],
  suppliers: [supplier('Northgate')],
});

test('the sentence gives the winner, the runner-up, and where it turns', async () => {
  const why = await whyPart(cable, await solved(cable), 'Cable', find);
  // Price: 5 + p = 40.20 at p = 35.20. Stranding: 36 + 0.1 d = 40.20 + 0.3 d at d = -21, so 79.
  expect(why?.runner_up).toMatchObject({ call: 'way' });
  expect(why?.runner_up?.costs_more).toBeCloseTo(4.2, 9); // 40.20 - 36
  expect(why?.sentence).toBe(
    'Carry 1 wins by 4.20 EUR over way; it turns at a price above 35.20 EUR (now 31.00 EUR), at a cost of a stranding below 79.00 EUR (now 100.00 EUR).',
  );
});

test('a part without another call says so, and a critical one defers to manual, rules and mechanic', async () => {
  const critical = { ...cable, parts: [cable.parts[0]!, part('Lever', { critical: true })] };
  const all = await whyAll(critical, await solved(critical), find);
  expect(all.map(({ part: name, scope }) => [name, scope])).toEqual([
    ['Cable', 'this part'],
    ['Lever', 'this part'],
  ]);
  expect(all[0]?.sentence).toMatch(
    /^Carry 1 wins by 4\.20 EUR over way, the other calls as they are; it turns/,
  );
  expect(all[1]?.sentence).toBe(
    'Leave is the only call open to it. It is a critical part: the maker’s manual, local rules and a licensed mechanic decide.',
  );
});

test('a call set by hand that is not the best says what it costs more', async () => {
  const pinned = { ...cable, pins: [{ part: 'Cable', call: 'leave' }] };
  const why = await whyPart(pinned, await solved(pinned), 'Cable', find);
  expect(why?.by_hand).toBe(true);
  expect(why?.runner_up?.costs_more).toBeCloseTo(-24, 9); // 36 - 60
  // Never by the price: above 35.20 way is better still. Stranding: 60 + 0.5 x = 40.20 + 0.3 x at x = -99.
  expect(why?.sentence).toBe(
    'Leave is set by hand and costs 24.00 EUR more than carry 1; it turns at a cost of a stranding below 1.00 EUR (now 100.00 EUR).',
  );
});

test('where the limits leave no other call, that is the reason given', async () => {
  const poor = {
    ...cable,
    limits: { ...cable.limits, cash: 20 },
    forbidden: [{ part: 'Cable', call: 'leave' }],
  };
  const why = await whyPart(poor, await solved(poor), 'Cable', find);
  expect(why?.call).toBe('way');
  expect(why?.sentence).toBe('Way: no other call of this part meets every limit.');
});

test('a part that the plan has not has no reason', async () => {
  expect(await whyPart(cable, await solved(cable), 'Chain', find)).toBeNull();
});

test('the wear rate: leave costs 20 r^2, the turn against 36 is at the root of 1.8', async () => {
  const costsAt = (rate: number): ReadonlyMap<string, number> => new Map([['leave', 20 * rate * rate]]);
  const worn = {
    ...cable,
    calls: cable.calls.map((one) => (one.name === 'leave' ? { ...one, cost_without_cash: 20 } : one)),
  };
  const why = await whyPart(worn, await solved(worn), 'Cable', find, { rate: { now: 1, costsAt } });
  const turn = why?.turns.find(({ figure }) => figure === 'rate');
  expect(why?.call).toBe('leave');
  expect(turn?.side).toBe('above');
  expect(turn?.at).toBeCloseTo(Math.sqrt(1.8), 4);
  expect(why?.sentence).toContain('at a wear rate above 1.34 (now 1)'); // sqrt(1.8) = 1.3416
});

describe('break-evens are true', () => {
  /** Money between the best plan without the call and the best with it; null where one meets no limits. */
  async function gapAt(instance: PlanInstance, name: string, callName: string): Promise<number | null> {
    const kept = await find(withCall(instance, name, callName), { settleTies: false });
    const other = await find(withoutCall(instance, name, callName), { settleTies: false });
    if (!isSolved(kept) || !isSolved(other) || !kept.meets_limits || !other.meets_limits) return null;
    return other.totals.expected_cost - kept.totals.expected_cost;
  }

  test('at each one both calls cost the same to a cent, and on either side the call turns', async () => {
    const turned = { price: 0, stranding: 0, rate: 0 };
    for (let seed = 1; seed <= 110; seed += 1) {
      const random = seeded(seed + 5000);
      const plain = randomInstance(seed);
      const instance: PlanInstance = {
        ...plain,
        parts: plain.parts.map((one) => ({ ...one, stranding_cost: 100 })),
        calls: plain.calls.map((one) => ({ ...one, per_stranding: random(), per_price: -0.5 * random() })),
      };
      const result = await find(instance);
      if (!isSolved(result) || !result.meets_limits) continue;
      const sold = (of: string): boolean =>
        instance.offers.some(({ covers }) => covers.some(([name]) => name === of));
      // Parts that are sold first: the others have no price to turn at.
      const looked = [...result.plan.chosen].sort((a, b) => Number(sold(b.part)) - Number(sold(a.part)));
      for (const { part: name, call: callName } of looked.slice(0, 3)) {
        const costsAt = (rate: number): ReadonlyMap<string, number> =>
          new Map(
            instance.calls
              .filter((one) => one.part === name)
              .map((one, index) => [one.name, one.cost_without_cash + 12 * (index % 2) * (rate ** 1.5 - 1)]),
          );
        const why = await whyPart(instance, result, name, find, { rate: { now: 1, costsAt } });
        for (const turn of why?.turns ?? []) {
          if (turn.because !== 'cost' || turn.at === turn.now) continue;
          const where = `seed ${seed}, ${name}, ${turn.figure}`;
          const plans = [result.plan, why!.runner_up!.plan];
          const figure = {
            price: priceFigure(instance, name, plans),
            stranding: strandingFigure(instance, name),
            rate: rateFigure(instance, name, 1, costsAt),
          }[turn.figure]!;
          const gap = (value: number): Promise<number | null> =>
            gapAt(figure.instanceAt(value), name, callName);
          const same = await gap(turn.at);
          if (same === null) throw new Error(`${where}: no plan at ${turn.at}`);
          expect(Math.abs(same), where).toBeLessThan(0.01);
          const start = Math.sign(why!.runner_up!.costs_more);
          const away = (turn.at - turn.now) * 0.02;
          const before = await gap(turn.at - away);
          const beyond = await gap(turn.at + away);
          if (before === null || beyond === null || start === 0) continue;
          expect(before * start, `${where}, before`).toBeGreaterThan(0);
          // Two calls may go on costing the same beyond it; then the earlier one in the list is made.
          expect(beyond * start, `${where}, beyond`).toBeLessThanOrEqual(1e-4);
          if (beyond * start < -1e-4) turned[turn.figure] += 1;
        }
      }
    }
    // Enough of each must have been there to be looked at.
    for (const [figure, times] of Object.entries(turned)) expect(times, figure).toBeGreaterThan(5);
  }, 120_000);
});
