/** What one bike brings to a leg: chances (or weights) by failures before it, and by what happens on it. */
export interface LegChances {
  readonly worn: readonly Float64Array[];
  readonly sudden: readonly Float64Array[];
  readonly none: readonly Float64Array[];
}

/** Chances of what happens to all bikes together on one leg. */
export interface SharedLeg {
  /** Failures of all bikes before the leg that are told apart; `most + 1` stands for more. */
  readonly most: number;
  readonly bikes: number;
  readonly chance: Float64Array;
}

/**
 * Place in SharedLeg.chance of so many failures before the leg, sudden ones and worn ones on it.
 * @example placeOf(2, 1, 0, 2) = 11
 * (By hand: two bikes have nine cases for each count before, so the first of count 1 is at 9.)
 */
export function placeOf(bikes: number, before: number, sudden: number, worn: number): number {
  return (before * (bikes + 1) + sudden) * (bikes + 1) + worn;
}

/**
 * All bikes on one leg: their chances convolved, bike by bike, as for a Poisson-binomial count. Bikes are
 * independent of one another, and may be unlike.
 * @param all what each bike brings, its chances by failures before, 0 to `most` and one row for more.
 * @param leg counted from 0.
 * @param most failures told apart, a whole number.
 * @returns chances of each count of failures before, sudden ones and worn ones on the leg; see placeOf.
 */
export function sharedLeg(all: readonly LegChances[], leg: number, most: number): SharedLeg {
  const bikes = all.length;
  const size = (most + 2) * (bikes + 1) ** 2;
  let chance = new Float64Array(size);
  chance[0] = 1;
  all.forEach((bike, counted) => {
    const next = new Float64Array(size);
    for (let before = 0; before <= most + 1; before += 1)
      for (let own = 0; own <= most + 1; own += 1)
        addBike(next, chance, bike, leg, { before, own, counted, most, bikes });
    chance = next;
  });
  return { most, bikes, chance };
}

interface Place {
  readonly before: number;
  readonly own: number;
  readonly counted: number;
  readonly most: number;
  readonly bikes: number;
}

/** Adds to `next` what comes of the bikes counted so far with `before` failures, and one more bike with `own`. */
function addBike(
  next: Float64Array,
  chance: Float64Array,
  bike: LegChances,
  leg: number,
  place: Place,
): void {
  const { before, own, counted, most, bikes } = place;
  const add = (sudden: number, worn: number, extra: number): void => {
    const to = placeOf(bikes, Math.min(before + own, most + 1), sudden, worn);
    next[to] = next[to]! + extra;
  };
  for (let s = 0; s <= counted; s += 1) {
    for (let w = 0; s + w <= counted; w += 1) {
      const here = chance[placeOf(bikes, before, s, w)]!;
      if (here === 0) continue;
      add(s, w, here * bike.none[own]![leg]!);
      add(s + 1, w, here * bike.sudden[own]![leg]!);
      add(s, w + 1, here * bike.worn[own]![leg]!);
    }
  }
}
