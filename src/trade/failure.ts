import { hazardAhead } from './hazard-ahead.ts';
import { checkWeibull } from './survival.ts';

/**
 * Chance of a sudden failure within a reach, given that the part has lasted to its age; small chances keep
 * all their digits.
 * @param ageKm km covered at the start, 0 or more.
 * @param reachKm sealed-equivalent km ahead, 0 or more.
 * @param lifeKm Weibull characteristic life in km, above 0; may be infinite.
 * @param shape Weibull shape, above 0.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: Weibull 1951; MIL-HDBK-338B 5.3.6; model 3.
 * @example failure(120000, 0.5, 40000, 3) = 0.00033744445905910817
 * (mpmath 1.3.0 with 50 digits, -expm1(-((a+X)/eta)^3 + (a/eta)^3); check value SURV-10 is 1 minus it.)
 */
export function failure(ageKm: number, reachKm: number, lifeKm: number, shape: number): number {
  checkWeibull(ageKm, reachKm, lifeKm, shape);
  return -Math.expm1(-hazardAhead(reachKm, ageKm, lifeKm, shape));
}
