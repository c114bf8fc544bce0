import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { failure } from '../../src/trade/failure.ts';
import { hazardAhead } from '../../src/trade/hazard-ahead.ts';
import { lifeFromRating } from '../../src/trade/life-from-rating.ts';
import { residualLife } from '../../src/trade/residual-life.ts';
import { survival } from '../../src/trade/survival.ts';
import { between } from './arbitraries.ts';

const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);
const age = between(0, 60000);
const reach = between(0, 12000);
const life = between(2000, 90000);
const shape = between(0.4, 6);

describe('sudden failure', () => {
  test('survival and failure sum to 1, between 0 and 1', () => {
    fc.assert(
      fc.property(age, reach, life, shape, (a, x, eta, beta) => {
        expect(survival(a, x, eta, beta) + failure(a, x, eta, beta)).toBeCloseTo(1, 14);
        expect(failure(a, x, eta, beta)).toBeGreaterThanOrEqual(0);
        expect(survival(a, x, eta, beta)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('reach adds up: surviving twice is surviving both, given the first', () => {
    fc.assert(
      fc.property(age, reach, between(0, 9000), life, shape, (a, x, more, eta, beta) => {
        const both = survival(a, x + more, eta, beta);
        expect(survival(a, x, eta, beta) * survival(a + x, more, eta, beta)).toBeCloseTo(both, 12);
      }),
    );
  });

  test('age never lowers the chance of failure where the part wears out, never raises it where it settles', () => {
    fc.assert(
      fc.property(age, reach, life, shape, between(0, 20000), (a, x, eta, beta, older) => {
        const now = failure(a, x, eta, beta);
        const then = failure(a + older, x, eta, beta);
        if (beta >= 1) expect(then).toBeGreaterThanOrEqual(now - 1e-13);
        else expect(then).toBeLessThanOrEqual(now + 1e-13);
      }),
    );
  });

  test('a shorter life or a longer reach never lowers the chance', () => {
    fc.assert(
      fc.property(age, reach, life, shape, between(1, 3), (a, x, eta, beta, worse) => {
        const now = failure(a, x, eta, beta);
        expect(failure(a, x, eta / worse, beta)).toBeGreaterThanOrEqual(now - 1e-13);
        expect(failure(a, x * worse, eta, beta)).toBeGreaterThanOrEqual(now - 1e-13);
      }),
    );
  });

  test('units do not matter', () => {
    fc.assert(
      fc.property(age, reach, life, shape, (a, x, eta, beta) => {
        const miles = survival(a / 1.609344, x / 1.609344, eta / 1.609344, beta);
        expect(miles).toBeCloseTo(survival(a, x, eta, beta), 11);
        const left = residualLife(a, eta, beta);
        expect(relative(1.609344 * residualLife(a / 1.609344, eta / 1.609344, beta), left)).toBeLessThan(
          1e-9,
        );
      }),
    );
  });

  test('random failures know no age; a part with an infinite life never fails', () => {
    expect(survival(50000, 4000, 30000, 1)).toBe(survival(0, 4000, 30000, 1));
    expect(residualLife(50000, 30000, 1)).toBe(30000);
    expect(survival(5000, 4000, Infinity, 2)).toBe(1);
    expect(survival(0, 4000, Infinity, 1)).toBe(1);
    expect(failure(0, 4000, Infinity, 0.5)).toBe(0);
    expect(residualLife(5000, Infinity, 2)).toBe(Infinity);
  });

  test('hazard where one factor alone would overflow or vanish', () => {
    // By hand, a much smaller than X: nearly (X/eta)^beta = (2/3)^50.
    expect(relative(hazardAhead(20000, 1e-3, 30000, 50), (2 / 3) ** 50)).toBeLessThan(1e-5);
    expect(relative(hazardAhead(20000, 1e-320, 30000, 2), 4 / 9)).toBeLessThan(1e-15);
    expect(relative(hazardAhead(1e-29, 5e-324, 2000, 0.4), (1e-29 / 2000) ** 0.4)).toBeLessThan(1e-12);
    expect(hazardAhead(1000, 150000, 50000, 700)).toBe(Infinity);
    expect(hazardAhead(0, 150000, 50000, 700)).toBe(0);
  });

  test('with shape 2 the hazard is the difference of squares, worked by hand', () => {
    // By hand: (a + X)^2 - a^2 = X (2a + X).
    fc.assert(
      fc.property(between(1, 60000), between(0.1, 12000), life, (a, x, eta) => {
        expect(relative(hazardAhead(x, a, eta, 2), (x * (2 * a + x)) / eta ** 2)).toBeLessThan(1e-13);
      }),
    );
  });

  test('the rating life is the 10% point', () => {
    fc.assert(
      fc.property(between(1000, 90000), shape, (rating, beta) => {
        expect(failure(0, rating, lifeFromRating(rating, beta), beta)).toBeCloseTo(0.1, 13);
      }),
    );
  });
});

describe('mean residual life', () => {
  // mpmath 1.3.0, 50 digits: (eta/beta) e^u gammainc(1/beta, u), u = (age/eta)^beta.
  test.each([
    [1000, 20000, 0.2, 4155715.133521981],
    [30000, 20000, 0.2, 7062513.06487666],
    [30000, 20000, 0.1, 205616723785.06314],
    [21000, 20000, 4, 3033.0070737788269],
    [22000, 20000, 0.5, 81952.35392680606],
    [24500, 20000, 2, 6613.2203573441093],
    [1000, 20000, 30, 18636.519830466463],
    [19000, 20000, 50, 869.3885986274635],
  ])('age %i, life %i, shape %f', (a, eta, beta, expected) => {
    expect(relative(residualLife(a, eta, beta), expected)).toBeLessThan(1e-11);
  });

  test('falls with age where the part wears out, rises where it settles, stays where it is random', () => {
    fc.assert(
      fc.property(age, between(1, 20000), life, shape, (a, older, eta, beta) => {
        const change = residualLife(a + older, eta, beta) / residualLife(a, eta, beta) - 1;
        if (beta >= 1) expect(change).toBeLessThanOrEqual(1e-11);
        else expect(change).toBeGreaterThanOrEqual(-1e-11);
      }),
    );
  });

  test('two routes agree: what is ahead is the reach survived and what is ahead after it', () => {
    // mrl(a) = integral of S(x | a) from 0 to X, plus S(X | a) mrl(a + X); the integral by Simpson's rule.
    fc.assert(
      fc.property(
        between(0, 30000),
        between(100, 5000),
        between(10000, 90000),
        between(0.8, 4),
        (a, x, eta, beta) => {
          const steps = 2000;
          // From an age of nought with a shape below 1 the survival has a corner that Simpson's rule is slow at.
          const from = a + 1000;
          let sum = 0;
          for (let k = 0; k <= steps; k += 1) {
            const weight = k === 0 || k === steps ? 1 : k % 2 === 1 ? 4 : 2;
            sum += weight * survival(from, (x * k) / steps, eta, beta);
          }
          const ridden = (sum * x) / steps / 3;
          const ahead = ridden + survival(from, x, eta, beta) * residualLife(from + x, eta, beta);
          expect(relative(residualLife(from, eta, beta), ahead)).toBeLessThan(1e-7);
        },
      ),
    );
  });

  test('runs smoothly over the change from series to fraction', () => {
    for (const beta of [0.5, 0.9, 1.3, 2, 4, 20]) {
      const edge = 20000 * Math.max(1.5, 1 + 1 / beta) ** (1 / beta);
      const below = residualLife(edge * (1 - 1e-12), 20000, beta);
      expect(relative(residualLife(edge * (1 + 1e-12), 20000, beta), below)).toBeLessThan(1e-10);
    }
  });

  test('is 0, not a number gone wrong, for a part unimaginably past its life', () => {
    expect(residualLife(150000, 50000, 700)).toBe(0);
    expect(residualLife(150000, 50000, 20)).toBeGreaterThan(0);
  });
});
