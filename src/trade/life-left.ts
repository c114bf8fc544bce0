import { mustBePositive, mustNotBeNegative } from './domain.ts';
import { millsRatio } from './mills-ratio.ts';
import { normalCdf } from './normal-cdf.ts';

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/**
 * Expected km left after a reach, E[(T - a - X)+] / P(T > a), for a part with a lognormal life that has
 * lasted to its age; 0 is counted where its life has ended. Over the mean life, life exp(spread^2 / 2), it
 * is the share of life left.
 * @param ageKm km covered at the start, 0 or more.
 * @param reachKm sealed-equivalent km ahead, 0 or more.
 * @param lifeKm median life in km, above 0.
 * @param spread log-sd of the life, 0 or more.
 * @returns km, 0 or more. Throws DomainError outside; a missing figure gives NaN.
 * Source: lognormal partial expectation, model 2; past the middle of life it is written with Mills ratios,
 * which neither vanish nor cancel.
 * @example lifeLeft(10000, 3000, 20000, 0.25) = 7707.726038618426
 * (mpmath 1.3.0, 50 digits, quad of P(T > t) from 13000 over P(T > 10000).)
 */
export function lifeLeft(ageKm: number, reachKm: number, lifeKm: number, spread: number): number {
  mustNotBeNegative('age', ageKm);
  mustNotBeNegative('reach', reachKm);
  mustBePositive('life', lifeKm);
  mustNotBeNegative('spread', spread);
  const endKm = ageKm + reachKm;
  if (Number.isNaN(endKm + lifeKm + spread)) return NaN;
  if (spread === 0) return Math.max(0, lifeKm - endKm);
  const zAge = Math.log(ageKm / lifeKm) / spread;
  const z = Math.log(endKm / lifeKm) / spread;
  if (z <= spread) {
    const meanKm = lifeKm * Math.exp(0.5 * spread * spread);
    return (meanKm * normalCdf(spread - z) - endKm * normalCdf(-z)) / normalCdf(-zAge);
  }
  const gap = millsRatio(z - spread) - millsRatio(z);
  if (zAge <= 0) return (endKm * Math.exp(-0.5 * z * z) * gap) / (ROOT_TWO_PI * normalCdf(-zAge));
  return (endKm * Math.exp(-0.5 * (z - zAge) * (z + zAge)) * gap) / millsRatio(zAge);
}
