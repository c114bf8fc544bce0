import { type BikeDemand, bikeDemand } from './bike-demand.ts';
import { rememberedChances } from './chance-memo.ts';
import { rowStart } from './chance-table.ts';
import { mustBeBikes, mustBeChance } from './domain.ts';
import type { PartFigures } from './part-figures.ts';
import { type LegChances, placeOf, type SharedLeg, sharedLeg } from './shared-leg.ts';

/** One of the bikes that share spares. */
export interface SharingBike {
  readonly demand: BikeDemand;
  /** Its demand by leg, each case times the chance that nothing after the leg needs a recovery, without spares. */
  readonly unharmed: LegChances;
}

/**
 * A bike with what may follow on it once no spare is left. Parameters as for bikeDemand, and `wornNeeds`: the
 * chance that wearing out without a spare needs a recovery, 0 to 1; a sudden failure always does.
 */
export function sharingBike(
  reachKm: Float64Array,
  firstWorn: Float64Array,
  firstSudden: Float64Array,
  newPart: PartFigures,
  most: number,
  wornNeeds: number,
): SharingBike {
  const demand = bikeDemand(reachKm, firstWorn, firstSudden, newPart, most);
  const { legs, worn, sudden } = rememberedChances(reachKm, newPart);
  const rows = (): Float64Array[] => demand.worn.map(() => new Float64Array(legs));
  const unharmed = { worn: rows(), sudden: rows(), none: rows() };
  /** Nothing needs a recovery once a new part is fitted at the end of each leg. */
  const fine = new Float64Array(legs);
  /** The same of a part fitted at `from` (-1: the old one, from the start) that lasts to the end of the leg. */
  const stays = (from: number): Float64Array => {
    const later = new Float64Array(legs);
    let lasts = 1;
    for (let leg = from + 1; leg < legs; leg += 1) {
      const place = from < 0 ? 0 : rowStart(legs, from) + leg - from - 1;
      const byWear = from < 0 ? firstWorn[leg]! : worn[place]!;
      lasts -= byWear + (from < 0 ? firstSudden[leg]! : sudden[place]!);
      later[leg] = byWear * (1 - wornNeeds) * fine[leg]!;
    }
    let sum = Math.max(0, lasts);
    for (let leg = legs - 1; leg > from; leg -= 1) {
      const here = later[leg]!;
      later[leg] = sum;
      sum += here;
    }
    if (from >= 0) fine[from] = sum;
    return later;
  };
  for (let from = legs - 1; from >= -1; from -= 1) {
    const stay = stays(from);
    for (let leg = Math.max(0, from + 1); leg < legs; leg += 1) {
      for (let j = from < 0 ? 0 : 1; j < (from < 0 ? 1 : most + 1); j += 1) {
        const fitted = from < 0 ? 1 : demand.fitted[j]![from]!;
        unharmed.none[j]![leg] = unharmed.none[j]![leg]! + fitted * stay[leg]!;
      }
    }
  }
  for (let j = 0; j <= most; j += 1) {
    for (let leg = 0; leg < legs; leg += 1) {
      unharmed.worn[j]![leg] = demand.worn[j]![leg]! * fine[leg]!;
      unharmed.sudden[j]![leg] = demand.sudden[j]![leg]! * fine[leg]!;
    }
  }
  return { demand, unharmed };
}

/**
 * Chance that at least one recovery is needed by bikes that share `spares`, by the leg on which the spares do
 * not go round; what failures with a spare need, where the last one is known not to come, stands on the last leg.
 * @param wornNeeds chance that wearing out without a spare needs a recovery; a sudden failure always does.
 * @param spareNeeds chance that a failure with a spare needs one: 1 where the job cannot be done by the track.
 * @returns chances whose sum is the chance of at least one recovery on the trip.
 * Source: model 6; bikes are independent until the spares run out and after, so cases are convolved on that leg.
 */
export function sharedStrandOf(
  bikes: readonly SharingBike[],
  spares: number,
  wornNeeds: number,
  spareNeeds: number,
): Float64Array {
  const legs = bikes[0]?.demand.legs ?? 0;
  const demands = bikes.map(({ demand }) => demand);
  const unharmed = bikes.map((bike) => bike.unharmed);
  const strand = new Float64Array(legs);
  const allFine = (1 - spareNeeds) ** spares;
  for (let leg = 0; leg < legs; leg += 1) {
    const runsOut = overCases(sharedLeg(demands, leg, spares), spares, (short) => (short > 0 ? 1 : 0));
    const harmless = overCases(sharedLeg(unharmed, leg, spares), spares, (short, suddenShort) =>
      short > 0 && suddenShort <= 0 ? (1 - wornNeeds) ** short : 0,
    );
    strand[leg] = Math.max(0, runsOut - allFine * harmless);
  }
  if (legs > 0 && spareNeeds > 0) {
    const last = sharedLeg(demands, legs - 1, spares);
    const covered = overCases(last, spares, (short) =>
      short > 0 ? 0 : 1 - (1 - spareNeeds) ** (spares + short),
    );
    strand[legs - 1] = strand[legs - 1]! + covered;
  }
  return strand;
}

/**
 * Sums over the cases in which spares were enough before the leg. `of` is told how many failures of the leg find
 * none (below 0: spares still left after it), and how many sudden ones, which are served first.
 */
function overCases(
  shared: SharedLeg,
  spares: number,
  of: (short: number, suddenShort: number) => number,
): number {
  let sum = 0;
  for (let before = 0; before <= spares; before += 1) {
    const left = spares - before;
    for (let s = 0; s <= shared.bikes; s += 1) {
      for (let w = 0; s + w <= shared.bikes; w += 1)
        sum += shared.chance[placeOf(shared.bikes, before, s, w)]! * of(s + w - left, s - left);
    }
  }
  return sum;
}

/**
 * The same for so many like bikes whose parts have come as far: see sharedStrandOf.
 * @param reachKm reach at the end of each leg, legs in order, never falling.
 * @param spares carried together, a whole number, 0 or more.
 * @param bikes a whole number from 1 to 12.
 * @param firstWorn chance that the part now fitted wears out on each leg; `firstSudden` that it fails suddenly.
 * @param newPart figures of a new part, fitted after each failure.
 * @returns plain numbers. Throws DomainError outside; missing figures give NaN.
 * @example sharedStrand([1000], 1, 4, [0], [0.25], 0, 0, {"life": 5000, "shape": 1, "age": 0}) = [0.26171875]
 * (By hand: 1 - 0.75^4 - 4 x 0.25 x 0.75^3, more than one of four.)
 */
export function sharedStrand(
  reachKm: Float64Array,
  spares: number,
  bikes: number,
  firstWorn: Float64Array,
  firstSudden: Float64Array,
  wornNeeds: number,
  spareNeeds: number,
  newPart: PartFigures,
): Float64Array {
  mustBeBikes(bikes);
  mustBeChance('worn_needs', wornNeeds);
  mustBeChance('spare_needs', spareNeeds);
  if (Number.isNaN(bikes + spares)) return new Float64Array(reachKm.length).fill(NaN);
  const bike = sharingBike(reachKm, firstWorn, firstSudden, newPart, spares, wornNeeds);
  return sharedStrandOf(new Array<SharingBike>(bikes).fill(bike), spares, wornNeeds, spareNeeds);
}
