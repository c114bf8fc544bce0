import { expect, test } from 'vitest';
import { hazardOf, limitLines, rowLimit, shortfallScale, takenOf } from '../../src/plan/limit-lines.ts';
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

/** What has to happen among the random plans, else they are worth nothing: counted plan by plan. */
class Seen {
  readonly times: Record<string, number> = {};

  count(what: string, happens: boolean): void {
    this.times[what] = (this.times[what] ?? 0) + (happens ? 1 : 0);
  }

  plan(instance: PlanInstance, result: SolvedPlan): void {
    const { plan, totals, refused_pins } = result;
    const chosen = instance.calls.filter((one) =>
      plan.chosen.some(({ part, call }) => part === one.part && call === one.name),
    );
    const offersOf = plan.bought.map((one) => instance.offers.find(({ id }) => id === one.offer)!);
    const stocked = instance.parts.filter(({ stock }) => stock !== null).map(({ name }) => name);
    const packers = new Set(
      chosen
        .filter(({ mass_kg }) => mass_kg > 0)
        .map((one) => one.carried_by ?? instance.parts.find(({ name }) => name === one.part)!.rider),
    );
    this.count(
      'a kit is bought',
      offersOf.some(({ covers }) => covers.length > 1),
    );
    this.count(
      'freight is free from a sum on',
      totals.suppliers.some((one) => one.free && one.supplier === 's0'),
    );
    this.count('freight is paid', totals.freight > 0);
    this.count(
      'a spare is in a bag',
      plan.chosen.some(({ bag }) => bag !== null),
    );
    this.count('a job is opened once for two', chosen.filter(({ jobs }) => jobs.includes('g0')).length > 1);
    this.count(
      'work is sent out',
      chosen.some(({ sent_out }) => sent_out > 0),
    );
    this.count(
      'both bikes take new pieces of one stock',
      chosen.filter(({ part, need }) => need > 0 && stocked.includes(part)).length > 1,
    );
    this.count('both riders pack', packers.size > 1);
    for (const need of [1, 2, 3])
      this.count(
        `${need} pieces for a call`,
        chosen.some((one) => one.need === need),
      );
    this.count('a pin is refused', refused_pins.length > 0);
    this.count('an offer comes too late', result.late_offers.length > 0);
    this.count(
      'a critical part has a call',
      chosen.some(({ part }) => instance.parts.some(({ name, critical }) => critical && name === part)),
    );
  }

  /** What the plan without any limit, pin or ruling would be otherwise: those that it breaks matter. */
  async freePlan(instance: PlanInstance): Promise<void> {
    const none = { cash: null, shed_hours: null, trip_risk: null };
    const packs = instance.limits.packs.map((one) => ({ ...one, mass_kg: null, volume_L: null, bags: [] }));
    const calls = instance.calls.map((one) => ({ ...one, held_back: null }));
    const free = await solvePlan({ ...instance, calls, pins: [], forbidden: [], limits: { ...none, packs } });
    if (!isSolved(free)) return;
    const has = ({ part, call }: { part: string; call: string }): boolean =>
      free.plan.chosen.some((one) => one.part === part && one.call === call);
    for (const line of limitLines(instance).filter(({ bag }) => bag === null))
      this.count(`the limit of ${line.kind} binds`, takenOf(line, free.totals) > line.allowed + 1e-6);
    this.count(
      'a pin is against the cheapest',
      instance.pins.some((pin) => !has(pin)),
    );
    this.count('the cheapest call is ruled out by hand', instance.forbidden.some(has));
    this.count(
      'the cheapest call of a critical part is barred',
      instance.calls.some(
        (one) =>
          one.held_back !== null &&
          instance.parts.some(({ name, critical }) => critical && name === one.part) &&
          has({ part: one.part, call: one.name }),
      ),
    );
  }
}

test('on 200 random small plans the solver finds what trying everything finds', async () => {
  const seen = new Seen();
  for (const seed of SEEDS) {
    const instance = randomInstance(seed);
    const [result, brute] = [await solvePlan(instance), bruteForce(instance)];
    const where = `seed ${seed}`;
    seen.count('no plan keeps the rules', brute === null);
    if (brute === null) {
      expect(result.status, where).toBe('impossible');
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
    seen.count('a plan fits', brute.shortfall === 0);
    seen.count('none fits', brute.shortfall > 0);
    seen.plan(instance, result);
    await seen.freePlan(instance);
  }
  for (const limit of ['cash', 'shed_hours', 'trip_risk', 'mass_kg', 'volume_L'])
    expect(seen.times).toHaveProperty([`the limit of ${limit} binds`]);
  for (const [what, times] of Object.entries(seen.times)) expect(times, what).toBeGreaterThanOrEqual(5);
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
