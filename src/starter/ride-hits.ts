import type { WorkedColumn } from '../notebook/document.ts';
import { worked } from './columns.ts';

const MONEY = { unit: 'EUR', decimals: 2 } as const;
const CHANCE = { decimals: 4 } as const;

/** Random hits, mended or changed each time: section 6. */
export function hitColumns(): WorkedColumn[] {
  const over = (spares: number): WorkedColumn[] => [
    worked(`over_${spares}`, `poisson_over(${spares}, hits)`, { title: `Hits past ${spares}`, ...CHANCE }),
    worked(`over_${spares}_here`, `over_${spares} - or_else(before(over_${spares}, part), 0)`, {
      title: `Here, past ${spares}`,
      ...CHANCE,
    }),
    worked(
      `hit_cost_${spares}`,
      `over_${spares}_here * sudden_cost + (hits_here - over_${spares}_here) * fixed_cost`,
      {
        title: `Hits, ${spares} packed`,
        ...MONEY,
      },
    ),
  ];
  return [
    worked('hits', 'by_chance ? sharing * reach / life : missing', { title: 'Hits so far', ...CHANCE }),
    worked('hits_here', 'hits - or_else(before(hits, part), 0)', { title: 'Hits here', ...CHANCE }),
    worked('hit_cost_0', 'hits_here * sudden_cost', { title: 'Hits, none packed', ...MONEY }),
    ...over(1),
    ...over(2),
    ...over(3),
  ];
}
