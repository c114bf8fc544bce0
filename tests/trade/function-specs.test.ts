import { describe, expect, test } from 'vitest';
import { FAILURE_FUNCTIONS } from '../../src/formula/functions/failure.ts';
import { HIT_FUNCTIONS } from '../../src/formula/functions/hits.ts';
import { LATER_FUNCTIONS } from '../../src/formula/functions/later.ts';
import { SHARED_FUNCTIONS } from '../../src/formula/functions/shared.ts';
import type { GroupFunction, RowFunction } from '../../src/formula/functions/spec.ts';
import { WEAR_FUNCTIONS } from '../../src/formula/functions/wear.ts';
import { DomainError } from '../../src/trade/domain-error.ts';
import { laterCost } from '../../src/trade/later-cost.ts';
import { laterLeft } from '../../src/trade/later-left.ts';
import { laterStrand } from '../../src/trade/later-strand.ts';
import { leftShare } from '../../src/trade/left-share.ts';
import { partFigures } from '../../src/trade/part-figures.ts';
import { sharedCost } from '../../src/trade/shared-cost.ts';
import { sharedStrand } from '../../src/trade/shared-strand.ts';
import { readCheckValues, within } from './read-check-values.ts';

const ROWS: readonly RowFunction[] = [...WEAR_FUNCTIONS, ...FAILURE_FUNCTIONS, ...HIT_FUNCTIONS];
const ALL: readonly (RowFunction | GroupFunction)[] = [...ROWS, ...LATER_FUNCTIONS, ...SHARED_FUNCTIONS];

/** A formula's signature, the group key as `part`. */
function signature(spec: RowFunction | GroupFunction): string {
  const names = spec.parameters.map(({ name, optional }) => (optional ? `${name}?` : name));
  if (spec.shape === 'group') names.splice(1, 0, 'part');
  return `${spec.name}(${names.join(', ')})`;
}

/** The figures of an example, without their units; text (the group key) is left out. */
function figuresOf(spec: RowFunction | GroupFunction): number[] {
  const inside = spec.example.formula.slice(spec.name.length + 1, -1).replaceAll(/\(1000 km\)/g, '1000 km');
  return inside
    .split(',')
    .filter((argument) => !argument.includes('"'))
    .map((argument) => Number.parseFloat(argument));
}

const named = (name: string) => LATER_FUNCTIONS.find((spec) => spec.name === name)!;
const all = (figure: number) => new Float64Array(5).fill(figure);

const REACH = Float64Array.of(0, 900, 2820, 6120, 7800);
const WORN_COST = Float64Array.of(0, 164, 234, 454, 174);
const SUDDEN_COST = Float64Array.of(0, 464, 834, 1454, 674);
const PART = { allowance: 0.55, rate: 0.11, spread: 0.35, age: 9000, life: 30000, shape: 1.8 };
/** allowance, rate, middle_life, spread, reading_error, age, life, shape. */
const FIGURES = [0.55, 0.11, NaN, 0.35, 0.05, 9000, 30000, 1.8].map(all);

describe('functions of the formula language for wear, failure and hits', () => {
  test('names and parameters, in order', () => {
    expect(ALL.map(signature)).toEqual([
      'normal_cdf(z)',
      'limit_chance(allowance, rate, spread, reach, reading_error?)',
      'allowance_left(allowance, rate, spread, reach)',
      'life_chance(age, reach, life, spread)',
      'life_left(age, reach, life, spread)',
      'spread_from(low, high)',
      'spread_from_cv(v)',
      'survival(age, reach, life, shape)',
      'failure(age, reach, life, shape)',
      'residual_life(age, life, shape)',
      'life_from_rating(l10, shape)',
      'left_share(reach, allowance, full_allowance, rate, middle_life, spread, reading_error, age, life, shape)',
      'poisson_over(k, mean)',
      'poisson_more(k, mean)',
      'later_cost(reach, part, worn_cost, sudden_cost, allowance, rate, middle_life, spread, reading_error, age, life, shape, after?)',
      'later_left(reach, part, allowance, full_allowance, rate, middle_life, spread, reading_error, age, life, shape, after?)',
      'later_strand(reach, part, worn_needs, sudden_needs, allowance, rate, middle_life, spread, reading_error, age, life, shape, after?)',
      'shared_cost(reach, part, k, bikes, p_worn, p_sudden, worn_cost, sudden_cost, fixed_cost, allowance, rate, middle_life, spread, life, shape)',
      'shared_strand(reach, part, k, bikes, p_worn, p_sudden, worn_needs, spare_needs, allowance, rate, middle_life, spread, life, shape)',
    ]);
  });

  test.each(ALL.map((spec) => [spec.name, spec] as const))(
    '%s says what it is, and its units hang together',
    (_, spec) => {
      for (const text of [spec.about, spec.domain, ...spec.parameters.map((p) => p.about)])
        expect(text).toMatch(/^[\w].+\.$/);
      expect(spec.source).toMatch(/^[A-Z].{9,}/);
      const letters = new Set(
        spec.parameters.flatMap(({ unit }) => (typeof unit === 'object' && !unit.per ? [unit.variable] : [])),
      );
      for (const unit of [spec.result, ...spec.parameters.map((p) => p.unit)]) {
        if (typeof unit !== 'object') continue;
        expect([...letters]).toContain(unit.variable);
        if (unit.per) expect([...letters]).toContain(unit.per);
      }
      // Only the last parameters may be left out.
      const firstOptional = spec.parameters.findIndex((p) => p.optional);
      if (firstOptional >= 0)
        expect(spec.parameters.slice(firstOptional).every((p) => p.optional)).toBe(true);
    },
  );

  test.each(ROWS.map((spec) => [spec.name, spec] as const))(
    '%s: its example by the bare figures',
    (_, spec) => {
      const { value, relative = 1e-9 } = spec.example;
      const result = spec.compute(...figuresOf(spec));
      expect(Math.abs(result / (value as number) - 1), String(result)).toBeLessThanOrEqual(relative);
    },
  );

  test('an optional reading error may be left out or missing', () => {
    const limit = WEAR_FUNCTIONS.find(({ name }) => name === 'limit_chance')!;
    const row = readCheckValues().find(({ id }) => id === 'LIM-05')!;
    const figures = ['allowance', 'rate', 'spread', 'reach'].map((name) => Number(row.inputs.get(name)));
    expect(within(limit.compute(...figures), row.expected, row.tolerance)).toBe(true);
    expect(limit.compute(...figures, NaN)).toBe(limit.compute(...figures));
    expect(limit.compute(...figures, 0.2)).toBeGreaterThan(limit.compute(...figures));
  });

  test('a part without some of the mechanisms leaves their figures out', () => {
    const left = FAILURE_FUNCTIONS.find(({ name }) => name === 'left_share')!;
    expect(left.compute(3000, NaN, NaN, NaN, 20000, 0.25, NaN, 10000, NaN, NaN)).toBe(
      leftShare(partFigures({ middleLife: 20000, spread: 0.25, age: 10000 }), 3000),
    );
    expect(left.compute(3000, NaN, NaN, NaN, NaN, NaN, NaN, NaN, NaN, NaN)).toBe(1);
  });
});

describe('group functions over the legs of one part', () => {
  const part = partFigures({ ...PART, readingError: 0.05 });

  test('take their columns in the order of the parameters', () => {
    const after = all(50);
    const share = all(0.4);
    expect(named('later_cost').computeGroup([REACH, WORN_COST, SUDDEN_COST, ...FIGURES, after])).toEqual(
      laterCost(REACH, WORN_COST, SUDDEN_COST, part, after),
    );
    expect(named('later_strand').computeGroup([REACH, all(0.2), all(0.7), ...FIGURES, share])).toEqual(
      laterStrand(REACH, all(0.2), all(0.7), part, share),
    );
    const [allowance, ...others] = FIGURES;
    expect(named('later_left').computeGroup([REACH, allowance!, all(1.6), ...others, share])).toEqual(
      laterLeft(REACH, partFigures({ ...part, fullAllowance: 1.6 }), share),
    );
  });

  test('over one leg of 5,200 km: the chance of reaching the limit, its cost, and what is left', () => {
    const reach = Float64Array.of(0, 5200);
    const two = (figure: number) => new Float64Array(2).fill(figure);
    const [allowance, ...others] = [0.8, 0.12, NaN, 0.25, 0, NaN, NaN, NaN].map(two);
    const cost = named('later_cost').computeGroup([reach, two(100), two(100), allowance!, ...others]);
    const strand = named('later_strand').computeGroup([reach, two(1), two(1), allowance!, ...others]);
    const left = named('later_left').computeGroup([reach, allowance!, two(0.8), ...others]);
    // R 4.2.2 stats::plnorm, check value LIM-05; R actuar 3.3.2 levlnorm, check value LEFT-01.
    expect(cost[0]!).toBeCloseTo(100 * 0.1601490606851423, 9);
    expect(strand[0]!).toBeCloseTo(0.1601490606851423, 11);
    expect(left[0]!).toBeCloseTo(0.17517330618583382 / 0.8 + 0.1601490606851423, 9);
    expect([cost[1], strand[1], left[1]]).toEqual([0, 0, 1]);
  });

  test('spares that bikes share: columns in the order of the parameters', () => {
    const shared = (name: string) => SHARED_FUNCTIONS.find((spec) => spec.name === name)!.computeGroup;
    const [worn, sudden] = [all(0.1), all(0.02)];
    const fixed = all(20);
    const fresh = [0.55, 0.11, NaN, 0.35, 30000, 1.8].map(all);
    const newPart = partFigures({ ...PART, age: 0 });
    expect(
      shared('shared_cost')([REACH, all(2), all(3), worn, sudden, WORN_COST, SUDDEN_COST, fixed, ...fresh]),
    ).toEqual(sharedCost(REACH, 2, 3, worn, sudden, WORN_COST, SUDDEN_COST, fixed, newPart));
    expect(
      shared('shared_strand')([REACH, all(2), all(3), worn, sudden, all(0.3), all(0.4), ...fresh]),
    ).toEqual(sharedStrand(REACH, 2, 3, worn, sudden, 0.3, 0.4, newPart));
    const changing = Float64Array.of(1, 1, 2, 1, 1);
    expect(() =>
      shared('shared_strand')([REACH, changing, all(3), worn, sudden, all(0), all(0), ...fresh]),
    ).toThrow('k is 2, and 1 on the first leg of the same part');
  });

  test('without `after`, absent or null, the result itself follows', () => {
    const expected = laterCost(REACH, WORN_COST, SUDDEN_COST, part, null);
    expect(named('later_cost').computeGroup([REACH, WORN_COST, SUDDEN_COST, ...FIGURES, null])).toEqual(
      expected,
    );
    expect(named('later_cost').computeGroup([REACH, WORN_COST, SUDDEN_COST, ...FIGURES])).toEqual(expected);
    expect(expected[0]!).toBeGreaterThan(0);
  });

  test('refuse a figure of the part that changes from leg to leg', () => {
    const [allowance, rate, ...others] = FIGURES;
    const changing = Float64Array.of(0.11, 0.11, 0.12, 0.11, 0.11);
    const call = () =>
      named('later_cost').computeGroup([REACH, WORN_COST, SUDDEN_COST, allowance!, changing, ...others]);
    expect(call).toThrow(DomainError);
    expect(call).toThrow(
      'rate is 0.12, and 0.11 on the first leg of the same part: it must be one figure for the whole part',
    );
    expect(() =>
      named('later_cost').computeGroup([REACH, WORN_COST, SUDDEN_COST, allowance!, rate!, ...others]),
    ).not.toThrow();
  });

  test('a part of no legs gives no figures', () => {
    const none = new Float64Array(0);
    const result = named('later_left').computeGroup([none, ...FIGURES.map(() => none), none]);
    expect(result.length).toBe(0);
  });
});
