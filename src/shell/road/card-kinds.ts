import type { CellKind } from '../../notebook/document.ts';

/** The kinds of card a user can add, in plain words, in the order in which a notebook usually has them. */
export const CARD_KINDS: readonly {
  readonly kind: CellKind;
  readonly word: string;
  readonly gist: string;
}[] = [
  { kind: 'note', word: 'Note', gist: 'words, headings, a caution' },
  { kind: 'value', word: 'Value', gist: 'one figure, choice, date or yes/no' },
  { kind: 'table', word: 'Table', gist: 'columns entered by hand or worked out' },
  { kind: 'formula', word: 'Formula', gist: 'one figure worked out from others' },
  { kind: 'pairing', word: 'Pairing', gist: 'every row of one table with every row of another' },
  { kind: 'calls', word: 'Calls', gist: 'one call for each part, the cheapest allowed' },
  { kind: 'plan', word: 'Plan', gist: 'the best calls and purchases within all limits' },
  { kind: 'picture', word: 'Picture', gist: 'columns of a table, drawn' },
  { kind: 'prep', word: 'Prep sheet', gist: 'shopping, jobs, pack and checks, for paper' },
  { kind: 'tally', word: 'Tally', gist: 'figures kept in sight, with their limits' },
];
