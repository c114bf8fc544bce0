import { DomainError } from '../../trade/domain-error.ts';
import { laterCost } from '../../trade/later-cost.ts';
import { laterLeft } from '../../trade/later-left.ts';
import { laterStrand } from '../../trade/later-strand.ts';
import type { PartFigures } from '../../trade/part-figures.ts';
import { partFromFigures, WORN_FROM_NEW, WORN_TO_LIMIT } from './part-parameters.ts';
import type { GroupFunction, Parameter, UnitPattern } from './spec.ts';

type Columns = readonly (Float64Array | null)[];

/*
 * In a formula the second argument is the group key, the part: later_cost(reach, part, worn_cost, ...). As for
 * every group function it is not among the parameters. The rows of a part are its legs, in order.
 */
export const REACH: Parameter = {
  name: 'reach',
  about: "Reach of the part's wear class at the end of this row's leg, a running total down the legs.",
  unit: { variable: 'X' },
};

export const along = (name: string, about: string, unit: UnitPattern): Parameter => ({ name, about, unit });
const after = (about: string, unit: UnitPattern): Parameter => ({
  name: 'after',
  about: `${about}; left out, the function's own result, a like part each time.`,
  unit,
  optional: true,
});

/** The figure that stands on every row of one part; a figure that changes from leg to leg is a fault. */
export function onePerPart(parameter: Parameter, column: Float64Array | null): number {
  if (!column) return NaN;
  const figure = column[0] ?? NaN;
  for (let leg = 1; leg < column.length; leg += 1) {
    if (Object.is(column[leg], figure) || column[leg] === figure) continue;
    const rule = `and ${figure} on the first leg of the same part: it must be one figure for the whole part`;
    const mend = `Give the ${parameter.name.replaceAll('_', ' ')} of the part as it is when fitted, the same on every leg.`;
    throw new DomainError(parameter.name, column[leg]!, rule, mend);
  }
  return figure;
}

/** The part whose figures stand in `columns` from `first` on, in the order of `parameters`. */
export function partFrom(parameters: readonly Parameter[], columns: Columns, first: number): PartFigures {
  return partFromFigures(
    parameters,
    parameters.map((parameter, place) => onePerPart(parameter, columns[first + place] ?? null)),
  );
}

const DOMAIN =
  'Legs in order, reach never falling. Figures of a part that do not apply may be missing; the part is the second argument. The last leg has nothing after it.';
const SOURCE = 'Renewal recursion leg by leg; a part that gives up on a leg is changed at its end';

const later_cost: GroupFunction = {
  shape: 'group',
  name: 'later_cost',
  about: "Expected cost on the road after the part is fitted at the end of this row's leg.",
  domain: DOMAIN,
  source: SOURCE,
  example: {
    formula:
      'most(later_cost(legs.reach, legs.part, 100 EUR, 100 EUR, 0.8 mm, 0.12 mm / (1000 km), missing, 0.25, 0 mm, missing, missing, missing))',
    // Two legs, 5,200 km between their ends: 100 EUR times limit_chance (check value LIM-05, R 4.2.2 plnorm).
    value: 16.01490606851423,
    relative: 1e-9,
  },
  parameters: [
    REACH,
    along('worn_cost', "Cost of wearing out on this row's leg.", { variable: 'C' }),
    along('sudden_cost', "Cost of a sudden failure on this row's leg.", { variable: 'C' }),
    ...WORN_TO_LIMIT,
    after("Expected cost after the next part is fitted at this row's leg", { variable: 'C' }),
  ],
  result: { variable: 'C' },
  computeGroup: (columns) => {
    const [reach, wornCost, suddenCost] = columns;
    const part = partFrom(WORN_TO_LIMIT, columns, 3);
    return laterCost(reach!, wornCost!, suddenCost!, part, columns[3 + WORN_TO_LIMIT.length] ?? null);
  },
};

const later_left: GroupFunction = {
  shape: 'group',
  name: 'later_left',
  about:
    "Expected share of life left at the trip's end in whatever part is then fitted, after this one is fitted at the end of this row's leg.",
  domain: DOMAIN,
  source: SOURCE,
  example: {
    formula:
      'least(later_left(legs.reach, legs.part, 0.8 mm, 0.8 mm, 0.12 mm / (1000 km), missing, 0.25, 0 mm, missing, missing, missing))',
    // LEFT-01 / 0.8 mm + LIM-05 (check values, R 4.2.2 and actuar): left if it lasts, a new one if not.
    value: 0.379115693417434,
    relative: 1e-8,
  },
  parameters: [
    REACH,
    ...WORN_FROM_NEW,
    after("Share left once the next part is fitted at this row's leg", 'plain'),
  ],
  result: 'plain',
  computeGroup: (columns) => {
    const part = partFrom(WORN_FROM_NEW, columns, 1);
    return laterLeft(columns[0]!, part, columns[1 + WORN_FROM_NEW.length] ?? null);
  },
};

const later_strand: GroupFunction = {
  shape: 'group',
  name: 'later_strand',
  about: "Chance of needing at least one recovery after the part is fitted at the end of this row's leg.",
  domain: `${DOMAIN} worn_needs and sudden_needs from 0 to 1.`,
  source: SOURCE,
  example: {
    formula:
      'most(later_strand(legs.reach, legs.part, 1, 1, 0.8 mm, 0.12 mm / (1000 km), missing, 0.25, 0 mm, missing, missing, missing))',
    // The chance of LIM-05 (check value, R 4.2.2 plnorm).
    value: 0.1601490606851423,
    relative: 1e-9,
  },
  parameters: [
    REACH,
    along('worn_needs', "Chance that wearing out on this row's leg needs a recovery: 1 yes, 0 no.", 'plain'),
    along('sudden_needs', "Chance that a sudden failure on this row's leg needs a recovery.", 'plain'),
    ...WORN_TO_LIMIT,
    after("Chance of a later recovery once the next part is fitted at this row's leg", 'plain'),
  ],
  result: 'plain',
  computeGroup: (columns) => {
    const [reach, wornNeeds, suddenNeeds] = columns;
    const part = partFrom(WORN_TO_LIMIT, columns, 3);
    return laterStrand(reach!, wornNeeds!, suddenNeeds!, part, columns[3 + WORN_TO_LIMIT.length] ?? null);
  },
};

/** What follows once a part is fitted on the way: model 6, leg by leg. */
export const LATER_FUNCTIONS: readonly GroupFunction[] = [later_cost, later_left, later_strand];
