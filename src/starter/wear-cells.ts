import type { EnteredColumn, TableCell } from '../notebook/document.ts';
import { folded, from } from './columns.ts';
import { readTripFile, type TripFile, type TripFiles, textsOf } from './trip-file.ts';
import { shownWear, wearWorking } from './wear-working.ts';

/** Readings are in the unit of the row's own gauge. */
const IN_ITS_UNIT = { unit_column: 'gauge_unit' } as const;

/** What a rider looks at first: the part, its gauge, the reading and the limit. */
function readings(file: TripFile): EnteredColumn[] {
  return [
    from(file, 'part', 'text', { title: 'Part' }),
    from(file, 'measured_by', 'text', { title: 'Judged by' }),
    from(file, 'now', 'number', { title: 'Now', ...IN_ITS_UNIT }),
    from(file, 'limit', 'number', { title: 'Limit', ...IN_ITS_UNIT }),
    from(file, 'gauge_unit', 'text', { title: 'In' }),
  ];
}

/** What else is often changed. */
function furtherReadings(file: TripFile, classes: readonly string[]): EnteredColumn[] {
  return [
    from(file, 'new_reading', 'number', { title: 'New', ...IN_ITS_UNIT }),
    from(file, 'age', 'number', { title: 'Age', decimals: 0 }),
    from(file, 'on_hand', 'number', { title: 'On hand', decimals: 0 }),
    from(file, 'wear_class', 'choice', { title: 'Wear class', options: classes }),
    from(file, 'remark', 'text', { title: 'Remark' }),
  ];
}

/** The rest of what is entered: what else is known of the life, and what the part is to carry and to fit. */
function particulars(file: TripFile): EnteredColumn[] {
  return folded([
    from(file, 'critical', 'yes_no', { title: 'Critical' }),
    from(file, 'rate_low', 'number', { title: 'Rate, low', ...IN_ITS_UNIT }),
    from(file, 'rate_high', 'number', { title: 'Rate, high', ...IN_ITS_UNIT }),
    from(file, 'rate_likely', 'number', { title: 'Rate, likely', ...IN_ITS_UNIT }),
    from(file, 'rate_readings', 'number', { title: 'Readings behind it', decimals: 0 }),
    from(file, 'reading_error', 'number', { title: 'Reading error', ...IN_ITS_UNIT }),
    from(file, 'life_low', 'number', { title: 'Life, low', decimals: 0 }),
    from(file, 'life_high', 'number', { title: 'Life, high', decimals: 0 }),
    from(file, 'life_likely', 'number', { title: 'Life, likely', decimals: 0 }),
    from(file, 'sudden_life', 'number', { title: 'Sudden life', decimals: 0 }),
    from(file, 'rating_life', 'number', { title: 'Rating life', decimals: 0 }),
    from(file, 'shape', 'number', { title: 'Shape', decimals: 1 }),
    from(file, 'bikes', 'number', { title: 'Bikes sharing', decimals: 0 }),
    from(file, 'mass', 'number', { title: 'Weight', decimals: 2 }),
    from(file, 'volume', 'number', { title: 'Bulk', decimals: 2 }),
    from(file, 'shed_hours', 'number', { title: 'In the shed', decimals: 2 }),
    from(file, 'road_hours', 'number', { title: 'By the track', decimals: 2 }),
    from(file, 'roadside', 'yes_no', { title: 'Can be done there' }),
    from(file, 'road_lead', 'number', { title: 'Sent out in', decimals: 0 }),
    from(file, 'wear_shows', 'yes_no', { title: 'Wear shows' }),
    from(file, 'worn_strands', 'yes_no', { title: 'Worn strands' }),
    from(file, 'old_usable', 'yes_no', { title: 'Old one can serve' }),
    from(file, 'changed_with', 'text', { title: 'Changed with' }),
  ]);
}

/** The fitted parts: readings and ages as entered, then everything that follows from them. */
export function wearCells(files: TripFiles): TableCell[] {
  const file = readTripFile(files, 'wear.csv');
  const classes = textsOf(readTripFile(files, 'wear_classes.csv'), 'wear_class');
  return [
    {
      id: 'wear',
      kind: 'table',
      name: 'wear',
      title: 'Wear',
      gist: 'the fitted parts: what is left, and what the trip takes',
      source:
        'Readings, ages and counts invented for the demo. Limits, rates, lives and shapes: common practice, no source, around the reference data; the maker’s manual for the motorcycle overrides every one.',
      caution_column: 'critical',
      columns: [
        ...readings(file),
        ...shownWear(),
        ...furtherReadings(file, classes),
        ...particulars(file),
        ...folded(wearWorking()),
      ],
    },
  ];
}
