import { rememberedChances } from './chance-memo.ts';
import { rowStart } from './chance-table.ts';
import { leftShare } from './left-share.ts';
import type { PartFigures } from './part-figures.ts';

/**
 * Expected share of life left, when the trip ends, in whatever part is then fitted, if this part is fitted
 * at the end of each leg: K of model 6 for a new part with `after` null, J for the old part put back with
 * `after` = K.
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param part figures of the part that is fitted.
 * @param after share left if the next part is fitted at each leg's end; null: this result itself.
 * @returns plain numbers, 0 to 1, for each leg's end; at the last L(0), 1 for a new part. Throws DomainError
 * outside; missing figures give NaN.
 * Source: model 6; L(reach_n - reach_i) + sum over later legs j of (pw + ps) after_j.
 * @example laterLeft([0, 1000], {"life": 5000, "shape": 1, "age": 0}, null) = [1, 1]
 * (By hand: a part that does not age keeps its share, failed or not.)
 */
export function laterLeft(
  reachKm: Float64Array,
  part: PartFigures,
  after: Float64Array | null,
): Float64Array {
  const { legs, worn, sudden } = rememberedChances(reachKm, part);
  const share = new Float64Array(legs);
  const next = after ?? share;
  const endKm = legs > 0 ? reachKm[legs - 1]! : 0;
  for (let from = legs - 1; from >= 0; from -= 1) {
    let sum = leftShare(part, endKm - reachKm[from]!);
    for (let leg = from + 1, k = rowStart(legs, from); leg < legs; leg += 1, k += 1) {
      sum += (worn[k]! + sudden[k]!) * next[leg]!;
    }
    share[from] = sum;
  }
  return share;
}
