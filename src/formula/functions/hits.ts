import { poissonMore } from '../../trade/poisson-more.ts';
import { poissonOver } from '../../trade/poisson-over.ts';
import type { Parameter, RowFunction } from './spec.ts';

const PARAMETERS: readonly Parameter[] = [
  { name: 'k', about: 'Spares carried: a whole number, 0 or more.', unit: 'plain' },
  { name: 'mean', about: 'Expected hits, 0 or more, over all bikes that share the spares.', unit: 'plain' },
];
const DOMAIN = 'k a whole number, 0 or more; mean 0 or more.';

const poisson_over: RowFunction = {
  shape: 'row',
  name: 'poisson_over',
  about: 'Expected random hits beyond what k spares cover.',
  domain: DOMAIN,
  source: 'Poisson loss function',
  // R 4.2.2 tail sum with stats::dpois: check value POI-09.
  example: { formula: 'poisson_over(2, 2.7)', value: 1.015865909876824, relative: 1e-11 },
  parameters: PARAMETERS,
  result: 'plain',
  compute: (spares, mean) => poissonOver(spares!, mean!),
};

const poisson_more: RowFunction = {
  shape: 'row',
  name: 'poisson_more',
  about: 'Chance of more random hits than k.',
  domain: DOMAIN,
  source: 'Poisson distribution',
  // mpmath 1.3.0, 50 digits: sum over j > 2 of exp(-M) M^j / j!.
  example: { formula: 'poisson_more(2, 2.7)', value: 0.506375508926538, relative: 1e-12 },
  parameters: PARAMETERS,
  result: 'plain',
  compute: (spares, mean) => poissonMore(spares!, mean!),
};

/** Functions of random hits, such as punctures: model 6. */
export const HIT_FUNCTIONS: readonly RowFunction[] = [poisson_over, poisson_more];
