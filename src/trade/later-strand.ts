import { rememberedChances } from './chance-memo.ts';
import { rowStart } from './chance-table.ts';
import { mustBeChance } from './domain.ts';
import type { PartFigures } from './part-figures.ts';

/**
 * Chance that at least one recovery is needed after a part is fitted at the end of each leg.
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param wornNeeds chance, 0 to 1, that wearing out on each leg needs a recovery: 0 seen coming, 1 stranded.
 * @param suddenNeeds the same for a sudden failure.
 * @param part figures of the part that is fitted.
 * @param after chance of a later recovery once the next part is fitted at each leg's end; null: this result
 * itself.
 * @returns plain numbers, 0 to 1, for each leg's end; 0 at the last. Throws DomainError outside; missing
 * figures give NaN.
 * Source: model 6's recursion with chances in the place of costs (first failures on different legs exclude
 * one another): sum over later legs j of p (n_j + (1 - n_j) after_j) for either cause.
 * @example laterStrand([0, 1000], [0, 0], [1, 1], {"life": 5000, "shape": 1.5, "age": 0}, null) = [0.08555935639278296, 0]
 * (1 less check value SURV-04, mpmath 1.3.0.)
 */
export function laterStrand(
  reachKm: Float64Array,
  wornNeeds: Float64Array,
  suddenNeeds: Float64Array,
  part: PartFigures,
  after: Float64Array | null,
): Float64Array {
  const { legs, worn, sudden } = rememberedChances(reachKm, part);
  for (let leg = 0; leg < legs; leg += 1) {
    mustBeChance('worn_needs', wornNeeds[leg]!);
    mustBeChance('sudden_needs', suddenNeeds[leg]!);
  }
  const chance = new Float64Array(legs);
  const next = after ?? chance;
  for (let from = legs - 2; from >= 0; from -= 1) {
    let sum = 0;
    for (let leg = from + 1, k = rowStart(legs, from); leg < legs; leg += 1, k += 1) {
      const later = next[leg]!;
      sum += worn[k]! * (later + wornNeeds[leg]! * (1 - later));
      sum += sudden[k]! * (later + suddenNeeds[leg]! * (1 - later));
    }
    chance[from] = sum;
  }
  return chance;
}
