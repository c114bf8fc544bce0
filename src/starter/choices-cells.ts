import type { TableCell } from '../notebook/document.ts';
import { entered } from './columns.ts';

const YES = 'yes';
const NO = 'no';

/** Name, what it means, pieces needed, spares packed, fits a new one, keeps the old one, on the way, kind, sent out. */
const CALLS: readonly (readonly [string, string, number, number, string, string, string, string, number])[] =
  [
    ['leave', 'Ride on what is fitted', 0, 0, NO, NO, NO, 'leave', 0],
    ['replace', 'Fit a new one before leaving', 1, 0, YES, NO, NO, 'replace', 0],
    ['carry 1', 'Ride on what is fitted, one new spare in the pack', 1, 1, NO, NO, NO, 'carry', 0],
    ['carry 2', 'Two new spares in the pack', 2, 2, NO, NO, NO, 'carry', 0],
    ['carry 3', 'Three new spares in the pack', 3, 3, NO, NO, NO, 'carry', 0],
    ['replace and keep old', 'Fit a new one, the old one becomes the spare', 1, 0, YES, YES, NO, 'keep', 0],
    [
      'change on the way',
      'Ride on what is fitted to the best shop, change it there',
      0,
      0,
      NO,
      NO,
      YES,
      'way',
      0,
    ],
    ['send out', 'A workshop fits a new one before leaving', 0, 0, YES, NO, NO, 'replace', 1],
  ];

/** What may be done about a part. */
export function choicesTable(): TableCell {
  const texts = (place: number): string[] => CALLS.map((call) => String(call[place]));
  return {
    id: 'choices',
    kind: 'table',
    name: 'choices',
    title: 'Possible calls',
    gist: 'what may be done about a part',
    source: 'Common practice, no source.',
    columns: [
      entered('call', 'text', texts(0), { title: 'Call' }),
      entered('meaning', 'text', texts(1), { title: 'What it means' }),
      entered('need', 'number', texts(2), { title: 'New pieces', decimals: 0 }),
      entered('spares', 'number', texts(3), { title: 'New spares packed', decimals: 0 }),
      entered('fits_new', 'yes_no', texts(4), { title: 'New one fitted' }),
      entered('keeps_old', 'yes_no', texts(5), { title: 'Old one packed' }),
      entered('on_the_way', 'yes_no', texts(6), { title: 'Changed on the way' }),
      entered('kind', 'choice', texts(7), {
        title: 'Kind',
        options: ['leave', 'replace', 'carry', 'keep', 'way'],
      }),
      entered('sent_out', 'number', texts(8), { title: 'Sent to a workshop', decimals: 0 }),
    ],
  };
}

const MANUAL = 'The maker’s manual, local rules and a licensed mechanic decide.';

/** Why a call is not allowed: a key for the formulas and the sentence that is shown. */
const REASONS: readonly (readonly [string, string])[] = [
  [
    'due',
    `It is past its limit before the start: change it before you go, and do not pack it as a spare. ${MANUAL}`,
  ],
  [
    'held back',
    `Safety before cost: it is likelier than the risk limit to give up on the way, so it may not be left. ${MANUAL}`,
  ],
  [
    'new one too',
    `Even a new one is likelier than the risk limit to give up before the end: plan a change on the way. ${MANUAL}`,
  ],
  ['no spare', 'The old one cannot serve as a spare once it is off.'],
  ['by chance', 'It goes by chance, not by wear: a new one is hit as often.'],
  [
    'not watched',
    `Safety before cost: its wear cannot be watched and put right on the road, so change it before you go. ${MANUAL}`,
  ],
  [
    'unknown',
    'Not enough is known: the part needs a wear class, and a reading with limit and rates, or an age with a life or a sudden life; every leg a length, a surface, the distance to help and the wait.',
  ],
  ['no stop', 'No leg ends at a shop where changing it keeps the risk limit.'],
  ['no workshop', 'No workshop has it done in time.'],
  ['too big', 'By itself it is more than the pack may weigh or hold.'],
];

/** The sentences by which a call is held back. */
export function reasonsTable(): TableCell {
  return {
    id: 'reasons',
    kind: 'table',
    name: 'reasons',
    title: 'Why a call is held back',
    gist: 'the sentences that the calls show',
    columns: [
      entered(
        'reason',
        'text',
        REASONS.map(([reason]) => reason),
        { title: 'Reason' },
      ),
      entered(
        'sentence',
        'text',
        REASONS.map(([, sentence]) => sentence),
        { title: 'Sentence' },
      ),
    ],
  };
}
