import type { Page } from 'playwright-core';

/** How long the page must have kept its height, in ms: cards that are worked out later make it grow. */
const REST_MS = 700;
/** Longest that it may take. */
const MOST_MS = 30_000;

/** Waits until all cards stand where they will stay, so that what is pressed does not move away. */
export async function atRest(page: Page): Promise<void> {
  const began = Date.now();
  let height = -1;
  let since = began;
  while (Date.now() - began < MOST_MS) {
    // While a notebook opens only its first cards stand, and the page keeps their height until the others come.
    const now = await page.evaluate(() => {
      const app = document.querySelector('sparewell-app') as (Element & { opening?: boolean }) | null;
      return app?.opening === false ? document.documentElement.scrollHeight : -1;
    });
    if (now !== height || now < 0) since = Date.now();
    else if (Date.now() - since >= REST_MS) return;
    height = now;
    await page.waitForTimeout(100);
  }
  throw new Error(`The page still grew or shrank after ${MOST_MS / 1000} s.`);
}
