import { expect, test } from 'vitest';
import { type CallsCell, PLAN_ROLES, type PlanCell, type PlanRole } from '../../src/notebook/document.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { entered, notebook, pairing, table, worked } from './small-notebook.ts';
import { threadPlanner } from './thread-planner.ts';

const READS: Partial<Record<PlanRole, string>> = {
  cost: 'calls.expected',
  cash: 'calls.cash',
  need: 'calls.need',
  mass: 'calls.pack_kg',
  volume: 'calls.pack_L',
  hours: 'calls.hours',
  strand: 'calls.strand',
  kind: 'calls.kind',
  on_hand: 'wear.on_hand',
  stock: 'wear.stock',
  rider: 'wear.rider',
  offer: 'prices.offer',
  offer_supplier: 'prices.supplier',
  offer_fits: 'prices.fits',
  offer_pieces: 'prices.pack',
  offer_price: 'prices.price',
  offer_days: 'prices.days',
  supplier: 'suppliers.supplier',
  freight: 'suppliers.freight',
  free_from: 'suppliers.free_from',
  pack_rider: 'riders.rider',
  pack_mass: 'riders.mass_limit',
};

const decision: CallsCell = {
  id: 'decision',
  kind: 'calls',
  name: 'decision',
  title: 'Calls',
  pairing: 'calls',
  part: 'part',
  call: 'call',
  cost: 'expected',
  allowed: 'allowed',
  reason: 'why_not',
  critical: 'critical',
  pins: {},
  plan: 'plan',
};

const plan: PlanCell = {
  id: 'plan',
  kind: 'plan',
  name: 'plan',
  title: 'Plan',
  calls: 'decision',
  reads: Object.fromEntries(PLAN_ROLES.map((role) => [role, READS[role] ?? ''])) as PlanCell['reads'],
};

/** A tyre on each of two bikes, and a tube on Bo's; each is left, or a spare of it is carried. */
async function solvedWith(bosLimit: number): Promise<{ solved: SolvedPlan; live: LiveNotebook }> {
  const document = notebook(
    table(
      'wear',
      entered('part', 'text', ['Tyre, Ann', 'Tyre, Bo', 'Tube, Bo']),
      entered('stock', 'text', ['Tyre', 'Tyre', 'Tube']),
      entered('rider', 'text', ['Ann', 'Bo', 'Bo']),
      entered('on_hand', 'number', [0, 0, 0]),
      entered('critical', 'yes_no', [false, false, false]),
      entered('left_cost', 'number', [60, 60, 20], { unit: 'EUR' }),
      entered('each', 'number', [30, 30, 5], { unit: 'EUR' }),
      entered('mass', 'number', [4, 4, 2], { unit: 'kg' }),
    ),
    table(
      'choices',
      entered('call', 'text', ['leave', 'carry 1']),
      entered('need', 'number', [0, 1]),
      entered('kind', 'text', ['leave', 'carry']),
    ),
    table(
      'prices',
      entered('offer', 'text', ['one tyre', 'two tyres', 'tube']),
      entered('supplier', 'text', ['Northgate', 'Northgate', 'Northgate']),
      entered('fits', 'text', ['Tyre', 'Tyre', 'Tube']),
      entered('pack', 'number', [1, 2, 1]),
      entered('price', 'number', [30, 44, 5], { unit: 'EUR' }),
      entered('days', 'number', [null, null, null], { unit: 'days' }),
    ),
    table(
      'suppliers',
      entered('supplier', 'text', ['Northgate']),
      entered('freight', 'number', [0], { unit: 'EUR' }),
      entered('free_from', 'number', [null], { unit: 'EUR' }),
    ),
    table(
      'riders',
      entered('rider', 'text', ['Ann', 'Bo']),
      entered('mass_limit', 'number', [5, bosLimit], { unit: 'kg' }),
    ),
    pairing(
      'calls',
      'wear',
      'choices',
      worked('cash', 'need * each', 'EUR'),
      worked('expected', 'cash + (need > 0 ? 5 EUR : left_cost)', 'EUR'),
      worked('pack_kg', 'need * mass', 'kg'),
      worked('pack_L', 'need * (0 L)', 'L'),
      worked('hours', 'need * (0 h)', 'h'),
      worked('strand', 'need * 0'),
      worked('allowed', 'need >= 0'),
      worked('why_not', '""'),
    ),
    decision,
    plan,
  );
  const live = LiveNotebook.open(document, threadPlanner());
  await live.settled();
  expect(live.faults()).toEqual([]);
  const result = live.planOf('plan').solution?.result;
  if (result == null || !isSolved(result)) throw new Error(JSON.stringify(result));
  return { solved: result, live };
}

test('like parts of two bikes take from one pack of two; each rider packs within a limit of their own', async () => {
  // Both tyres carried from the pack of two: 44 + 5 + 5. Bo's tyre and tube weigh 6 kg: with 5 the tube is left, 20.
  const tight = await solvedWith(5);
  expect(tight.solved).toMatchObject({ status: 'optimal', meets_limits: true, problems: [] });
  expect(tight.solved.totals.expected_cost).toBeCloseTo(74, 9);
  expect(tight.solved.plan.bought).toEqual([{ offer: 'Northgate two tyres', packs: 1 }]);
  expect(tight.solved.totals.packs.map(({ rider, mass_kg }) => [rider, mass_kg])).toEqual([
    ['Ann', 4],
    ['Bo', 4],
  ]);
  const packs = tight.live.read('plan.packs');
  expect(packs.state === 'settled' ? [...packs.column.values] : []).toEqual([0, 1, 0]);
  tight.live.dispose();

  // With 6 kg Bo packs both: 44 + 5 + 5 + 5 + 5.
  const roomy = await solvedWith(6);
  expect(roomy.solved.totals.expected_cost).toBeCloseTo(64, 9);
  expect(roomy.solved.totals.packs.map(({ mass_kg }) => mass_kg)).toEqual([4, 6]);
  roomy.live.dispose();
});
