import { rowsInView, type Segment, windowSegments } from './table-window.ts';

/** Height of a row in px before one has been measured (`--row` of the look). */
const USUAL_ROW_PX = 31;
/** Rows drawn of a long table before its window has been measured. */
const ROWS_UNMEASURED = 40;
/** Space kept between a focused figure and the first column that lies over the others, in px. */
const CLEAR_PX = 4;

/** What scrolls, and what has to be drawn again when other rows come into view. */
export interface ScrollHost {
  readonly renderRoot: ParentNode;
  requestUpdate(): void;
}

/** The window on a long table: which rows are in view, and how to bring a figure into it. */
export class GridScroll {
  readonly #host: ScrollHost;
  #view: readonly [number, number] = [0, ROWS_UNMEASURED];
  #rowPx = USUAL_ROW_PX;
  /** Height of the window, in px; 0 until it is measured. */
  #heightPx = 0;

  constructor(host: ScrollHost) {
    this.#host = host;
  }

  get rowPx(): number {
    return this.#rowPx;
  }

  get #scroller(): HTMLElement | null {
    return this.#host.renderRoot.querySelector<HTMLElement>('.scroll');
  }

  /** Rows that fit into the window under the head. */
  get rowsInWindow(): number {
    return Math.max(1, Math.floor(this.#heightPx / this.#rowPx) - 2);
  }

  /**
   * Take the heights of a row and of the window from the page when the first rows of a long table are there. Later
   * they are taken when it scrolls, where the page is laid out already: to ask after every drawing would have it
   * laid out twice.
   */
  measureOnce(): void {
    if (this.#heightPx === 0 && this.#scroller !== null) this.#measure(this.#scroller);
  }

  /** The reader's text size may differ, and so may the window. */
  #measure(scroller: HTMLElement): void {
    const row = scroller.querySelector<HTMLElement>('tbody tr:not(.gap)');
    if (row !== null && row.offsetHeight > 0) this.#rowPx = row.offsetHeight;
    this.#heightPx = scroller.clientHeight;
  }

  /** What to draw of `rowCount` rows; the row `keep` has the keyboard and stays in the page. */
  segments(rowCount: number, keep: number): Segment[] {
    const [from, to] = this.#view;
    return windowSegments(rowCount, Math.min(from, rowCount), Math.min(to, rowCount), keep);
  }

  /** Find out again which of `rowCount` rows are in view. */
  look(rowCount: number): void {
    const scroller = this.#scroller;
    if (scroller === null) return;
    this.#measure(scroller);
    const view = { scrollTopPx: scroller.scrollTop, heightPx: this.#heightPx, rowPx: this.#rowPx };
    const [from, to] = rowsInView(rowCount, view);
    if (from === this.#view[0] && to === this.#view[1]) return;
    this.#view = [from, to];
    this.#host.requestUpdate();
  }

  toTop(): void {
    this.#view = [0, ROWS_UNMEASURED];
    if (this.#scroller !== null) this.#scroller.scrollTop = 0;
  }

  /** Bring a row of a long table into the window. */
  toRow(row: number, rowCount: number): void {
    const scroller = this.#scroller;
    if (scroller === null) return;
    const headPx = this.#host.renderRoot.querySelector<HTMLElement>('thead')?.offsetHeight ?? 0;
    const topPx = row * this.#rowPx;
    const roomPx = scroller.clientHeight - headPx - this.#rowPx;
    if (topPx < scroller.scrollTop) scroller.scrollTop = topPx;
    else if (topPx > scroller.scrollTop + roomPx) scroller.scrollTop = topPx - roomPx;
    this.look(rowCount);
  }

  /** The first column lies over the others: scroll a figure out from under it, and in from the right edge. */
  showWhole(figure: HTMLElement): void {
    const scroller = this.#scroller;
    const first = this.#host.renderRoot.querySelector('th.stick');
    if (scroller === null || first === null || figure === first || first.contains(figure)) return;
    const coveredPx = first.getBoundingClientRect().right - figure.getBoundingClientRect().left;
    if (coveredPx > 0) scroller.scrollLeft -= coveredPx + CLEAR_PX;
    const beyondPx = figure.getBoundingClientRect().right - scroller.getBoundingClientRect().right;
    if (beyondPx > 0) scroller.scrollLeft += beyondPx + CLEAR_PX;
  }

  /** Say in the page whether the table is scrolled sideways, so that the first column shows its edge. */
  markScrolled(): void {
    this.#scroller?.toggleAttribute('data-scrolled', this.#scroller.scrollLeft > 0);
  }
}
