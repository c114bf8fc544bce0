import { expect, test } from 'vitest';
import { wilsonInterval } from '../../src/trade/wilson-interval.ts';

test('Wilson’s interval is that of R', () => {
  const [low, high] = wilsonInterval(7, 10, 0.95);
  // R 4.2.2 stats::prop.test(7, 10, correct=FALSE)
  expect(Math.abs(low / 0.39677814746114537 - 1)).toBeLessThan(1e-9);
  expect(Math.abs(high / 0.892208732593699 - 1)).toBeLessThan(1e-9);
});

test('none and all reach to the end', () => {
  expect(wilsonInterval(0, 20, 0.95)[0]).toBeCloseTo(0, 12);
  expect(wilsonInterval(20, 20, 0.95)[1]).toBeCloseTo(1, 12);
});

test.each([
  [1, 0, 0.95, /count/],
  [3, 2, 0.95, /held/],
  [-1, 2, 0.95, /held/],
  [1, 2, 1, /chance/],
])('%d of %d at %d is refused', (held, count, confidence, words) => {
  expect(() => wilsonInterval(held, count, confidence)).toThrow(words);
});
