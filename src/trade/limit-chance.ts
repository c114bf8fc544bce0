import { blurredChance, blurredChanceWithoutSpread, blurredLimit } from './blurred-limit.ts';
import { mustBeFinite, mustBePositive, mustNotBeNegative } from './domain.ts';
import { normalCdf } from './normal-cdf.ts';

/**
 * Chance that gradual wear reaches its limit within a reach: is this part worn out before the trip ends?
 * @param allowance what is left from the reading to the limit; at most 0 is past the limit, chance 1.
 * @param rate median wear per 1,000 km in the unit of the allowance, above 0.
 * @param spread log-sd of the rate, 0 or more; 0 makes the chance 0 or 1.
 * @param reachKm sealed-equivalent km, 0 or more; 0 gives 0 while there is allowance.
 * @param readingError standard uncertainty of the reading, 0 or more, in the unit of the allowance; missing
 * (NaN) counts as 0. The chance is then the mean over 201 equally likely allowances.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: model 2, Phi(ln(r X / (1000 A)) / sigma), a lognormal amount of wear; with a reading error within
 * 1e-12 of the mean.
 * @example limitChance(0.8, 0.12, 0.25, 5200) = 0.1601490606851423
 * (R 4.2.2 stats::plnorm(lower.tail=FALSE), check value LIM-05.)
 */
export function limitChance(
  allowance: number,
  rate: number,
  spread: number,
  reachKm: number,
  readingError = 0,
): number {
  mustBeFinite('allowance', allowance);
  mustBePositive('rate', rate);
  mustNotBeNegative('spread', spread);
  mustNotBeNegative('reach', reachKm);
  mustNotBeNegative('reading_error', readingError);
  const wear = (rate * reachKm) / 1000;
  if (Number.isNaN(allowance + wear + spread)) return NaN;
  if (readingError > 0) {
    if (spread === 0) return blurredChanceWithoutSpread(allowance, readingError, wear);
    return blurredChance(blurredLimit(allowance, spread, readingError), Math.log(wear));
  }
  if (allowance <= 0) return 1;
  if (reachKm === 0) return 0;
  if (spread === 0) return wear >= allowance ? 1 : 0;
  return normalCdf(Math.log(wear / allowance) / spread);
}
