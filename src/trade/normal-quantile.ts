import { DomainError } from './domain-error.ts';
import { normalCdf } from './normal-cdf.ts';

const ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

/** Within 4.5e-4 for chances up to a half: Hastings, in Abramowitz and Stegun 26.2.23. */
function roughQuantile(chance: number): number {
  const t = Math.sqrt(-2 * Math.log(chance));
  const above = 2.515517 + t * (0.802853 + t * 0.010328);
  const below = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
  return above / below - t;
}

/**
 * Inverse of the standard normal distribution function: the z that is not exceeded with a given chance.
 * @param chance plain number above 0 and below 1; NaN gives NaN. Throws DomainError outside.
 * @returns plain number; relative error below 1e-14 for chances from 1e-300 to 0.999.
 * Source: Hastings' rational start, then three of Halley's steps on normalCdf (third order each).
 * @example normalQuantile(0.9) = 1.2815515655446004
 * (R 4.2.2 stats::qnorm(0.9), check value NCDF-07.)
 */
export function normalQuantile(chance: number): number {
  if (chance <= 0 || chance >= 1) {
    throw new DomainError(
      'chance',
      chance,
      'it must be between 0 and 1',
      'Give a chance above 0 and below 1.',
    );
  }
  if (chance > 0.5) return -normalQuantile(1 - chance);
  let z = roughQuantile(chance);
  for (let step = 0; step < 3; step += 1) {
    const miss = (normalCdf(z) - chance) * ROOT_TWO_PI * Math.exp(0.5 * z * z);
    z -= miss / (1 + 0.5 * z * miss);
  }
  return z;
}
