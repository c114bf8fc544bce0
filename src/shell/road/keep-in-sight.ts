import { isDrawing } from '../../../cells/shared/out-of-sight.ts';

/** How long cards that come near are waited for, ms, once all were drawn a first time. */
const DRAWN_AFTER_MS = 1200;

/** Longest that a card is held in sight, ms: on a slow machine forty cards take their time. */
const MOST_HELD_MS = 15_000;

/** What a hand does that ends the holding: from then on the page is where it is put. */
const BY_HAND = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;

let release: () => void = () => undefined;

/**
 * Scrolls to a card. Cards on the way are drawn when they come near and push those below them: the card is held
 * where it was scrolled to until they have, or until a hand scrolls, presses or types, or something else scrolls: a
 * screen reader, a search in the page. One jump ends another.
 *
 * @param block where in the window: 'start' has its head under the tally; if absent that for a card out of sight,
 *   and as little as need be for one that is partly seen
 */
export function keepInSight(card: Element, block?: ScrollLogicalPosition): void {
  release();
  const { top, bottom } = card.getBoundingClientRect();
  const isSeen = bottom > 0 && top < innerHeight;
  const where: ScrollIntoViewOptions = {
    block: block ?? (isSeen ? 'nearest' : 'start'),
    behavior: 'instant',
  };
  const began = performance.now();
  let drawnSince = began;
  let frame = 0;
  let held: Place | null = null;
  const hold = (): void => {
    const now = performance.now();
    if (isDrawing()) drawnSince = now;
    const isOver = now > drawnSince + DRAWN_AFTER_MS || now > began + MOST_HELD_MS;
    if (!card.isConnected || isOver || (held && isScrolledAway(held, placeOf(card)))) {
      release();
      return;
    }
    card.scrollIntoView(where);
    held = placeOf(card);
    frame = requestAnimationFrame(hold);
  };
  release = () => {
    cancelAnimationFrame(frame);
    for (const act of BY_HAND) removeEventListener(act, release, true);
    release = () => undefined;
  };
  for (const act of BY_HAND) addEventListener(act, release, { capture: true, passive: true });
  hold();
}

/** How far the page is scrolled, and how far down the page a card stands, px. */
interface Place {
  readonly scrolled: number;
  readonly down: number;
}

const placeOf = (card: Element): Place => ({
  scrolled: scrollY,
  down: scrollY + card.getBoundingClientRect().top,
});

/** The page is scrolled and nothing on it has moved: it was not the browser, which scrolls only to make up for that. */
const isScrolledAway = (before: Place, now: Place): boolean =>
  now.scrolled !== before.scrolled && Math.abs(now.down - before.down) < 1;
