import { showCount } from '../../src/formula/show.ts';
import type { GridPlace } from './table-keys.ts';

/** A block of figures, from corner to corner, both included: rows as they are shown, columns as shown. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/**
 * The block between two corners, whichever way round they were marked.
 *
 * @example blockBetween({ row: 3, column: 1 }, { row: 2, column: 4 }) // { top: 2, left: 1, bottom: 3, right: 4 }
 */
export function blockBetween(one: GridPlace, other: GridPlace): Block {
  return {
    top: Math.max(0, Math.min(one.row, other.row)),
    left: Math.min(one.column, other.column),
    bottom: Math.max(0, one.row, other.row),
    right: Math.max(one.column, other.column),
  };
}

export function inBlock(block: Block | null, row: number, column: number): boolean {
  return (
    block !== null && row >= block.top && row <= block.bottom && column >= block.left && column <= block.right
  );
}

export const blockRows = (block: Block): number => block.bottom - block.top + 1;
export const blockColumns = (block: Block): number => block.right - block.left + 1;

/**
 * The size of a block in words.
 *
 * @example blockInWords({ top: 0, left: 1, bottom: 2, right: 2 }) // '3 rows × 2 columns'
 */
export function blockInWords(block: Block): string {
  const rows = blockRows(block);
  const columns = blockColumns(block);
  return `${showCount(rows)} ${rows === 1 ? 'row' : 'rows'} × ${columns} ${columns === 1 ? 'column' : 'columns'}`;
}
