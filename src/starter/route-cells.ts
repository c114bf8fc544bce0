import type { TableCell } from '../notebook/document.ts';
import { folded, from, worked } from './columns.ts';
import { readTripFile, type TripFiles, textsOf } from './trip-file.ts';

const INVENTED = 'Invented for the demo: no such places.';

/** Legs in riding order; a part that gives up on a leg is changed at its end. */
function routeTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'route.csv');
  const options = textsOf(readTripFile(files, 'surfaces.csv'), 'surface');
  return {
    id: 'route',
    kind: 'table',
    name: 'route',
    title: 'Legs',
    gist: 'Port Ansel and back over the plateau',
    source: INVENTED,
    columns: [
      from(file, 'leg', 'text', { title: 'Leg' }),
      from(file, 'distance', 'number', { title: 'Length', decimals: 0 }),
      from(file, 'surface', 'choice', { title: 'Surface', options, draw: 'surface' }),
      from(file, 'second_surface', 'choice', { title: 'Partly', options }),
      from(file, 'second_share', 'number', { title: 'Share', decimals: 2 }),
      from(file, 'help_distance', 'number', { title: 'To help', decimals: 0 }),
      from(file, 'wait_days', 'number', { title: 'Wait', decimals: 0 }),
      from(file, 'shop', 'yes_no', { title: 'Shop' }),
      from(file, 'fuel_price', 'number', { title: 'Fuel', decimals: 2 }),
      from(file, 'stay_cost', 'number', { title: 'Stay', decimals: 0 }),
      from(file, 'other_cost', 'number', { title: 'Other', decimals: 0 }),
      worked('recovery', 'recovery_call_out + help_distance * recovery_per_km', {
        title: 'Recovery',
        unit: 'EUR',
        decimals: 0,
      }),
      worked('leg_cost', 'fuel_cost + stay_cost + other_cost', {
        title: 'Leg costs',
        unit: 'EUR',
        decimals: 2,
      }),
      ...folded([
        from(file, 'start_place', 'text', { title: 'From' }),
        from(file, 'end_place', 'text', { title: 'Ends at' }),
        worked('leg_number', 'running(leg == "" ? 0 : 1)', { title: 'Leg no.', decimals: 0 }),
        worked('km_done', 'running(distance)', { title: 'Done at its end', unit: 'km', decimals: 0 }),
        worked('second_part', 'or_else(second_share, 0)', { title: 'Second share', decimals: 2 }),
        worked('main_fuel', 'pick(surfaces.fuel_factor, surfaces.surface, surface)', {
          title: 'Fuel factor',
          decimals: 2,
        }),
        worked(
          'second_fuel',
          'or_else(pick(surfaces.fuel_factor, surfaces.surface, second_surface), main_fuel)',
          {
            title: 'Second factor',
            decimals: 2,
          },
        ),
        worked('fuel_factor', '(1 - second_part) * main_fuel + second_part * second_fuel', {
          title: 'Mixed factor',
          decimals: 2,
        }),
        worked('fuel', 'distance * fuel_use * fuel_factor', { title: 'Fuel', unit: 'L', decimals: 1 }),
        worked('fuel_cost', 'fuel * fuel_price', { title: 'Fuel cost', unit: 'EUR', decimals: 2 }),
      ]),
    ],
  };
}

function surfacesTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'surfaces.csv');
  return {
    id: 'surfaces',
    kind: 'table',
    name: 'surfaces',
    title: 'Surfaces',
    gist: 'fuel on each, against sealed road',
    source: 'Common practice, no source: planning figures of the trade, each give or take a third.',
    columns: [
      from(file, 'surface', 'text', { title: 'Surface', draw: 'surface' }),
      from(file, 'fuel_factor', 'number', { title: 'Fuel', decimals: 2 }),
      from(file, 'remark', 'text', { title: 'What it is' }),
    ],
  };
}

function severityTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'severity.csv');
  return {
    id: 'severity',
    kind: 'table',
    name: 'severity',
    title: 'Severity',
    gist: 'sealed km that one km of each surface wears away',
    source:
      'Common practice, no source: set by judgement, each give or take a third. Adding up wear in proportion to distance: Palmgren 1924, Miner 1945.',
    columns: [
      from(file, 'wear_class', 'choice', {
        title: 'Wear class',
        options: textsOf(readTripFile(files, 'wear_classes.csv'), 'wear_class'),
      }),
      from(file, 'surface', 'choice', {
        title: 'Surface',
        options: textsOf(readTripFile(files, 'surfaces.csv'), 'surface'),
        draw: 'surface',
      }),
      from(file, 'factor', 'number', { title: 'Severity', decimals: 1 }),
    ],
  };
}

function wearClassTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'wear_classes.csv');
  return {
    id: 'wear_classes',
    kind: 'table',
    name: 'wear_classes',
    title: 'Wear classes',
    gist: 'what wears alike, and how load tells on it',
    source:
      'Load: power 3 for rolling bearings (ISO 281); the others fitted to what a heavy load costs in common practice, no source.',
    columns: [
      from(file, 'wear_class', 'text', { title: 'Wear class' }),
      from(file, 'what_wears', 'text', { title: 'What wears' }),
      from(file, 'load_power', 'number', { title: 'Load power', decimals: 1 }),
      worked('load_factor', 'load_ratio ^ load_power', { title: 'Load factor', decimals: 2 }),
    ],
  };
}

/** Route, surfaces, severity and wear classes of the invented trip. */
export function routeCells(files: TripFiles): TableCell[] {
  return [routeTable(files), surfacesTable(files), severityTable(files), wearClassTable(files)];
}
