import { allowanceLeft } from './allowance-left.ts';
import { checkPart } from './check-part.ts';
import { mustNotBeNegative } from './domain.ts';
import { lifeChance } from './life-chance.ts';
import { lifeLeft } from './life-left.ts';
import { hasMiddleLife, hasReading, hasSuddenLife, type PartFigures } from './part-figures.ts';
import { residualLife } from './residual-life.ts';
import { suddenSurvival } from './sudden-survival.ts';
import { wearChance } from './wear-chance.ts';

/** Expected share of the wear, or of the middle life, that is left; 0 is counted once it is used up. */
function wearLeft(part: PartFigures, reachKm: number): number {
  if (hasReading(part)) {
    return allowanceLeft(part.allowance, part.rate, part.spread, reachKm) / part.fullAllowance;
  }
  const meanKm = part.middleLife * Math.exp(0.5 * part.spread * part.spread);
  const left = lifeLeft(part.age, reachKm, part.middleLife, part.spread) / meanKm;
  // A part that has outlasted a wide-spread life may have more ahead than a new one; it is not worth more.
  return Math.min(1 - lifeChance(part.age, reachKm, part.middleLife, part.spread), left);
}

/** min(1, mrl(a + x)/mrl(0)): a part that does not age, or gets better with age, is worth a new one. */
function suddenLeft(part: PartFigures, reachKm: number): number {
  if (part.shape <= 1 || part.life === Infinity) return 1;
  const then = residualLife(part.age + reachKm, part.life, part.shape);
  return Math.min(1, then / residualLife(0, part.life, part.shape));
}

/**
 * Share of a part's life that is left after a reach, L(X), 0 counted where it has failed: what it is still
 * worth at home against a new one. A part without any mechanism keeps all its life, 1. The reading error is
 * left out of the expected allowance.
 * @param part its figures when fitted; a reading needs its full allowance.
 * @param reachKm sealed-equivalent km since then, 0 or more.
 * @returns plain number, 0 to 1. Throws DomainError outside; a missing figure gives NaN.
 * Source: model 6, "what is left over". A middle life counts as one new life at most where it has lasted; with
 * a sudden life beside it the rule is that for a reading and a sudden life, the smaller of the two shares.
 * @example leftShare({"age": 10000, "middleLife": 20000, "spread": 0.25}, 3000) = 0.37352921194338334
 * (R actuar 3.3.2 mlnorm and levlnorm, check value CND-04.)
 */
export function leftShare(part: PartFigures, reachKm: number): number {
  checkPart(part);
  mustNotBeNegative('reach', reachKm);
  const wears = hasReading(part) || hasMiddleLife(part);
  if (!wears && !hasSuddenLife(part)) return Number.isNaN(reachKm) ? NaN : 1;
  const survives = suddenSurvival(part, reachKm);
  const byWear = wears ? Math.min(1, wearLeft(part, reachKm) * survives) : Infinity;
  if (!hasSuddenLife(part)) return byWear;
  const bySudden = (1 - wearChance(part, reachKm)) * survives * suddenLeft(part, reachKm);
  return Math.min(byWear, bySudden);
}
