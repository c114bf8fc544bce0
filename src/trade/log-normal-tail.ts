import erfc from '@stdlib/math-base-special-erfc';
import { millsRatio } from './mills-ratio.ts';

const LOG_ROOT_TWO_PI = 0.5 * Math.log(2 * Math.PI);
const ASYMPTOTIC_FROM = 30;

/**
 * Natural logarithm of the upper tail of the standard normal, ln P(Z > z): the survival of a lognormal life
 * at z = ln(distance / life) / spread, kept as a logarithm so that parts far past their life still compare.
 * @param z plain number, any, infinite included; NaN gives NaN.
 * @returns plain number, at most 0.
 * Source: model 2; logarithm of erfc, beyond z = 30 the asymptotic series (Abramowitz and Stegun 26.2.12).
 * @example logNormalTail(40) = -804.6084420137538
 * (mpmath 1.3.0, 50 digits: log(erfc(40/sqrt(2))/2).)
 */
export function logNormalTail(z: number): number {
  if (z > ASYMPTOTIC_FROM) return -0.5 * z * z - LOG_ROOT_TWO_PI + Math.log(millsRatio(z));
  // Below nought the tail is nearly 1: its shortfall is the lower tail, which has all its digits.
  if (z < 0) return Math.log1p(-0.5 * erfc(-z * Math.SQRT1_2));
  return Math.log(0.5 * erfc(z * Math.SQRT1_2));
}
