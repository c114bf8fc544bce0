import gamma from '@stdlib/math-base-special-gamma';
import { mustBePositive, mustBePositiveOrInfinite, mustNotBeNegative } from './domain.ts';

const TINY = 1e-300;
const CLOSE_ENOUGH = 1e-16;

/** sum over k >= 0 of u^k / (s (s+1) ... (s+k)): u^-s e^u times the lower incomplete gamma function. */
function lowerGammaSeries(s: number, u: number): number {
  let term = 1 / s;
  let sum = term;
  for (let k = 1; term > CLOSE_ENOUGH * sum; k += 1) {
    term *= u / (s + k);
    sum += term;
  }
  return sum;
}

/** C = u + 1 - s - 1(1-s)/(u + 3 - s - 2(2-s)/(u + 5 - s - ...)): u^s e^-u over the upper gamma function. */
function upperGammaFraction(s: number, u: number): number {
  let value = u + 1 - s || TINY;
  let above = value;
  let below = 0;
  for (let k = 1; ; k += 1) {
    const partial = -k * (k - s);
    const term = u + 2 * k + 1 - s;
    below = 1 / (term + partial * below || TINY);
    above = term + partial / above || TINY;
    const change = above * below;
    value *= change;
    if (Math.abs(change - 1) < CLOSE_ENOUGH * 2) return value;
  }
}

/**
 * Mean residual life: the expected km still ahead of a part with a Weibull life that has lasted to its age.
 * What a used part is worth against a new one is built on it.
 * @param ageKm km covered so far, 0 or more.
 * @param lifeKm Weibull characteristic life in km, above 0; infinite gives infinity.
 * @param shape Weibull shape, above 0.
 * @returns km. Throws DomainError outside; a missing figure gives NaN.
 * Source: model 3; incomplete gamma function by its series and its continued fraction (NIST DLMF 8.7.1,
 * 8.9.2; modified Lentz, Thompson and Barnett 1986). The series serves up to u = max(1.5, 1 + 1/shape), where
 * the upper part is not the small one.
 * @example residualLife(12000, 30000, 2.2) = 17193.493309982874
 * (R actuar 3.3.2 mweibull and levweibull, check value MRL-03.)
 */
export function residualLife(ageKm: number, lifeKm: number, shape: number): number {
  mustNotBeNegative('age', ageKm);
  mustBePositiveOrInfinite('life', lifeKm);
  mustBePositive('shape', shape);
  if (Number.isNaN(ageKm + lifeKm + shape)) return NaN;
  if (shape === 1 || lifeKm === Infinity) return lifeKm;
  const s = 1 / shape;
  const u = (ageKm / lifeKm) ** shape;
  if (u === 0) return lifeKm * gamma(1 + s);
  if (u === Infinity) return 0;
  if (u < Math.max(1.5, 1 + s)) {
    return lifeKm * s * (Math.exp(u) * gamma(s) - u ** s * lowerGammaSeries(s, u));
  }
  return (ageKm * s) / upperGammaFraction(s, u);
}
