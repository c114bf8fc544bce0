import type { ElementHandle, Page } from 'playwright-core';
import { FORMAT, type NotebookDocument, VERSION } from '../../src/notebook/document.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { heapMegabytes, longestTurnMs, openFile, SCREEN, withBrowser } from './built-page.ts';
import type { RatioResult } from './support.ts';

const ROWS = 50_000;
/** What one turn of the page's own thread may take, ms. */
const ALLOWED_MS = 50;
/** The first row is the same in many an order. */
const SECOND_ROW = 'tbody tr:nth-child(2)';
/** A heap that a phone lends to a page without a thought, MB. */
const ALLOWED_MB = 256;

/** A price list of 50,000 offers with a worked column: made up, in no order. */
export function longNotebook(): NotebookDocument {
  const rows = Array.from({ length: ROWS }, (_, row) => (row * 7_919) % ROWS);
  return {
    format: FORMAT,
    version: VERSION,
    id: 'long',
    title: 'Long',
    gist: '',
    money: 'EUR',
    cells: [
      {
        id: 'offers',
        kind: 'table',
        title: 'Offers',
        name: 'offers',
        columns: [
          {
            id: 'part',
            name: 'part',
            kind: 'text',
            entries: rows.map((at) => `Part ${at % 900}, make ${at}`),
          },
          { id: 'from', name: 'from', kind: 'text', entries: rows.map((at) => `Store ${at % 37}`) },
          { id: 'price', name: 'price', kind: 'number', unit: 'EUR', entries: rows.map((at) => at / 100) },
          { id: 'days', name: 'days_away', kind: 'number', unit: 'day', entries: rows.map((at) => at % 23) },
          { id: 'landed', name: 'landed', kind: 'worked', formula: 'price * 1.19' },
        ],
      },
    ],
  };
}

async function openLong(page: Page): Promise<void> {
  await openFile(page, 'long.sparewell.json', writeNotebookFile(longNotebook()));
  await page.getByRole('heading', { name: 'Offers', exact: true }).waitFor({ timeout: 60_000 });
  await page.locator('sw-table-view button', { hasText: 'Show all' }).click();
  await page.locator('sw-table-view .scroll.tall').waitFor();
}

/** Scrolls through the whole table by wheel, a screen or more at a time. */
async function scroll(page: Page): Promise<void> {
  await page.locator('sw-table-view .scroll').hover();
  for (let turn = 0; turn < 60; turn += 1) {
    await page.mouse.wheel(0, turn < 30 ? 600 : 40_000);
    await page.waitForTimeout(16);
  }
}

/** What the grid shows somewhere, with no more asked of the page than that. */
function shownAt(view: ElementHandle, selector: string): Promise<string> {
  return view.evaluate(
    (element, where) => (element as Element).shadowRoot?.querySelector(where)?.textContent ?? '',
    selector,
  );
}

/** Waits until the grid shows what was asked of it. */
async function until(view: ElementHandle, selector: string, holds: (text: string) => boolean): Promise<void> {
  const endMs = Date.now() + 60_000;
  for (;;) {
    const text = await shownAt(view, selector);
    if (holds(text)) return;
    if (Date.now() > endMs) throw new Error(`The table never showed what was asked of it; it shows ${text}.`);
    await new Promise((then) => setTimeout(then, 100));
  }
}

/** Chooses what the rows are sorted by, as the list does when one picks from it. */
async function sortBy(view: ElementHandle, list: ElementHandle, column: string): Promise<void> {
  const before = await shownAt(view, SECOND_ROW);
  await list.evaluate((select, value) => {
    (select as HTMLSelectElement).value = value;
    select.dispatchEvent(new Event('change'));
  }, column);
  await until(view, SECOND_ROW, (text) => text !== before);
}

async function sift(page: Page, view: ElementHandle): Promise<void> {
  await page.keyboard.type('Store 3');
  await page.keyboard.press('Enter');
  // By hand: of 0 to 49,999 those that leave 3 when divided by 37 are 3 + 37 k with k from 0 to 1,351.
  await until(view, '.more', (text) => text.includes('1,352 of 50,000 rows shown'));
}

/** Writes prices one below the other. */
async function type(page: Page): Promise<void> {
  await page.locator('sw-table-view [data-row="3"][data-col="2"]').click();
  for (let row = 0; row < 8; row += 1) {
    await page.keyboard.type(`${row}.5`);
    await page.keyboard.press('Enter');
    await page.waitForTimeout(400);
  }
}

/** What a table of 50,000 rows takes of the page's own thread: its longest turn while it is used, and memory. */
export async function bench(): Promise<readonly RatioResult[]> {
  return withBrowser(async (browser, url) => {
    const page = await browser.newPage({ viewport: SCREEN });
    await page.goto(url);
    await page.locator('sw-value-cell input').first().waitFor();
    const results: RatioResult[] = [];
    const measure = async (what: string, work: () => Promise<void>): Promise<void> => {
      const ms = await longestTurnMs(browser, page, work);
      const name = `table of 50,000 rows: longest turn while ${what}, against 50 ms`;
      results.push({ name, candidateMs: ms, baselineMs: ALLOWED_MS, ratio: ms / ALLOWED_MS });
    };
    await openLong(page);
    await page.waitForTimeout(2_000);
    await measure('it is scrolled', () => scroll(page));
    await page.locator('sw-table-view .scroll').evaluate((element) => element.scrollTo(0, 0));
    await measure('figures are written in it', () => type(page));
    const view = await page.locator('sw-table-view').elementHandle();
    const lens = page.locator('sw-table-lens');
    await page.locator('sw-table-view button', { hasText: 'Find and sort' }).click();
    const list = await lens.getByLabel('Sorted by').elementHandle();
    if (view === null || list === null) throw new Error('The table has no list of what it is sorted by.');
    await measure('it is sorted by a figure', () => sortBy(view, list, 'landed'));
    await measure('it is sorted by words', () => sortBy(view, list, 'part'));
    await lens.locator('button', { hasText: 'Show only rows' }).click();
    await lens.getByLabel('Column', { exact: true }).selectOption({ label: 'From' });
    await lens.getByLabel('Test', { exact: true }).selectOption({ label: 'is' });
    await lens.getByLabel(/is compared with$/).focus();
    await measure('its rows are sifted', () => sift(page, view));
    const heap = await heapMegabytes(page);
    results.push({
      name: 'table of 50,000 rows: memory of the page, against 256',
      unit: 'MB',
      candidateMs: heap,
      baselineMs: ALLOWED_MB,
      ratio: heap / ALLOWED_MB,
    });
    return results;
  });
}
