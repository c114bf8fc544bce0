import { mustBeFinite, mustBePositive, mustBePositiveOrInfinite, mustNotBeNegative } from './domain.ts';
import { hasMiddleLife, hasReading, hasSuddenLife, type PartFigures } from './part-figures.ts';

/**
 * Refuses figures that no part can have, by their own names; figures of absent mechanisms are not looked at.
 * @param part one fitted part. Throws DomainError, returns nothing.
 */
export function checkPart(part: PartFigures): void {
  if (hasReading(part)) {
    mustBeFinite('allowance', part.allowance);
    mustBePositive('full_allowance', part.fullAllowance);
    mustBePositive('rate', part.rate);
    mustNotBeNegative('reading_error', part.readingError);
  }
  if (hasMiddleLife(part)) mustBePositive('middle_life', part.middleLife);
  if (hasReading(part) || hasMiddleLife(part)) mustNotBeNegative('spread', part.spread);
  if (hasSuddenLife(part)) {
    mustBePositiveOrInfinite('life', part.life);
    mustBePositive('shape', part.shape);
  }
  mustNotBeNegative('age', part.age);
}
