import { mustNotBeNegative } from './domain.ts';

/**
 * Spread (log-sd) of a lognormal rate or life from its coefficient of variation, sd over mean.
 * @param variation plain number, 0 or more: 0.3 for 30%, the usual figure where none is known.
 * @returns plain number, 0 or more. Throws DomainError if negative; NaN gives NaN.
 * Source: moments of the lognormal, sigma^2 = ln(1 + v^2); model 2.
 * @example spreadFromCv(0.3) = 0.2935603792085235
 * (R actuar 3.3.2 mlnorm solved with uniroot, check value SPR-06.)
 */
export function spreadFromCv(variation: number): number {
  mustNotBeNegative('v', variation);
  return Math.sqrt(Math.log1p(variation * variation));
}
