import type { ValueCell, ValueContent } from '../notebook/document.ts';

/** Bounds of a slider or field. */
interface Range {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly decimals?: number;
}

function amount(
  unit: string,
  value: number,
  range: Range,
  control: 'field' | 'slider' = 'field',
): ValueContent {
  return { type: 'number', unit, value, ...range, control };
}

const share = (value: number, high = 1): ValueContent =>
  amount('', value, { low: 0, high, step: 0.01, decimals: 2 }, 'slider');

type Row = readonly [name: string, title: string, gist: string, content: ValueContent];

const LIMITS: readonly Row[] = [
  [
    'today',
    'Today',
    'days are counted from here, so that nothing changes overnight by itself',
    { type: 'date', value: '2027-04-12' },
  ],
  [
    'cut_off',
    'Cut-off',
    'the freight yard shuts and the ferry leaves',
    { type: 'date', value: '2027-05-01' },
  ],
  [
    'arrival_margin',
    'Days in hand',
    'an order must arrive this long before the cut-off',
    amount('days', 3, { low: 0, high: 30, step: 1, decimals: 0 }),
  ],
  [
    'cash_limit',
    'Cash for parts',
    'spent before leaving',
    amount('EUR', 1050, { low: 0, high: 3000, step: 10, decimals: 0 }, 'slider'),
  ],
  [
    'pack_mass_limit',
    'Pack weight',
    'spares alone',
    amount('kg', 15, { low: 0, high: 40, step: 0.5, decimals: 1 }, 'slider'),
  ],
  [
    'pack_volume_limit',
    'Pack volume',
    'spares alone',
    amount('L', 18, { low: 0, high: 60, step: 0.5, decimals: 1 }, 'slider'),
  ],
  [
    'shed_hours_limit',
    'Shed hours',
    'evenings and a weekend',
    amount('h', 14, { low: 0, high: 60, step: 0.5, decimals: 1 }, 'slider'),
  ],
  [
    'trip_risk_limit',
    'Recovery, at most',
    'the plan keeps the chance of needing one at or below this; 1 is no limit',
    share(1),
  ],
];

const WORTH: readonly Row[] = [
  [
    'hour_value',
    'An hour of work',
    'in the shed or by the track',
    amount('EUR/h', 25, { low: 0, high: 200, step: 1, decimals: 2 }),
  ],
  [
    'day_value',
    'A lost day',
    'for one rider',
    amount('EUR/day', 45, { low: 0, high: 400, step: 5, decimals: 2 }),
  ],
  [
    'riders_who_wait',
    'Riders who wait',
    'when one bike stands still',
    amount('', 2, { low: 1, high: 12, step: 1, decimals: 0 }),
  ],
  [
    'recovery_call_out',
    'Recovery, call-out',
    'whatever the distance',
    amount('EUR', 90, { low: 0, high: 1000, step: 5, decimals: 2 }),
  ],
  [
    'recovery_per_km',
    'Recovery, per km',
    'times the distance to help',
    amount('EUR/km', 1.2, { low: 0, high: 12, step: 0.1, decimals: 2 }),
  ],
  ['road_markup', 'Roadside markup', 'a part on the road costs this share more', share(0.3, 3)],
  ['shelf_share', 'Unused spare keeps', 'share of its price when it comes home unused', share(0.9)],
  ['old_share', 'Old part keeps', 'share of price times life left when it is taken off', share(0.4)],
  [
    'fuel_use',
    'Fuel on sealed road',
    'loaded; the surface does the rest',
    amount('L/(100 km)', 4.8, { low: 1, high: 20, step: 0.1, decimals: 1 }),
  ],
];

const RULES: readonly Row[] = [
  [
    'risk_limit',
    'Risk limit',
    'a critical part likelier than this to give up may not be left',
    share(0.05, 0.5),
  ],
  [
    'load_ratio',
    'Load',
    'all-up weight against the weight the rates were learnt at',
    amount('', 1.1, { low: 0.5, high: 2, step: 0.01, decimals: 2 }),
  ],
  ['usual_variation', 'Usual variation', 'of a rate with no low and high, as a share of it', share(0.3)],
  ['riding_spread', 'Riding differs', 'from trip to trip, for all parts at once', share(0.1)],
  ['trip_spread', 'Few readings add', 'spread added where too few readings stand behind a rate', share(0.15)],
  [
    'enough_readings',
    'Enough readings',
    'behind a rate',
    amount('', 5, { low: 1, high: 20, step: 1, decimals: 0 }),
  ],
  [
    'keep_old_at_home',
    'Old parts kept',
    'a part taken off still has a worth',
    { type: 'yes_no', value: true },
  ],
  [
    'credit_labour',
    'Credit the labour',
    'life left in a part also puts off the work of fitting the next',
    { type: 'yes_no', value: true },
  ],
];

const form = (label: string, rows: readonly Row[]): ValueCell[] =>
  rows.map(([name, title, gist, content]) => ({
    id: name,
    kind: 'value',
    name,
    title,
    gist,
    form: label,
    content,
  }));

/** The values of the invented trip, in three forms: what limits it, what things are worth, by which rules. */
export function tripValues(): ValueCell[] {
  return [...form('Limits', LIMITS), ...form('What things are worth', WORTH), ...form('Rules', RULES)];
}
