import { lifeChance } from './life-chance.ts';
import { limitChance } from './limit-chance.ts';
import { hasMiddleLife, hasReading, type PartFigures } from './part-figures.ts';

/**
 * W(X) of one fitted part: the chance that it is worn to its limit, or at the end of its middle life, within
 * a reach. A reading goes before a middle life; with neither, 0.
 * @param part its figures when fitted.
 * @param reachKm sealed-equivalent km since then, 0 or more.
 * @returns plain number, 0 to 1. Throws DomainError as limitChance and lifeChance do.
 * Source: model 2.
 * @example wearChance({"allowance": 0.8, "rate": 0.12, "spread": 0.25}, 5200) = 0.1601490606851423
 * (R 4.2.2 stats::plnorm, check value LIM-05.)
 */
export function wearChance(part: PartFigures, reachKm: number): number {
  if (hasReading(part))
    return limitChance(part.allowance, part.rate, part.spread, reachKm, part.readingError);
  if (hasMiddleLife(part)) return lifeChance(part.age, reachKm, part.middleLife, part.spread);
  return 0;
}
