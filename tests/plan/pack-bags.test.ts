import { expect, test } from 'vitest';
import { bagsAsOne, packBags } from '../../src/plan/pack-bags.ts';
import type { PlanBag, PlanInstance } from '../../src/plan/plan-instance.ts';
import type { Plan } from '../../src/plan/plan-result.ts';
import { call, instanceOf, pack, part } from './small-instance.ts';

const bag = (name: string, rest: Partial<PlanBag>): PlanBag => ({
  name,
  mass_kg: null,
  volume_L: null,
  packed_kg: 0,
  packed_L: 0,
  ...rest,
});

/** Spares of so many litres each, all of which would rather go into the left bag. */
function carrying(
  litres: readonly number[],
  bags: readonly PlanBag[],
): { instance: PlanInstance; plan: Plan } {
  const names = litres.map((_, index) => `P${index}`);
  const instance = instanceOf({
    parts: names.map((name) => part(name, { on_hand: 1, rather_bag: 'left' })),
    calls: names.map((name, index) => call(name, 'carry 1', 0, { need: 1, volume_L: litres[index]! })),
    limits: { cash: null, shed_hours: null, trip_risk: null, packs: [pack({ bags })] },
  });
  const chosen = names.map((name) => ({ part: name, call: 'carry 1', bag: null }));
  return { instance, plan: { chosen, bought: [] } };
}

const bagsOf = ({ instance, plan }: ReturnType<typeof carrying>): (string | null)[] | null =>
  packBags(instance, plan)?.chosen.map((one) => one.bag) ?? null;

test('each spare goes where it rather goes, as far as what is packed already leaves room', () => {
  const bags = [bag('left', { volume_L: 30, packed_L: 25 }), bag('right', { volume_L: 10 })];
  // 5 L are left there: the one of 4 goes in, those of 3 and 2 go elsewhere.
  expect(bagsOf(carrying([2, 4, 3], bags))).toEqual(['right', 'left', 'right']);
  expect(bagsOf(carrying([1, 4], bags))).toEqual(['left', 'left']);
});

test('what was placed first moves where a later one finds no room otherwise', () => {
  // 6 L would rather go left, but then the right takes two of 4 L and the third has no place.
  const bags = [bag('left', { volume_L: 8 }), bag('right', { volume_L: 10 })];
  expect(bagsOf(carrying([6, 4, 4, 4], bags))).toEqual(['right', 'left', 'left', 'right']);
});

test('none is found where there is none, though the bags together would hold it', () => {
  const bags = [bag('left', { volume_L: 5 }), bag('right', { volume_L: 5 })];
  const short = carrying([4, 3, 3], bags);
  expect(bagsOf(short)).toBeNull();
  // As one bag they hold 10 L: the least that has to be kept.
  expect(bagsAsOne(short.instance).limits.packs[0]).toMatchObject({ volume_L: 10, mass_kg: null, bags: [] });
});
