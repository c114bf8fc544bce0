import { type BikeDemand, bikeDemand } from './bike-demand.ts';
import { mustBeBikes } from './domain.ts';
import type { PartFigures } from './part-figures.ts';
import { placeOf, type SharedLeg, sharedLeg } from './shared-leg.ts';

/** What failures of the bikes that share spares cost on each leg, in one currency. */
export interface LegCosts {
  /** Worn out, and no spare is left. */
  readonly worn: Float64Array;
  /** Failed suddenly, and no spare is left. */
  readonly sudden: Float64Array;
  /** With a spare, either way. */
  readonly fixed: Float64Array;
}

/**
 * Expected cost of each leg for all bikes that share `spares`, exactly: what each bike asks for is a renewal
 * process of its own; the counts of all are convolved, and the first `spares` failures find a spare. Of those on
 * the same leg, one that came suddenly takes the spare before one that was seen coming.
 * @param demands each bike's demand, told apart up to `spares` or more; unlike bikes may share.
 * @param spares how many are carried together, a whole number, 0 or more.
 * @param costs of one failure on each leg.
 * @returns money for each leg; their sum is what the call costs on the road. Missing figures give NaN.
 * Source: model 6, demand built up bike by bike; over one leg E[(X - k)+] of a binomial (or Poisson-binomial)
 * count X.
 */
export function sharedCostOf(demands: readonly BikeDemand[], spares: number, costs: LegCosts): Float64Array {
  const legs = demands[0]?.legs ?? 0;
  const cost = new Float64Array(legs);
  for (let leg = 0; leg < legs; leg += 1) {
    const { covered, worn, sudden } = expectedOf(sharedLeg(demands, leg, spares), spares);
    cost[leg] = covered * costs.fixed[leg]! + worn * costs.worn[leg]! + sudden * costs.sudden[leg]!;
  }
  return cost;
}

/** Failures to be expected on the leg: with a spare, worn out without, sudden without. */
function expectedOf(shared: SharedLeg, spares: number): { covered: number; worn: number; sudden: number } {
  const found = { covered: 0, worn: 0, sudden: 0 };
  for (let before = 0; before <= shared.most + 1; before += 1) {
    const left = Math.max(0, spares - before);
    for (let s = 0; s <= shared.bikes; s += 1) {
      for (let w = 0; s + w <= shared.bikes; w += 1) {
        const chance = shared.chance[placeOf(shared.bikes, before, s, w)]!;
        const suddenAlone = Math.max(0, s - left);
        const wornAlone = Math.max(0, s + w - left) - suddenAlone;
        found.sudden += chance * suddenAlone;
        found.worn += chance * wornAlone;
        found.covered += chance * (s + w - suddenAlone - wornAlone);
      }
    }
  }
  return found;
}

/**
 * The same for so many like bikes whose parts have come as far: see sharedCostOf.
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param spares carried together, a whole number, 0 or more.
 * @param bikes a whole number from 1 to 12.
 * @param firstWorn chance that the part now fitted wears out on each leg; `firstSudden` that it fails suddenly.
 * @param wornCost of one failure on each leg, worn out and no spare left, in any currency; `suddenCost` of one
 * that comes suddenly, `fixedCost` of either with a spare.
 * @param newPart figures of a new part, fitted after each failure.
 * @returns money for each leg. Throws DomainError outside; missing figures give NaN.
 * @example sharedCost([1000], 1, 4, [0.25], [0], [1], [1], [0], {"life": 5000, "shape": 1, "age": 0}) = [0.31640625]
 * (By hand: 4 x 0.25 less the chance of any, 1 - 0.75^4.)
 */
export function sharedCost(
  reachKm: Float64Array,
  spares: number,
  bikes: number,
  firstWorn: Float64Array,
  firstSudden: Float64Array,
  wornCost: Float64Array,
  suddenCost: Float64Array,
  fixedCost: Float64Array,
  newPart: PartFigures,
): Float64Array {
  mustBeBikes(bikes);
  if (Number.isNaN(bikes + spares)) return new Float64Array(reachKm.length).fill(NaN);
  const demand = bikeDemand(reachKm, firstWorn, firstSudden, newPart, spares);
  const costs = { worn: wornCost, sudden: suddenCost, fixed: fixedCost };
  return sharedCostOf(new Array<BikeDemand>(bikes).fill(demand), spares, costs);
}
