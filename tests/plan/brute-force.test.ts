import { expect, test } from 'vitest';
import { hazardOf, limitLines, rowLimit, shortfallScale } from '../../src/plan/limit-lines.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { bruteForce } from './brute-force.ts';
import { randomInstance } from './random-instance.ts';

const SEEDS = Array.from({ length: 200 }, (_, index) => index + 1);

/** Shares of the limits that the reported shortfalls add up to. */
function shareShort(instance: PlanInstance, { shortfalls }: SolvedPlan): number {
  return shortfalls.reduce((total, { limit, rider, bag, needed }) => {
    const line = limitLines(instance).find(
      (one) => one.kind === limit && one.rider === rider && one.bag === bag,
    )!;
    const taken = limit === 'trip_risk' ? hazardOf(needed) : needed;
    return total + (taken - rowLimit(line)) / shortfallScale(line);
  }, 0);
}

test('on 200 random small plans the solver finds what trying everything finds', async () => {
  const seen = {
    fit: 0,
    short: 0,
    impossible: 0,
    withKit: 0,
    freeFreight: 0,
    bags: 0,
    jobs: 0,
    sentOut: 0,
    shared: 0,
  };
  for (const seed of SEEDS) {
    const instance = randomInstance(seed);
    const [result, brute] = [await solvePlan(instance), bruteForce(instance)];
    const where = `seed ${seed}`;
    if (brute === null) {
      expect(result.status, where).toBe('impossible');
      seen.impossible += 1;
      continue;
    }
    if (!isSolved(result)) throw new Error(`${where}: ${result.sentence} ${JSON.stringify(result.faults)}`);
    expect(result.problems, where).toEqual([]);
    expect(result.status, where).toBe('optimal');
    expect(shareShort(instance, result), where).toBeCloseTo(brute.shortfall, 5);
    expect(result.totals.expected_cost, where).toBeCloseTo(brute.cost, 4);
    expect(result.meets_limits, where).toBe(brute.shortfall === 0 && result.undecided.length === 0);
    // Equal plans: fewest packs bought, then the calls that stand earliest in their lists.
    expect(result.ties_settled, where).toBe(true);
    const packs = result.plan.bought.reduce((total, bought) => total + bought.packs, 0);
    expect([packs, placesOf(instance, result)], where).toEqual([brute.packs, brute.places]);
    seen[brute.shortfall === 0 ? 'fit' : 'short'] += 1;
    if (
      result.plan.bought.some((one) => instance.offers.find(({ id }) => id === one.offer)!.covers.length > 1)
    )
      seen.withKit += 1;
    if (result.totals.suppliers.some(({ free, supplier }) => free && supplier === 's0'))
      seen.freeFreight += 1;
    if (result.plan.chosen.some(({ bag }) => bag !== null)) seen.bags += 1;
    const chosen = instance.calls.filter((one) =>
      result.plan.chosen.some(({ part, call }) => part === one.part && call === one.name),
    );
    if (chosen.filter(({ jobs }) => jobs.includes('g0')).length > 1) seen.jobs += 1;
    if (chosen.some(({ sent_out }) => sent_out > 0)) seen.sentOut += 1;
    // Both bikes need new pieces of the same stock.
    const stocked = instance.parts.filter(({ stock }) => stock !== null).map(({ name }) => name);
    if (chosen.filter(({ part, need }) => need > 0 && stocked.includes(part)).length > 1) seen.shared += 1;
  }
  // The random plans are worth nothing unless all of this happens among them.
  for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThanOrEqual(5);
}, 120_000);

/** Sum of the chosen calls' places among those open to their part. */
function placesOf(instance: PlanInstance, { plan }: SolvedPlan): number {
  const forbidden = (part: string, call: string): boolean =>
    instance.forbidden.some((one) => one.part === part && one.call === call);
  return plan.chosen.reduce((total, { part, call }) => {
    const stock = instance.parts.find(({ name }) => name === part)!.stock ?? part;
    const like = instance.parts.filter((one) => (one.stock ?? one.name) === stock);
    const sold = (kind: 'goods' | 'workshop'): boolean =>
      instance.offers.some(
        (one) =>
          one.kind === kind && (one.arrives_in_days ?? 0) <= 8 && one.covers.some(([name]) => name === stock),
      );
    const onHand = like.reduce((held, { on_hand }) => held + on_hand, 0);
    const open = instance.calls.filter(
      (one) =>
        one.part === part &&
        one.held_back === null &&
        !forbidden(part, one.name) &&
        (one.need <= onHand || sold('goods')) &&
        (one.sent_out === 0 || sold('workshop')),
    );
    return total + open.findIndex(({ name }) => name === call);
  }, 0);
}
