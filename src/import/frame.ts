/** What a record of a file is. */
export type RecordKind =
  | 'before' // above the header: a title, an address, a note
  | 'head'
  | 'row'
  | 'empty'
  | 'section' // a heading over the rows that follow
  | 'total'
  | 'note' // below the rows
  | 'setting' // a figure with a name that is none of the items
  | 'head-again'; // the header once more, as on a new page

/** The kinds by their number in Frame.kinds. */
export const KINDS: readonly RecordKind[] = [
  'before',
  'head',
  'row',
  'empty',
  'section',
  'total',
  'note',
  'setting',
  'head-again',
];

export const kindCode = (kind: RecordKind): number => KINDS.indexOf(kind);

/** Where in the file the table stands. */
export interface Frame {
  /** Record of the first header line, from 0; the first row when there is no header. */
  readonly headAt: number;
  /** Header lines: 0, 1 or 2. */
  readonly headRows: 0 | 1 | 2;
  readonly reason: string;
}
