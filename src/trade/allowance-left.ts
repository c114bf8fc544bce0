import { mustBeFinite, mustBePositive, mustNotBeNegative } from './domain.ts';
import { millsRatio } from './mills-ratio.ts';
import { normalCdf } from './normal-cdf.ts';

/**
 * Expected allowance left after a reach, E[(A - Y)+], counting 0 where the limit is passed: the part of a
 * tyre or pad that is still worth something at home.
 * @param allowance what is left from the reading to the limit; at most 0 gives 0.
 * @param rate median wear per 1,000 km in the unit of the allowance, above 0.
 * @param spread log-sd of the rate, 0 or more.
 * @param reachKm sealed-equivalent km, 0 or more.
 * @returns in the unit of the allowance, 0 to `allowance`. Throws DomainError outside; a missing figure
 * gives NaN.
 * Source: lognormal partial expectation, model 2; where little is left it is written with Mills ratios, which
 * keeps its digits.
 * @example allowanceLeft(0.8, 0.12, 0.25, 5200) = 0.17517330618583382
 * (R actuar 3.3.2 levlnorm, check value LEFT-01.)
 */
export function allowanceLeft(allowance: number, rate: number, spread: number, reachKm: number): number {
  mustBeFinite('allowance', allowance);
  mustBePositive('rate', rate);
  mustNotBeNegative('spread', spread);
  mustNotBeNegative('reach', reachKm);
  const wear = (rate * reachKm) / 1000;
  if (Number.isNaN(allowance + wear + spread)) return NaN;
  if (allowance <= 0) return 0;
  if (reachKm === 0) return allowance;
  if (spread === 0) return Math.max(0, allowance - wear);
  const z = Math.log(wear / allowance) / spread;
  if (z > 0) {
    const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
    return Math.max(0, allowance * density * (millsRatio(z) - millsRatio(z + spread)));
  }
  const left = allowance * normalCdf(-z) - wear * Math.exp(0.5 * spread * spread) * normalCdf(-z - spread);
  return Math.min(allowance, Math.max(0, left));
}
