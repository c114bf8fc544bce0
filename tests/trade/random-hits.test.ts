import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { poissonMore } from '../../src/trade/poisson-more.ts';
import { poissonOver } from '../../src/trade/poisson-over.ts';
import { between } from './arbitraries.ts';

const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);
const spares = fc.integer({ min: 0, max: 12 });
const mean = fc.oneof(between(0.001, 5), between(5, 60));

describe('random hits', () => {
  // mpmath 1.3.0, 50 digits: sums over j > k of (j - k) e^-M M^j/j! and of e^-M M^j/j!.
  test.each([
    [0, 0.7, 0.7, 0.50341469620859],
    [3, 0.7, 0.006638736111097196, 0.0057534575922996],
    [2, 2.7, 1.0158659098768239, 0.506375508926538],
    [2, 3.0000001, 1.248935421924493, 0.5768099412768373],
    [790, 800, 16.958512610510937, 0.6295412645583077],
    [810, 800, 7.002693256989071, 0.3533454529406322],
    [3, 900, 897, 1],
  ])('%i spares, mean %f', (k, m, over, more) => {
    expect(relative(poissonOver(k, m), over)).toBeLessThan(1e-11);
    expect(relative(poissonMore(k, m), more)).toBeLessThan(1e-11);
  });

  test('without spares every hit is uncovered; without hits nothing is', () => {
    fc.assert(
      fc.property(mean, spares, (m, k) => {
        expect(relative(poissonOver(0, m), m)).toBeLessThan(1e-14);
        expect(relative(poissonMore(0, m), -Math.expm1(-m))).toBeLessThan(1e-13);
        expect(poissonOver(k, 0)).toBe(0);
        expect(poissonMore(k, 0)).toBe(0);
      }),
    );
  });

  test('two routes agree: one more spare covers one more hit whenever there are more than k', () => {
    fc.assert(
      fc.property(spares, mean, (k, m) => {
        const saved = poissonOver(k, m) - poissonOver(k + 1, m);
        expect(Math.abs(saved - poissonMore(k, m))).toBeLessThan(1e-13 * Math.max(1, m));
      }),
    );
  });

  test('more hits are never better, more spares never worse', () => {
    fc.assert(
      fc.property(spares, mean, between(1, 2), (k, m, worse) => {
        expect(poissonOver(k, m * worse)).toBeGreaterThanOrEqual(poissonOver(k, m) * (1 - 1e-13));
        expect(poissonMore(k, m * worse)).toBeGreaterThanOrEqual(poissonMore(k, m) * (1 - 1e-13));
        expect(poissonOver(k + 1, m)).toBeLessThanOrEqual(poissonOver(k, m));
        expect(poissonMore(k + 1, m)).toBeLessThanOrEqual(poissonMore(k, m));
      }),
    );
  });

  test('ends at once for counts and means of any size', () => {
    expect(poissonOver(1e9, 3)).toBe(0);
    expect(poissonOver(1e9, 2e9)).toBe(1e9);
    expect(poissonMore(1e9, 2e9)).toBe(1);
  });
});
