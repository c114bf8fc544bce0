import type { PictureCell, TableCell } from '../notebook/document.ts';
import { entered, folded, worked } from './columns.ts';

const KM = { unit: 'km', decimals: 0 } as const;

/** What was expected of this part's gauge at the end of this leg. */
const expected = (column: string): string =>
  `pick(readings.${column}, readings.part, part, readings.leg, leg)`;

/** Empty before the trip: readings taken on the road, each beside what was expected of it there. */
function takenTable(): TableCell {
  return {
    id: 'taken',
    kind: 'table',
    name: 'taken',
    title: 'Readings on the road',
    gist: 'what the gauge showed at a leg’s end; write the part and the leg as in their tables',
    source: 'Your own gauge. What was expected stands in Readings along the road.',
    columns: [
      entered('part', 'text', [], { title: 'Part' }),
      entered('leg', 'text', [], { title: 'At the end of' }),
      entered('reading', 'number', [], { title: 'Read', decimals: 2, unit_column: 'gauge' }),
      worked('likely', expected('middle'), { title: 'Likely', decimals: 2 }),
      worked('band_low', 'min(wore_less, wore_more)', { title: 'Eight in ten from', decimals: 2 }),
      worked('band_high', 'max(wore_less, wore_more)', { title: 'to', decimals: 2 }),
      worked('held', 'reading >= band_low and reading <= band_high', { title: 'In the band' }),
      ...folded([
        worked('wore_less', expected('little_worn'), { title: 'One in ten wears less', decimals: 2 }),
        worked('wore_more', expected('much_worn'), { title: 'One in ten wears more', decimals: 2 }),
        worked('at_km', 'pick(route.km_done, route.leg, leg)', { title: 'At', ...KM }),
        worked('at_place', 'pick(route.end_place, route.leg, leg)', { title: 'Place' }),
        worked('gauge', 'pick(wear.gauge_unit, wear.part, part)', { title: 'Unit' }),
      ]),
    ],
  };
}

function takenPicture(): PictureCell {
  return {
    id: 'taken_picture',
    kind: 'picture',
    title: 'Expected and real',
    gist: 'how many readings lay in their band',
    source: 'From Readings on the road. The share’s interval is Wilson’s (1927), 95%.',
    shape: 'taken',
    reads: {
      of: 'taken.part',
      along: 'taken.at_km',
      place: 'taken.at_place',
      middle: 'taken.likely',
      low: 'taken.band_low',
      high: 'taken.band_high',
      unit: 'taken.gauge',
      taken: 'taken.reading',
    },
    figures: [],
  };
}

/** Readings taken on the road, beside what was expected. */
export const takenCells = (): (TableCell | PictureCell)[] => [takenTable(), takenPicture()];
