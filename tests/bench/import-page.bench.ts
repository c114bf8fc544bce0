import type { Browser, Page } from 'playwright-core';
import { heapMegabytes, longestTurnMs, SCREEN, withBrowser } from './built-page.ts';
import { makeList } from './price-list.ts';
import type { RatioResult } from './support.ts';

const ROWS = 100_000;
const LONGEST_TASK_MS = 50;
/** Milliseconds in which a search of the list is long over, and what else the page has to do as well. */
const REST_MS = 3000;

/**
 * Drops the list on the page and waits until its rows stand under the parts. The page itself says so: to look from
 * outside would be tasks of its own.
 */
async function drop(page: Page): Promise<void> {
  const there = page.waitForEvent('console', {
    predicate: (message) => message.text() === 'the list is there',
    timeout: 120_000,
  });
  await page.evaluate(() => {
    const look = (): void => {
      const root = document.querySelector('sparewell-app')?.shadowRoot;
      const dialog = root?.querySelector('sw-import-dialog')?.shadowRoot;
      if (dialog?.querySelector('.fits')) console.log('the list is there');
      else setTimeout(look, 50);
    };
    setTimeout(() => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add((globalThis as unknown as { listFile: File }).listFile);
      const event = { dataTransfer, bubbles: true, composed: true, cancelable: true };
      document.body.dispatchEvent(new DragEvent('drop', event));
      look();
    });
  });
  await there;
  await page.waitForTimeout(REST_MS);
}

async function measure(browser: Browser, url: string): Promise<readonly RatioResult[]> {
  const context = await browser.newContext({
    serviceWorkers: 'block',
    viewport: SCREEN,
  });
  const page = await context.newPage();
  await page.goto(url);
  await page
    .locator('sw-plan-cell')
    .getByText(/Proven best|Best found/)
    .first()
    .waitFor({ timeout: 120_000 });
  // The file is made before, so that only the page's own work is measured.
  await page.evaluate((content) => {
    Object.assign(globalThis, { listFile: new File([content], 'list.csv') });
  }, makeList(ROWS));
  await page.waitForTimeout(REST_MS);
  const before = await heapMegabytes(page);
  const readMs = await longestTurnMs(browser, page, () => drop(page));
  const dialog = page.locator('sw-import-dialog dialog');
  await dialog
    .getByRole('button', { name: /^(?:Another row|Search a row) for / })
    .first()
    .click();
  const searchMs = await longestTurnMs(browser, page, async () => {
    await page.keyboard.type('chain rear', { delay: 60 });
    await page.waitForTimeout(REST_MS);
  });
  if ((await dialog.locator('sw-part-finder li').count()) !== 12) throw new Error('Too little was found.');
  const held = await heapMegabytes(page);
  return [
    against50('import page: longest task while 100,000 rows are read, processor time against 50 ms', readMs),
    against50('import page: longest task while they are searched, processor time against 50 ms', searchMs),
    {
      name: 'import page: memory of the page with the list open, against before',
      unit: 'MB',
      candidateMs: held,
      baselineMs: before,
      ratio: held / before,
    },
  ];
}

/**
 * A price list of 100,000 rows and 8 columns read, typed, fitted and searched in the dialog of the built app: the
 * longest time for which the page could not answer, and what the page itself holds of it (the rows stay in the
 * worker).
 */
export async function bench(): Promise<readonly RatioResult[]> {
  return withBrowser(measure);
}

const against50 = (name: string, ms: number): RatioResult => ({
  name,
  candidateMs: ms,
  baselineMs: LONGEST_TASK_MS,
  ratio: ms / LONGEST_TASK_MS,
});
