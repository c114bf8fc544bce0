import { painted } from './first-paint.ts';

/** What follows sooner than this belongs to the same burst, ms. */
const BURST_MS = 600;
/** In a burst this long is waited, so that what comes in meanwhile is done with it, ms. */
const REST_MS = 200;

/**
 * When what an edit leads to (a save, a plan) may begin: once the edit is painted; in a burst of edits a
 * little later, so that it is not begun for each of them.
 */
export function afterPaint(): () => Promise<void> {
  let lastMs = Number.NEGATIVE_INFINITY;
  return async () => {
    const isBurst = Date.now() - lastMs < BURST_MS;
    lastMs = Date.now();
    await painted();
    if (isBurst) await new Promise((rested) => setTimeout(rested, REST_MS));
  };
}
