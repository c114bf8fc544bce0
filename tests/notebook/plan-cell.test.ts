import { describe, expect, test } from 'vitest';
import type { ValueContent } from '../../src/notebook/document.ts';
import { forbidEdit, pinEdit, rename, valueEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import { demo, figure, figures, texts } from '../starter/support.ts';
import { threadPlanner } from './thread-planner.ts';

// One planner for all, as a page has: the first plan is searched for from nothing, the others from those before.
const planner = threadPlanner();

async function opened(): Promise<LiveNotebook> {
  const live = LiveNotebook.open(demo(), planner);
  await live.settled();
  return live;
}

let demoAsItIs: Promise<LiveNotebook> | null = null;

/** The demo with its plan, for all tests that only read it. */
function readOnly(): Promise<LiveNotebook> {
  demoAsItIs ??= opened();
  return demoAsItIs;
}

function solved(live: LiveNotebook): SolvedPlan {
  const { solution, fault } = live.planOf('plan');
  if (solution?.result == null || !isSolved(solution.result))
    throw new Error(`no plan: ${fault?.message ?? JSON.stringify(solution?.result)}`);
  return solution.result;
}

async function setValue(live: LiveNotebook, name: string, value: number): Promise<void> {
  const cell = live.document.cells.find((held) => held.kind === 'value' && held.name === name);
  if (cell?.kind !== 'value') throw new Error(`no value ${name}`);
  live.apply(valueEdit(live.document, cell.id, { ...cell.content, value } as ValueContent));
  await live.settled();
}

describe('the plan in the default notebook', () => {
  test('is solved to proven optimality within all limits, and the calls and totals follow it', async () => {
    const live = await readOnly();
    expect(live.faults()).toEqual([]);
    const plan = solved(live);
    expect(plan.status).toBe('optimal');
    expect(plan.meets_limits).toBe(true);
    const chosen = new Map(plan.plan.chosen.map((one) => [one.part, one.call]));
    const parts = texts(live, 'decision.part');
    expect(texts(live, 'decision.call')).toEqual(parts.map((part) => chosen.get(part ?? '') ?? null));
    expect(figure(live, 'plan.cash')).toBeCloseTo(plan.totals.cash, 9);
    expect(figure(live, 'parts_spending')).toBeCloseTo(plan.totals.cash, 9);
    // What the plan reckons for weight and hours is what the notebook's own sums give for its calls.
    expect(figure(live, 'pack_mass')).toBeCloseTo(figure(live, 'plan.mass'), 6);
    expect(figure(live, 'shed_time')).toBeCloseTo(figure(live, 'plan.hours'), 6);
    expect(figure(live, 'recovery_chance')).toBeCloseTo(figure(live, 'plan.risk'), 6);
    expect(figure(live, 'plan.cash')).toBeLessThanOrEqual(figure(live, 'cash_limit'));
    // Hours that jobs share are spent, and paid for, once.
    expect(figure(live, 'shared_time')).toBeGreaterThan(0);
    expect(figure(live, 'calls_cost')).toBeCloseTo(figure(live, 'plan.cost'), 6);
  });

  test('every spare is in a bag, and no bag holds more than it may with what is in it already', async () => {
    const live = await readOnly();
    const packed = figures(live, 'calls.packed');
    const chosen = figures(live, 'calls.chosen');
    const bags = texts(live, 'calls.bag_now');
    const names = texts(live, 'bags.bag');
    const carried = packed.flatMap((pieces, row) => (chosen[row] === 1 && pieces > 0 ? [row] : []));
    expect(carried.length).toBeGreaterThan(3);
    for (const row of carried) expect(names, `row ${row}`).toContain(bags[row]);
    for (const [of, limit, already] of [
      ['chosen_kg', 'mass_limit', 'packed_mass'],
      ['chosen_L', 'volume_limit', 'packed_volume'],
    ] as const) {
      names.forEach((name, at) => {
        const spares = figures(live, `calls.${of}`).reduce(
          (sum, each, row) => (bags[row] === name ? sum + each : sum),
          0,
        );
        const used = spares + figures(live, `bags.${already}`)[at]!;
        expect(used, `${name}, ${of}`).toBeLessThanOrEqual(figures(live, `bags.${limit}`)[at]! + 1e-6);
      });
    }
  });

  test('work sent out is bought from the workshop, takes no shed hours, and must be back in time', async () => {
    const live = await opened();
    const cell = live.document.cells.find((one) => one.id === 'decision');
    if (cell === undefined) throw new Error('no calls');
    live.apply(pinEdit(live.document, cell.id, 'Fork seals', 'send out'));
    await live.settled();
    const at = texts(live, 'decision.part').indexOf('Fork seals');
    expect(texts(live, 'decision.state')[at]).toBe('by hand');
    const { plan, totals } = solved(live);
    expect(plan.bought).toContainEqual({ offer: 'Anvil Lane Workshop AL-01', packs: 1 });
    expect(totals.shed_hours).toBeCloseTo(figure(live, 'shed_time'), 6);
    const row = texts(live, 'calls.part').findIndex(
      (part, each) => part === 'Fork seals' && texts(live, 'calls.call')[each] === 'send out',
    );
    // 126 EUR of the workshop's list, and no hours.
    expect(figures(live, 'calls.cash')[row]).toBeCloseTo(126, 9);
    expect(figures(live, 'calls.hours')[row]).toBe(0);
    // The rear shock is back after 21 days; 19 less 3 are left.
    live.apply(pinEdit(live.document, cell.id, 'Rear shock', 'send out'));
    await live.settled();
    expect(solved(live).refused_pins[0]?.sentence).toMatch(/No workshop has it done in time/);
  });

  test('stopped before it is ready it says so; asked once more, or after the next edit, it is there', async () => {
    // One that must search from nothing, so that there is something to stop.
    const slow = threadPlanner();
    let tell = (): void => undefined;
    const asked = new Promise<void>((resolve) => {
      tell = resolve;
    });
    const live = LiveNotebook.open(demo(), {
      ...slow,
      plan: (instance) => {
        const answer = slow.plan(instance);
        tell();
        return answer;
      },
    });
    await asked;
    slow.cancel();
    await live.settled();
    expect(live.planOf('plan').fault?.message).toBe('The plan was stopped before it was ready.');
    expect(live.planOf('plan').fault?.mend).toMatch(/^Have it worked out again, or change any figure/);
    live.planAgain('plan');
    await live.settled();
    expect(solved(live).status).toBe('optimal');
    live.planAgain('plan');
    slow.cancel();
    await live.settled();
    await setValue(live, 'cash_limit', 1000);
    expect(solved(live).status).toBe('optimal');
    expect(live.faults()).toEqual([]);
    live.dispose();
  });

  test('packs bought cover what the calls need, beyond what is on hand', async () => {
    const live = await readOnly();
    const packs = figures(live, 'plan.packs');
    const fits = texts(live, 'prices.fits');
    const pieces = figures(live, 'prices.pack');
    const bought = new Map<string, number>();
    packs.forEach((count, row) => {
      const kit = texts(live, 'kits.kit')
        .map((name, at) => [name, at] as const)
        .filter(([name]) => name === fits[row]);
      const covers =
        kit.length > 0
          ? kit.map(([, at]) => [texts(live, 'kits.part')[at], figures(live, 'kits.pieces')[at]] as const)
          : [[fits[row], 1] as const];
      for (const [part, each] of covers)
        bought.set(part ?? '', (bought.get(part ?? '') ?? 0) + count * (each ?? 0) * (pieces[row] ?? 1));
    });
    const needs = texts(live, 'calls.part').map(
      (part, row) =>
        [
          part,
          figures(live, 'calls.chosen')[row] === 1 ? (figures(live, 'calls.bought')[row] as number) : 0,
        ] as const,
    );
    for (const [part, need] of needs)
      if (need > 0) expect(bought.get(part ?? '') ?? 0, part ?? '').toBeGreaterThanOrEqual(need);
  });

  test('a lower budget is kept, and what no longer fits is said', async () => {
    const live = await opened();
    const before = figure(live, 'plan.cost');
    await setValue(live, 'cash_limit', 700);
    expect(figure(live, 'plan.cash')).toBeLessThanOrEqual(700);
    expect(figure(live, 'plan.cost')).toBeGreaterThanOrEqual(before - 1e-6);
    await setValue(live, 'cash_limit', 10);
    const plan = solved(live);
    expect(plan.meets_limits).toBe(false);
    expect(plan.shortfalls.map((short) => short.limit)).toContain('cash');
  });

  test('a call set by hand is kept by the plan; one that is not allowed is refused with its reason', async () => {
    const live = await opened();
    const cell = live.document.cells.find((held) => held.kind === 'calls');
    if (cell === undefined) throw new Error('no calls');
    live.apply(pinEdit(live.document, cell.id, 'Battery', 'leave'));
    await live.settled();
    const at = texts(live, 'decision.part').indexOf('Battery');
    expect(texts(live, 'decision.call')[at]).toBe('leave');
    expect(texts(live, 'decision.state')[at]).toBe('by hand');
    live.apply(pinEdit(live.document, cell.id, 'Drive chain', 'leave'));
    await live.settled();
    const chain = texts(live, 'decision.part').indexOf('Drive chain');
    expect(texts(live, 'decision.call')[chain]).not.toBe('leave');
    expect(texts(live, 'decision.state')[chain]).toBe('not allowed by hand');
    expect(solved(live).refused_pins.map((pin) => pin.part)).toEqual(['Drive chain']);
    expect(solved(live).refused_pins[0]?.sentence).toMatch(/maker’s manual/);
  });

  test('a call ruled out by hand is not made; undo allows it again', async () => {
    const live = await opened();
    const at = texts(live, 'decision.part').indexOf('Battery');
    const before = texts(live, 'decision.call')[at] ?? '';
    const cost = figure(live, 'plan.cost');
    live.apply(forbidEdit(live.document, 'decision', 'Battery', before, true));
    await live.settled();
    expect(solved(live).status).toBe('optimal');
    expect(texts(live, 'decision.call')[at]).not.toBe(before);
    expect(texts(live, 'decision.state')[at]).toBe('proposed');
    expect(figure(live, 'plan.cost')).toBeGreaterThanOrEqual(cost - 1e-6);
    live.apply(pinEdit(live.document, 'decision', 'Battery', before));
    await live.settled();
    expect(solved(live).refused_pins[0]?.sentence).toBe(
      `Battery cannot be set to "${before}": It is forbidden by hand.`,
    );
    live.undo();
    live.undo();
    await live.settled();
    expect(texts(live, 'decision.call')[at]).toBe(before);
    expect(figure(live, 'plan.cost')).toBeCloseTo(cost, 6);
  });

  test('a newer edit supersedes a plan under way; the last one stands', async () => {
    const live = await opened();
    for (const cash of [400, 500, 600, 650]) {
      const cell = live.document.cells.find((held) => held.kind === 'value' && held.name === 'cash_limit');
      if (cell?.kind !== 'value') throw new Error('no budget');
      live.apply(valueEdit(live.document, cell.id, { ...cell.content, value: cash } as ValueContent));
      await Promise.resolve();
    }
    await live.settled();
    expect(live.planOf('plan').solution?.instance.limits.cash).toBe(650);
    expect(figure(live, 'plan.cash')).toBeLessThanOrEqual(650);
    expect(live.faults()).toEqual([]);
  });

  test('renaming what it reads keeps it whole', async () => {
    const live = await opened();
    const cost = figure(live, 'plan.cost');
    live.apply(rename(live.document, 'prices', undefined, 'offers'));
    live.apply(rename(live.document, 'cash_limit', undefined, 'budget'));
    live.apply(rename(live.document, 'plan', undefined, 'best_plan'));
    await live.settled();
    expect(live.faults()).toEqual([]);
    expect(figure(live, 'best_plan.cost')).toBeCloseTo(cost, 6);
  });

  test('without a solver each part keeps its own cheapest call', async () => {
    const live = LiveNotebook.open(demo());
    await live.settled();
    expect(live.planOf('plan').solution?.result).toBeNull();
    expect(texts(live, 'decision.state')).toContain('proposed');
    expect(live.faults()).toEqual([]);
  });
});
