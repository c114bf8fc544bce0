import { mustBePositive, mustNotBeNegative } from './domain.ts';
import { DomainError } from './domain-error.ts';

/** 90% point of the standard normal: R 4.2.2 stats::qnorm(0.9). */
const NINETY_PERCENT_POINT = 1.2815515655446004;

/**
 * Spread (log-sd) of a lognormal rate or life whose 10% and 90% points are `low` and `high`: how unsure the
 * wear is, from the least and the most the rider has seen.
 * @param low 10% point, above 0, any unit.
 * @param high 90% point, not below `low`, in the same unit.
 * @returns plain number, 0 or more. Throws DomainError outside; NaN gives NaN.
 * Source: model 2, ln(high/low) / (2 * 1.2815515655446004).
 * @example spreadFrom(0.08, 0.16) = 0.27043280941465253
 * (R 4.2.2 uniroot on stats::qlnorm, check value SPR-01.)
 */
export function spreadFrom(low: number, high: number): number {
  mustBePositive('low', low);
  mustNotBeNegative('high', high);
  if (high < low) {
    const mend = 'Give the low figure first: spread_from(low, high).';
    throw new DomainError(
      'high',
      high,
      `it must not be below low, which is ${Number(low.toPrecision(6))}`,
      mend,
    );
  }
  return Math.log(high / low) / (2 * NINETY_PERCENT_POINT);
}
