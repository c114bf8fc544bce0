import type { WorkedColumn } from '../notebook/document.ts';
import { worked } from './columns.ts';

/**
 * Like bikes with one such part each, which share the spares that are carried: what their failures on a leg cost
 * together, need of recovery and use of spares. Missing for all other parts.
 */
export function sharedColumns(): WorkedColumn[] {
  const shared = (of: 'cost' | 'strand', spares: number, figures: string): string =>
    `shared_${of}(reach, part, ${spares}, copies, p_worn, p_sudden, ${figures}, full_allowance, rate, middle_life, spread, life, shape)`;
  return [1, 2, 3].flatMap((spares) => [
    worked(`shared_cost_${spares}`, shared('cost', spares, 'worn_cost, sudden_cost, fixed_cost'), {
      title: `All bikes, carry ${spares}`,
      unit: 'EUR',
      decimals: 2,
    }),
    worked(`shared_needs_${spares}`, shared('strand', spares, 'worn_needs, spare_needs'), {
      title: `All, recovery, carry ${spares}`,
      decimals: 4,
    }),
    worked(`shared_used_${spares}`, shared('cost', spares, '0, 0, 1'), {
      title: `All bikes, used of ${spares}`,
      decimals: 4,
    }),
  ]);
}
