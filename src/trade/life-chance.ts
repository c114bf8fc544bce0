import { mustBePositive, mustNotBeNegative } from './domain.ts';
import { logNormalTail } from './log-normal-tail.ts';

/** ln P(T > distance) of a lognormal life. */
function logSurvival(distanceKm: number, lifeKm: number, spread: number): number {
  return logNormalTail(Math.log(distanceKm / lifeKm) / spread);
}

/**
 * Chance that a part with a life but no reading comes to its end within a reach, given that it has lasted
 * to its age.
 * @param ageKm km covered at the start, 0 or more.
 * @param reachKm sealed-equivalent km ahead, 0 or more; 0 gives 0 (1 for a part without spread past its life).
 * @param lifeKm median life in km, above 0.
 * @param spread log-sd of the life, 0 or more; 0 makes the chance 0 or 1.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: model 2, 1 - SF(a + X)/SF(a) with a lognormal life, worked in logarithms.
 * @example lifeChance(19000, 1000, 20000, 0.25) = 0.13983169140132587
 * (R 4.2.2 stats::plnorm(log.p=TRUE), check value CND-01.)
 */
export function lifeChance(ageKm: number, reachKm: number, lifeKm: number, spread: number): number {
  mustNotBeNegative('age', ageKm);
  mustNotBeNegative('reach', reachKm);
  mustBePositive('life', lifeKm);
  mustNotBeNegative('spread', spread);
  if (Number.isNaN(ageKm + reachKm + lifeKm + spread)) return NaN;
  if (spread === 0) return ageKm + reachKm >= lifeKm ? 1 : 0;
  if (reachKm === 0) return 0;
  return -Math.expm1(logSurvival(ageKm + reachKm, lifeKm, spread) - logSurvival(ageKm, lifeKm, spread));
}
