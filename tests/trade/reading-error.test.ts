import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blurredLimit } from '../../src/trade/blurred-limit.ts';
import { likelyPoints } from '../../src/trade/likely-points.ts';
import { limitChance } from '../../src/trade/limit-chance.ts';
import { between } from './arbitraries.ts';

const POINTS = likelyPoints(201);

/** Model 2 as it stands: the plain mean of the plain chance over 201 allowances. */
function meanOverPoints(
  allowance: number,
  rate: number,
  spread: number,
  reach: number,
  error: number,
): number {
  let sum = 0;
  for (const e of POINTS) sum += limitChance(allowance + error * e, rate, spread, reach);
  return sum / POINTS.length;
}

/** The integral that the 201 points stand for, by Simpson's rule on -9 to 9. */
function integral(allowance: number, rate: number, spread: number, reach: number, error: number): number {
  const steps = 36_000;
  let sum = 0;
  for (let k = 0; k <= steps; k += 1) {
    const e = -9 + (18 * k) / steps;
    const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
    sum += weight * limitChance(allowance + error * e, rate, spread, reach) * Math.exp(-e * e * 0.5);
  }
  return (sum * 18) / steps / 3 / Math.sqrt(2 * Math.PI);
}

describe('reading error', () => {
  // mpmath 1.3.0, 50 digits: the mean of erfc(-ln(y/(A + u e))/(sigma sqrt 2))/2 over the 201 points.
  test.each([
    [0.8, 0.12, 0.25, 5200, 0.1, 0.1949599894699598],
    [0.55, 0.075, 0.3, 7800, 0.08, 0.5834410756807193],
    [2.6, 0.35, 0.3, 6000, 0.5, 0.2901804827709952],
    [0.4, 0.1, 0.2, 2000, 0.3, 0.2587237455752865],
    [-0.1, 0.1, 0.3, 2000, 0.2, 0.9302593519632973],
    [1.2, 0.2, 0.6, 12000, 0.01, 0.8759941132816798],
  ])(
    'allowance %f, rate %f, spread %f, reach %i, error %f',
    (allowance, rate, spread, reach, error, expected) => {
      expect(Math.abs(limitChance(allowance, rate, spread, reach, error) - expected)).toBeLessThan(1e-12);
    },
  );

  test('keeps far tails above nought', () => {
    // mpmath 1.3.0, 50 digits: 9.98989e-58 by the 201 points.
    const tail = limitChance(4, 0.05, 0.2, 3000, 0.2);
    expect(tail).toBeGreaterThan(0);
    expect(tail).toBeLessThan(1e-50);
  });

  test('agrees with the plain mean over all 201 points to 1e-12', () => {
    fc.assert(
      fc.property(
        between(-0.5, 4),
        between(-2.5, 1),
        between(-2.5, 0.5),
        between(0, 9000),
        between(-3, 0.5),
        (allowance, logRate, logSpread, reach, logError) => {
          const figures = [allowance, 10 ** logRate, 10 ** logSpread, reach, 10 ** logError] as const;
          expect(Math.abs(limitChance(...figures) - meanOverPoints(...figures))).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 1000 },
    );
  });

  test('agrees with the integral over the normal error as closely as 201 points can', () => {
    // Beyond the outermost two points lies half a per cent of the error, and each point stands for 1/201.
    fc.assert(
      fc.property(
        between(0.3, 3),
        between(0.02, 0.4),
        between(0.1, 0.6),
        between(0.02, 0.5),
        (a, rate, spread, part) => {
          const figures = [a, rate, spread, 5000, a * part] as const;
          expect(Math.abs(limitChance(...figures) - integral(...figures))).toBeLessThan(1 / 402);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('no error is the plain form; a vanishing one is next to it', () => {
    fc.assert(
      fc.property(
        between(0.1, 4),
        between(0.01, 1),
        between(0.05, 1),
        between(0, 9000),
        (a, rate, spread, reach) => {
          const plain = limitChance(a, rate, spread, reach);
          expect(limitChance(a, rate, spread, reach, 0)).toBe(plain);
          expect(limitChance(a, rate, spread, reach, NaN)).toBe(plain);
          expect(Math.abs(limitChance(a, rate, spread, reach, a * 1e-6) - plain)).toBeLessThan(1e-6);
        },
      ),
    );
  });

  test('at reach 0 it is the share of allowances that are used up', () => {
    // By hand: A/u = 1 lies between the 169th and the 170th point from below, as Phi(-1) * 201 = 31.9 are due.
    expect(limitChance(0.2, 0.1, 0.3, 0, 0.2)).toBe(32 / 201);
    expect(limitChance(0.2, 0.1, 0, 0, 0.2)).toBe(32 / 201);
    expect(limitChance(5, 0.1, 0.3, 0, 0.2)).toBe(0);
    expect(limitChance(-5, 0.1, 0.3, 0, 0.2)).toBe(1);
  });

  test('without spread it counts the allowances that the wear has reached', () => {
    // By hand: wear 0.8 = A reaches every allowance with e <= 0, the middle one of 201 included.
    expect(limitChance(0.8, 0.2, 0, 4000, 0.1)).toBe(101 / 201);
    expect(
      Math.abs(limitChance(0.8, 0.16, 0, 5200, 0.1) - limitChance(0.8, 0.16, 1e-7, 5200, 0.1)),
    ).toBeLessThan(1e-9);
  });

  test('never falls as rate or reach grows', () => {
    fc.assert(
      fc.property(
        between(-0.5, 4),
        between(0.01, 1),
        between(0.05, 1),
        between(0, 9000),
        between(0.01, 1),
        between(1, 2),
        (a, rate, spread, reach, error, worse) => {
          const now = limitChance(a, rate, spread, reach, error);
          expect(limitChance(a, rate * worse, spread, reach, error)).toBeGreaterThanOrEqual(now - 1e-15);
          expect(limitChance(a, rate, spread, reach * worse, error)).toBeGreaterThanOrEqual(now - 1e-15);
        },
      ),
    );
  });

  test('weights and the share that is due sum to 1, and few nodes serve a usual part', () => {
    fc.assert(
      fc.property(between(-1, 4), between(0.01, 1), between(0.01, 1), (allowance, spread, error) => {
        const limit = blurredLimit(allowance, spread, error);
        expect(limit.weights.every((weight) => weight > 0)).toBe(true);
        expect(limit.weights.reduce((sum, weight) => sum + weight, limit.due)).toBeCloseTo(1, 13);
        expect(limit.nodes.length).toBeLessThanOrEqual(201);
      }),
    );
    expect(blurredLimit(1, 0.25, 0.1).nodes.length).toBeLessThan(16);
  });

  test('a limit asked for again is the same one, and others in between do not change it', () => {
    const first = limitChance(0.7, 0.1, 0.31, 4000, 0.06);
    for (let k = 1; k < 500; k += 1) limitChance(0.7 + k / 100, 0.1, 0.31, 4000, 0.06);
    expect(limitChance(0.7, 0.1, 0.31, 4000, 0.06)).toBe(first);
  });
});
