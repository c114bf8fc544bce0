/** Symmetric tridiagonal matrix: `beside[k]` stands between rows k and k + 1 (its last entry is unused). */
export interface JacobiMatrix {
  readonly diagonal: Float64Array;
  readonly beside: Float64Array;
}

/**
 * Jacobi matrix of the measure that puts equal weight on each of `points`: the recurrence coefficients of
 * its orthonormal polynomials, by the discretised Stieltjes procedure.
 * @param points plain numbers within -1 to 1, more of them than `order`.
 * @param order whole number, 1 or more.
 * Source: Gautschi 2004, Orthogonal Polynomials: Computation and Approximation, 2.2.3.1.
 * @example jacobiMatrix([-1, 0, 1], 2) = {"diagonal": [0, 0], "beside": [0.816496580927726, 0]}
 * (By hand: the mean is 0 and the root mean square is sqrt(2/3).)
 */
export function jacobiMatrix(points: Float64Array, order: number): JacobiMatrix {
  const count = points.length;
  const diagonal = new Float64Array(order);
  const beside = new Float64Array(order);
  let last = new Float64Array(count);
  let now = new Float64Array(count).fill(Math.sqrt(1 / count));
  for (let k = 0; k < order; k += 1) {
    let centre = 0;
    for (let i = 0; i < count; i += 1) centre += points[i]! * now[i]! * now[i]!;
    diagonal[k] = centre;
    if (k === order - 1) break;
    const back = k > 0 ? beside[k - 1]! : 0;
    let square = 0;
    for (let i = 0; i < count; i += 1) {
      const next = (points[i]! - centre) * now[i]! - back * last[i]!;
      last[i] = next;
      square += next * next;
    }
    const length = Math.sqrt(square);
    beside[k] = length;
    for (let i = 0; i < count; i += 1) last[i] = last[i]! / length;
    [last, now] = [now, last];
  }
  return { diagonal, beside };
}
