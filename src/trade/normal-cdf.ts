import erfc from '@stdlib/math-base-special-erfc';

/**
 * Standard normal distribution function, the chance of a value of at most z.
 *
 * Decides nothing by itself; the chance of reaching a wear limit is built on it.
 * @param z plain number, any; NaN (missing) gives NaN.
 * @returns plain number, 0 to 1, to full relative precision in the lower tail (model 2: never 1 minus).
 * Source: NIST Digital Library of Mathematical Functions 7.2.2 and 7.17; model 2.
 * @example normalCdf(0.5) = 0.6914624612740131
 * (Burkardt TEST_VALUES normal_01_cdf, check value NCDF-01.)
 */
export function normalCdf(z: number): number {
  return 0.5 * erfc(-z * Math.SQRT1_2);
}
