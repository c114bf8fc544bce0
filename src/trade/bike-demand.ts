import { rememberedChances } from './chance-memo.ts';
import { type ChanceTable, rowStart } from './chance-table.ts';
import { mustBeWholeCount } from './domain.ts';
import type { PartFigures } from './part-figures.ts';

/**
 * What one bike's part asks of the spares, leg by leg: a new part goes on after each failure, a spare or one
 * bought there, so that what a bike asks for does not hang on what is carried. Entry [j][leg]: j failures
 * before the leg, the last row that many or more.
 */
export interface BikeDemand {
  readonly legs: number;
  /** Chance that the part fails on the leg by wear, after j failures before it. */
  readonly worn: readonly Float64Array[];
  /** The same suddenly. */
  readonly sudden: readonly Float64Array[];
  /** Chance of j failures before the leg, and none on it. */
  readonly none: readonly Float64Array[];
  /** fitted[j][leg]: chance that the j-th failure, j from 1, is on the leg, and a new part fitted at its end. */
  readonly fitted: readonly Float64Array[];
}

/**
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param firstWorn chance that the part now fitted wears out on each leg, as its first failure; 0 to 1.
 * @param firstSudden chance that it fails suddenly on each leg, as its first failure; 0 to 1.
 * @param newPart figures of a new part.
 * @param most failures that are told apart, a whole number: more than that many count as one more.
 * @returns chances, plain numbers. Throws DomainError outside; missing figures give NaN.
 * Source: the renewal process of model 6, counted (Poisson-binomial once bikes are added, shared-leg.ts).
 * @example bikeDemand([1000, 2000], [0.25, 0.25], [0, 0], {"life": 5000, "shape": 1, "age": 0}, 1).worn = [[0.25, 0.25], [0, 0], [0, 0]]
 * (By hand: the old part's failures come after none before; a new one without a limit never wears out.)
 */
export function bikeDemand(
  reachKm: Float64Array,
  firstWorn: Float64Array,
  firstSudden: Float64Array,
  newPart: PartFigures,
  most: number,
): BikeDemand {
  mustBeWholeCount('k', most);
  const table = rememberedChances(reachKm, newPart);
  const rows = (): Float64Array[] => Array.from({ length: most + 2 }, () => new Float64Array(table.legs));
  const demand = { legs: table.legs, worn: rows(), sudden: rows(), none: rows(), fitted: rows() };
  const before = new Float64Array(most + 2);
  before[0] = 1;
  for (let leg = 0; leg < table.legs; leg += 1) {
    fillLeg(demand, table, leg, firstWorn[leg]!, firstSudden[leg]!);
    // From the most failures down, so that each row still has what stood before this leg.
    for (let j = most + 1; j >= 0; j -= 1) {
      const fails = demand.worn[j]![leg]! + demand.sudden[j]![leg]!;
      demand.none[j]![leg] = Math.max(0, before[j]! - fails);
      const next = Math.min(j + 1, most + 1);
      demand.fitted[next]![leg] = demand.fitted[next]![leg]! + fails;
      if (next === j) continue;
      before[next] = before[next]! + fails;
      before[j] = before[j]! - fails;
    }
  }
  return demand;
}

/** The old part fails here for the first time, or one fitted at an earlier leg's end does. */
function fillLeg(
  { worn, sudden, fitted }: BikeDemand,
  table: ChanceTable,
  leg: number,
  firstWorn: number,
  firstSudden: number,
): void {
  worn[0]![leg] = firstWorn;
  sudden[0]![leg] = firstSudden;
  for (let j = 1; j < fitted.length; j += 1) {
    let byWear = 0;
    let bySudden = 0;
    for (let from = 0; from < leg; from += 1) {
      const place = rowStart(table.legs, from) + leg - from - 1;
      byWear += fitted[j]![from]! * table.worn[place]!;
      bySudden += fitted[j]![from]! * table.sudden[place]!;
    }
    worn[j]![leg] = byWear;
    sudden[j]![leg] = bySudden;
  }
}
