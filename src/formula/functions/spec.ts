/**
 * What a function of the formula language says about itself. The checker, the evaluator, the in-app
 * reference, completion and the tests of the examples all read it from here.
 */

/**
 * Units of a parameter or result.
 * 'plain': a number without unit.  'days' / 'km': that dimension, handed to the kernel in that unit.
 * {variable}: any unit, the same for every parameter with that letter; the kernel gets all of them in the
 * unit of the first one (X, a distance, in km).
 * {variable, per, by}: variable divided by `by` units of the other, e.g. A per 1000 X for a wear rate.
 * Figures without units are taken as they stand (reach in km, rates per 1,000 km) when every parameter of the
 * call is without a unit.
 */
export type UnitPattern =
  | 'plain'
  | 'days'
  | { readonly variable: string; readonly per?: string; readonly by?: number };

export interface Parameter {
  readonly name: string;
  /** What it is, its range; one line. */
  readonly about: string;
  readonly unit: UnitPattern;
  readonly optional?: boolean;
  /** The kernel is called with NaN when it is missing; otherwise a missing argument makes the result missing. */
  readonly mayBeMissing?: boolean;
  /** Must be yes/no, handed to the kernel as 1 or 0. */
  readonly yesNo?: boolean;
}

export interface SpecBase {
  readonly name: string;
  /** One plain sentence: what it gives. */
  readonly about: string;
  /** Where it is defined and what happens outside. */
  readonly domain: string;
  /** Published source, or 'common practice, no source'. */
  readonly source: string;
  /** A formula that is run by the tests, and what it gives, to `relative` (default 1e-9). */
  readonly example: {
    readonly formula: string;
    readonly value: number | string | boolean;
    readonly relative?: number;
  };
}

/** One figure from the figures of one row. Kernels throw DomainError (src/trade/domain-error.ts). */
export interface RowFunction extends SpecBase {
  readonly shape: 'row';
  readonly parameters: readonly Parameter[];
  readonly result: UnitPattern;
  readonly compute: (...figures: number[]) => number;
}

/**
 * A column from columns of the same table, worked group by group with the rows in order. The second
 * parameter of the formula is always the group key. Each array holds that group's rows of one parameter,
 * in the order of `parameters` (without the key); an absent optional parameter is null.
 */
export interface GroupFunction extends SpecBase {
  readonly shape: 'group';
  readonly parameters: readonly Parameter[];
  readonly result: UnitPattern;
  readonly computeGroup: (columns: readonly (Float64Array | null)[]) => Float64Array;
}
