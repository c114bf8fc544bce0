import { type JacobiMatrix, jacobiMatrix } from './jacobi-matrix.ts';

/** Nodes and weights that stand for many points; the weights are above 0 and sum to 1. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/** One sweep of plane rotations from row `bottom - 1` up to `top`; `first` carries the eigenvectors' first row. */
function sweep({ diagonal: d, beside: e }: JacobiMatrix, first: Float64Array, top: number, bottom: number) {
  let g = (d[top + 1]! - d[top]!) / (2 * e[top]!);
  let r = Math.hypot(g, 1);
  g = d[bottom]! - d[top]! + e[top]! / (g + (g < 0 ? -r : r));
  let s = 1;
  let c = 1;
  let p = 0;
  for (let i = bottom - 1; i >= top; i -= 1) {
    const f = s * e[i]!;
    const b = c * e[i]!;
    r = Math.sqrt(f * f + g * g);
    e[i + 1] = r;
    s = r === 0 ? 1 : f / r;
    c = r === 0 ? 0 : g / r;
    g = d[i + 1]! - p;
    const turn = (d[i]! - g) * s + 2 * c * b;
    p = s * turn;
    d[i + 1] = g + p;
    g = c * turn - b;
    const below = first[i + 1]!;
    first[i + 1] = s * first[i]! + c * below;
    first[i] = c * first[i]! - s * below;
  }
  d[top] = d[top]! - p;
  e[top] = g;
  e[bottom] = 0;
}

/** Turns the matrix into its eigenvalues in place (implicit QL) and returns the eigenvectors' first row. */
function solveInPlace(matrix: JacobiMatrix): Float64Array {
  const { diagonal: d, beside: e } = matrix;
  const order = d.length;
  const first = new Float64Array(order);
  first[0] = 1;
  for (let top = 0; top < order; top += 1) {
    for (;;) {
      let bottom = top;
      while (
        bottom < order - 1 &&
        Math.abs(e[bottom]!) > 1e-16 * (Math.abs(d[bottom]!) + Math.abs(d[bottom + 1]!))
      ) {
        bottom += 1;
      }
      if (bottom === top) break;
      sweep(matrix, first, top, bottom);
    }
  }
  return first;
}

/**
 * Gauss rule of a set of equally likely points: a few weighted nodes with the same mean as the points for
 * every polynomial of degree up to 2 * order - 1, so nearly the same for every smooth function.
 * @param points plain numbers within -1 to 1, more different ones than `order`.
 * @param order number of nodes, 1 or more.
 * @returns nodes within the points' range, weights above 0 that sum to 1.
 * Source: Golub and Welsch 1969, Mathematics of Computation 23, 221.
 * @example gaussRule([-1, 0, 1], 2) = {"nodes": [-0.816496580927726, 0.816496580927726], "weights": [0.5, 0.5]}
 * (By hand: the two points with mean 0 and mean square 2/3.)
 */
export function gaussRule(points: Float64Array, order: number): QuadratureRule {
  const matrix = jacobiMatrix(points, order);
  const first = solveInPlace(matrix);
  return { nodes: matrix.diagonal, weights: first.map((share) => share * share) };
}
