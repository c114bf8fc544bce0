import type { Rows } from '../../formula/column.ts';
import type { Fault } from '../../formula/fault.ts';

/** Most rows a pairing may make: past this a page would stand still. */
export const MOST_PAIRED_ROWS = 2_000_000;

/** Rows of a pairing: every left row met with every right row, in the order of the left table. */
export function pairRows(pairing: string, left: number, right: number): Rows | Fault {
  const length = left * right;
  if (length > MOST_PAIRED_ROWS) {
    return {
      kind: 'size',
      message: `${pairing} would have ${length.toLocaleString('en')} rows; at most ${MOST_PAIRED_ROWS.toLocaleString('en')} are made.`,
      mend: 'Pair smaller tables.',
      place: {},
    };
  }
  const leftRow = new Int32Array(length);
  const rightRow = new Int32Array(length);
  for (let i = 0, row = 0; i < left; i++) {
    for (let j = 0; j < right; j++, row++) {
      leftRow[row] = i;
      rightRow[row] = j;
    }
  }
  return { length, left: leftRow, right: rightRow };
}
