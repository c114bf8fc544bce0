import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, figure, putOnClipboard, tableCard } from './support/table-card.ts';

/** Far above what the story takes, so that a busy machine does not fail it, ms. */
const TIMEOUT_MS = 120_000;

/** More steps of undo than the story has; as many would mean that it never ends. */
const MOST_STEPS = 60;

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

/** A worked column whose formula has a fault, kept all the same and mended with one tap. */
async function addLeftOver(page: Page, wear: Locator): Promise<void> {
  await touch(page, wear.getByRole('button', { name: 'Add a column', exact: true }));
  const form = wear.locator('sw-column-form');
  await touch(page, form.getByLabel('Head', { exact: true }));
  await page.keyboard.type('Left over');
  await form.getByLabel('Figures').selectOption('worked');
  await touch(page, form.locator('.cm-content'));
  await page.keyboard.type('abs(limt - now)');
  await touch(page, form.getByRole('button', { name: 'Keep with its fault' }));
  await wear.getByText('unknown name').first().waitFor();
  await touch(page, wear.getByRole('button', { name: 'Use limit' }));
  await expect.poll(() => columnWords(wear, 6)).toEqual(['4.3', '3.8', '4.0']);
}

/** The formula that reads the column follows its new name. */
async function renameNow(page: Page, wear: Locator): Promise<void> {
  const settings = wear.locator('sw-column-settings');
  await touch(page, figure(wear, -1, 2));
  await touch(page, settings.getByLabel('Name in formulas', { exact: true }));
  await page.keyboard.press('Control+a');
  await page.keyboard.type('reading');
  await page.keyboard.press('Enter');
  await touch(page, settings.getByRole('button', { name: 'Close the column' }));
  await touch(page, figure(wear, -1, 6));
  await expect.poll(() => settings.locator('.fx').textContent()).toMatch(/limit.*reading/);
  await touch(page, settings.getByRole('button', { name: 'Close the column' }));
  await expect.poll(() => columnWords(wear, 6)).toEqual(['4.3', '3.8', '4.0']);
}

/** What the notebook on the page is: all its tables, as text. */
const shown = async (page: Page): Promise<string> =>
  (await page.locator('sw-table-cell table').allTextContents()).join('\n').replace(/\s+/g, ' ');

/** Undo, or redo, as often as the menu offers it. */
async function allTheWay(page: Page, step: 'Undo' | 'Redo'): Promise<void> {
  for (let steps = 0; await fromMenu(page, step); steps += 1) expect(steps).toBeLessThan(MOST_STEPS);
  await touch(page, page.locator('sw-head-bar').getByRole('button', { name: 'Notebook', exact: true }));
}

test('by touch alone: from an empty notebook to a worked table, a fault, a rename, a paste, and all the way back', {
  timeout: TIMEOUT_MS,
}, async () => {
  const viewport = { width: 390, height: 844 };
  await withNotebook({ server, viewport, touch: true }, legsNotebook(), async ({ page }) => {
    const wear = await begin(page);
    await writeParts(page, wear);
    await addLeftOver(page, wear);
    await renameNow(page, wear);

    const end = await shown(page);
    await allTheWay(page, 'Undo');
    await page.locator('sw-empty-notebook').waitFor();
    await allTheWay(page, 'Redo');
    await expect.poll(() => shown(page)).toBe(end);
    await page
      .getByText(/^Kept on this device/)
      .first()
      .waitFor({ state: 'attached' });
    await page.reload();
    await expect.poll(() => shown(page)).toBe(end);
    await expect.poll(() => fromMenu(page, 'Undo')).toBe(true);
  });
});
