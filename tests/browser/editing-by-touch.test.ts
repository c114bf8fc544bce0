import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, figure, putOnClipboard, tableCard } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** A tap in the middle of what is meant, whatever lies over it there: a finger does not ask what it hits. */
async function touch(page: Page, on: Locator): Promise<void> {
  await on.scrollIntoViewIfNeeded();
  await on.tap();
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
}

/** An entry of the head's menu; where it is greyed, nothing is tapped and false given back. */
async function fromMenu(page: Page, name: string): Promise<boolean> {
  const head = page.locator('sw-head-bar');
  const menu = head.locator('.menu');
  if (!(await menu.isVisible()))
    await touch(page, head.getByRole('button', { name: 'Notebook', exact: true }));
  const entry = menu.getByRole('button', { name, exact: true });
  await entry.waitFor();
  if (await entry.isDisabled()) return false;
  await touch(page, entry);
  return true;
}

/** The input that the keyboard on the screen writes into: its mode and the word on its Enter key. */
function keyboardOf(of: Locator): Promise<(string | null)[]> {
  return of
    .locator('sw-figure-field input')
    .evaluate((input) => [input.getAttribute('inputmode'), input.getAttribute('enterkeyhint')]);
}

async function begin(page: Page): Promise<Locator> {
  await page.locator('sw-value-cell input').first().waitFor();
  await expect.poll(() => page.evaluate(() => customElements.get('sw-block-bar') !== undefined)).toBe(true);
  await fromMenu(page, 'New notebook');
  await touch(page, page.getByRole('button', { name: 'Begin', exact: true }));
  await page.locator('sw-empty-notebook').waitFor();
  await touch(page, page.getByRole('button', { name: 'Take readings', exact: true }));
  const wear = tableCard(page, 'Wear');
  await wear.waitFor();
  return wear;
}

/** Three parts, each row begun where the one before ended; then Now and Limit as another program has them. */
async function writeParts(page: Page, wear: Locator): Promise<void> {
  await touch(page, figure(wear, 0, 0));
  await expect.poll(() => keyboardOf(wear)).toEqual(['text', 'next']);
  for (const [row, part] of ['Chain', 'Front pads', 'Rear tyre'].entries()) {
    await expect.poll(() => wear.locator(`[data-row="${row}"] sw-figure-field`).count()).toBe(1);
    await page.keyboard.type(part);
    await page.keyboard.press('Enter');
  }
  await expect.poll(() => columnWords(wear, 0)).toEqual(['Chain', 'Front pads', 'Rear tyre']);
  await touch(page, figure(wear, 0, 2));
  await expect.poll(() => keyboardOf(wear)).toEqual(['decimal', 'next']);

  await putOnClipboard(page, '319,6\t323,9\r\n4,8\t1\r\n6\t2\r\n');
  await touch(page, wear.getByRole('button', { name: 'Mark a block' }));
  await touch(page, figure(wear, 0, 2));
  await touch(page, wear.getByRole('button', { name: 'Paste', exact: true }));
  await expect.poll(() => columnWords(wear, 3)).toEqual(['323.9', '1.0', '2.0']);
  await touch(page, wear.getByRole('button', { name: 'Done', exact: true }));
}

test('by touch alone: from an empty notebook to a table of three parts, with a block pasted from another program', async () => {
  const viewport = { width: 390, height: 844 };
  await withApp({ server, plan: false, viewport, touch: true }, async ({ page }) => {
    const wear = await begin(page);
    await writeParts(page, wear);
  });
});
