import type { LitElement } from 'lit';

/** How far the pointer moves before a press becomes a drag, in px. */
const SLACK_PX = 6;
/** How near the edge of the window a drag scrolls the page, and by how much a step, in px. */
const EDGE_PX = 96;
const SCROLL_PX = 14;

interface Dragging {
  readonly stop: string;
  readonly startY: number;
  moved: boolean;
  /** Place among the stops, counted from 0 with the dragged one still in. */
  over: number;
}

/**
 * Dragging a waymark along the road: which card is dragged, and between which cards it would be put down.
 */
export class WaymarkDrag {
  readonly #host: LitElement;
  readonly #drop: (stop: string, to: number) => void;
  #now: Dragging | null = null;
  #swallowClick = false;

  constructor(host: LitElement, drop: (stop: string, to: number) => void) {
    this.#host = host;
    this.#drop = drop;
  }

  /** How a stop is drawn while a drag goes on. */
  at(stop: string, place: number): { readonly dragged: boolean; readonly drop: 'before' | 'after' | null } {
    const now = this.#now;
    if (!now?.moved) return { dragged: false, drop: null };
    const from = this.#places().findIndex((element) => element.dataset.stop === now.stop);
    const here = place === now.over && place !== from;
    return { dragged: now.stop === stop, drop: here ? (now.over > from ? 'after' : 'before') : null };
  }

  /** True once after a drag, so that the click that ends it opens nothing. */
  consumeClick(): boolean {
    const swallow = this.#swallowClick;
    this.#swallowClick = false;
    return swallow;
  }

  start(event: PointerEvent, stop: string): void {
    if (event.button !== 0) return;
    const post = event.currentTarget as HTMLElement;
    post.setPointerCapture(event.pointerId);
    this.#now = { stop, startY: event.clientY, moved: false, over: -1 };
    const move = (next: PointerEvent): void => this.#move(next);
    const end = (last: Event): void => {
      post.removeEventListener('pointermove', move);
      post.removeEventListener('pointerup', end);
      post.removeEventListener('pointercancel', end);
      this.#end(last.type === 'pointerup');
    };
    post.addEventListener('pointermove', move);
    post.addEventListener('pointerup', end);
    post.addEventListener('pointercancel', end);
  }

  #places(): readonly HTMLElement[] {
    return [...this.#host.renderRoot.querySelectorAll<HTMLElement>('.stop[data-stop]')];
  }

  #move(event: PointerEvent): void {
    const now = this.#now;
    if (!now) return;
    if (!now.moved && Math.abs(event.clientY - now.startY) < SLACK_PX) return;
    now.moved = true;
    if (event.clientY < EDGE_PX + 80) scrollBy(0, -SCROLL_PX);
    else if (event.clientY > innerHeight - EDGE_PX) scrollBy(0, SCROLL_PX);
    const places = this.#places();
    const over = places.findIndex((place) => event.clientY < place.getBoundingClientRect().bottom);
    now.over = over < 0 ? places.length - 1 : over;
    this.#host.requestUpdate();
  }

  #end(put: boolean): void {
    const now = this.#now;
    const from = this.#places().findIndex((place) => place.dataset.stop === now?.stop);
    this.#now = null;
    this.#host.requestUpdate();
    if (!now?.moved) return;
    this.#swallowClick = true;
    // The click of this press comes right after; a press that ends elsewhere has none to swallow.
    setTimeout(() => {
      this.#swallowClick = false;
    });
    if (put && now.over >= 0 && now.over !== from) this.#drop(now.stop, now.over);
  }
}
