import { expect, test } from 'vitest';
import { turnScale } from '../../../cells/plan/turn-scale.ts';
import type { CallTurn } from '../../../src/notebook/trial/explain-call.ts';

const price: CallTurn = {
  figure: 'price',
  now: 20,
  at: 30,
  side: 'above',
  because: 'cost',
  other: 'leave',
  barred: false,
  unit: 'EUR',
};

test('dot, post and hatching stand in proportion on a line from 0', () => {
  const scale = turnScale(price);
  // The line goes to 1.35 * 30 = 40.5: 20 is at 49.4 %, 30 at 74.1 %.
  expect(scale.nowAt).toBeCloseTo(49.4, 1);
  expect(scale.postAt).toBeCloseTo(74.1, 1);
  expect([scale.zoneFrom, scale.zoneTo]).toEqual([scale.postAt, 100]);
  expect([scale.nowShown, scale.postShown, scale.words]).toEqual(['20.00', '30.00', 'above 30.00 EUR']);
});

test('below, the hatching runs from 0 to the post', () => {
  const scale = turnScale({ ...price, at: 10, side: 'below' });
  expect([scale.zoneFrom, scale.zoneTo]).toEqual([0, scale.postAt]);
  expect(scale.words).toBe('below 10.00 EUR');
});

test('figures that are close print beside each other, and none past an end', () => {
  for (const [now, at] of [
    [30, 30.1],
    [0.05, 20],
    [700, 20_000],
    [12, 1],
  ] as const) {
    const scale = turnScale({ ...price, now, at, side: at > now ? 'above' : 'below' });
    expect(Math.abs(scale.nowLabelAt - scale.postLabelAt)).toBeGreaterThanOrEqual(30 - 1e-9);
    for (const label of [scale.nowLabelAt, scale.postLabelAt]) {
      expect(label).toBeGreaterThanOrEqual(15 - 1e-9);
      expect(label).toBeLessThanOrEqual(85 + 1e-9);
    }
    expect(Math.sign(scale.nowLabelAt - scale.postLabelAt)).toBe(Math.sign(now - at));
  }
});

test('a rate has its own unit and three figures, and a rule is told apart from a cost', () => {
  const rate: CallTurn = {
    ...price,
    figure: 'rate',
    now: 0.30397,
    at: 0.41811,
    unit: '1/(1000 km)',
    barred: true,
  };
  const scale = turnScale(rate);
  expect([scale.nowShown, scale.postShown]).toEqual(['0.304', '0.418']);
  expect(scale.words).toBe('above 0.418 per 1,000 km, where the risk limit turns it');
  expect(turnScale({ ...price, because: 'limit' }).words).toBe('above 30.00 EUR, where a limit stops it');
});
