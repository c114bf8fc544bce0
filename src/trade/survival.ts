import { mustBePositive, mustBePositiveOrInfinite, mustNotBeNegative } from './domain.ts';
import { hazardAhead } from './hazard-ahead.ts';

/** Refuses what no Weibull life has; shared by `survival` and `failure`. */
export function checkWeibull(ageKm: number, reachKm: number, lifeKm: number, shape: number): void {
  mustNotBeNegative('age', ageKm);
  mustNotBeNegative('reach', reachKm);
  mustBePositiveOrInfinite('life', lifeKm);
  mustBePositive('shape', shape);
}

/**
 * Chance that a part has no sudden failure within a reach, given that it has lasted to its age.
 * @param ageKm km covered at the start, 0 or more.
 * @param reachKm sealed-equivalent km ahead, 0 or more.
 * @param lifeKm Weibull characteristic life in km (63.2% have failed by then), above 0; may be infinite.
 * @param shape Weibull shape, above 0: below 1 early failures, 1 random, above 1 wear-out.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: Weibull 1951; MIL-HDBK-338B 5.3.6; model 3.
 * @example survival(12000, 5000, 30000, 2.2) = 0.8577685475501022
 * (mpmath 1.3.0 with 50 digits, check value SURV-07.)
 */
export function survival(ageKm: number, reachKm: number, lifeKm: number, shape: number): number {
  checkWeibull(ageKm, reachKm, lifeKm, shape);
  return Math.exp(-hazardAhead(reachKm, ageKm, lifeKm, shape));
}
