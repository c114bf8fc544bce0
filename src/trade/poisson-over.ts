import { mustBeWholeCount, mustNotBeNegative } from './domain.ts';
import { poissonTerm } from './poisson-term.ts';

const NO_LONGER_COUNTS = 1e-17;

/**
 * Expected random hits beyond what the spares cover, E[(N - k)+]: how many punctures find no tube left.
 * @param spares how many spares are carried, k, a whole number, 0 or more.
 * @param mean expected hits over the trip, 0 or more, summed over the bikes that share the spares.
 * @returns plain number, 0 to `mean`. Throws DomainError outside; a missing figure gives NaN.
 * Source: Poisson loss function, model 6. Summed upwards; where more hits than spares are expected, as
 * M - k + E[(k - N)+], whose terms are all positive too.
 * @example poissonOver(2, 2.7) = 1.015865909876824
 * (R 4.2.2 tail sum with stats::dpois, check value POI-09.)
 */
export function poissonOver(spares: number, mean: number): number {
  mustBeWholeCount('k', spares);
  mustNotBeNegative('mean', mean);
  if (Number.isNaN(spares + mean)) return NaN;
  if (mean === 0) return 0;
  if (mean > spares + 1) {
    let unused = 0;
    for (let j = spares - 1, chance = j < 0 ? 0 : poissonTerm(j, mean); chance > 0; j -= 1) {
      const term = (spares - j) * chance;
      unused += term;
      if (term < NO_LONGER_COUNTS * unused) break;
      chance *= j / mean;
    }
    return mean - spares + unused;
  }
  let over = 0;
  for (let j = spares + 1, chance = poissonTerm(j, mean); chance > 0; j += 1) {
    const term = (j - spares) * chance;
    over += term;
    if (term < NO_LONGER_COUNTS * over) break;
    chance *= mean / (j + 1);
  }
  return over;
}
