import { type Block, blockBetween } from './table-block.ts';
import type { GridExtent, GridPlace } from './table-keys.ts';

/**
 * Which block of figures is marked: with Shift held, by dragging, or, by touch, corner after corner. A block
 * has two corners; the first stays, the second moves.
 */
export class GridMarks {
  #first: GridPlace | null = null;
  #second: GridPlace | null = null;
  /** Where the pointer went down, until it comes up again. */
  #from: GridPlace | null = null;
  /** The pointer was moved over other figures: the click that follows writes nothing. */
  #dragged = false;
  /** Taps mark corners instead of writing. */
  tapping = false;

  /** The marked block; null when none is. A block of one figure counts only while corners are being tapped. */
  get block(): Block | null {
    const [first, second] = [this.#first, this.#second];
    if (first === null || second === null) return null;
    const isOne = first.row === second.row && first.column === second.column;
    return isOne && !this.tapping ? null : blockBetween(first, second);
  }

  /** The corner that moves, or where the keyboard is when nothing is marked. */
  corner(at: GridPlace): GridPlace {
    return this.#second ?? at;
  }

  /** Nothing is marked any more. True when something was. */
  clear(): boolean {
    const was = this.block !== null || this.tapping;
    this.#first = null;
    this.#second = null;
    this.tapping = false;
    return was;
  }

  /** Move the second corner; the first is where the keyboard was when nothing was marked. */
  extend(at: GridPlace, to: GridPlace): void {
    this.#first ??= { row: Math.max(0, at.row), column: at.column };
    this.#second = to;
  }

  mark(first: GridPlace, second: GridPlace): void {
    this.#first = first;
    this.#second = second;
  }

  markBlock(block: Block): void {
    this.mark({ row: block.top, column: block.left }, { row: block.bottom, column: block.right });
  }

  /** Taps mark corners from now on, or no longer. */
  startTapping(taps = true): void {
    this.clear();
    this.tapping = taps;
  }

  /** Widen the block, or the figure at hand, to whole rows, whole columns or everything. */
  whole(what: 'rows' | 'columns' | 'all', at: GridPlace, extent: GridExtent): void {
    const now = this.block ?? blockBetween(at, at);
    const rows = what === 'rows' ? [now.top, now.bottom] : [0, extent.rows - 1];
    const columns = what === 'columns' ? [now.left, now.right] : [0, extent.columns - 1];
    this.mark({ row: rows[0]!, column: columns[0]! }, { row: rows[1]!, column: columns[1]! });
  }

  /** A tap while corners are marked: the first sets one corner, each later one the other. */
  tap(place: GridPlace): void {
    if (this.#first === null) this.#first = place;
    this.#second = place;
  }

  /** Stay inside a grid that has become smaller: what was marked is no longer the same. */
  keepWithin(extent: GridExtent): void {
    const { block } = this;
    if (block !== null && (block.bottom >= extent.rows || block.right >= extent.columns)) this.clear();
  }

  // --- the pointer ---

  pressed(place: GridPlace): void {
    this.#from = place;
    this.#dragged = false;
  }

  /** The pointer came over another figure with its button held. True when the block has changed. */
  draggedTo(place: GridPlace): boolean {
    const from = this.#from;
    if (from === null || (!this.#dragged && place.row === from.row && place.column === from.column))
      return false;
    if (place.row < 0) return false;
    this.#dragged = true;
    this.mark(from, place);
    return true;
  }

  released(): void {
    this.#from = null;
  }

  /** Whether the click that comes now only ended a drag; asked once. */
  tookClick(): boolean {
    const dragged = this.#dragged;
    this.#dragged = false;
    return dragged;
  }
}
