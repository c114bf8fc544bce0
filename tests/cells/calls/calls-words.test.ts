import { describe, expect, test } from 'vitest';
import { costParts, stripLength } from '../../../cells/calls/call-strip.ts';
import {
  countCalls,
  fineMoney,
  hiddenInWords,
  marginOf,
  partInWords,
  wholeMoney,
} from '../../../cells/calls/calls-words.ts';
import { partWith, readingOf, withCosts } from './parts-and-calls.ts';

const chain = { part: 'Chain', costs: [309, 114, 128, 150, 118, 200] };

test('money is whole in the table, with one decimal in the panel, with a true minus', () => {
  expect(wholeMoney(1240.4)).toBe('1,240');
  expect(wholeMoney(-13.5)).toBe('−14');
  expect(wholeMoney(-0.2)).toBe('0');
  expect(fineMoney(-13.46)).toBe('−13.5');
  expect(fineMoney(-0.02)).toBe('0.0');
  expect(fineMoney(Number.NaN)).toBe('–');
});

describe('the margin of a call', () => {
  test('best by, level within 2, and over the best by hand', async () => {
    expect(marginOf(await partWith(chain))).toEqual({ kind: 'best', by: '4' });
    expect(marginOf(await partWith({ part: 'Pads', costs: [90, 43, 34, 50, 35.5, 60] }))).toEqual({
      kind: 'level',
    });
    expect(marginOf(await partWith(chain, { Chain: 'leave' }))).toEqual({ kind: 'over', by: '+195' });
  });

  test('the only call that is allowed, and none without a price', async () => {
    const bars = ['due', '', 'due', 'due', 'due', 'due'];
    expect(marginOf(await partWith({ ...chain, bars }))).toEqual({ kind: 'only' });
    expect(marginOf(await partWith({ part: 'Levers', costs: [44, null] }))).toEqual({ kind: 'none' });
  });
});

test('a part in words for a screen reader', async () => {
  expect(partInWords(await partWith(chain), 'EUR')).toBe('Chain: Replace now, 114 EUR, best by 4');
  expect(partInWords(await partWith(chain, { Chain: 'carry 2' }), 'EUR')).toBe(
    'Chain: Carry 2 spares, 150 EUR, by hand, +36 over the best',
  );
});

test('what is not shown, in a sentence', async () => {
  const left = (part: string, leave: number) => ({ part, costs: [leave, 90, 60, 70, 80, 95] });
  const { parts } = await readingOf(withCosts([left('Seals', 21), left('Filter', 46)]));
  // By hand: the next call costs 60, so they are best by 39 and by 14.
  expect(hiddenInWords(parts, 'EUR')).toBe('2 more parts; Leave is best for each, by 14 EUR or more.');
  expect(hiddenInWords([], 'EUR')).toBe('');
});

test('calls are counted by what became of them', async () => {
  const { parts } = await readingOf(
    withCosts([chain, { part: 'Levers', costs: [44, null] }, { ...chain, part: 'Pads' }], { Pads: 'leave' }),
  );
  expect(countCalls(parts)).toMatchObject({ proposed: 1, byHand: 1, needPrice: 1, noneMeets: 0 });
});

test('strips differ in length by what the costs differ by, and split into cash, work, risk and life used', async () => {
  const { calls } = await partWith({ part: 'Chain', costs: [300, 110] });
  const figures = {
    cash: (row: number) => [0, 90][row] ?? Number.NaN,
    risk: (row: number) => [310, 40][row] ?? Number.NaN,
    left: (row: number) => [10, 50][row] ?? Number.NaN,
  };
  const parts = costParts(calls, figures);
  // By hand: leave 300 = 0 + 0 + 310 - 10; replace 110 = 90 + 30 + 40 - 50, so 30 of it is work.
  expect(parts.get('leave')).toEqual({ cash: 0, work: 0, risk: 310, used: 40 });
  expect(parts.get('replace')).toEqual({ cash: 90, work: 30, risk: 40, used: 0 });
  expect(stripLength(parts.get('leave')!) - stripLength(parts.get('replace')!)).toBe(190);
});

test('a call that the plan as a whole makes dearer than its own cheapest says so, not a negative margin', async () => {
  const part = { ...(await partWith(chain)), bestBy: -19.4 };
  expect(marginOf(part)).toEqual({ kind: 'limits', by: '19' });
  expect(partInWords(part, 'EUR')).toMatch(/19 over its own cheapest, for the plan as a whole$/);
  expect(marginOf({ ...part, bestBy: -1.5 })).toEqual({ kind: 'level' });
  expect(hiddenInWords([part], 'EUR')).toBe('1 more part, all Replace now.');
});
