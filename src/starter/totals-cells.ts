import type { FormulaCell, TallyCell } from '../notebook/document.ts';

type Row = readonly [
  name: string,
  title: string,
  formula: string,
  unit: string,
  decimals: number,
  gist: string,
];

const ROWS: readonly Row[] = [
  [
    'parts_spending',
    'Parts, spent now',
    'or_else(plan.cash, sum(calls.chosen ? calls.cash : 0 EUR))',
    'EUR',
    2,
    'what the plan buys, freight and kits included',
  ],
  ['pack_mass', 'Pack weight', 'sum(calls.chosen ? calls.pack_kg : 0 kg)', 'kg', 2, 'spares in the pack'],
  ['pack_volume', 'Pack volume', 'sum(calls.chosen ? calls.pack_L : 0 L)', 'L', 2, 'spares in the pack'],
  [
    'shared_time',
    'Hours shared',
    'sum(jobs.saved)',
    'h',
    2,
    'counted in several calls, spent once: what comes off for them is the same',
  ],
  [
    'shed_time',
    'Shed hours',
    'sum(calls.chosen ? calls.hours : 0 h) - shared_time',
    'h',
    2,
    'before leaving',
  ],
  ['work_cost', 'Work in the shed', 'shed_time * hour_value', 'EUR', 2, 'hours at what an hour is worth'],
  [
    'shelf_cost',
    'From the shelf',
    'sum(calls.chosen ? calls.from_shelf : 0 EUR)',
    'EUR',
    2,
    'spares already on hand',
  ],
  [
    'road_cost',
    'Expected on the road',
    'sum(calls.chosen ? calls.on_road : 0 EUR)',
    'EUR',
    2,
    'waiting, recovery, parts and work by the track',
  ],
  [
    'left_over_worth',
    'Left over',
    'sum(calls.chosen ? calls.left_over : 0 EUR)',
    'EUR',
    2,
    'life and spares that come home',
  ],
  [
    'calls_cost',
    'The calls in all',
    'parts_spending + shelf_cost + work_cost + road_cost - left_over_worth',
    'EUR',
    2,
    'what the calls are chosen by; below 0 when more life comes home than was bought',
  ],
  ['fuel_volume', 'Fuel', 'sum(route.fuel)', 'L', 0, 'whole trip, one bike'],
  ['fuel_total', 'Fuel cost', 'sum(route.fuel_cost)', 'EUR', 0, 'leg by leg, at each leg’s price'],
  [
    'trip_costs',
    'Fuel and other trip costs',
    'sum(route.leg_cost)',
    'EUR',
    0,
    'fuel, stays, ferry and permits, leg by leg',
  ],
  ['expected_total', 'Expected total', 'trip_costs + calls_cost', 'EUR', 0, 'trip, calls and chance'],
  [
    'recovery_chance',
    'Chance of needing a recovery',
    '1 - product(calls.chosen ? 1 - calls.strand : 1)',
    '',
    4,
    'at least one, with the calls as they stand',
  ],
  [
    'critical_chance',
    'Chance that a critical part gives up',
    '1 - product(calls.chosen and calls.counts_critical ? 1 - calls.gives_up_judged : 1)',
    '',
    4,
    'any of them, those that a spare is carried for included',
  ],
  [
    'kits_saving',
    'Kits would save',
    'sum(kits.all_wanted and kits.saves > 0 EUR ? kits.saves / kits.kit_rows : 0 EUR)',
    'EUR',
    2,
    'where the calls want every part of one',
  ],
  ['whole_distance', 'The whole loop', 'sum(route.distance)', 'km', 0, 'all legs'],
  ['days_left', 'Days to the cut-off', 'days_until(cut_off)', 'days', 0, 'from today'],
];

/** Totals of the trip, each one formula. */
export function totalsCells(): FormulaCell[] {
  return ROWS.map(([name, title, formula, unit, decimals, gist]) => ({
    id: name,
    kind: 'formula',
    name,
    title,
    gist,
    formula,
    ...(unit === '' ? {} : { unit }),
    decimals,
  }));
}

/** The figures that stay in sight, with their limits. */
export function tallyCell(): TallyCell {
  return {
    id: 'tally',
    kind: 'tally',
    title: 'In sight',
    figures: [
      { label: 'Cash', figure: 'parts_spending', limit: 'cash_limit', decimals: 0 },
      { label: 'Pack, kg', figure: 'pack_mass', limit: 'pack_mass_limit', decimals: 1 },
      { label: 'Pack, litres', figure: 'pack_volume', limit: 'pack_volume_limit', decimals: 1 },
      { label: 'Shed hours', figure: 'shed_time', limit: 'shed_hours_limit', decimals: 1 },
      { label: 'Expected total', figure: 'expected_total', decimals: 0 },
      { label: 'Chance of needing recovery', figure: 'recovery_chance', decimals: 1, percent: true },
    ],
  };
}
