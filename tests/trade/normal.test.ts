import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { likelyPoints } from '../../src/trade/likely-points.ts';
import { logNormalTail } from '../../src/trade/log-normal-tail.ts';
import { millsRatio } from '../../src/trade/mills-ratio.ts';
import { normalCdf } from '../../src/trade/normal-cdf.ts';
import { normalQuantile } from '../../src/trade/normal-quantile.ts';
import { between } from './arbitraries.ts';

const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);

describe('standard normal', () => {
  test('the two tails add up to 1, and the function rises', () => {
    fc.assert(
      fc.property(between(-6, 6), between(0.01, 3), (z, step) => {
        expect(normalCdf(z) + normalCdf(-z)).toBeCloseTo(1, 14);
        expect(normalCdf(z + step)).toBeGreaterThan(normalCdf(z));
      }),
    );
  });

  test('quantile and distribution function are each other inverted', () => {
    fc.assert(
      fc.property(between(-37, 3), (z) => {
        // Above 0 the chance itself is rounded, to eps / density in z.
        const rounding = z > 0 ? (4e-16 * Math.sqrt(2 * Math.PI)) / Math.exp(-z * z * 0.5) : 0;
        expect(Math.abs(normalQuantile(normalCdf(z)) - z)).toBeLessThanOrEqual(
          1e-14 + 1e-13 * Math.abs(z) + rounding,
        );
      }),
    );
  });

  test('quantile against another tool', () => {
    // mpmath 1.3.0, 50 digits: root of erfc(x/sqrt 2)/2 = 1e-10, and sqrt(2) erfinv(0.4).
    expect(relative(normalQuantile(1e-10), -6.361340902404057)).toBeLessThan(1e-13);
    expect(relative(normalQuantile(0.7), 0.5244005127080408)).toBeLessThan(1e-13);
  });

  test.each([0, 1, -0.1, 1.5])('there is no quantile for a chance of %f', (chance) => {
    expect(() => normalQuantile(chance)).toThrow('it must be between 0 and 1');
  });

  test('the logarithm of the tail is the same by all three ways, and against another tool', () => {
    // mpmath 1.3.0, 50 digits: log(erfc(z/sqrt 2)/2) at z = 40, 12 and -3.
    expect(relative(logNormalTail(40), -804.6084420137538)).toBeLessThan(1e-15);
    expect(relative(logNormalTail(12), -75.4106730015688)).toBeLessThan(1e-14);
    expect(relative(logNormalTail(-3), -0.0013508099647481938)).toBeLessThan(1e-13);
    expect(relative(logNormalTail(30 + 1e-12), logNormalTail(30))).toBeLessThan(1e-12);
    expect(logNormalTail(-Infinity)).toBeCloseTo(0, 15);
    fc.assert(
      fc.property(between(-8, 37), (z) => {
        expect(relative(Math.exp(logNormalTail(z)), normalCdf(-z))).toBeLessThan(1e-12);
      }),
    );
  });

  test('the Mills ratio joins its series without a step, and against another tool', () => {
    // mpmath 1.3.0, 50 digits: sqrt(pi/2) exp(z^2/2) erfc(z/sqrt 2) at z = 15.
    expect(relative(millsRatio(15), 0.06637423582325018)).toBeLessThan(1e-15);
    expect(relative(millsRatio(12 - 1e-13), millsRatio(12))).toBeLessThan(1e-13);
  });

  test('likely points: rising, symmetric, with the mean and nearly the variance of the normal', () => {
    const points = likelyPoints(201);
    expect(points.length).toBe(201);
    expect(points[100]).toBe(0);
    for (let k = 1; k < 201; k += 1) {
      expect(points[k]!).toBeGreaterThan(points[k - 1]!);
      expect(points[k]!).toBe(-points[200 - k]! + 0);
      expect(normalCdf(points[k]!)).toBeCloseTo((k + 0.5) / 201, 14);
    }
    const variance = points.reduce((sum, z) => sum + z * z, 0) / 201;
    expect(variance).toBeGreaterThan(0.98);
    expect(variance).toBeLessThan(1);
  });
});
