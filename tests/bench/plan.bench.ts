import { resolve } from 'node:path';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import { loadHighs } from '../../src/plan/solver/load-highs.ts';
import { solvePlan } from '../../src/plan/solver/solve-plan.ts';
import { largeInstance, type Size } from '../plan/large-instance.ts';
import { median, type RatioResult } from './support.ts';

/** What a plan may take at most; the baseline that each is held against. */
const ALLOWED_S = 10;

/** Limits that nearly everything fits into: the usual case, where few calls compete. */
function roomy(instance: PlanInstance): PlanInstance {
  const [pack] = instance.limits.packs;
  const double = (limit: number | null): number | null => (limit === null ? null : 2 * limit);
  return {
    ...instance,
    limits: {
      cash: double(instance.limits.cash),
      shed_hours: double(instance.limits.shed_hours),
      trip_risk: null,
      packs: [{ ...pack!, mass_kg: double(pack!.mass_kg), volume_L: double(pack!.volume_L) }],
    },
  };
}

const SIZES: readonly { name: string; size: Omit<Size, 'seed'>; seeds: number; make: typeof roomy }[] = [
  { name: '30 parts, 80 offers, roomy limits', size: { parts: 30, offers: 80 }, seeds: 3, make: roomy },
  {
    name: '30 parts, 80 offers, five tight limits',
    size: { parts: 30, offers: 80 },
    seeds: 3,
    make: (one) => one,
  },
  {
    name: '120 parts, 500 offers, five tight limits',
    size: { parts: 120, offers: 500 },
    seeds: 1,
    make: (one) => one,
  },
];

/**
 * Time to a plan, ties settled and all, six calls a part; the name says how many of the seeds were solved to
 * proven optimality, and the widest gap left. The ratio is to the 10 s that a plan is given.
 */
export async function bench(): Promise<readonly RatioResult[]> {
  // A bench is bundled, so the solver's code is not beside its script.
  await loadHighs({ locateFile: (file) => resolve('node_modules/highs/build', file) });
  const results: RatioResult[] = [];
  for (const { name, size, seeds, make } of SIZES) {
    const timesMs: number[] = [];
    let proven = 0;
    let widestShare = 0;
    for (let seed = 1; seed <= seeds; seed += 1) {
      const result = await solvePlan(make(largeInstance({ ...size, seed })));
      if (!isSolved(result) || result.problems.length > 0) throw new Error(`${name}, seed ${seed}: no plan`);
      timesMs.push(1000 * result.seconds);
      if (result.status === 'optimal') proven += 1;
      else
        widestShare = Math.max(
          widestShare,
          (result.gap ?? Number.NaN) / Math.abs(result.totals.expected_cost),
        );
    }
    const candidateMs = median(timesMs);
    const gap = proven === seeds ? '' : `, gap ${(100 * widestShare).toFixed(2)} %`;
    results.push({
      name: `plan: ${name} (${proven} of ${seeds} proven${gap})`,
      candidateMs,
      baselineMs: 1000 * ALLOWED_S,
      ratio: candidateMs / (1000 * ALLOWED_S),
    });
  }
  return results;
}
