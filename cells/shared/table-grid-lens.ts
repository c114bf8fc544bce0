import type { Refusal } from './table-column-change.ts';
import type { GridPlace } from './table-keys.ts';
import type { Lens } from './table-lens.ts';
import type { Grid } from './table-model.ts';
import { RowOrder } from './table-order.ts';

/** Tables up to this many rows are looked through at once; longer ones in slices. */
const ROWS_AT_ONCE = 2_000;

const NO_LENS: Lens = { sorting: null, wheres: [] };

/**
 * The lens on one grid: how its rows are sorted and which are shown, until it is taken off. Rows keep their
 * places while figures are written, so that nothing jumps from under the hand; that they would now stand
 * otherwise is said, and they are laid out anew when asked.
 */
export class GridLens {
  readonly order = new RowOrder();
  lens: Lens = NO_LENS;
  /** The rows would now be shown otherwise. */
  stale = false;
  refusal: Refusal | null = null;
  readonly #changed: () => void;
  #tools: typeof import('./table-lens.ts') | null = null;
  #rows: Int32Array | null = null;
  #rowCount = 0;
  #turn = 0;

  /** @param changed called when other rows are to be drawn */
  constructor(changed: () => void) {
    this.#changed = changed;
  }

  /** Lays a lens on the grid; resolves when its rows are known. */
  async lay(grid: Grid, lens: Lens): Promise<void> {
    this.lens = lens;
    const turn = ++this.#turn;
    this.#tools ??= await import('./table-lens.ts');
    const work = this.#tools.lensRows(grid, lens);
    const { inSlices } = await import('./table-slices.ts');
    const rows = await inSlices(work, () => turn !== this.#turn);
    if (turn !== this.#turn) return;
    this.#take(grid, rows);
    this.#changed();
  }

  /**
   * The next figure shown that holds a text, or the one before; null when none does, or when another search or
   * lens has come meanwhile.
   */
  async find(grid: Grid, wanted: string, from: GridPlace, backwards: boolean): Promise<GridPlace | null> {
    const turn = ++this.#turn;
    this.#tools ??= await import('./table-lens.ts');
    const { inSlices } = await import('./table-slices.ts');
    const placeCount = this.order.countOf(grid.rowCount);
    const view = { placeCount, rowAt: (place: number) => this.order.rowAt(place), backwards };
    return inSlices(this.#tools.findFigure(grid, wanted, from, view), () => turn !== this.#turn);
  }

  /** Before the grid is drawn: rows that came or went are taken in at once, other figures only noted. */
  follow(grid: Grid, figuresChanged: boolean): void {
    if (this.#rows === null || this.#tools === null) return;
    if (grid.rowCount !== this.#rowCount) this.#anew(grid, this.#tools);
    else if (figuresChanged) this.stale = !this.#tools.isStillSo(grid, this.lens, this.#rows);
  }

  #anew(grid: Grid, tools: typeof import('./table-lens.ts')): void {
    if (grid.rowCount > ROWS_AT_ONCE) {
      this.#take(grid, this.#rows?.filter((row) => row < grid.rowCount) ?? null);
      void this.lay(grid, this.lens);
      return;
    }
    const work = tools.lensRows(grid, this.lens);
    let step = work.next();
    while (!step.done) step = work.next();
    this.#take(grid, step.value);
  }

  #take(grid: Grid, rows: Int32Array | Refusal | null): void {
    if (rows !== null && 'reason' in rows) {
      this.refusal = rows;
      return;
    }
    this.refusal = null;
    this.stale = false;
    this.#rows = rows;
    this.#rowCount = grid.rowCount;
    this.order.show(rows);
  }
}
