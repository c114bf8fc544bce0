import type { OwnTripDesk } from './own-trip-desk.ts';

/** One step of beginning a trip of one's own. */
export interface Step {
  readonly id: 'trip' | 'parts' | 'route' | 'prices' | 'done';
  readonly title: string;
  /** What it is for, under its heading. */
  readonly gist: string;
}

export const STEPS: readonly Step[] = [
  {
    id: 'trip',
    title: 'The trip',
    gist: 'Its name, its dates, what limits you, what things are worth to you. A figure that you leave alone stays as in the worked example.',
  },
  {
    id: 'parts',
    title: 'The parts',
    gist: 'Tick what is on your bike. Put in today’s reading where you know it; the rest can wait. New readings and limits are planning figures: the maker’s manual for your motorcycle decides.',
  },
  { id: 'route', title: 'The route', gist: 'Bring in a track or a table of legs, or type them.' },
  {
    id: 'prices',
    title: 'The prices',
    gist: 'Bring in your suppliers’ lists, one after the other, and say which offer fits which part.',
  },
  { id: 'done', title: 'The notebook', gist: 'What you have said, and what can still be put in afterwards.' },
];

/** What was said on a step, in a word or two; '' for nothing yet. */
export function saidOn(step: Step, desk: OwnTripDesk): string {
  const { title, money, values, parts, legs } = desk.choices;
  switch (step.id) {
    case 'trip': {
      const count = Object.keys(values).length + (title === '' ? 0 : 1);
      return count > 0 ? `${count} said` : money === 'EUR' ? '' : money;
    }
    case 'parts':
      return parts.length > 0 ? `${parts.length} ticked` : '';
    case 'route':
      return desk.broughtLegs || (legs.length > 0 ? `${legs.length} typed` : '');
    case 'prices': {
      const offers = desk.suppliers.reduce((sum, line) => sum + line.offers, 0);
      return offers > 0 ? `${offers} offers` : '';
    }
    case 'done':
      return '';
  }
}
