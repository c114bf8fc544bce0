import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ChanceMemo, rememberedChances } from '../../src/trade/chance-memo.ts';
import { chanceTable, rowStart } from '../../src/trade/chance-table.ts';
import { limitChance } from '../../src/trade/limit-chance.ts';
import { type PartFigures, partFigures } from '../../src/trade/part-figures.ts';
import { suddenSurvival } from '../../src/trade/sudden-survival.ts';
import { wearChance } from '../../src/trade/wear-chance.ts';
import { anyPart, anyReach } from './arbitraries.ts';

const lasts = (part: PartFigures, reach: number) =>
  (1 - wearChance(part, reach)) * suddenSurvival(part, reach);

describe('chances of giving up on later legs', () => {
  test('over every row they and the chance of lasting sum to 1, past-limit parts included', () => {
    fc.assert(
      fc.property(anyReach, anyPart, (reach, part) => {
        const { legs, worn, sudden } = chanceTable(reach, part);
        for (let from = 0; from < legs - 1; from += 1) {
          let sum = lasts(part, reach[legs - 1]! - reach[from]!);
          for (let k = rowStart(legs, from); k < rowStart(legs, from + 1); k += 1) {
            expect(worn[k]!).toBeGreaterThanOrEqual(-1e-14);
            expect(sudden[k]!).toBeGreaterThanOrEqual(-1e-14);
            sum += worn[k]! + sudden[k]!;
          }
          expect(sum).toBeCloseTo(1, 13);
        }
      }),
      { numRuns: 500 },
    );
  });

  test('each is the fall of the chance of lasting over its leg', () => {
    fc.assert(
      fc.property(anyReach, anyPart, (reach, part) => {
        const { legs, worn, sudden } = chanceTable(reach, part);
        for (let from = 0; from < legs; from += 1) {
          for (let leg = from + 1, k = rowStart(legs, from); leg < legs; leg += 1, k += 1) {
            const before = leg === from + 1 ? 1 : lasts(part, reach[leg - 1]! - reach[from]!);
            expect(worn[k]! + sudden[k]!).toBeCloseTo(before - lasts(part, reach[leg]! - reach[from]!), 13);
          }
        }
      }),
    );
  });

  test('a part past its limit gives up, worn, on the first leg after it is fitted', () => {
    const past = partFigures({
      allowance: -0.2,
      fullAllowance: 2,
      rate: 0.1,
      spread: 0.3,
      age: 0,
      life: 9000,
      shape: 2,
    });
    const { worn, sudden } = chanceTable(Float64Array.of(500, 900, 1500), past);
    expect([...worn]).toEqual([1, 0, 1]);
    expect([...sudden]).toEqual([0, 0, 0]);
  });

  test('reach adds up: splitting a leg in two shares out its chance and leaves the others', () => {
    fc.assert(
      fc.property(anyPart, fc.integer({ min: 0, max: 900 }), (part, split) => {
        const whole = chanceTable(Float64Array.of(0, 800, 1700, 2600), part);
        const parted = chanceTable(Float64Array.of(0, 800, 800 + split, 1700, 2600), part);
        const both = (k: number) => parted.worn[k]! + parted.sudden[k]!;
        expect(both(0)).toBeCloseTo(whole.worn[0]! + whole.sudden[0]!, 13);
        expect(both(1) + both(2)).toBeCloseTo(whole.worn[1]! + whole.sudden[1]!, 13);
        expect(both(3)).toBeCloseTo(whole.worn[2]! + whole.sudden[2]!, 13);
      }),
    );
  });

  test('units do not matter', () => {
    fc.assert(
      fc.property(anyReach, anyPart, (reach, part) => {
        const mile = 1.609344;
        const inMiles = partFigures({
          ...part,
          allowance: part.allowance / 25.4,
          fullAllowance: part.fullAllowance / 25.4,
          readingError: part.readingError / 25.4,
          rate: (part.rate * mile) / 25.4,
          middleLife: part.middleLife / mile,
          age: part.age / mile,
          life: part.life / mile,
        });
        const metric = chanceTable(reach, part);
        const imperial = chanceTable(
          reach.map((x) => x / mile),
          inMiles,
        );
        // Without spread the chance is a step, which rounding may put a leg further.
        if (part.spread === 0) return;
        for (let k = 0; k < metric.worn.length; k += 1) {
          expect(imperial.worn[k]!).toBeCloseTo(metric.worn[k]!, 10);
          expect(imperial.sudden[k]!).toBeCloseTo(metric.sudden[k]!, 10);
        }
      }),
    );
  });

  test('with a reading error, against the plain mean over 201 allowances by another route', () => {
    const part = partFigures({
      allowance: 0.8,
      fullAllowance: 2,
      rate: 0.12,
      spread: 0.25,
      readingError: 0.1,
      age: 0,
    });
    const { worn } = chanceTable(Float64Array.of(0, 5200), part);
    // mpmath 1.3.0, 50 digits: mean over the 201 points.
    expect(Math.abs(worn[0]! - 0.1949599894699598)).toBeLessThan(1e-12);
    expect(worn[0]!).toBe(limitChance(0.8, 0.12, 0.25, 5200, 0.1));
  });

  test('a part with nothing known about it never gives up; a trip of one leg has no later legs', () => {
    const { worn, sudden } = chanceTable(Float64Array.of(10, 5000), partFigures({}));
    expect([worn[0], sudden[0]]).toEqual([0, 0]);
    expect(chanceTable(Float64Array.of(10), partFigures({})).worn.length).toBe(0);
    expect(chanceTable(new Float64Array(0), partFigures({})).worn.length).toBe(0);
  });
});

describe('the memo of chance tables', () => {
  const part = partFigures({ allowance: 1, fullAllowance: 2, rate: 0.1, spread: 0.3, age: 0 });
  const reach = Float64Array.of(0, 800, 1700);

  test('gives what a fresh computation gives, asked once or again, in any order', () => {
    const memo = new ChanceMemo(300);
    fc.assert(
      fc.property(fc.array(fc.tuple(anyReach, anyPart), { minLength: 1, maxLength: 4 }), (asked) => {
        for (const [r, p] of [...asked, ...asked.toReversed()])
          expect(memo.tableOf(r, p)).toEqual(chanceTable(r, p));
      }),
    );
  });

  test('keeps the same table for the same content, whatever the full allowance', () => {
    const memo = new ChanceMemo(1000);
    const first = memo.tableOf(reach, part);
    expect(memo.tableOf(reach.slice(), partFigures({ ...part, fullAllowance: 3 }))).toBe(first);
    expect(memo.tableOf(reach, partFigures({ ...part, rate: 0.1 + 1e-15 }))).not.toBe(first);
    expect(memo.size).toBe(2);
    expect(rememberedChances(reach, part)).toBe(rememberedChances(reach.slice(), { ...part }));
  });

  test('is not misled by an array that is changed after it was asked about', () => {
    const memo = new ChanceMemo(1000);
    const lent = reach.slice();
    const first = memo.tableOf(lent, part);
    lent[2] = 9000;
    expect(memo.tableOf(lent, part)).toEqual(chanceTable(lent, part));
    expect(memo.tableOf(reach, part)).toBe(first);
    expect(first).toEqual(chanceTable(reach, part));
  });

  test('is bounded, and drops the longest unused', () => {
    // Three legs make 6 chances a table: there is room for three tables.
    const memo = new ChanceMemo(18);
    const at = (rate: number) => memo.tableOf(reach, partFigures({ ...part, rate }));
    const [first, second] = [at(0.1), at(0.2)];
    at(0.3);
    expect(at(0.1)).toBe(first);
    at(0.4);
    expect(memo.size).toBe(3);
    expect(at(0.1)).toBe(first);
    expect(at(0.2)).not.toBe(second);
    for (let k = 0; k < 200; k += 1) memo.tableOf(Float64Array.of(k), part);
    expect(memo.size).toBeLessThanOrEqual(18);
  });

  test('keeps nothing of a computation that was refused', () => {
    const memo = new ChanceMemo(1000);
    const wrong = partFigures({ ...part, rate: 0 });
    expect(() => memo.tableOf(reach, wrong)).toThrow('rate is 0');
    expect(memo.size).toBe(0);
    expect(() => memo.tableOf(reach, wrong)).toThrow('rate is 0');
  });
});
