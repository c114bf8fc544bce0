import type { PartFigures } from '../../trade/part-figures.ts';
import { sharedCost } from '../../trade/shared-cost.ts';
import { sharedStrand } from '../../trade/shared-strand.ts';
import { along, onePerPart, partFrom, REACH } from './later.ts';
import { WORN_TO_LIMIT } from './part-parameters.ts';
import type { GroupFunction, Parameter } from './spec.ts';

const plain = (name: string, about: string): Parameter => ({ name, about, unit: 'plain' });

const SPARES = plain('k', 'Spares that the bikes carry together: a whole number, 0 or more.');
const BIKES = plain('bikes', 'Like bikes that share them, 1 to 12; missing gives a missing result.');
const P_WORN = plain('p_worn', "Chance that the part now fitted wears out on this row's leg, 0 to 1.");
const P_SUDDEN = plain('p_sudden', "Chance that it fails suddenly on this row's leg, 0 to 1.");
const WORN_NEEDS = plain(
  'worn_needs',
  'Chance that wearing out with no spare left needs a recovery, 0 to 1.',
);
const SPARE_NEEDS = plain('spare_needs', 'Chance that a failure with a spare needs one, 0 to 1.');

/** Figures of a new part: it has covered nothing, and nobody has read it. */
const NEW_PART: readonly Parameter[] = WORN_TO_LIMIT.filter(
  ({ name }) => name !== 'reading_error' && name !== 'age',
);
const newPart = (columns: Parameters<GroupFunction['computeGroup']>[0], first: number): PartFigures => ({
  ...partFrom(NEW_PART, columns, first),
  age: 0,
});

const DOMAIN =
  'Legs in order, reach never falling. The part is the second argument; its last figures are those of a new one, which may be missing where they do not apply.';
const SOURCE = 'Renewal process of each bike; Poisson-binomial count of all, a binomial one over one leg';

const shared_cost: GroupFunction = {
  shape: 'group',
  name: 'shared_cost',
  about: "Expected cost on the road, on this row's leg, of the like parts of all bikes that share k spares.",
  domain: DOMAIN,
  source: SOURCE,
  example: {
    formula:
      'sum(shared_cost(legs.reach, legs.part, 1, 2, 0.1, 0, 100 EUR, 100 EUR, 10 EUR, missing, missing, missing, missing, missing, missing))',
    // Binomial, by hand: either of two fails on the two legs in 0.2, both in 0.04; 0.04 x 100 + (0.4 - 0.04) x 10.
    value: 7.6,
  },
  parameters: [
    REACH,
    SPARES,
    BIKES,
    P_WORN,
    P_SUDDEN,
    along('worn_cost', "Cost of one that wears out on this row's leg, no spare left.", { variable: 'C' }),
    along('sudden_cost', "Cost of a sudden failure on this row's leg, no spare left.", { variable: 'C' }),
    along('fixed_cost', "Cost of either on this row's leg, with a spare.", { variable: 'C' }),
    ...NEW_PART,
  ],
  result: { variable: 'C' },
  computeGroup: (columns) => {
    const [reach, spares, bikes, worn, sudden, wornCost, suddenCost, fixedCost] = columns;
    return sharedCost(
      reach!,
      onePerPart(SPARES, spares!),
      onePerPart(BIKES, bikes!),
      worn!,
      sudden!,
      wornCost!,
      suddenCost!,
      fixedCost!,
      newPart(columns, 8),
    );
  },
};

const shared_strand: GroupFunction = {
  shape: 'group',
  name: 'shared_strand',
  about:
    'Chance of needing a recovery because the spares that bikes share do not go round: the sum over the legs is that of at least one.',
  domain: `${DOMAIN} worn_needs and spare_needs from 0 to 1.`,
  source: SOURCE,
  example: {
    formula:
      'sum(shared_strand(legs.reach, legs.part, 1, 2, 0, 0.1, 0, 0, missing, missing, missing, missing, missing, missing))',
    // Binomial, by hand: both of two in 0.2 x 0.2.
    value: 0.04,
  },
  parameters: [REACH, SPARES, BIKES, P_WORN, P_SUDDEN, WORN_NEEDS, SPARE_NEEDS, ...NEW_PART],
  result: 'plain',
  computeGroup: (columns) => {
    const [reach, spares, bikes, worn, sudden, wornNeeds, spareNeeds] = columns;
    return sharedStrand(
      reach!,
      onePerPart(SPARES, spares!),
      onePerPart(BIKES, bikes!),
      worn!,
      sudden!,
      onePerPart(WORN_NEEDS, wornNeeds!),
      onePerPart(SPARE_NEEDS, spareNeeds!),
      newPart(columns, 7),
    );
  },
};

/** Spares of wearing parts that like bikes share: model 6, demand built up bike by bike. */
export const SHARED_FUNCTIONS: readonly GroupFunction[] = [shared_cost, shared_strand];
