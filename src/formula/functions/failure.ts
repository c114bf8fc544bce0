import { failure } from '../../trade/failure.ts';
import { leftShare } from '../../trade/left-share.ts';
import { lifeFromRating } from '../../trade/life-from-rating.ts';
import { residualLife } from '../../trade/residual-life.ts';
import { survival } from '../../trade/survival.ts';
import { partFromFigures, WORN_FROM_NEW } from './part-parameters.ts';
import type { Parameter, RowFunction } from './spec.ts';

const AGE: Parameter = {
  name: 'age',
  about: 'Distance covered at the start, 0 or more; 0 for a new part.',
  unit: { variable: 'X' },
};
const REACH: Parameter = {
  name: 'reach',
  about: 'Distance of wear ahead in sealed-road equivalents, 0 or more.',
  unit: { variable: 'X' },
};
const LIFE: Parameter = {
  name: 'life',
  about: 'Weibull characteristic life: 63% have failed by then; above 0.',
  unit: { variable: 'X' },
};
const SHAPE: Parameter = {
  name: 'shape',
  about: 'Weibull shape, above 0: below 1 early failures, 1 random ones, above 1 wear-out.',
  unit: 'plain',
};
const WEIBULL_DOMAIN = 'life and shape above 0; age and reach 0 or more.';
const WEIBULL_SOURCE = 'Weibull 1951; MIL-HDBK-338B 5.3.6; NIST/SEMATECH e-Handbook 8.1.6.2';

const survival_: RowFunction = {
  shape: 'row',
  name: 'survival',
  about: 'Chance of no sudden failure within the reach, given that the part has lasted to its age.',
  domain: WEIBULL_DOMAIN,
  source: WEIBULL_SOURCE,
  // mpmath 1.3.0 with 50 digits: check value SURV-07.
  example: {
    formula: 'survival(12000 km, 5000 km, 30000 km, 2.2)',
    value: 0.8577685475501022,
    relative: 1e-12,
  },
  parameters: [AGE, REACH, LIFE, SHAPE],
  result: 'plain',
  compute: (age, reach, life, shape) => survival(age!, reach!, life!, shape!),
};

const failure_: RowFunction = {
  shape: 'row',
  name: 'failure',
  about: 'Chance of a sudden failure within the reach, given that the part has lasted to its age.',
  domain: WEIBULL_DOMAIN,
  source: WEIBULL_SOURCE,
  // mpmath 1.3.0 with 50 digits, -expm1(-((a+X)/eta)^3 + (a/eta)^3).
  example: {
    formula: 'failure(120000 km, 0.5 km, 40000 km, 3)',
    value: 0.00033744445905910817,
    relative: 1e-12,
  },
  parameters: [AGE, REACH, LIFE, SHAPE],
  result: 'plain',
  compute: (age, reach, life, shape) => failure(age!, reach!, life!, shape!),
};

const residual_life: RowFunction = {
  shape: 'row',
  name: 'residual_life',
  about: 'Expected distance still ahead of a part that has lasted to its age.',
  domain: 'life and shape above 0; age 0 or more.',
  source: 'Mean residual life of the Weibull; incomplete gamma function as in NIST DLMF 8.7.1 and 8.9.2',
  // R actuar 3.3.2 mweibull and levweibull: check value MRL-03.
  example: { formula: 'residual_life(12000 km, 30000 km, 2.2)', value: 17193.493309982874 },
  parameters: [AGE, LIFE, SHAPE],
  result: { variable: 'X' },
  compute: (age, life, shape) => residualLife(age!, life!, shape!),
};

const life_from_rating: RowFunction = {
  shape: 'row',
  name: 'life_from_rating',
  about: 'Weibull characteristic life of a bearing from its rating life L10.',
  domain: 'l10 and shape above 0; 1.5 is the usual shape.',
  source: 'Lundberg and Palmgren 1947; ISO 281: the rating life is the 10% point',
  // R 4.2.2 stats::qweibull(0.1): check value L10-03.
  example: { formula: 'life_from_rating(40000 km, 1.5)', value: 179311.46810387855, relative: 1e-12 },
  parameters: [
    { name: 'l10', about: 'Rating life, the distance that 90% outlast; above 0.', unit: { variable: 'X' } },
    SHAPE,
  ],
  result: { variable: 'X' },
  compute: (l10, shape) => lifeFromRating(l10!, shape!),
};

const left_share: RowFunction = {
  shape: 'row',
  name: 'left_share',
  about:
    'Share of its life that a part has left after the reach, against a new one; 0 is counted if it has failed.',
  domain:
    'What does not apply may be missing: a part with no way of wearing or failing keeps 1. reach and age 0 or more, the rest above 0.',
  source:
    'The smaller of the allowance left and the mean residual life left, each times the chance of lasting',
  // R actuar 3.3.2 levlnorm, check value LEFT-01, over 1.6 and times exp(-5200/30000).
  example: {
    formula:
      'left_share(5200 km, 0.8 mm, 1.6 mm, 0.12 mm / (1000 km), 20000 km, 0.25, 0 mm, 0 km, 30000 km, 1)',
    value: 0.09205984386387404,
    relative: 1e-8,
  },
  parameters: [REACH, ...WORN_FROM_NEW],
  result: 'plain',
  compute: (reach, ...figures) => leftShare(partFromFigures(WORN_FROM_NEW, figures), reach!),
};

/** Functions of sudden failure, and of what is left when both kinds count: model 3 and 6. */
export const FAILURE_FUNCTIONS: readonly RowFunction[] = [
  survival_,
  failure_,
  residual_life,
  life_from_rating,
  left_share,
];
