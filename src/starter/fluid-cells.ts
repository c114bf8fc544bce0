import type { FormulaCell, TableCell, ValueCell } from '../notebook/document.ts';
import { folded, from, worked } from './columns.ts';
import { readTripFile, type TripFiles } from './trip-file.ts';

type Value = readonly [
  name: string,
  title: string,
  gist: string,
  unit: string,
  value: number,
  high: number,
  step: number,
  decimals: number,
];

const VALUES: readonly Value[] = [
  ['tank', 'Tank', 'full to the neck', 'L', 23, 60, 0.5, 1],
  ['tank_reserve', 'Kept in the tank', 'never planned to be used', 'L', 3, 20, 0.5, 1],
  ['fuel_cans', 'Room for more', 'cans and bags that can be filled', 'L', 14, 60, 0.5, 1],
  ['oil_use', 'Oil burnt', 'measured between changes, the likely figure', 'L/(1000 km)', 0.12, 3, 0.01, 2],
  ['oil_spread', 'Oil use differs', 'log-sd from trip to trip', '', 0.35, 2, 0.05, 2],
  ['oil_in_sump', 'Oil between the marks', 'may go before any is added', 'L', 0.5, 3, 0.1, 1],
  ['riders', 'Riders', 'who drink from the same water', '', 2, 12, 1, 0],
  ['water_a_day', 'Water', 'for one rider, drinking and cooking', 'L/day', 6, 20, 0.5, 1],
  ['water_reserve', 'Water in reserve', 'days beyond the next tap', 'days', 1, 7, 0.5, 1],
];

/** What the tank, the sump and the riders take, on one form. */
function fluidValues(): ValueCell[] {
  return VALUES.map(([name, title, gist, unit, value, high, step, decimals]) => ({
    id: name,
    kind: 'value',
    name,
    title,
    gist,
    form: 'Oil, fuel, water',
    content: { type: 'number', unit, value, low: 0, high, step, decimals, control: 'field' },
  }));
}

const L_1 = { unit: 'L', decimals: 1 } as const;

/** Leg by leg, what has to be on board when it begins: section 11. */
function stopsTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'stops.csv');
  return {
    id: 'stops',
    kind: 'table',
    name: 'stops',
    title: 'Fuel and water',
    gist: 'what to leave each place with',
    source: 'Invented for the demo. Litres are those of the legs, from one place that sells it to the next.',
    columns: [
      from(file, 'leg', 'text', { title: 'Leg' }),
      from(file, 'fuel', 'yes_no', { title: 'Fuel at its end' }),
      from(file, 'water', 'yes_no', { title: 'Water at its end' }),
      from(file, 'days', 'number', { title: 'Takes', decimals: 0 }),
      worked('fuel_leaving', 'fills_fuel ? fuel_need : missing', { title: 'Fuel, leaving', ...L_1 }),
      worked('fuel_over', 'max(0 L, fuel_need - (tank - tank_reserve))', {
        title: 'More than the tank',
        ...L_1,
      }),
      worked('water_leaving', 'fills_water ? water_need : missing', { title: 'Water, leaving', ...L_1 }),
      worked('says', 'fuel_over > fuel_cans ? "out of range" : ""', { title: 'Range' }),
      ...folded([
        worked('leg_no', 'running(leg == "" ? 0 : 1)', { title: 'Leg no.', decimals: 0 }),
        worked('start_place', 'pick(route.start_place, route.leg, leg)', { title: 'From' }),
        worked('start_km', 'pick(route.km_done, route.leg, leg) - pick(route.distance, route.leg, leg)', {
          title: 'Done at its start',
          unit: 'km',
          decimals: 0,
        }),
        worked('fills_fuel', 'or_else(before(fuel), true)', { title: 'Fuel at its start' }),
        worked('fuel_stretch', 'running(fills_fuel ? 1 : 0)', { title: 'Stretch', decimals: 0 }),
        worked('fuel_here', 'pick(route.fuel, route.leg, leg)', { title: 'Burnt here', ...L_1 }),
        worked('fuel_need', 'total(fuel_here, fuel_stretch, fuel_stretch)', {
          title: 'To the next pump',
          ...L_1,
        }),
        worked('fills_water', 'or_else(before(water), true)', { title: 'Water at its start' }),
        worked('water_stretch', 'running(fills_water ? 1 : 0)', { title: 'Dry stretch', decimals: 0 }),
        worked(
          'water_need',
          'water_a_day * riders * (total(days, water_stretch, water_stretch) + water_reserve)',
          {
            title: 'To the next tap',
            ...L_1,
          },
        ),
        worked('gap_leg', 'fuel_over > fuel_cans ? leg_no : missing', { title: 'Out of range', decimals: 0 }),
      ]),
    ],
  };
}

const FORMULAS: readonly (readonly [string, string, string, string | undefined, string])[] = [
  [
    'oil_to_carry',
    'Oil to carry',
    'max(0 L, oil_use * exp(1.28155 * oil_spread) * most_of(ride.reach, ride.wear_class, "engine") - oil_in_sump)',
    'L',
    'enough for nine trips in ten, less what the sump can spare',
  ],
  [
    'fuel_to_carry',
    'Fuel beyond the tank',
    'most(stops.fuel_over)',
    'L',
    'on the longest stretch without a pump',
  ],
  [
    'water_to_carry',
    'Water to carry',
    'most(stops.water_leaving)',
    'L',
    'at the driest departure, reserve included',
  ],
  [
    'fuel_gap',
    'First leg out of range',
    'or_else(pick(stops.leg, stops.leg_no, least(stops.gap_leg)), "none")',
    undefined,
    'where tank and cans together do not reach the next pump',
  ],
];

function fluidFormulas(): FormulaCell[] {
  return FORMULAS.map(([name, title, formula, unit, gist]) => ({
    id: name,
    kind: 'formula',
    name,
    title,
    gist,
    formula,
    ...(unit === undefined ? {} : { unit, decimals: 1 }),
  }));
}

/** Oil, fuel and water of the invented trip, each in the notebook's own formulas. */
export function fluidCells(files: TripFiles): (ValueCell | TableCell | FormulaCell)[] {
  return [...fluidValues(), stopsTable(files), ...fluidFormulas()];
}
