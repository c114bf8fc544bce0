import { DomainError } from './domain-error.ts';
import { normalQuantile } from './normal-quantile.ts';

/**
 * Wilson's score interval for a share, from `held` of `count`: where the true share is likely to lie.
 *
 * @param held how many, 0 to count  @param count of how many, 1 or more
 * @param confidence above 0 and below 1, both sides together
 * @returns [low, high], each 0 to 1. Throws DomainError outside the domain.
 * Source: E. B. Wilson, J. Am. Stat. Assoc. 22 (1927), 209-212; R. G. Newcombe, Stat. Med. 17 (1998), 857-872.
 *
 * None of 20: from 0 to z^2 / (20 + z^2), z^2 = 3.841458820694124 (95% point of chi-squared, 1 degree of freedom).
 * @example wilsonInterval(0, 20, 0.95) = [0, 0.16112515805281932]
 */
export function wilsonInterval(held: number, count: number, confidence: number): readonly [number, number] {
  if (!(count >= 1)) throw new DomainError('count', count, 'it must be 1 or more', 'Count at least one.');
  if (!(held >= 0 && held <= count))
    throw new DomainError('held', held, `it must be from 0 to ${count}`, 'Count those among all.');
  const z = normalQuantile((1 + confidence) / 2);
  const centre = (held + (z * z) / 2) / (count + z * z);
  const half = (z / (count + z * z)) * Math.sqrt((held * (count - held)) / count + (z * z) / 4);
  return [Math.max(0, centre - half), Math.min(1, centre + half)];
}
