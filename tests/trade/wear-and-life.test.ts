import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { allowanceLeft } from '../../src/trade/allowance-left.ts';
import { lifeChance } from '../../src/trade/life-chance.ts';
import { lifeLeft } from '../../src/trade/life-left.ts';
import { limitChance } from '../../src/trade/limit-chance.ts';
import { normalQuantile } from '../../src/trade/normal-quantile.ts';
import { spreadFrom } from '../../src/trade/spread-from.ts';
import { between } from './arbitraries.ts';

const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);

/** Integral of f from a to b by Simpson's rule. */
function simpson(f: (x: number) => number, a: number, b: number, steps: number): number {
  let sum = f(a) + f(b);
  for (let k = 1; k < steps; k += 1) sum += (k % 2 === 1 ? 4 : 2) * f(a + ((b - a) * k) / steps);
  return (sum * (b - a)) / steps / 3;
}

describe('wear to a limit', () => {
  const figures = [between(0.05, 4), between(0.01, 1), between(0.05, 1), between(0, 9000)] as const;

  test('the chance never falls with rate or reach, never rises with allowance', () => {
    fc.assert(
      fc.property(...figures, between(1, 3), (allowance, rate, spread, reach, worse) => {
        const now = limitChance(allowance, rate, spread, reach);
        expect(limitChance(allowance, rate * worse, spread, reach)).toBeGreaterThanOrEqual(now);
        expect(limitChance(allowance, rate, spread, reach * worse)).toBeGreaterThanOrEqual(now);
        expect(limitChance(allowance * worse, rate, spread, reach)).toBeLessThanOrEqual(now);
      }),
    );
  });

  test('units do not matter: inches for millimetres, miles for kilometres', () => {
    fc.assert(
      fc.property(...figures, (allowance, rate, spread, reach) => {
        const chance = limitChance(allowance, rate, spread, reach);
        const imperial = limitChance(allowance / 25.4, (rate * 1.609344) / 25.4, spread, reach / 1.609344);
        expect(imperial).toBeCloseTo(chance, 12);
        const left = allowanceLeft(allowance, rate, spread, reach);
        expect(25.4 * allowanceLeft(allowance / 25.4, rate / 25.4, spread, reach)).toBeCloseTo(left, 12);
      }),
    );
  });

  test('the limit is reached by the middle reach half of the time', () => {
    fc.assert(
      fc.property(between(0.05, 4), between(0.01, 1), between(0.05, 1), (allowance, rate, spread) => {
        expect(limitChance(allowance, rate, spread, (1000 * allowance) / rate)).toBeCloseTo(0.5, 12);
      }),
    );
  });

  test('without spread it is a step, also at the limit itself', () => {
    expect(limitChance(1, 0.1, 0, 9999.9)).toBe(0);
    expect(limitChance(1, 0.1, 0, 10000)).toBe(1);
    expect(limitChance(0, 0.1, 0, 0)).toBe(1);
    expect(limitChance(1, 0.1, 0, 0)).toBe(0);
  });

  test('allowance left: 0 past the limit, all of it at reach 0, the plain difference without spread', () => {
    expect(allowanceLeft(0, 0.1, 0.3, 1000)).toBe(0);
    expect(allowanceLeft(-0.4, 0.1, 0.3, 1000)).toBe(0);
    expect(allowanceLeft(0.7, 0.1, 0.3, 0)).toBe(0.7);
    // By hand: 1 - 0.1 * 4 = 0.6, and 1 - 0.1 * 11 is past the limit.
    expect(allowanceLeft(1, 0.1, 0, 4000)).toBeCloseTo(0.6, 15);
    expect(allowanceLeft(1, 0.1, 0, 11000)).toBe(0);
  });

  test('allowance left is the integral of the chance of not yet having worn y', () => {
    fc.assert(
      fc.property(
        between(0.2, 4),
        between(0.02, 0.5),
        between(0.1, 0.6),
        between(500, 9000),
        (a, rate, spread, reach) => {
          // E[(A - Y)+] = integral over y up to A of P(Y < y), and P(Y < y) = 1 - limitChance(y, ...); y = exp(v).
          const [low, high] = [Math.log((rate * reach) / 1000) - 8 * spread, Math.log(a)];
          const below = (v: number) => Math.exp(v) * (1 - limitChance(Math.exp(v), rate, spread, reach));
          const integral = low < high ? simpson(below, low, high, 4000) : 0;
          expect(allowanceLeft(a, rate, spread, reach)).toBeCloseTo(integral, 8);
        },
      ),
      { numRuns: 500 },
    );
  });

  test('allowance left is continuous where its two forms meet', () => {
    fc.assert(
      fc.property(between(0.1, 4), between(0.05, 1), between(0.05, 0.9), (allowance, rate, spread) => {
        const middle = (1000 * allowance) / rate;
        const below = allowanceLeft(allowance, rate, spread, middle * (1 - 1e-13));
        expect(relative(allowanceLeft(allowance, rate, spread, middle * (1 + 1e-13)), below)).toBeLessThan(
          1e-10,
        );
      }),
    );
  });

  test('spread_from puts low and high at the 10% and 90% points', () => {
    fc.assert(
      fc.property(between(0.01, 1), between(1.01, 6), (low, ratio) => {
        const spread = spreadFrom(low, low * ratio);
        const middle = low * Math.sqrt(ratio);
        expect(limitChance(low * ratio, middle, spread, 1000)).toBeCloseTo(0.1, 12);
        expect(limitChance(low, middle, spread, 1000)).toBeCloseTo(0.9, 12);
        expect(middle * Math.exp(normalQuantile(0.9) * spread)).toBeCloseTo(low * ratio, 12);
      }),
    );
    expect(spreadFrom(0.2, 0.2)).toBe(0);
  });
});

describe('a life without a reading', () => {
  const figures = [between(0, 60000), between(0, 20000), between(2000, 60000), between(0.05, 1)] as const;

  test('reach adds up: lasting twice is lasting both, given the first', () => {
    fc.assert(
      fc.property(...figures, between(1, 9000), (age, reach, life, spread, more) => {
        const both = 1 - lifeChance(age, reach + more, life, spread);
        const first = 1 - lifeChance(age, reach, life, spread);
        expect(first * (1 - lifeChance(age + reach, more, life, spread))).toBeCloseTo(both, 12);
      }),
    );
  });

  test('a longer reach never lowers the chance, nor does age within the middle life', () => {
    // The hazard of a lognormal life rises until well past its middle for spreads of up to a half.
    fc.assert(
      fc.property(
        between(0, 1),
        between(0, 0.5),
        between(0.05, 0.5),
        between(0, 1),
        (age, reach, spread, part) => {
          const life = 20000;
          const now = lifeChance(age * life * part, reach * life, life, spread);
          expect(lifeChance(age * life, reach * life, life, spread)).toBeGreaterThanOrEqual(now - 1e-14);
          expect(lifeChance(age * life * part, reach * life * part, life, spread)).toBeLessThanOrEqual(
            now + 1e-14,
          );
        },
      ),
    );
  });

  test('a new part is at its median life half of the time', () => {
    expect(lifeChance(0, 20000, 20000, 0.3)).toBeCloseTo(0.5, 15);
    expect(lifeChance(0, 0, 20000, 0.3)).toBe(0);
    expect(lifeLeft(0, 0, 20000, 0.3)).toBeCloseTo(20000 * Math.exp(0.045), 8);
  });

  test('without spread the life is exact', () => {
    expect(lifeChance(1000, 500, 2000, 0)).toBe(0);
    expect(lifeChance(1000, 1000, 2000, 0)).toBe(1);
    expect(lifeLeft(1000, 500, 2000, 0)).toBe(500);
    expect(lifeLeft(1000, 5000, 2000, 0)).toBe(0);
  });

  // mpmath 1.3.0, 60 digits: (E[T] Phi((ln(life/t) + s^2)/s) - t Phi(ln(life/t)/s)) / P(T > age), t = age + reach.
  test.each([
    [10000, 3000, 20000, 0.25, 7707.726038618426],
    [0, 0, 20000, 0.25, 20634.868149982052],
    [25000, 3000, 20000, 0.25, 1726.6851517716727],
    [90000, 2000, 20000, 0.1, 21.22965690922952],
    [60000, 500, 20000, 0.05, 3.4813655476670995],
  ])('left at age %i after %i of a life of %i, spread %f', (age, reach, life, spread, expected) => {
    expect(relative(lifeLeft(age, reach, life, spread), expected)).toBeLessThan(1e-10);
  });

  test('what is left falls as fast as the chance of lasting: its slope is minus the survival', () => {
    fc.assert(
      fc.property(
        between(0, 40000),
        between(100, 20000),
        between(5000, 60000),
        between(0.1, 1),
        (age, reach, life, spread) => {
          const step = 0.2;
          const slope =
            (lifeLeft(age, reach + step, life, spread) - lifeLeft(age, reach - step, life, spread)) /
            (2 * step);
          expect(slope).toBeCloseTo(lifeChance(age, reach, life, spread) - 1, 6);
        },
      ),
    );
  });
});
