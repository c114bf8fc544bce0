import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bikeDemand } from '../../src/trade/bike-demand.ts';
import { rememberedChances } from '../../src/trade/chance-memo.ts';
import { rowStart } from '../../src/trade/chance-table.ts';
import { laterCost } from '../../src/trade/later-cost.ts';
import { laterStrand } from '../../src/trade/later-strand.ts';
import { type PartFigures, partFigures } from '../../src/trade/part-figures.ts';
import { sharedCost, sharedCostOf } from '../../src/trade/shared-cost.ts';
import { sharedStrand, sharedStrandOf, sharingBike } from '../../src/trade/shared-strand.ts';
import { between } from './arbitraries.ts';

const column = (...figures: number[]): Float64Array => Float64Array.from(figures);

/** One bike's part: what may happen to the one now fitted on each leg, and what a new one is like. */
interface Bike {
  readonly worn: Float64Array;
  readonly sudden: Float64Array;
  readonly fresh: PartFigures;
}

const REACH = column(900, 2_820, 6_120, 7_800);
const COSTS = {
  worn: column(164, 234, 454, 174),
  sudden: column(464, 834, 1_454, 674),
  fixed: column(20, 21, 22, 23),
};
const WORN_NEEDS = 0.3;
const SPARE_NEEDS = 0.2;

const ANN: Bike = {
  worn: column(0.1, 0.2, 0.25, 0.05),
  sudden: column(0.05, 0.04, 0.08, 0.02),
  fresh: partFigures({ allowance: 0.9, rate: 0.2, spread: 0.5, life: 9_000, shape: 1.4, age: 0 }),
};
const BO: Bike = {
  worn: column(0.02, 0.03, 0.3, 0.2),
  sudden: column(0.01, 0.1, 0.02, 0.15),
  fresh: partFigures({ allowance: 0.7, rate: 0.2, spread: 0.4, life: 7_000, shape: 1, age: 0 }),
};

type Fate = 'none' | 'worn' | 'sudden';

/** Every way the trip can go for one bike, with its chance: what happens on each leg. */
function histories(bike: Bike): { readonly fates: readonly Fate[]; readonly chance: number }[] {
  const { worn, sudden } = rememberedChances(REACH, bike.fresh);
  /** Chances of a part fitted at the end of leg `from` (-1: the old one), to fail on `leg`. */
  const at = (from: number, leg: number, of: 'worn' | 'sudden'): number =>
    from < 0
      ? bike[of][leg]!
      : (of === 'worn' ? worn : sudden)[rowStart(REACH.length, from) + leg - from - 1]!;
  const walk = (from: number, leg: number): { fates: Fate[]; chance: number }[] => {
    const found: { fates: Fate[]; chance: number }[] = [];
    let lasts = 1;
    const quiet: Fate[] = [];
    for (let now = leg; now < REACH.length; now += 1) {
      for (const fate of ['worn', 'sudden'] as const) {
        const chance = at(from, now, fate);
        lasts -= chance;
        for (const rest of walk(now, now + 1))
          found.push({ fates: [...quiet, fate, ...rest.fates], chance: chance * rest.chance });
      }
      quiet.push('none');
    }
    return [...found, { fates: quiet, chance: lasts }];
  };
  return walk(-1, 0);
}

/** What all bikes come to by going through every history of every bike: cost on the road, chance of a recovery. */
function enumerated(
  bikes: readonly Bike[],
  spares: number,
): { cost: number; strand: number; chance: number } {
  const sum = { cost: 0, strand: 0, chance: 0 };
  const go = (left: readonly Bike[], fates: readonly (readonly Fate[])[], chance: number): void => {
    const [bike, ...others] = left;
    if (bike) {
      for (const one of histories(bike)) go(others, [...fates, one.fates], chance * one.chance);
      return;
    }
    let held = spares;
    let unharmed = 1;
    for (let leg = 0; leg < REACH.length; leg += 1) {
      // A part that failed suddenly has the spare before one that was seen coming.
      for (const fate of ['sudden', 'worn'] as const) {
        for (const own of fates) {
          if (own[leg] !== fate) continue;
          sum.cost += chance * (held > 0 ? COSTS.fixed[leg]! : COSTS[fate][leg]!);
          unharmed *= held > 0 ? 1 - SPARE_NEEDS : fate === 'sudden' ? 0 : 1 - WORN_NEEDS;
          held -= 1;
        }
      }
    }
    sum.strand += chance * (1 - unharmed);
    sum.chance += chance;
  };
  go(bikes, [], 1);
  return sum;
}

const total = (figures: Float64Array): number => figures.reduce((sum, figure) => sum + figure, 0);

describe('bikes that share spares', () => {
  test.each([0, 1, 2, 3])('%i spares for unlike bikes: as by going through every history', (spares) => {
    const cases = spares === 2 ? [[BO, ANN, BO]] : [[ANN], [ANN, BO]];
    for (const bikes of cases) {
      const plain = enumerated(bikes, spares);
      expect(plain.chance).toBeCloseTo(1, 12);
      const demands = bikes.map((one) => bikeDemand(REACH, one.worn, one.sudden, one.fresh, spares));
      expect(total(sharedCostOf(demands, spares, COSTS))).toBeCloseTo(plain.cost, 9);
      const sharing = bikes.map((one) =>
        sharingBike(REACH, one.worn, one.sudden, one.fresh, spares, WORN_NEEDS),
      );
      expect(total(sharedStrandOf(sharing, spares, WORN_NEEDS, SPARE_NEEDS))).toBeCloseTo(plain.strand, 11);
    }
  });

  test('two like bikes: as by going through every history', () => {
    for (const spares of [1, 2]) {
      const plain = enumerated([ANN, ANN], spares);
      const { worn, sudden, fresh } = ANN;
      const { worn: wornCost, sudden: suddenCost, fixed } = COSTS;
      const cost = sharedCost(REACH, spares, 2, worn, sudden, wornCost, suddenCost, fixed, fresh);
      expect(total(cost)).toBeCloseTo(plain.cost, 9);
      const strand = sharedStrand(REACH, spares, 2, worn, sudden, WORN_NEEDS, SPARE_NEEDS, fresh);
      expect(total(strand)).toBeCloseTo(plain.strand, 11);
    }
  });

  test('over one leg the failures without a spare are those of a binomial table', () => {
    // Cumulative binomial, n = 10, p = 0.10: 0.3487, 0.7361, 0.9298 for 0, 1, 2 at most (any printed table;
    // here 0.9^10, + 10 x 0.1 x 0.9^9, + 45 x 0.01 x 0.9^8). E[(X - k)+] = 1 - k + sum over j < k of P(X <= j).
    const table = [0.3486784401, 0.7360989291, 0.9298091736];
    for (const spares of [0, 1, 2, 3]) {
      const over = 1 - spares + table.slice(0, spares).reduce((sum, at) => sum + at, 0);
      const one = column(1);
      const fresh = partFigures({ life: 5_000, shape: 1, age: 0 });
      const cost = sharedCost(column(1_000), spares, 10, column(0.1), column(0), one, one, column(0), fresh);
      expect(cost[0]).toBeCloseTo(over, 12);
      const strand = sharedStrand(column(1_000), spares, 10, column(0), column(0.1), 0, 0, fresh);
      expect(strand[0]).toBeCloseTo(1 - (table[spares] ?? 0.9872048016), 12); // + 120 x 0.001 x 0.9^7
    }
  });

  test('unlike bikes over one leg: Poisson-binomial, by hand', () => {
    // Chances 0.2 and 0.5: both 0.1, none 0.4; one spare leaves one short in 0.1, two in none.
    const bikes = [0.2, 0.5].map((p) =>
      bikeDemand(column(1_000), column(p), column(0), partFigures({ life: 1, shape: 1, age: 0 }), 1),
    );
    const costs = { worn: column(100), sudden: column(0), fixed: column(10) };
    expect(sharedCostOf(bikes, 1, costs)[0]).toBeCloseTo(0.1 * 100 + (0.7 - 0.1) * 10, 12);
  });
});

describe('one bike alone', () => {
  const scaled = fc.tuple(between(0, 0.4), between(0, 0.4)).map(([worn, sudden]) => ({ worn, sudden }));

  test('is what the recursion leg by leg says, for any number of spares', () => {
    fc.assert(
      fc.property(scaled, fc.integer({ min: 1, max: 3 }), ({ worn, sudden }, spares) => {
        const p = { worn: ANN.worn.map((x) => x * worn), sudden: ANN.sudden.map((x) => x * sudden) };
        const fixed = COSTS.fixed;
        let after = laterCost(REACH, COSTS.worn, COSTS.sudden, ANN.fresh, null);
        let strandAfter = laterStrand(
          REACH,
          REACH.map(() => WORN_NEEDS),
          REACH.map(() => 1),
          ANN.fresh,
          null,
        );
        const spareNeeds = REACH.map(() => SPARE_NEEDS);
        for (let more = 1; more < spares; more += 1) {
          after = laterCost(REACH, fixed, fixed, ANN.fresh, after);
          strandAfter = laterStrand(REACH, spareNeeds, spareNeeds, ANN.fresh, strandAfter);
        }
        const fails = p.worn.map((x, leg) => x + p.sudden[leg]!);
        const cost = total(fails.map((x, leg) => x * (fixed[leg]! + after[leg]!)));
        const strand = total(
          fails.map((x, leg) => x * (SPARE_NEEDS + (1 - SPARE_NEEDS) * strandAfter[leg]!)),
        );
        const shared = sharedCost(
          REACH,
          spares,
          1,
          p.worn,
          p.sudden,
          COSTS.worn,
          COSTS.sudden,
          fixed,
          ANN.fresh,
        );
        expect(total(shared)).toBeCloseTo(cost, 9);
        const ours = sharedStrand(REACH, spares, 1, p.worn, p.sudden, WORN_NEEDS, SPARE_NEEDS, ANN.fresh);
        expect(total(ours)).toBeCloseTo(strand, 12);
      }),
    );
  });

  test('more spares never cost more on the road, and a shared one never more than none each', () => {
    fc.assert(
      fc.property(scaled, fc.integer({ min: 2, max: 4 }), ({ worn, sudden }, bikes) => {
        const p = { worn: ANN.worn.map((x) => x * worn), sudden: ANN.sudden.map((x) => x * sudden) };
        const costOf = (spares: number, of: number): number =>
          total(
            sharedCost(REACH, spares, of, p.worn, p.sudden, COSTS.worn, COSTS.sudden, COSTS.fixed, ANN.fresh),
          );
        const costs = [0, 1, 2, 3].map((spares) => costOf(spares, bikes));
        for (const [k, cost] of costs.slice(1).entries()) expect(cost).toBeLessThanOrEqual(costs[k]! + 1e-9);
        expect(costs[0]).toBeCloseTo(bikes * costOf(0, 1), 8);
        // One spare shared by all does less than one for each.
        expect(costs[1]).toBeGreaterThanOrEqual(bikes * costOf(1, 1) - 1e-9);
      }),
    );
  });

  test('what no count of bikes or spares can be is refused; what is missing stays missing', () => {
    const { worn, sudden, fresh } = ANN;
    const strand = (spares: number, bikes: number) =>
      sharedStrand(REACH, spares, bikes, worn, sudden, 0, 0, fresh);
    expect(() => strand(1, 1.5)).toThrow('bikes is 1.5, it must be a whole number');
    expect(() => strand(1, 13)).toThrow('bikes is 13, it must be from 1 to 12');
    expect(() => strand(0.5, 2)).toThrow('k is 0.5, it must be a whole number');
    expect(strand(1, NaN)).toEqual(REACH.map(() => NaN));
    const unknown = sharedStrand(
      REACH,
      1,
      2,
      worn.map(() => NaN),
      sudden,
      0,
      0,
      fresh,
    );
    expect(total(unknown)).toBeNaN();
  });
});
