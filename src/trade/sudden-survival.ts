import { hazardAhead, hazardSoFar } from './hazard-ahead.ts';
import { hasSuddenLife, type PartFigures } from './part-figures.ts';

/**
 * S(X | a) of one fitted part: the chance that it has no sudden failure within a reach; 1 where it has no
 * sudden failures.
 * @param part its figures when fitted; not checked here.
 * @param reachKm sealed-equivalent km since then, 0 or more.
 * @param soFar hazardSoFar of the part, for callers that keep it over many reaches.
 * @returns plain number, 0 to 1.
 * Source: model 3.
 * @example suddenSurvival({"age": 12000, "life": 30000, "shape": 2.2}, 5000) = 0.8577685475501022
 * (mpmath 1.3.0 with 50 digits, check value SURV-07.)
 */
export function suddenSurvival(
  part: PartFigures,
  reachKm: number,
  soFar: number = hazardSoFar(part.age, part.life, part.shape),
): number {
  if (!hasSuddenLife(part)) return 1;
  return Math.exp(-hazardAhead(reachKm, part.age, part.life, part.shape, soFar));
}
