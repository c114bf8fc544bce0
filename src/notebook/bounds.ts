import { ENTRY_LENGTH, MOST_COLUMNS, MOST_ROWS } from '../tables/entry.ts';

/**
 * How large a notebook may be. A file past a bound is refused with a sentence, so that one from a stranger
 * cannot hold the page up; each bound is far above what a rider's notebook needs.
 */
export const BOUNDS = {
  cells: 2_000,
  columns: MOST_COLUMNS,
  rows: MOST_ROWS,
  options: 500,
  tallyFigures: 200,
  pins: 5_000,
  titleLength: 200,
  gistLength: 500,
  sourceLength: 4_000,
  noteLength: 50_000,
  formulaLength: 10_000,
  unitLength: 120,
  entryLength: ENTRY_LENGTH,
  /** Objects and arrays inside one another; a sound notebook needs 6. */
  depth: 12,
  fileCharacters: 200_000_000,
} as const;

/** `12345` as `12,345`, for the sentences that name a bound. */
export function countWords(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ',');
}
