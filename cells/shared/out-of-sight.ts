/** What can be drawn again: an element of ours. */
interface Drawn {
  requestUpdate(): void;
}

/** Attribute of elements out of sight: the browser may leave them out of its layout. */
export const FAR = 'far';

/** Longest that a card out of sight waits while the page is busy, ms. */
const MOST_WAIT_MS = 200;

/** Few cards that are not folded are lower than this, px. */
const LOW_CARD_PX = 200;

/** Cards that are drawn at once when a notebook opens: as many as fill the screen. */
export const FIRST_CARDS = typeof innerHeight === 'undefined' ? 0 : Math.ceil(innerHeight / LOW_CARD_PX);

const outOfSight = new WeakSet<object>();
const waiting = new Set<Drawn>();
/** Cards that were never drawn, and what starts them. */
const undrawn = new Map<object, () => void>();
let firstDrawn = 0;
let isBooked = false;

/** Elements on the screen, if only with an edge of them. */
const onScreen = new WeakSet<object>();

const screen =
  typeof IntersectionObserver === 'undefined'
    ? null
    : new IntersectionObserver((entries) => {
        for (const { target, isIntersecting } of entries) {
          if (isIntersecting) onScreen.add(target);
          else onScreen.delete(target);
        }
      });

/** Half a page above and below counts as in sight: it is scrolled to before it could be drawn. */
const sight =
  typeof IntersectionObserver === 'undefined'
    ? null
    : new IntersectionObserver(
        (entries) => {
          for (const { target, isIntersecting } of entries) {
            target.toggleAttribute(FAR, !isIntersecting);
            if (isIntersecting) {
              outOfSight.delete(target);
              screen?.observe(target);
              drawNow(target as unknown as Drawn);
            } else {
              outOfSight.add(target);
              leaveScreen(target);
            }
          }
        },
        { rootMargin: '50% 0px' },
      );

if (sight) addEventListener('beforeprint', () => [...undrawn.keys(), ...waiting].forEach(drawNow));

function leaveScreen(element: Element): void {
  screen?.unobserve(element);
  onScreen.delete(element);
}

/** Whether an element can be seen now, as far as the browser has told. */
export const isOnScreen = (element: object): boolean => onScreen.has(element);

/** Follows whether an element is in sight, until `end` is called. */
export function followSight(element: object): () => void {
  if (!sight || !(element instanceof Element)) return () => undefined;
  sight.observe(element);
  return () => {
    sight.unobserve(element);
    leaveScreen(element);
    outOfSight.delete(element);
    waiting.delete(element as unknown as Drawn);
    startNow(element);
  };
}

/**
 * When a card may be drawn for the first time. The first few of a notebook that opens may at once; those
 * further down wait until the page has time, one at a time, or until they come in sight.
 * @returns null for at once
 */
export function firstTurn(element: HTMLElement): Promise<void> | null {
  if (!sight) return null;
  firstDrawn += 1;
  if (firstDrawn <= FIRST_CARDS) {
    book();
    return null;
  }
  // A place is kept for it, so that it is not taken to be in sight.
  element.toggleAttribute(FAR, true);
  return new Promise((resolve) => {
    undrawn.set(element, resolve);
    book();
  });
}

/** Whether cards are still to be drawn for the first time, which may push those below them. */
export function isDrawing(): boolean {
  return undrawn.size > 0;
}

/**
 * Draws an element again: at once if it is in sight; else when the page has nothing better to do, one element
 * at a time, so that what an edit changes before the eyes is not held up by forty cards further down.
 */
export function drawWhenSeen(element: Drawn): void {
  if (!outOfSight.has(element)) {
    element.requestUpdate();
    return;
  }
  waiting.add(element);
  book();
}

function drawNow(element: object): void {
  startNow(element);
  if (waiting.delete(element as Drawn)) (element as Drawn).requestUpdate();
}

function startNow(element: object): void {
  const start = undrawn.get(element);
  undrawn.delete(element);
  start?.();
}

function book(): void {
  if (isBooked) return;
  isBooked = true;
  const next = (): void => {
    isBooked = false;
    const [first] = undrawn.size > 0 ? undrawn.keys() : waiting;
    if (first) drawNow(first);
    if (undrawn.size + waiting.size > 0) book();
    else firstDrawn = 0;
  };
  if (typeof requestIdleCallback === 'undefined') setTimeout(next, MOST_WAIT_MS / 10);
  else requestIdleCallback(next, { timeout: MOST_WAIT_MS });
}
