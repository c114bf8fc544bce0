/**
 * What is known of one fitted part at the moment it is fitted. NaN = missing. A mechanism whose leading
 * figure is missing is absent: `allowance` (wear towards a limit), `middleLife` (a life without a reading,
 * used only where there is no allowance), `life` (sudden failure). A mechanism that is there but lacks another
 * of its figures makes the results missing, NaN, never 0.
 */
export interface PartFigures {
  /** From the reading to the limit, in the unit of the reading; at most 0 = past the limit. */
  readonly allowance: number;
  /** From the reading when new to the limit, in the same unit. Needed for the share of life left only. */
  readonly fullAllowance: number;
  /** Median wear per 1,000 km, in the same unit. */
  readonly rate: number;
  /** Median life in km of a part without a reading. */
  readonly middleLife: number;
  /** Log-sd of the rate, or of the middle life. */
  readonly spread: number;
  /** Standard uncertainty of the reading, in its unit; missing counts as 0. */
  readonly readingError: number;
  /** km covered when fitted. */
  readonly age: number;
  /** Weibull characteristic life in km. */
  readonly life: number;
  /** Weibull shape. */
  readonly shape: number;
}

const NOTHING_KNOWN: PartFigures = {
  allowance: NaN,
  fullAllowance: NaN,
  rate: NaN,
  middleLife: NaN,
  spread: NaN,
  readingError: NaN,
  age: NaN,
  life: NaN,
  shape: NaN,
};

/**
 * A part's figures from those that are known; the others are missing.
 * @example partFigures({"life": 30000, "shape": 1, "age": 0}).shape = 1
 * (By definition.)
 */
export function partFigures(known: Partial<PartFigures>): PartFigures {
  return { ...NOTHING_KNOWN, ...known };
}

/** Wears towards a limit that a reading tells of. */
export const hasReading = (part: PartFigures): boolean => !Number.isNaN(part.allowance);
/** Has a life and an age, and no reading. */
export const hasMiddleLife = (part: PartFigures): boolean =>
  !hasReading(part) && !Number.isNaN(part.middleLife);
/** Can fail suddenly. */
export const hasSuddenLife = (part: PartFigures): boolean => !Number.isNaN(part.life);
