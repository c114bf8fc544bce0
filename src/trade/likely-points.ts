import { normalQuantile } from './normal-quantile.ts';

/**
 * Equally likely points of a standard normal: Phi^-1((k - 1/2)/count) for k = 1 .. count, rising. A mean
 * over an uncertain reading or rate is the plain mean over them.
 * @param count whole number, 1 or more.
 * @returns `count` plain numbers, symmetric about 0.
 * Source: model 2 (201 points for a reading error) and model 12.
 * @example likelyPoints(5) = [-1.2815515655446004, -0.5244005127080407, 0, 0.5244005127080407, 1.2815515655446004]
 * (R 4.2.2 stats::qnorm of 0.1, 0.3, 0.5, 0.7, 0.9.)
 */
export function likelyPoints(count: number): Float64Array {
  const points = new Float64Array(count);
  for (let k = 0; 2 * k + 1 < count; k += 1) {
    const z = normalQuantile((k + 0.5) / count);
    points[k] = z;
    points[count - 1 - k] = -z;
  }
  return points;
}
