import { DomainError } from './domain-error.ts';

/**
 * The one place where figures outside a formula's domain are refused. A missing figure (NaN) always passes:
 * it makes the result missing, which is not a fault.
 */

/** What mends each parameter, by its name in the formula language. */
const MENDS: Readonly<Record<string, string>> = {
  shape: 'Give the Weibull shape, 1 for random failures, above 1 for wear-out.',
  life: 'Give the life as a distance above 0.',
  middle_life: 'Give the distance that half of such parts outlast, or leave it empty.',
  l10: 'Give the rating life, the distance that 90% of such bearings outlast.',
  rate: 'Give the wear per 1,000 km as a figure above 0, whichever way the reading moves.',
  spread: 'Give the log-spread as 0 or more; spread_from(low, high) works it out from a low and a high rate.',
  reach: 'Give the distance of wear so far as 0 or more.',
  age: 'Give the distance the part had covered at the start, 0 for a new one.',
  reading_error: 'Give the uncertainty of the reading as 0 or more, in the unit of the reading.',
  full_allowance: 'Give the limit and the reading when new as two different figures.',
  low: 'Give the low rate as a figure above 0.',
  high: 'Give the high rate as a figure not below the low one.',
  v: 'Give the coefficient of variation as 0 or more, 0.3 for 30%.',
  k: 'Give how many spares are carried: 0, 1, 2 and so on.',
  bikes: 'Give how many like bikes share the spares, from 1 to 12; leave it empty for one.',
  mean: 'Give the expected number of hits as 0 or more.',
  worn_needs: 'Give 1 where wearing out needs a recovery, 0 where it does not, or a chance between.',
  spare_needs:
    'Give 1 where it cannot be changed by the track even with a spare, 0 where it can, or a chance between.',
  sudden_needs: 'Give 1 where a sudden failure needs a recovery, 0 where it does not, or a chance between.',
};

function refuse(parameter: string, value: number, rule: string): never {
  throw new DomainError(parameter, value, rule, MENDS[parameter] ?? `Give another ${parameter}.`);
}

/** Refuses 0, negative and infinite figures. */
export function mustBePositive(parameter: string, value: number): void {
  if (value <= 0) refuse(parameter, value, 'it must be above 0');
  if (value === Infinity) refuse(parameter, value, 'it must be a finite number');
}

/** Refuses 0 and negative figures; infinity stands for a part that never fails. */
export function mustBePositiveOrInfinite(parameter: string, value: number): void {
  if (value <= 0) refuse(parameter, value, 'it must be above 0');
}

/** Refuses negative and infinite figures. */
export function mustNotBeNegative(parameter: string, value: number): void {
  if (value < 0) refuse(parameter, value, 'it must be 0 or more');
  if (value === Infinity) refuse(parameter, value, 'it must be a finite number');
}

/** Refuses infinite figures. */
export function mustBeFinite(parameter: string, value: number): void {
  if (value === Infinity || value === -Infinity) refuse(parameter, value, 'it must be a finite number');
}

/** Refuses fractions and negative counts. */
export function mustBeWholeCount(parameter: string, value: number): void {
  mustNotBeNegative(parameter, value);
  if (value !== Math.floor(value) && !Number.isNaN(value))
    refuse(parameter, value, 'it must be a whole number');
}

/** Refuses what is not a chance of 0 to 1. */
export function mustBeChance(parameter: string, value: number): void {
  if (value < 0 || value > 1) refuse(parameter, value, 'it must be from 0 to 1');
}

/** More bikes than this are no longer counted one by one. */
const MOST_BIKES = 12;

/** Refuses what is no count of bikes. */
export function mustBeBikes(bikes: number): void {
  mustBeWholeCount('bikes', bikes);
  if (bikes < 1 || bikes > MOST_BIKES) refuse('bikes', bikes, `it must be from 1 to ${MOST_BIKES}`);
}
