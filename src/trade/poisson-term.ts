import gamma from '@stdlib/math-base-special-gamma';

/** Up to here powers and factorials are ordinary numbers. */
const DIRECT_COUNT = 20;
const DIRECT_MEAN = 700;

/** ln(n!) for n above 20: Stirling's series (Abramowitz and Stegun 6.1.41), error below 1e-16 of it. */
function logFactorial(n: number): number {
  const x = n + 1;
  const square = 1 / (x * x);
  const series = (1 / 12 - square * (1 / 360 - square * (1 / 1260 - square * (1 / 1680)))) / x;
  return (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + series;
}

/**
 * Chance of exactly `count` hits when `mean` are expected, e^-M M^j / j!.
 * @param count whole number, 0 or more.
 * @param mean expected hits, above 0.
 * @returns plain number, 0 to 1.
 * Source: Poisson distribution; model 6.
 * @example poissonTerm(0, 2) = 0.1353352832366127
 * (Burkardt TEST_VALUES poisson_cdf, as cited at check value POI-06.)
 */
export function poissonTerm(count: number, mean: number): number {
  if (count <= DIRECT_COUNT && mean <= DIRECT_MEAN)
    return (Math.exp(-mean) * mean ** count) / gamma(count + 1);
  const logFact = count <= DIRECT_COUNT ? Math.log(gamma(count + 1)) : logFactorial(count);
  return Math.exp(count * Math.log(mean) - mean - logFact);
}
