import { describe, expect, test } from 'vitest';
import { callInWords, callKindOf } from '../../../cells/calls/call-kind.ts';
import { callOfKind, isHeldBack, overBest } from '../../../cells/calls/calls-reading.ts';
import { partWith, readingOf, withCosts } from './parts-and-calls.ts';

describe('what the calls cell reads', () => {
  test('for each part its calls with kinds and depths, the proposed one and by how much it is best', async () => {
    const { parts, money, working } = await readingOf(
      withCosts([{ part: 'Chain', costs: [309, 114, 128, 150, 118, 200], critical: true }]),
    );
    expect({ money, working }).toEqual({ money: 'EUR', working: false });
    expect(parts).toMatchObject([
      {
        part: 'Chain',
        critical: true,
        chance: 0.45,
        chosen: { call: 'replace', cost: 114 },
        proposed: { call: 'replace' },
        bestBy: 4,
        byHand: false,
        state: 'proposed',
      },
    ]);
    expect(parts[0]!.calls.map((call) => [call.kind, call.spares])).toEqual([
      ['leave', 0],
      ['replace', 0],
      ['carry', 1],
      ['carry', 2],
      ['keep', 0],
      ['way', 0],
    ]);
  });

  test('a call set by hand, and what it costs over the best', async () => {
    const part = await partWith(
      { part: 'Chain', costs: [309, 114, 128, 150, 118, 200] },
      { Chain: 'carry 2' },
    );
    expect(part).toMatchObject({
      byHand: true,
      state: 'by hand',
      chosen: { call: 'carry 2' },
      pinned: { cost: 150 },
    });
    expect(overBest(part)).toBe(36);
  });

  test('one set by hand that is not allowed is not in force', async () => {
    const part = await partWith(
      { part: 'Tyre', costs: [914, 144, 160, 200, 170, 180], bars: ['past its limit'] },
      { Tyre: 'leave' },
    );
    expect(part).toMatchObject({
      state: 'not allowed by hand',
      byHand: false,
      chosen: { call: 'replace' },
      pinned: { call: 'leave', reason: 'past its limit' },
    });
  });

  test('without a price there is no call', async () => {
    const part = await partWith({ part: 'Levers', costs: [44, null, null, null, null, null] });
    expect(part).toMatchObject({ state: 'needs a price', chosen: null });
    expect(callOfKind(part, 'replace')?.cost).toBeNaN();
  });
});

describe('the call in the column of a kind', () => {
  test('is the cheapest depth that is allowed', async () => {
    const part = await partWith({ part: 'Tubes', costs: [284, 258, 60, 43, 73, 90] });
    expect(callOfKind(part, 'carry')).toMatchObject({ call: 'carry 2', cost: 43 });
  });

  test('is the one in force when it was set by hand', async () => {
    const part = await partWith({ part: 'Tubes', costs: [284, 258, 60, 43, 73, 90] }, { Tubes: 'carry 1' });
    expect(callOfKind(part, 'carry')).toMatchObject({ call: 'carry 1', cost: 60 });
  });

  test('is shown with its cost even if it is not allowed', async () => {
    const part = await partWith({
      part: 'Tyre',
      costs: [100, 144, 80, 70, 170, 180],
      bars: ['', '', 'too big', 'too big'],
    });
    expect(callOfKind(part, 'carry')).toMatchObject({ call: 'carry 2', allowed: false });
  });
});

describe('leave is held back', () => {
  test('when it would be cheapest but is not allowed', async () => {
    const held = { part: 'Bearings', costs: [12, 30, 49, 60, 52, 70], bars: ['past the risk limit'] };
    expect(isHeldBack(await partWith(held))).toBe(true);
  });

  test('not when another call is cheaper anyway, nor when it may be left', async () => {
    expect(
      isHeldBack(await partWith({ part: 'Bearings', costs: [40, 30], bars: ['past the risk limit'] })),
    ).toBe(false);
    expect(isHeldBack(await partWith({ part: 'Bearings', costs: [12, 30, 49, 60, 52, 70] }))).toBe(false);
  });
});

test('kinds are known by the words of a call, or as its table says', () => {
  expect(callKindOf('replace and keep old', null)).toBe('keep');
  expect(callKindOf('fit the spare set', 'carry')).toBe('carry');
  expect(callKindOf('Change on the way', null)).toBe('way');
  expect(callKindOf('carry a spare', null)).toBe('carry');
  expect(callInWords({ call: 'carry 3', kind: 'carry', spares: 3 })).toBe('Carry 3 spares');
  expect(callInWords({ call: 'carry 1', kind: 'carry', spares: 1 })).toBe('Carry a spare');
});
