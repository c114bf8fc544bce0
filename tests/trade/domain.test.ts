import { describe, expect, test } from 'vitest';
import { allowanceLeft } from '../../src/trade/allowance-left.ts';
import { chanceTable } from '../../src/trade/chance-table.ts';
import { DomainError } from '../../src/trade/domain-error.ts';
import { failure } from '../../src/trade/failure.ts';
import { laterStrand } from '../../src/trade/later-strand.ts';
import { leftShare } from '../../src/trade/left-share.ts';
import { lifeChance } from '../../src/trade/life-chance.ts';
import { lifeFromRating } from '../../src/trade/life-from-rating.ts';
import { lifeLeft } from '../../src/trade/life-left.ts';
import { limitChance } from '../../src/trade/limit-chance.ts';
import { partFigures } from '../../src/trade/part-figures.ts';
import { poissonMore } from '../../src/trade/poisson-more.ts';
import { poissonOver } from '../../src/trade/poisson-over.ts';
import { residualLife } from '../../src/trade/residual-life.ts';
import { spreadFrom } from '../../src/trade/spread-from.ts';
import { spreadFromCv } from '../../src/trade/spread-from-cv.ts';
import { survival } from '../../src/trade/survival.ts';

const legs = (...reach: number[]) => Float64Array.from(reach);
const reading = { allowance: 1, fullAllowance: 2, rate: 0.1, spread: 0.3, age: 0 };

const REFUSED: readonly [string, () => unknown, string, string][] = [
  ['limitChance', () => limitChance(1, 0, 0.3, 100), 'rate', 'rate is 0, it must be above 0'],
  ['limitChance', () => limitChance(1, -0.1, 0.3, 100), 'rate', 'rate is -0.1, it must be above 0'],
  ['limitChance', () => limitChance(1, 0.1, -0.3, 100), 'spread', 'spread is -0.3, it must be 0 or more'],
  ['limitChance', () => limitChance(1, 0.1, 0.3, -1), 'reach', 'reach is -1, it must be 0 or more'],
  [
    'limitChance',
    () => limitChance(1, 0.1, 0.3, 1, -0.2),
    'reading_error',
    'reading error is -0.2, it must be 0 or more',
  ],
  [
    'limitChance',
    () => limitChance(1, 0.1, 0.3, Infinity),
    'reach',
    'reach is Infinity, it must be a finite number',
  ],
  [
    'limitChance',
    () => limitChance(-Infinity, 1, 1, 1),
    'allowance',
    'allowance is -Infinity, it must be a finite number',
  ],
  ['limitChance past its limit', () => limitChance(-1, 0, 0.3, 100), 'rate', 'rate is 0, it must be above 0'],
  ['allowanceLeft', () => allowanceLeft(1, 0, 0.3, 100), 'rate', 'rate is 0, it must be above 0'],
  ['allowanceLeft', () => allowanceLeft(1, 0.1, 0.3, -5), 'reach', 'reach is -5, it must be 0 or more'],
  ['lifeChance', () => lifeChance(-1, 5, 100, 0.3), 'age', 'age is -1, it must be 0 or more'],
  ['lifeChance', () => lifeChance(1, 5, 0, 0.3), 'life', 'life is 0, it must be above 0'],
  ['lifeLeft', () => lifeLeft(1, 5, 100, -0.1), 'spread', 'spread is -0.1, it must be 0 or more'],
  ['lifeLeft', () => lifeLeft(1, -5, 100, 0.1), 'reach', 'reach is -5, it must be 0 or more'],
  ['survival', () => survival(0, 1, 100, 0), 'shape', 'shape is 0, it must be above 0'],
  ['survival', () => survival(0, 1, -100, 1), 'life', 'life is -100, it must be above 0'],
  ['failure', () => failure(-3, 1, 100, 1), 'age', 'age is -3, it must be 0 or more'],
  ['failure', () => failure(3, -1, 100, 1), 'reach', 'reach is -1, it must be 0 or more'],
  ['residualLife', () => residualLife(0, 100, -2), 'shape', 'shape is -2, it must be above 0'],
  ['lifeFromRating', () => lifeFromRating(0, 1.5), 'l10', 'l10 is 0, it must be above 0'],
  ['lifeFromRating', () => lifeFromRating(1, 0), 'shape', 'shape is 0, it must be above 0'],
  ['spreadFrom', () => spreadFrom(0, 1), 'low', 'low is 0, it must be above 0'],
  ['spreadFrom', () => spreadFrom(0.2, 0.1), 'high', 'high is 0.1, it must not be below low, which is 0.2'],
  ['spreadFromCv', () => spreadFromCv(-0.1), 'v', 'v is -0.1, it must be 0 or more'],
  ['poissonOver', () => poissonOver(1.5, 1), 'k', 'k is 1.5, it must be a whole number'],
  ['poissonOver', () => poissonOver(-1, 1), 'k', 'k is -1, it must be 0 or more'],
  ['poissonMore', () => poissonMore(1, -1), 'mean', 'mean is -1, it must be 0 or more'],
  [
    'leftShare',
    () => leftShare(partFigures({ ...reading, fullAllowance: 0 }), 1),
    'full_allowance',
    'full allowance is 0, it must be above 0',
  ],
  ['leftShare', () => leftShare(partFigures(reading), -1), 'reach', 'reach is -1, it must be 0 or more'],
  [
    'chanceTable',
    () => chanceTable(legs(1, 2), partFigures({ middleLife: 0, spread: 1, age: 0 })),
    'middle_life',
    'middle life is 0, it must be above 0',
  ],
  [
    'chanceTable',
    () => chanceTable(legs(1, 2), partFigures({ ...reading, spread: -1 })),
    'spread',
    'spread is -1, it must be 0 or more',
  ],
  [
    'chanceTable',
    () => chanceTable(legs(1, 2), partFigures({ life: 9, shape: 0, age: 0 })),
    'shape',
    'shape is 0, it must be above 0',
  ],
  [
    'chanceTable',
    () => chanceTable(legs(900, 800), partFigures(reading)),
    'reach',
    'reach is 800, it must not fall from leg to leg, and leg 1 ends at 900',
  ],
  [
    'chanceTable',
    () => chanceTable(legs(-1, 800), partFigures(reading)),
    'reach',
    'reach is -1, it must be 0 or more',
  ],
  [
    'laterStrand',
    () => laterStrand(legs(1, 2), legs(0, 2), legs(0, 0), partFigures(reading), null),
    'worn_needs',
    'worn needs is 2, it must be from 0 to 1',
  ],
  [
    'laterStrand',
    () => laterStrand(legs(1, 2), legs(0, 0), legs(-1, 0), partFigures(reading), null),
    'sudden_needs',
    'sudden needs is -1, it must be from 0 to 1',
  ],
];

describe('figures outside the domain', () => {
  test.each(REFUSED)('%s: %s', (_name, call, parameter, sentence) => {
    let caught: unknown;
    try {
      call();
    } catch (error) {
      caught = error;
    }
    expect(caught).toBeInstanceOf(DomainError);
    const error = caught as DomainError;
    expect(error.message).toBe(sentence);
    expect(error.parameter).toBe(parameter);
    expect(error.mend).toMatch(/^Give .+\.$/);
  });

  test('a shape of 0 says what a shape is', () => {
    expect(() => survival(0, 1, 100, 0)).toThrow(
      expect.objectContaining({
        value: 0,
        mend: 'Give the Weibull shape, 1 for random failures, above 1 for wear-out.',
      }),
    );
  });

  test('long figures are shown to six digits', () => {
    expect(new DomainError('age', 0.1 + 0.2 - 1, 'no', 'Give it.').message).toBe('age is -0.7, no');
  });
});

describe('missing figures', () => {
  test('make the result missing, never 0 and never a fault', () => {
    for (let place = 0; place < 4; place += 1) {
      const or = (figures: number[]) =>
        figures.map((x, k) => (k === place ? NaN : x)) as [number, number, number, number];
      expect(limitChance(...or([1, 0.1, 0.3, 1000]))).toBeNaN();
      expect(allowanceLeft(...or([1, 0.1, 0.3, 1000]))).toBeNaN();
      expect(lifeChance(...or([500, 1000, 9000, 0.3]))).toBeNaN();
      expect(lifeLeft(...or([500, 1000, 9000, 0.3]))).toBeNaN();
      expect(survival(...or([500, 1000, 9000, 1.5]))).toBeNaN();
      expect(failure(...or([500, 1000, 9000, 1.5]))).toBeNaN();
    }
    expect(residualLife(NaN, 1, 2)).toBeNaN();
    expect(residualLife(1, NaN, 2)).toBeNaN();
    expect(residualLife(1, 1, NaN)).toBeNaN();
    expect(poissonOver(NaN, 1)).toBeNaN();
    expect(poissonMore(1, NaN)).toBeNaN();
    expect(spreadFrom(NaN, 1)).toBeNaN();
    expect(spreadFromCv(NaN)).toBeNaN();
    expect(lifeFromRating(NaN, 1)).toBeNaN();
  });

  test('a mechanism that lacks one of its figures makes the chances missing, not 0', () => {
    expect(chanceTable(legs(0, 1), partFigures({ ...reading, rate: NaN })).worn[0]).toBeNaN();
    expect(chanceTable(legs(0, 1), partFigures({ life: 100, age: 0 })).sudden[0]).toBeNaN();
    expect(chanceTable(legs(0, 1), partFigures({ middleLife: 100, spread: 0.3 })).worn[0]).toBeNaN();
    expect(leftShare(partFigures({ ...reading, fullAllowance: NaN }), 1)).toBeNaN();
  });
});
