import type { PictureRole, PictureShape } from '../../src/notebook/document.ts';
import type { ReadSetting } from '../shared/reads-settings.ts';

type Settings = readonly ReadSetting<PictureRole>[];

/** What each shape reads, with the words of its settings. */
export const PICTURE_SETTINGS: Readonly<Record<PictureShape, Settings>> = {
  reading: [
    { role: 'of', label: 'One line for each' },
    { role: 'along', label: 'Across' },
    { role: 'middle', label: 'Likely figure' },
    { role: 'low', label: 'Band from' },
    { role: 'high', label: 'Band to' },
    { role: 'limit', label: 'Limit' },
    { role: 'unit', label: 'Unit' },
    { role: 'place', label: 'Place' },
  ],
  map: [
    { role: 'of', label: 'Down' },
    { role: 'along', label: 'Across' },
    { role: 'chance', label: 'Chance' },
    { role: 'cost', label: 'At stake' },
    { role: 'chance_called', label: 'Chance, as called' },
    { role: 'cost_called', label: 'At stake, as called' },
    { role: 'place', label: 'Place at its end' },
    { role: 'length', label: 'Width' },
    { role: 'far', label: 'Help is' },
  ],
  bars: [
    { role: 'of', label: 'One row for each' },
    { role: 'where', label: 'Only where' },
  ],
  taken: [
    { role: 'taken', label: 'Reading taken' },
    { role: 'of', label: 'Part' },
    { role: 'along', label: 'Distance' },
    { role: 'place', label: 'Place' },
    { role: 'middle', label: 'Likely figure' },
    { role: 'low', label: 'Band from' },
    { role: 'high', label: 'Band to' },
    { role: 'unit', label: 'Unit' },
  ],
  spending: [{ role: 'plan', label: 'Plan', plan: true }],
};

/** The shapes in words, as the picture's settings offer them. */
export const SHAPE_WORDS: Readonly<Record<PictureShape, string>> = {
  reading: 'a reading along the road',
  map: 'a map of rows and columns',
  bars: 'bars',
  taken: 'readings taken against those expected',
  spending: 'spending against risk',
};
