import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { laterCost } from '../../src/trade/later-cost.ts';
import { laterLeft } from '../../src/trade/later-left.ts';
import { laterStrand } from '../../src/trade/later-strand.ts';
import { leftShare } from '../../src/trade/left-share.ts';
import { type PartFigures, partFigures } from '../../src/trade/part-figures.ts';
import { suddenSurvival } from '../../src/trade/sudden-survival.ts';
import { wearChance } from '../../src/trade/wear-chance.ts';
import { anyPart, anyReach, between } from './arbitraries.ts';
import { seeded } from './seeded.ts';

/** One way a trip can go on: the failures in order, which part is fitted last and where, and its chance. */
interface Course {
  readonly failures: readonly { readonly leg: number; readonly worn: boolean }[];
  readonly last: PartFigures;
  readonly lastFrom: number;
  /** Chance of these failures, whether or not the last part lasts. */
  readonly chance: number;
  readonly lasts: number;
}

/** Chances of section 4 of the model, written out for one leg. */
function onLeg(part: PartFigures, reach: Float64Array, from: number, leg: number) {
  const first = leg === from + 1;
  const [w0, w1] = [
    wearChance(part, reach[leg - 1]! - reach[from]!),
    wearChance(part, reach[leg]! - reach[from]!),
  ];
  const [s0, s1] = [reach[leg - 1]!, reach[leg]!].map((x) => suddenSurvival(part, x - reach[from]!)) as [
    number,
    number,
  ];
  return {
    worn: ((w1 - w0) * (s0 + s1)) / 2 + (first ? w0 : 0),
    sudden: ((s0 - s1) * (2 - w0 - w1)) / 2,
  };
}

/** Every way the rest of the trip can go once `part` is fitted at the end of leg `from`; then `next` each time. */
function courses(
  part: PartFigures,
  next: PartFigures,
  reach: Float64Array,
  from: number,
  before: Course,
): Course[] {
  const ahead = reach[reach.length - 1]! - reach[from]!;
  // After the last leg nothing more happens, even to a part that is due when it is fitted.
  const atEnd = from === reach.length - 1;
  const lasts = atEnd ? 1 : (1 - wearChance(part, ahead)) * suddenSurvival(part, ahead);
  const all = [{ ...before, last: part, lastFrom: from, lasts }];
  for (let leg = from + 1; leg < reach.length; leg += 1) {
    const { worn, sudden } = onLeg(part, reach, from, leg);
    for (const cause of [true, false]) {
      const chance = before.chance * (cause ? worn : sudden);
      const failures = [...before.failures, { leg, worn: cause }];
      all.push(...courses(next, next, reach, leg, { ...before, failures, chance }));
    }
  }
  return all;
}

const start = (part: PartFigures): Course => ({ failures: [], last: part, lastFrom: 0, chance: 1, lasts: 1 });

/** Mean over all courses of what `gives` says of each that has come about. */
function overCourses(
  part: PartFigures,
  next: PartFigures,
  reach: Float64Array,
  from: number,
  gives: (c: Course) => number,
) {
  return courses(part, next, reach, from, start(part)).reduce((sum, c) => sum + c.chance * gives(c), 0);
}

const shortTrip = anyReach.map((reach) => reach.slice(0, 5));
const costs = fc
  .array(between(0, 2000), { minLength: 5, maxLength: 5 })
  .map((list) => Float64Array.from(list));
const needs = fc.array(between(0, 1), { minLength: 5, maxLength: 5 }).map((list) => Float64Array.from(list));

describe('the leg-by-leg recursions against every course of the trip written out', () => {
  test('expected cost, a like part each time (U) and another one after the first (O)', () => {
    fc.assert(
      fc.property(shortTrip, anyPart, anyPart, costs, costs, (reach, part, next, worn, sudden) => {
        const paid = (c: Course) =>
          c.lasts * c.failures.reduce((sum, f) => sum + (f.worn ? worn : sudden)[f.leg]!, 0);
        const like = laterCost(reach, worn, sudden, next, null);
        const other = laterCost(reach, worn, sudden, part, like);
        for (let from = 0; from < reach.length; from += 1) {
          expect(like[from]!).toBeCloseTo(overCourses(next, next, reach, from, paid), 8);
          expect(other[from]!).toBeCloseTo(overCourses(part, next, reach, from, paid), 8);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('k spares: the first k failures cost one thing, the later ones another', () => {
    fc.assert(
      fc.property(
        shortTrip,
        anyPart,
        costs,
        costs,
        fc.integer({ min: 0, max: 3 }),
        (reach, part, fixed, stranded, k) => {
          let spares = laterCost(reach, stranded, stranded, part, null);
          for (let spare = 0; spare < k; spare += 1) spares = laterCost(reach, fixed, fixed, part, spares);
          const paid = (c: Course) =>
            c.lasts * c.failures.reduce((sum, f, place) => sum + (place < k ? fixed : stranded)[f.leg]!, 0);
          expect(spares[0]!).toBeCloseTo(overCourses(part, part, reach, 0, paid), 8);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('share of life left in whatever part is fitted at the end (K, J)', () => {
    fc.assert(
      fc.property(shortTrip, anyPart, anyPart, (reach, part, next) => {
        const end = reach[reach.length - 1]!;
        const left = (c: Course) => leftShare(c.last, end - reach[c.lastFrom]!);
        const like = laterLeft(reach, next, null);
        const other = laterLeft(reach, part, like);
        for (let from = 0; from < reach.length; from += 1) {
          expect(like[from]!).toBeCloseTo(overCourses(next, next, reach, from, left), 11);
          expect(other[from]!).toBeCloseTo(overCourses(part, next, reach, from, left), 11);
          expect(like[from]!).toBeLessThanOrEqual(1 + 1e-12);
          expect(like[from]!).toBeGreaterThanOrEqual(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('chance of needing at least one recovery', () => {
    fc.assert(
      fc.property(shortTrip, anyPart, anyPart, needs, needs, (reach, part, next, worn, sudden) => {
        const some = (c: Course) =>
          c.lasts * (1 - c.failures.reduce((none, f) => none * (1 - (f.worn ? worn : sudden)[f.leg]!), 1));
        const like = laterStrand(reach, worn, sudden, next, null);
        const other = laterStrand(reach, worn, sudden, part, like);
        for (let from = 0; from < reach.length; from += 1) {
          expect(like[from]!).toBeCloseTo(overCourses(next, next, reach, from, some), 11);
          expect(other[from]!).toBeCloseTo(overCourses(part, next, reach, from, some), 11);
        }
      }),
      { numRuns: 60 },
    );
  });
});

/** A worn part and a new one of the same kind, over four legs with a leg of nought before them. */
const REACH = Float64Array.of(0, 900, 2820, 6120, 7800);
const WORN = partFigures({
  allowance: 0.55,
  fullAllowance: 1.6,
  rate: 0.22,
  spread: 0.35,
  age: 9000,
  life: 14000,
  shape: 1.8,
});
const NEW = partFigures({ ...WORN, allowance: 1.6, age: 0 });
const COSTS = Float64Array.of(0, 464, 834, 1454, 674);
const NEEDS = Float64Array.of(0, 1, 0, 1, 0.5);

/** Standard normal by Box and Muller 1958, from two uniform numbers. */
const normal = (random: () => number) =>
  Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());

interface Drawn {
  readonly cost: number;
  readonly stranded: number;
  readonly wearLeft: number;
}

/** Rides one trip: rates and lives are drawn, a part that gives up on a leg is changed at its end. */
function ride(first: PartFigures, random: () => number): Drawn {
  let part = first;
  let from = 0;
  let cost = 0;
  let stranded = 0;
  for (;;) {
    const perKm = (part.rate / 1000) * Math.exp(part.spread * normal(random));
    const wearsOutKm = part.allowance / perKm;
    const spent = (part.age / part.life) ** part.shape - Math.log(random());
    const failsKm = part.life * spent ** (1 / part.shape) - part.age;
    const sinceKm = Math.min(wearsOutKm, failsKm);
    const start = from;
    const leg = REACH.findIndex((reach, k) => k > start && reach - REACH[start]! >= sinceKm);
    if (leg < 0) {
      const worn = perKm * (REACH[REACH.length - 1]! - REACH[from]!);
      return { cost, stranded, wearLeft: (part.allowance - worn) / part.fullAllowance };
    }
    cost += COSTS[leg]!;
    if (random() < NEEDS[leg]!) stranded = 1;
    part = NEW;
    from = leg;
  }
}

/** Mean and its standard error. */
function meanOf(list: readonly number[]): { mean: number; error: number } {
  const mean = list.reduce((sum, x) => sum + x, 0) / list.length;
  const square = list.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (list.length - 1);
  return { mean, error: Math.sqrt(square / list.length) };
}

describe('the recursions against simulated trips', () => {
  test.each([
    ['the worn part', WORN, 41],
    ['a new part', NEW, 43],
  ])('%s: cost, chance of a recovery and what is left within four standard errors', (_name, part, seed) => {
    const random = seeded(seed);
    const trips = Array.from({ length: 60_000 }, () => ride(part, random));
    const expected: readonly (readonly [keyof Drawn, number])[] = [
      ['cost', laterCost(REACH, COSTS, COSTS, part, laterCost(REACH, COSTS, COSTS, NEW, null))[0]!],
      ['stranded', laterStrand(REACH, NEEDS, NEEDS, part, laterStrand(REACH, NEEDS, NEEDS, NEW, null))[0]!],
    ];
    for (const [what, value] of expected) {
      const { mean, error } = meanOf(trips.map((trip) => trip[what]));
      expect(error).toBeLessThan(0.02 * value);
      expect(Math.abs(value - mean), `${what}: ${value}, drawn ${mean}`).toBeLessThan(4 * error);
    }
    // The reading's share of life left is the smaller one here only if failures are few: compare without them.
    const [slow, fresh] = [part, NEW].map((p) => partFigures({ ...p, life: 1e9, shape: 1 })) as [
      PartFigures,
      PartFigures,
    ];
    const left = laterLeft(REACH, slow, laterLeft(REACH, fresh, null))[0]!;
    const drawn = meanOf(rideWithoutFailures(part, seed));
    expect(Math.abs(left - drawn.mean), `left: ${left}, drawn ${drawn.mean}`).toBeLessThan(4 * drawn.error);
  });
});

/** Wear left at the end of trips whose parts only wear. */
function rideWithoutFailures(part: PartFigures, seed: number): number[] {
  const random = seeded(seed + 1);
  return Array.from({ length: 60_000 }, () => {
    let [allowance, from] = [part.allowance, 0];
    for (;;) {
      const perKm = (part.rate / 1000) * Math.exp(part.spread * normal(random));
      const start = from;
      const leg = REACH.findIndex((reach, k) => k > start && (reach - REACH[start]!) * perKm >= allowance);
      if (leg < 0)
        return (allowance - perKm * (REACH[REACH.length - 1]! - REACH[from]!)) / part.fullAllowance;
      [allowance, from] = [NEW.allowance, leg];
    }
  });
}

describe('what the recursions must hold', () => {
  test('nothing follows the last leg; a new part then has all its life, the old one what it has now', () => {
    const last = REACH.length - 1;
    expect(laterCost(REACH, COSTS, COSTS, NEW, null)[last]).toBe(0);
    expect(laterStrand(REACH, NEEDS, NEEDS, NEW, null)[last]).toBe(0);
    expect(laterLeft(REACH, NEW, null)[last]).toBe(1);
    expect(laterLeft(REACH, partFigures({ ...WORN, life: NaN }), null)[last]).toBeCloseTo(0.55 / 1.6, 14);
    expect(laterLeft(REACH, partFigures({ ...WORN, allowance: -0.1 }), null)[last]).toBe(0);
    expect(laterLeft(REACH, partFigures({ middleLife: 9000, spread: 0.3, age: 0 }), null)[last]).toBeCloseTo(
      1,
      14,
    );
  });

  test('a spare that is already due costs its failure on the next leg, it is not free', () => {
    const due = partFigures({ ...WORN, allowance: -0.1 });
    const none = laterCost(REACH, COSTS, COSTS, NEW, null);
    const cost = laterCost(REACH, COSTS, COSTS, due, none);
    for (let from = 0; from < 4; from += 1)
      expect(cost[from]!).toBeCloseTo(COSTS[from + 1]! + none[from + 1]!, 11);
  });

  test('costs scale with the currency, and a worse rate never lowers the cost of what wears once', () => {
    fc.assert(
      fc.property(anyReach, anyPart, between(0.01, 100), between(1, 3), (reach, part, exchange, worse) => {
        const cost = reach.map((_, leg) => 100 + 37 * leg);
        const here = laterCost(reach, cost, cost, part, null);
        const there = laterCost(
          reach,
          cost.map((c) => c * exchange),
          cost.map((c) => c * exchange),
          part,
          null,
        );
        for (const [leg, c] of here.entries()) expect(there[leg]!).toBeCloseTo(c * exchange, 7);
        // The later a failure the dearer it is in `cost`; with level costs and no renewal only the chance counts.
        const level = reach.map(() => 100);
        const once = laterCost(
          reach,
          level,
          level,
          part,
          reach.map(() => 0),
        );
        const faster = laterCost(
          reach,
          level,
          level,
          partFigures({ ...part, rate: part.rate * worse }),
          reach.map(() => 0),
        );
        for (const [leg, c] of once.entries()) expect(faster[leg]!).toBeGreaterThanOrEqual(c - 1e-9);
      }),
    );
  });

  test('worn and sudden failures each cost their own', () => {
    const zero = COSTS.map(() => 0);
    const after = COSTS.map((_, leg) => 10 * leg);
    const worn = laterCost(REACH, COSTS, zero, WORN, zero);
    const sudden = laterCost(REACH, zero, COSTS, WORN, zero);
    const renewed = laterCost(REACH, zero, zero, WORN, after);
    const all = laterCost(REACH, COSTS, COSTS, WORN, after);
    for (let leg = 0; leg < 4; leg += 1) {
      expect(worn[leg]!).toBeGreaterThan(0);
      expect(sudden[leg]!).toBeGreaterThan(0);
      expect(worn[leg]! + sudden[leg]! + renewed[leg]!).toBeCloseTo(all[leg]!, 10);
    }
  });

  test('where every failure strands, the chance of a recovery is the chance of a failure', () => {
    fc.assert(
      fc.property(anyReach, anyPart, (reach, part) => {
        const one = reach.map(() => 1);
        const none = reach.map(() => 0);
        const strand = laterStrand(reach, one, one, part, null);
        const failure = laterCost(reach, one, one, part, none);
        for (const [leg, chance] of strand.entries()) expect(chance).toBeCloseTo(failure[leg]!, 13);
        expect([...laterStrand(reach, none, none, part, null)].every((chance) => chance === 0)).toBe(true);
      }),
    );
  });

  test('a missing cost or reach makes what needs it missing, and nothing else', () => {
    const lacking = Float64Array.of(0, 464, NaN, 1454, 674);
    const cost = laterCost(REACH, lacking, COSTS, NEW, null);
    expect([...cost].map(Number.isNaN)).toEqual([true, true, false, false, false]);
    const gap = laterCost(Float64Array.of(0, 900, NaN, 6120, 7800), COSTS, COSTS, NEW, null);
    expect([...gap].map(Number.isNaN)).toEqual([true, true, true, false, false]);
  });
});

describe('share of life left in one part', () => {
  test('is 1 for a part with no mechanism, and for a new part at reach 0', () => {
    expect(leftShare(partFigures({}), 5000)).toBe(1);
    expect(leftShare(partFigures({}), NaN)).toBeNaN();
    expect(leftShare(NEW, 0)).toBe(1);
  });

  test('never rises with reach, and is never above the chance of lasting', () => {
    fc.assert(
      fc.property(anyPart, between(0, 20000), between(0, 5000), (part, reach, more) => {
        const share = leftShare(part, reach);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(leftShare(part, reach + more)).toBeLessThanOrEqual(share + 1e-9);
        // With a reading error the reading alone is credited: the chance then covers allowances below it.
        if (part.readingError > 0) return;
        expect(share).toBeLessThanOrEqual(
          (1 - wearChance(part, reach)) * suddenSurvival(part, reach) + 1e-12,
        );
      }),
    );
  });

  test('each mechanism by hand', () => {
    // Without spread, by hand: (0.8 - 0.1 * 3)/2 = 0.25; random failures multiply it by exp(-3000/30000).
    const wearing = partFigures({ allowance: 0.8, fullAllowance: 2, rate: 0.1, spread: 0, age: 0 });
    expect(leftShare(wearing, 3000)).toBeCloseTo(0.25, 14);
    expect(leftShare(partFigures({ ...wearing, life: 30000, shape: 1 }), 3000)).toBeCloseTo(
      0.25 * Math.exp(-0.1),
      14,
    );
    // Random failures alone: the chance of lasting, as the part does not age.
    expect(leftShare(partFigures({ life: 30000, shape: 1 }), 3000)).toBeCloseTo(Math.exp(-0.1), 14);
    expect(leftShare(partFigures({ life: Infinity, shape: 2, age: 0 }), 3000)).toBe(1);
    const ageing = partFigures({ age: 12000, life: 30000, shape: 2.2 });
    const fresh = leftShare(partFigures({ ...ageing, age: 0 }), 0);
    expect(fresh).toBe(1);
    // R actuar 3.3.2: 17193.493309982874 left of 30000 Gamma(1 + 1/2.2) = 26568.7428135062 (mpmath 1.3.0).
    expect(leftShare(ageing, 0)).toBeCloseTo(17193.493309982874 / 26568.7428135062, 12);
  });
});
