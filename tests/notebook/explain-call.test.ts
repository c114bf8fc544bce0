import { describe, expect, test, vi } from 'vitest';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { type CallTurn, type CallWhy, explainCall } from '../../src/notebook/trial/explain-call.ts';
import { figuresNow } from '../../src/notebook/trial/figures-now.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import { demo, entriesOf, figure, texts, withColumn, withPartFigure, withValue } from '../starter/support.ts';
import { threadPlanner } from './thread-planner.ts';

// Some dozens of plans are solved here, one after another.
vi.setConfig({ testTimeout: 60_000 });

// One planner for all: each plan begins from those found before.
const planner = threadPlanner();

/** The demo with its plan, which all tests here only read. */
let planOfDemo: Promise<Omit<Parameters<typeof explainCall>[0], 'part' | 'now'> & { live: LiveNotebook }>;

async function solved(document: NotebookDocument) {
  const live = LiveNotebook.open(document, planner);
  await live.settled();
  const { solution } = live.planOf('plan');
  const plan = live.document.cells.find((cell) => cell.kind === 'plan');
  if (!solution?.result || !isSolved(solution.result) || plan?.kind !== 'plan') throw new Error('no plan');
  return { live, document: live.document, plan, instance: solution.instance, solved: solution.result };
}

/** Explains a part of the demo, and tells what came first. */
async function explained(part: string): Promise<{ first: CallWhy | null; last: CallWhy }> {
  planOfDemo ??= solved(demo());
  const { live, ...asked } = await planOfDemo;
  let first: CallWhy | null = null;
  const last = await explainCall(
    { ...asked, part, now: figuresNow(live, asked.plan, part) },
    planner,
    new AbortController().signal,
    (told) => {
      first = told;
    },
  );
  if (last === null) throw new Error(`nothing about ${part}`);
  return { first, last };
}

/** The demo, really edited so that the figure is `share` times what it was. */
function edited(part: string, turn: CallTurn, share: number): NotebookDocument {
  const document = demo();
  if (turn.figure === 'rate') return withPartFigure(document, part, 'rate_likely', turn.now * share);
  if (turn.figure === 'price') {
    const fits = entriesOf(document, 'prices', 'fits');
    return withColumn(document, 'prices', 'price', (price, row) =>
      fits[row] === part && typeof price === 'number' ? price * share : price,
    );
  }
  return document;
}

/** What the plan costs, and its call for the part, with the part's call set by hand or free. */
async function planned(document: NotebookDocument, part: string, call: string | null) {
  const pinned =
    call === null
      ? document
      : {
          ...document,
          cells: document.cells.map((cell) =>
            cell.kind === 'calls' ? { ...cell, pins: { [part]: call } } : cell,
          ),
        };
  const live = LiveNotebook.open(pinned, planner);
  await live.settled();
  const cost = figure(live, 'plan.cost');
  const chosen = texts(live, 'decision.call')[texts(live, 'decision.part').indexOf(part)];
  live.dispose();
  return { cost, chosen };
}

describe('break-evens of the demo, held against the notebook itself', () => {
  test.each([
    ['Clutch cable', 'price'],
    ['Chain slider', 'rate'],
  ] as const)(
    '%s, %s: both calls cost the same to a cent, and the call turns on either side',
    async (part, kind) => {
      const { last } = await explained(part);
      const turn = last.turns.find((one) => one.figure === kind);
      if (turn?.other == null) throw new Error(`${part} does not turn on its ${kind}`);
      const share = turn.at / turn.now;
      const there = edited(part, turn, share);
      const [own, other] = [
        await planned(there, part, last.why.call),
        await planned(there, part, turn.other),
      ];
      expect(Math.abs(own.cost - other.cost)).toBeLessThanOrEqual(0.01);
      const near = 1 + (share - 1) * 0.98;
      const far = 1 + (share - 1) * 1.02;
      expect((await planned(edited(part, turn, near), part, null)).chosen).toBe(last.why.call);
      expect((await planned(edited(part, turn, far), part, null)).chosen).not.toBe(last.why.call);
    },
  );

  test('a critical part turns where a rule bars its call, whatever that costs', async () => {
    const { last } = await explained('Front brake pads');
    const turn = last.turns.find((one) => one.figure === 'rate');
    expect(turn).toMatchObject({ side: 'above', barred: true, other: 'change on the way' });
    const share = (turn as CallTurn).at / (turn as CallTurn).now;
    const at = (by: number) =>
      planned(edited('Front brake pads', turn as CallTurn, share * by), 'Front brake pads', null);
    expect((await at(0.99)).chosen).toBe(last.why.call);
    expect((await at(1.01)).chosen).toBe('change on the way');
  });
});

test('a first answer comes at once, without break-evens and with the other calls as they are', async () => {
  const { first, last } = await explained('Fork seals');
  expect(first).toMatchObject({ done: false, turns: [], why: { scope: 'this part', call: 'replace' } });
  expect(last).toMatchObject({ done: true, why: { scope: 'everything', call: 'replace' } });
  // Fork seals have an age and no reading, so there is no rate of wear to ask about.
  expect(last.asked).toEqual(['price', 'stranding']);
});

test('what is given up is not answered', async () => {
  const { live, ...asked } = await solved(withValue(demo(), 'cash_limit', 700));
  const stopper = new AbortController();
  stopper.abort(new Error('given up'));
  const question = { ...asked, part: 'Battery', now: figuresNow(live, asked.plan, 'Battery') };
  await expect(explainCall(question, planner, stopper.signal)).rejects.toThrow('given up');
  live.dispose();
});
