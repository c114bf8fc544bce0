import type { TableCell } from '../notebook/document.ts';
import { from, worked } from './columns.ts';
import { readTripFile, type TripFiles } from './trip-file.ts';

function handlingTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'handling.csv');
  return {
    id: 'handling',
    kind: 'table',
    name: 'handling',
    title: 'In the shed and in the bag',
    gist: 'what comes off for each part, in which turn, and where its spare travels',
    source:
      'Hints: common practice, no source. Procedure and torques: the maker’s manual for the motorcycle.',
    columns: [
      from(file, 'part', 'text', { title: 'Part' }),
      from(file, 'opens', 'text', { title: 'Comes off' }),
      from(file, 'turn', 'number', { title: 'Turn', decimals: 0 }),
      from(file, 'hint', 'text', { title: 'Mind' }),
      from(file, 'bag', 'text', { title: 'Rather in' }),
      from(file, 'carrier', 'text', { title: 'Carried by' }),
      worked('packed_in', 'or_else(pick(decision.bag, decision.part, called), bag)', { title: 'Goes into' }),
      worked('called', 'count_of(decision.part, decision.part, part) > 0 ? part : missing', {
        title: 'Key to the calls',
        folded: true,
      }),
    ],
  };
}

function jobsTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'jobs.csv');
  return {
    id: 'jobs',
    kind: 'table',
    name: 'jobs',
    title: 'What comes off once',
    gist: 'time that parts behind the same thing share',
    source: 'Common practice, no source. The times are part of each part’s own hours in the shed.',
    columns: [
      from(file, 'job', 'text', { title: 'Comes off' }),
      from(file, 'setup', 'number', { title: 'Off and on again', decimals: 2 }),
      worked('parts_behind', 'count_of(calls.part, calls.opens, job, calls.opens_it, true)', {
        title: 'Parts changed behind it',
        decimals: 0,
      }),
      worked('saved', 'max(0, parts_behind - 1) * setup', {
        title: 'Hours saved',
        unit: 'h',
        decimals: 2,
      }),
    ],
  };
}

function bagsTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'bags.csv');
  return {
    id: 'bags',
    kind: 'table',
    name: 'bags',
    title: 'Bags',
    gist: 'what each may weigh and hold, and what is in it already',
    source: 'Invented for the demo.',
    columns: [
      from(file, 'bag', 'text', { title: 'Bag' }),
      from(file, 'mass_limit', 'number', { title: 'May weigh', decimals: 1 }),
      from(file, 'volume_limit', 'number', { title: 'Holds', decimals: 1 }),
      from(file, 'packed_mass', 'number', { title: 'Packed already', decimals: 1 }),
      from(file, 'packed_volume', 'number', { title: 'Packed already', decimals: 1 }),
      from(file, 'holds', 'text', { title: 'What that is' }),
      worked('spares_mass', 'total(calls.chosen_kg, calls.bag_now, bag)', {
        title: 'Spares',
        unit: 'kg',
        decimals: 2,
      }),
      worked('spares_volume', 'total(calls.chosen_L, calls.bag_now, bag)', {
        title: 'Spares',
        unit: 'L',
        decimals: 2,
      }),
    ],
  };
}

/** How parts are fitted and stowed: what comes off for them, what that takes once, and the bags. */
export function shedAndBagCells(files: TripFiles): TableCell[] {
  return [handlingTable(files), jobsTable(files), bagsTable(files)];
}
