import { mustBePositive } from './domain.ts';

/**
 * Weibull characteristic life of a bearing from its rating life L10, the distance that 90% outlast.
 * @param ratingKm rating life L10 in km, above 0.
 * @param shape Weibull shape, above 0; 1.5 stands behind the reliability factors of ISO 281.
 * @returns km. Throws DomainError outside; a missing figure gives NaN.
 * Source: model 3, L10 / (-ln 0.9)^(1/beta); Lundberg and Palmgren 1947; ISO 281.
 * @example lifeFromRating(40000, 1.5) = 179311.46810387855
 * (R 4.2.2 stats::qweibull(0.1), check value L10-03.)
 */
export function lifeFromRating(ratingKm: number, shape: number): number {
  mustBePositive('l10', ratingKm);
  mustBePositive('shape', shape);
  return ratingKm / (-Math.log(0.9)) ** (1 / shape);
}
