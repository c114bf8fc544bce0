import { rememberedChances } from './chance-memo.ts';
import { rowStart } from './chance-table.ts';
import type { PartFigures } from './part-figures.ts';

/**
 * Expected cost on the road after a part is fitted at the end of each leg: U of model 6 with `after` null (a
 * like part is bought and fitted after every failure), O and U^k with `after` the cost that follows the first
 * failure.
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param wornCost cost of wearing out on each leg, in any currency.
 * @param suddenCost cost of a sudden failure on each leg, in the same currency.
 * @param part figures of the part that is fitted.
 * @param after expected cost after the next part is fitted at each leg's end; null: this result itself.
 * @returns cost for each leg's end; 0 at the last. Throws DomainError outside; missing figures give NaN.
 * Source: model 6; sum over later legs j of pw (wornCost_j + after_j) + ps (suddenCost_j + after_j).
 * @example laterCost([0, 1000], [7, 9], [5, 100], {"life": 5000, "shape": 1.5, "age": 0}, null) = [8.555935639278296, 0]
 * (100 times 1 less check value SURV-04, mpmath 1.3.0.)
 */
export function laterCost(
  reachKm: Float64Array,
  wornCost: Float64Array,
  suddenCost: Float64Array,
  part: PartFigures,
  after: Float64Array | null,
): Float64Array {
  const { legs, worn, sudden } = rememberedChances(reachKm, part);
  const cost = new Float64Array(legs);
  const next = after ?? cost;
  for (let from = legs - 2; from >= 0; from -= 1) {
    let sum = 0;
    for (let leg = from + 1, k = rowStart(legs, from); leg < legs; leg += 1, k += 1) {
      sum += worn[k]! * (wornCost[leg]! + next[leg]!) + sudden[k]! * (suddenCost[leg]! + next[leg]!);
    }
    cost[from] = sum;
  }
  return cost;
}
