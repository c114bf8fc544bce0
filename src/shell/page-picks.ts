import type { LitElement } from 'lit';
import type { PickDetail } from '../../cells/shared/cell-events.ts';
import { cellOfNode } from './page-moves.ts';
import type { GoDetail } from './panel/figure-slip.ts';
import type { RoadView } from './road/road-view.ts';
import { type Stop, stopOf } from './road/stops.ts';
import type { Session } from './session/session.ts';

/** Under this width the panel is a bottom sheet, in px. */
const SHEET_WIDTH = 1240;

/** What of the screen's height the sheet leaves free, and room below what is picked, in px. */
const FREE_SHARE = 0.44;
const ROOM_BELOW = 12;

/** Scrolls what was tapped up to where the sheet does not cover it. */
function aboveTheSheet(): void {
  let tapped = document.activeElement;
  while (tapped?.shadowRoot?.activeElement) tapped = tapped.shadowRoot.activeElement;
  if (!(tapped instanceof HTMLElement) || tapped === document.body) return;
  const below = tapped.getBoundingClientRect().bottom + ROOM_BELOW - innerHeight * FREE_SHARE;
  if (below > 0) scrollBy({ top: below });
}

/** What picking needs of the page. */
export interface PickPage {
  readonly session: Session | null;
  readonly stops: readonly Stop[];
  /** The card that is selected, or that holds the keyboard. */
  readonly stop: Stop | undefined;
  readonly road: RoadView | null;
  picked: PickDetail | null;
  /** Whether the panel is shut. */
  shut: boolean;
}

/** What is picked on the page, and what that does to the panel and the road. */
export class PagePicks {
  readonly #page: PickPage & LitElement;

  constructor(page: PickPage & LitElement) {
    this.#page = page;
  }

  readonly pick = (event: CustomEvent<PickDetail>): void => {
    event.stopPropagation();
    this.#page.picked = event.detail;
    // On a narrow screen a tap into a card must not cover it with the sheet; a tapped figure may.
    this.#page.shut = event.detail.node === null && event.detail.row === null && innerWidth <= SHEET_WIDTH;
    if (!this.#page.shut && innerWidth <= SHEET_WIDTH) void this.#page.updateComplete.then(aboveTheSheet);
  };

  readonly open = (event: CustomEvent<PickDetail>): void => {
    this.#page.picked = event.detail;
    this.#page.shut = false;
  };

  readonly visit = (event: CustomEvent<PickDetail>): void => {
    this.#page.picked = event.detail;
    void this.#page.updateComplete.then(() => this.#page.road?.focusStop(event.detail.cell));
  };

  readonly go = (event: CustomEvent<GoDetail>): void => {
    const page = this.#page;
    const { node, row, scroll } = event.detail;
    const cell = page.session && cellOfNode(page.session.notebook.document, node);
    if (!scroll || !cell) return;
    page.picked = { cell: cell.id, node, row };
    const stop = stopOf(page.stops, cell.id);
    if (!stop) return;
    page.road?.openCard(stop.id);
    page.road?.focusStop(stop.id);
  };

  /** Shuts the panel; the keyboard goes back to the card it was about. */
  readonly close = (): void => {
    const { stop } = this.#page;
    this.#page.picked = null;
    this.#page.shut = true;
    if (stop) this.#page.road?.focusStop(stop.id);
  };
}
