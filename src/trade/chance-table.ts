import { checkPart } from './check-part.ts';
import { mustNotBeNegative } from './domain.ts';
import { DomainError } from './domain-error.ts';
import { hazardSoFar } from './hazard-ahead.ts';
import type { PartFigures } from './part-figures.ts';
import { suddenSurvival } from './sudden-survival.ts';
import { wearChance } from './wear-chance.ts';

/**
 * For a part fitted at the end of leg i (legs counted from 0), the chances that wear and that a sudden
 * failure ends it on a later leg j. Rows lie one after the other: row i starts at rowStart(legs, i) with
 * j = i + 1 and has legs - 1 - i entries.
 */
export interface ChanceTable {
  readonly legs: number;
  readonly worn: Float64Array;
  readonly sudden: Float64Array;
}

/**
 * Where the chances of a part fitted at the end of leg `from` start in a ChanceTable.
 * @example rowStart(4, 1) = 3
 * (By hand: row 0 of four legs holds legs 1, 2, 3.)
 */
export function rowStart(legs: number, from: number): number {
  return (from * (2 * legs - from - 1)) / 2;
}

function checkReach(reachKm: Float64Array): void {
  for (let leg = 0; leg < reachKm.length; leg += 1) {
    const now = reachKm[leg]!;
    mustNotBeNegative('reach', now);
    if (leg > 0 && now < reachKm[leg - 1]!) {
      const rule = `it must not fall from leg to leg, and leg ${leg} ends at ${reachKm[leg - 1]}`;
      throw new DomainError('reach', now, rule, 'Give the running total of the distances, legs in order.');
    }
  }
}

/** One row: the part is fitted at reach `startKm`, and `at` is its place in the table. */
function fillRow(
  table: ChanceTable,
  at: number,
  reachKm: Float64Array,
  from: number,
  part: PartFigures,
): void {
  const { worn, sudden } = table;
  const soFar = hazardSoFar(part.age, part.life, part.shape);
  const due = wearChance(part, 0);
  const startKm = reachKm[from]!;
  let wornBefore = due;
  let survivedBefore = 1;
  for (let leg = from + 1, k = at; leg < reachKm.length; leg += 1, k += 1) {
    const sinceKm = reachKm[leg]! - startKm;
    const wornNow = wearChance(part, sinceKm);
    const survivedNow = suddenSurvival(part, sinceKm, soFar);
    worn[k] = 0.5 * (wornNow - wornBefore) * (survivedNow + survivedBefore);
    sudden[k] = 0.5 * (survivedBefore - survivedNow) * (1 - wornNow + (1 - wornBefore));
    wornBefore = wornNow;
    survivedBefore = survivedNow;
  }
  // A part that is due when it is fitted gives up on the first leg it is ridden.
  if (at < worn.length) worn[at] = worn[at]! + due;
}

/**
 * Chances of giving up on each later leg, for a part fitted at the end of each leg, its reach counted from
 * there. Over a row they and the chance of lasting to the end, (1 - W) S, sum to 1; a part past its limit
 * when fitted gives up, worn, on the next leg.
 * @param reachKm reach of the part's wear class at the end of each leg, in order: never falling, 0 or more.
 * @param part its figures when fitted.
 * @returns plain numbers, 0 to 1. Throws DomainError outside; a missing figure makes what needs it NaN.
 * Source: model 4 and 6 (wear and sudden share by the trapezium, which sum to the chance exactly).
 * @example chanceTable([0, 1000], {"life": 5000, "shape": 1.5, "age": 0}).sudden = [0.08555935639278296]
 * (mpmath 1.3.0 with 50 digits, 1 less check value SURV-04.)
 */
export function chanceTable(reachKm: Float64Array, part: PartFigures): ChanceTable {
  checkPart(part);
  checkReach(reachKm);
  const legs = reachKm.length;
  const entries = (legs * (legs - 1)) / 2;
  const table = { legs, worn: new Float64Array(entries), sudden: new Float64Array(entries) };
  for (let from = 0; from < legs - 1; from += 1) fillRow(table, rowStart(legs, from), reachKm, from, part);
  return table;
}
