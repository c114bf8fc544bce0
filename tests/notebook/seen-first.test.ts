import { isDeepStrictEqual } from 'node:util';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { entryEdit } from '../../src/notebook/edits.ts';
import type { Planner } from '../../src/notebook/graph/planner.ts';
import { Program } from '../../src/notebook/graph/program.ts';
import { LiveNotebook, type NotebookChange } from '../../src/notebook/live-notebook.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { demo } from '../starter/support.ts';
import { entered, formula, notebook, table } from './small-notebook.ts';

/** A page that is painted, and takes breath, when the test says so. */
class Page {
  #painted: (() => void)[] = [];
  #breathed: (() => void)[] = [];
  readonly sight: Parameters<LiveNotebook['useSight']>[0];

  constructor(seen: () => Iterable<string>) {
    this.sight = {
      seen,
      painted: () => new Promise((resolve) => this.#painted.push(resolve)),
      breath: () => new Promise((resolve) => this.#breathed.push(resolve)),
    };
  }

  async paint(): Promise<void> {
    const painted = this.#painted;
    this.#painted = [];
    for (const resolve of painted) resolve();
    await turn();
  }

  async breathe(): Promise<void> {
    const breathed = this.#breathed;
    this.#breathed = [];
    for (const resolve of breathed) resolve();
    await turn();
  }
}

/** Until all that is ready to be worked out is. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

const small = (): LiveNotebook =>
  LiveNotebook.open(
    notebook(
      table('legs', entered('distance', 'number', [100, 200], { unit: 'km' })),
      formula('whole', 'sum(legs.distance)'),
      formula('seen', 'whole * 2'),
      formula('unseen', 'whole * 3'),
      formula('far', 'unseen + 1 km'),
      formula('at_least', 'max(whole, 9000 km)'),
    ),
  );

const edit = (live: LiveNotebook, km: number): void =>
  live.apply(entryEdit(live.document, 'legs', 'distance', 0, km));

const figure = (live: LiveNotebook, name: string): unknown => {
  const read = live.read(name);
  return read.state === 'settled' ? read.column.values[0] : read.state;
};

async function opened(): Promise<{ live: LiveNotebook; page: Page; told: NotebookChange[] }> {
  const live = small();
  await live.settled();
  const page = new Page(() => ['seen']);
  live.useSight(page.sight);
  const told: NotebookChange[] = [];
  live.subscribe((change) => {
    if (!change.document) told.push(change);
  });
  return { live, page, told };
}

describe('what is seen is worked out first', () => {
  test('it and what it reads are told within the turn of the edit, the rest when that is painted', async () => {
    const { live, page, told } = await opened();
    edit(live, 150);
    await live.working;
    expect(figure(live, 'seen')).toBe(700);
    expect(figure(live, 'unseen')).toBe('working');
    expect(told).toHaveLength(1);
    expect(told[0]?.isPartial).toBe(true);
    expect([...(told[0]?.nodes ?? [])].sort()).toEqual(['legs.distance', 'seen', 'whole']);
    await turn();
    expect(figure(live, 'unseen')).toBe('working');
    await page.paint();
    await page.breathe();
    expect(figure(live, 'unseen')).toBe(1050);
    expect(figure(live, 'far')).toBe(1051);
    expect(told).toHaveLength(2);
    expect(told[1]?.isPartial).toBe(false);
    // What comes out as it was is no news.
    expect([...(told[1]?.nodes ?? [])].sort()).toEqual(['far', 'unseen']);
    await live.settled();
  });

  test('an edit made before the last is painted, or while the rest is worked out, is seen at once', async () => {
    const { live, page, told } = await opened();
    edit(live, 150);
    await live.working;
    edit(live, 160);
    await live.working;
    expect(figure(live, 'seen')).toBe(720);
    await page.paint();
    edit(live, 170);
    await live.working;
    expect(figure(live, 'seen')).toBe(740);
    expect(told.map((change) => change.isPartial)).toEqual([true, true, true]);
    for (let frame = 0; frame < 3; frame += 1) {
      await page.paint();
      await page.breathe();
    }
    await live.settled();
    expect(figure(live, 'far')).toBe(1111);
    // Whoever waits for all of it is told in the end.
    expect(told.at(-1)?.isPartial).toBe(false);
  });

  test('what comes out as it was is told all the same to whoever saw it being worked out', async () => {
    const { live, page, told } = await opened();
    edit(live, 150);
    await live.working;
    expect(figure(live, 'at_least')).toBe('working');
    await page.paint();
    await page.breathe();
    await live.settled();
    expect(figure(live, 'at_least')).toBe(9000);
    expect(told.at(-1)?.nodes.has('at_least')).toBe(true);
  });

  test('a notebook that is let go while figures wait ends quietly', async () => {
    const { live, page } = await opened();
    edit(live, 150);
    await live.working;
    live.dispose();
    await page.paint();
    await page.breathe();
    expect(live.document.cells).toHaveLength(6);
  });
});

/** A plan that takes its time and then fails: what hangs on it is slow. */
const slowPlanner: Planner = {
  plan: () => new Promise((_, reject) => setTimeout(() => reject(new Error('no plan today')), 3)),
  cancel: () => undefined,
  ask: () => Promise.reject(new Error('nobody asks')),
  tryFigure: () => Promise.reject(new Error('nobody tries')),
};

test('in a burst of edits one plan is asked for, of the newest figures, and none of those between is waited for', async () => {
  const asked: PlanInstance[] = [];
  let rest: (() => void)[] = [];
  const live = LiveNotebook.open(demo(), {
    ...slowPlanner,
    painted: () => new Promise((resolve) => rest.push(resolve)),
    plan: (instance) => {
      asked.push(instance);
      return Promise.reject(new Error('no plan today'));
    },
  });
  await turn();
  const table = live.document.cells.find((one) => one.kind === 'table' && one.name === 'prices');
  const column = table?.kind === 'table' ? table.columns.find((one) => one.name === 'price') : undefined;
  if (!table || !column) throw new Error('the demo has no prices.price');
  for (let price = 1; price <= 5; price += 1) {
    live.apply(entryEdit(live.document, table.id, column.id, 0, 1000 + price));
    await turn();
  }
  expect(asked).toHaveLength(0);
  // None had to wait for the frame of the one before, nor had the first for that of the opening.
  expect(rest).toHaveLength(6);
  for (const resolve of rest) resolve();
  rest = [];
  await live.settled();
  expect(asked).toHaveLength(1);
  const anew = LiveNotebook.open(live.document, {
    ...slowPlanner,
    plan: (instance) => {
      asked.push(instance);
      return Promise.reject(new Error('no plan today'));
    },
  });
  await anew.settled();
  expect(asked[0]).toEqual(asked[1]);
  live.dispose();
  anew.dispose();
});

test('whatever is seen, cards that draw what they are told show in the end what a notebook opened anew shows (property)', async () => {
  const live = LiveNotebook.open(demo(), slowPlanner);
  await live.settled();
  const nodes = [...Program.of(live.document).specs.keys()].filter((node) => !node.includes('.#'));
  const cardOf = (node: string): string => node.split('.')[0] ?? node;
  const cards = new Map<string, Map<string, unknown>>();
  const draw = (card: string): void => {
    const own = nodes.filter((node) => cardOf(node) === card);
    cards.set(card, new Map(own.map((node) => [node, live.read(node)])));
  };
  for (const card of new Set(nodes.map(cardOf))) draw(card);
  live.subscribe((change) => {
    for (const card of new Set([...change.nodes].map(cardOf))) draw(card);
  });
  let seen: readonly string[] = [];
  const soon = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  live.useSight({ seen: () => seen, painted: soon, breath: soon });
  const targets = [
    { cell: 'route', column: 'distance', rows: 20, step: 7 },
    { cell: 'wear', column: 'now', rows: 10, step: 0.01 },
    { cell: 'prices', column: 'price', rows: 20, step: 0.5 },
  ] as const;
  await fc.assert(
    fc.asyncProperty(
      fc.subarray(nodes, { maxLength: 8 }),
      fc.array(fc.tuple(fc.constantFrom(...targets), fc.nat(), fc.nat(3)), { minLength: 1, maxLength: 4 }),
      async (visible, edits) => {
        seen = visible;
        for (const [{ cell, column, rows, step }, at, pauses] of edits) {
          const table = live.document.cells.find((one) => one.kind === 'table' && one.name === cell);
          const held = table?.kind === 'table' ? table.columns.find((one) => one.name === column) : undefined;
          const entries = held && 'entries' in held ? held.entries : [];
          const row = at % Math.min(rows, entries.length);
          const before = entries[row];
          if (!table || !held || typeof before !== 'number') continue;
          live.apply(entryEdit(live.document, table.id, held.id, row, before + step));
          await live.working;
          for (const node of visible) {
            const read = live.read(node);
            // A plan, and what reads it, may still be on its way.
            if (read.state === 'working') expect(slowOnes.has(node)).toBe(true);
          }
          for (let pause = 0; pause < pauses; pause += 1) await soon();
        }
        await live.settled();
        const anew = LiveNotebook.open(live.document, slowPlanner);
        await anew.settled();
        for (const [card, shown] of cards)
          for (const [node, state] of shown)
            if (!isDeepStrictEqual(state, anew.read(node)))
              expect([card, node, state]).toEqual([card, node, anew.read(node)]);
        anew.dispose();
      },
    ),
    { numRuns: 10 },
  );
}, 60_000);

/** Nodes of the demo that hang on the plan. */
const slowOnes = ((): ReadonlySet<string> => {
  const { specs } = Program.of(demo(), null, slowPlanner);
  const slow = new Set([...specs.keys()].filter((node) => node.endsWith('.#solution')));
  for (const node of slow)
    for (const spec of specs.values()) if (spec.reads.includes(node)) slow.add(spec.node);
  return slow;
})();
