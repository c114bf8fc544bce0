/** Most decimals that a column shows when its writer has not said how many. */
const MOST_DECIMALS = 4;

/** Differences beyond the twelfth digit do not count: 0.1 * 3 is 0.3, whatever the last bit says. */
const COUNTED_SHARE = 1e-12;
const POWERS = [1, 10, 100, 1_000, 10_000];

/** Of a figure with more decimals than anyone types. */
const LONG = MOST_DECIMALS + 1;
/** From here on four decimals are more digits than a gauge or a map gives: 80.4672 km were 50 miles. */
const LONG_FROM = 10;

/** By arithmetic, as a column of 50,000 figures is looked through after every edit of one. */
function decimalsOf(figure: number): number {
  for (let decimals = 0; decimals <= MOST_DECIMALS; decimals++) {
    const power = POWERS[decimals]!;
    if (Math.abs(Math.round(figure * power) / power - figure) <= Math.abs(figure) * COUNTED_SHARE)
      return decimals === MOST_DECIMALS && Math.abs(figure) >= LONG_FROM ? LONG : decimals;
  }
  return LONG;
}

/** Decimals that show so many significant digits of a figure, at most 4. */
function decimalsFor(digits: number, figure: number): number {
  return Math.max(0, Math.min(MOST_DECIMALS, digits - 1 - Math.floor(Math.log10(Math.abs(figure)))));
}

function mostDecimals(figures: readonly number[] | Float64Array, enough: number): number {
  let most = 0;
  for (const figure of figures) {
    if (Number.isFinite(figure)) most = Math.max(most, Math.min(MOST_DECIMALS, decimalsOf(figure)));
    if (most >= enough) return enough;
  }
  return most;
}

/** Beyond this ratio of the largest entry to the smallest, rows are taken to be in units of their own. */
const MIXED_RATIO = 1000;
/** A worked column is one of mixed scales where small broken figures stand beside figures of this size. */
const LARGE = 1000;
const SMALL = 10;

interface Scale {
  readonly largest: number;
  /** Smallest but nought; infinite when all are nought. */
  readonly smallest: number;
  /** Smallest of those that are not whole; infinite when all are whole. */
  readonly smallestBroken: number;
}

function scaleOf(figures: readonly number[] | Float64Array): Scale {
  let largest = 0;
  let smallest = Number.POSITIVE_INFINITY;
  let smallestBroken = Number.POSITIVE_INFINITY;
  for (const figure of figures) {
    if (!Number.isFinite(figure) || figure === 0) continue;
    const size = Math.abs(figure);
    largest = Math.max(largest, size);
    smallest = Math.min(smallest, size);
    if (!Number.isInteger(figure)) smallestBroken = Math.min(smallestBroken, size);
  }
  return { largest, smallest, smallestBroken };
}

/** What a column's entries ask for. */
interface Asked {
  /** Most decimals of a figure that was typed as it stands; -1 where there is none. */
  readonly typed: number;
  /** Decimals with which two digits of each long figure are seen. */
  readonly long: number;
}

function askedBy(figures: readonly number[] | Float64Array): Asked {
  let typed = -1;
  let long = 0;
  for (const figure of figures) {
    if (!Number.isFinite(figure)) continue;
    const decimals = decimalsOf(figure);
    if (decimals < LONG) typed = Math.max(typed, decimals);
    else long = Math.max(long, decimalsFor(2, figure));
  }
  return { typed, long };
}

/**
 * Decimals of a column of entered figures, the same down the whole column: as many as its longest entry has
 * that was typed in the column's unit, so that nothing that was typed is hidden without need. A figure that was
 * turned from another unit has digits without end and does not widen the column: 200 miles among 260 and 310 km
 * are 322. undefined when the rows are in units of their own (0.09 mm of play, 21,400 km of age): each is then
 * shown as it was typed.
 *
 * @param declared decimals that the column's writer asked for; more are shown where more were typed, and where two
 *   digits of a turned figure need them
 * @example enteredDecimals([4.8, 12, 0.25]) // 2
 * @example enteredDecimals([142, 26.9], 2) // 2
 * @example enteredDecimals([265.5, 321.8688]) // 1
 */
export function enteredDecimals(
  figures: readonly number[] | Float64Array,
  declared?: number,
): number | undefined {
  const { largest, smallest, smallestBroken } = scaleOf(figures);
  const isMixed = Number.isFinite(smallestBroken) && largest > MIXED_RATIO * smallest;
  if (isMixed && declared === undefined) return undefined;
  const { typed, long } = askedBy(figures);
  if (declared !== undefined) return Math.max(declared, typed, long);
  // Nothing but turned figures: four digits of the largest.
  return typed < 0 && largest > 0 ? decimalsFor(4, largest) : Math.max(typed, long);
}

/**
 * Decimals of a column of worked figures, the same down the whole column: none when all are whole, else so
 * many that the largest shows three significant digits, at most 4 and no more than any has. undefined where broken figures under 10
 * stand beside thousands, as they do when rows are in units of their own.
 *
 * @example workedDecimals([0.45, 0.0312]) // 3
 * @example workedDecimals([914.2, 14.25]) // 0
 */
export function workedDecimals(figures: readonly number[] | Float64Array): number | undefined {
  const { largest, smallestBroken } = scaleOf(figures);
  if (!Number.isFinite(smallestBroken)) return 0;
  if (largest >= LARGE && smallestBroken < SMALL) return undefined;
  const threeDigits = Math.max(0, 2 - Math.floor(Math.log10(largest)));
  return mostDecimals(figures, Math.min(MOST_DECIMALS, threeDigits));
}
