import { mustBeWholeCount, mustNotBeNegative } from './domain.ts';
import { poissonTerm } from './poisson-term.ts';

const NO_LONGER_COUNTS = 1e-17;

/**
 * Chance of more random hits than spares, P(N > k): does one puncture find no tube left?
 * @param spares how many spares are carried, k, a whole number, 0 or more.
 * @param mean expected hits over the trip, 0 or more.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: Poisson distribution, model 6; summed upwards, or 1 minus the sum downwards where that is the
 * smaller one.
 * @example poissonMore(2, 2) = 0.3233235838169366
 * (Burkardt TEST_VALUES poisson_cdf, F(2) for mean 2 = 0.6766764161830634, as cited at check value POI-06.)
 */
export function poissonMore(spares: number, mean: number): number {
  mustBeWholeCount('k', spares);
  mustNotBeNegative('mean', mean);
  if (Number.isNaN(spares + mean)) return NaN;
  if (mean === 0) return 0;
  const upwards = mean <= spares + 1;
  let sum = 0;
  for (let j = upwards ? spares + 1 : spares, chance = poissonTerm(j, mean); chance > 0; ) {
    sum += chance;
    if (chance < NO_LONGER_COUNTS * sum) break;
    chance *= upwards ? mean / (j + 1) : j / mean;
    j += upwards ? 1 : -1;
  }
  return upwards ? sum : 1 - sum;
}
