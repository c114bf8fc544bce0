import { allowanceLeft } from '../../trade/allowance-left.ts';
import { lifeChance } from '../../trade/life-chance.ts';
import { lifeLeft } from '../../trade/life-left.ts';
import { limitChance } from '../../trade/limit-chance.ts';
import { normalCdf } from '../../trade/normal-cdf.ts';
import { spreadFrom } from '../../trade/spread-from.ts';
import { spreadFromCv } from '../../trade/spread-from-cv.ts';
import type { Parameter, RowFunction } from './spec.ts';

const ALLOWANCE: Parameter = {
  name: 'allowance',
  about: 'What is left from the reading to the limit; 0 or less is past the limit.',
  unit: { variable: 'A' },
};
const RATE: Parameter = {
  name: 'rate',
  about: 'Median wear over 1,000 km of sealed road, above 0.',
  unit: { variable: 'A', per: 'X', by: 1000 },
};
const SPREAD: Parameter = {
  name: 'spread',
  about: 'Log-spread, 0 or more, as spread_from() gives it.',
  unit: 'plain',
};
const REACH: Parameter = {
  name: 'reach',
  about: 'Distance of wear ahead in sealed-road equivalents, 0 or more.',
  unit: { variable: 'X' },
};
const AGE: Parameter = {
  name: 'age',
  about: 'Distance covered at the start, 0 or more; 0 for a new part.',
  unit: { variable: 'X' },
};
const MIDDLE_LIFE: Parameter = {
  name: 'life',
  about: 'Median life: half of such parts last longer; above 0.',
  unit: { variable: 'X' },
};

const normal_cdf: RowFunction = {
  shape: 'row',
  name: 'normal_cdf',
  about: 'Chance that a standard normal figure is at most z.',
  domain: 'Any z.',
  source: 'NIST Digital Library of Mathematical Functions 7.2.2',
  // Burkardt TEST_VALUES normal_01_cdf: check value NCDF-01.
  example: { formula: 'normal_cdf(0.5)', value: 0.6914624612740131, relative: 1e-14 },
  parameters: [{ name: 'z', about: 'Standard deviations above the mean.', unit: 'plain' }],
  result: 'plain',
  compute: (z) => normalCdf(z!),
};

const limit_chance: RowFunction = {
  shape: 'row',
  name: 'limit_chance',
  about: 'Chance that gradual wear reaches the limit within the reach.',
  domain:
    'rate above 0; spread, reach and reading_error 0 or more. Past the limit it is 1, with spread 0 it is 0 or 1.',
  source:
    'Lognormal wear against a fixed limit; with a reading error the mean over 201 equally likely allowances',
  // R 4.2.2 stats::plnorm(lower.tail=FALSE): check value LIM-05.
  example: {
    formula: 'limit_chance(0.8 mm, 0.12 mm / (1000 km), 0.25, 5200 km)',
    value: 0.1601490606851423,
    relative: 1e-10,
  },
  parameters: [
    ALLOWANCE,
    RATE,
    SPREAD,
    REACH,
    {
      name: 'reading_error',
      about: 'Standard uncertainty of the reading, 0 or more; left out or missing it counts as 0.',
      unit: { variable: 'A' },
      optional: true,
      mayBeMissing: true,
    },
  ],
  result: 'plain',
  compute: (allowance, rate, spread, reach, readingError) =>
    limitChance(allowance!, rate!, spread!, reach!, readingError),
};

const allowance_left: RowFunction = {
  shape: 'row',
  name: 'allowance_left',
  about: 'Expected allowance left after the reach, counting 0 where the limit is passed.',
  domain: 'rate above 0; spread and reach 0 or more. Past the limit it is 0.',
  source: 'Partial expectation of a lognormal amount of wear',
  // R actuar 3.3.2 levlnorm: check value LEFT-01.
  example: {
    formula: 'allowance_left(0.8 mm, 0.12 mm / (1000 km), 0.25, 5200 km)',
    value: 0.17517330618583382,
    relative: 1e-8,
  },
  parameters: [ALLOWANCE, RATE, SPREAD, REACH],
  result: { variable: 'A' },
  compute: (allowance, rate, spread, reach) => allowanceLeft(allowance!, rate!, spread!, reach!),
};

const life_chance: RowFunction = {
  shape: 'row',
  name: 'life_chance',
  about: 'Chance that a part with a life but no reading comes to its end within the reach.',
  domain: 'life above 0; age, reach and spread 0 or more.',
  source: 'Lognormal life, given that the part has lasted to its age',
  // R 4.2.2 stats::plnorm(log.p=TRUE): check value CND-01.
  example: {
    formula: 'life_chance(19000 km, 1000 km, 20000 km, 0.25)',
    value: 0.13983169140132587,
    relative: 1e-10,
  },
  parameters: [AGE, REACH, MIDDLE_LIFE, SPREAD],
  result: 'plain',
  compute: (age, reach, life, spread) => lifeChance(age!, reach!, life!, spread!),
};

const life_left: RowFunction = {
  shape: 'row',
  name: 'life_left',
  about:
    'Expected distance left after the reach for a part with a life but no reading, 0 where it has ended.',
  domain: 'life above 0; age, reach and spread 0 or more.',
  source: 'Partial expectation of a lognormal life, given that the part has lasted to its age',
  // mpmath 1.3.0, 50 digits: quad of the survival from 13000 on, over the survival at 10000.
  example: {
    formula: 'life_left(10000 km, 3000 km, 20000 km, 0.25)',
    value: 7707.726038618426,
    relative: 1e-9,
  },
  parameters: [AGE, REACH, MIDDLE_LIFE, SPREAD],
  result: { variable: 'X' },
  compute: (age, reach, life, spread) => lifeLeft(age!, reach!, life!, spread!),
};

const spread_from: RowFunction = {
  shape: 'row',
  name: 'spread_from',
  about: 'Log-spread from a low figure that 10% stay below and a high one that 10% exceed.',
  domain: 'low above 0, high not below low.',
  source: 'Quantiles of the lognormal: ln(high/low) over twice the 90% point of the standard normal',
  // R 4.2.2 uniroot on stats::qlnorm: check value SPR-01.
  example: { formula: 'spread_from(0.08 mm, 0.16 mm)', value: 0.27043280941465253, relative: 1e-12 },
  parameters: [
    { name: 'low', about: 'Figure that one in ten stays below, above 0.', unit: { variable: 'R' } },
    { name: 'high', about: 'Figure that one in ten exceeds.', unit: { variable: 'R' } },
  ],
  result: 'plain',
  compute: (low, high) => spreadFrom(low!, high!),
};

const spread_from_cv: RowFunction = {
  shape: 'row',
  name: 'spread_from_cv',
  about: 'Log-spread from a coefficient of variation, standard deviation over mean.',
  domain: 'v 0 or more.',
  source: 'Moments of the lognormal: the square root of ln(1 + v^2)',
  // R actuar 3.3.2 mlnorm solved with uniroot: check value SPR-06.
  example: { formula: 'spread_from_cv(0.3)', value: 0.2935603792085235, relative: 1e-11 },
  parameters: [{ name: 'v', about: 'Coefficient of variation: 0.3 for 30%.', unit: 'plain' }],
  result: 'plain',
  compute: (v) => spreadFromCv(v!),
};

/** Functions of gradual wear and of lives without a reading: model 2. */
export const WEAR_FUNCTIONS: readonly RowFunction[] = [
  normal_cdf,
  limit_chance,
  allowance_left,
  life_chance,
  life_left,
  spread_from,
  spread_from_cv,
];
