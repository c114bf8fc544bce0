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
    const now = await page.evaluate(() => document.documentElement.scrollHeight);
    if (now !== height) since = Date.now();
    else if (Date.now() - since >= REST_MS) return;
    height = now;
    await page.waitForTimeout(100);
  }
  throw new Error(`The page still grew or shrank after ${MOST_MS / 1000} s.`);
}
