import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, putOnClipboard, tableCard } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** Steps of Tab after which a button that was not reached counts as not to be reached. */
const MOST_STEPS = 60;

/** What has the keyboard: its label, or its words. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) element = element.shadowRoot.activeElement;
    const labels = (element as HTMLInputElement | null)?.labels;
    const words =
      element?.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? element?.textContent ?? '';
    return words.replace(/\s+/g, ' ').trim();
  });
}

/** Goes on with Tab (or back, with Shift) until what has the keyboard is called so. */
async function tabTo(page: Page, name: RegExp, back = false): Promise<void> {
  const met: string[] = [];
  for (let i = 0; i < MOST_STEPS; i += 1) {
    const now = await focused(page);
    if (name.test(now)) return;
    met.push(now.slice(0, 30));
    await page.keyboard.press(back ? 'Shift+Tab' : 'Tab');
  }
  throw new Error(`Tab never came to ${name}; it met ${met.join(' | ')}`);
}

async function press(page: Page, name: RegExp, back = false): Promise<void> {
  await tabTo(page, name, back);
  await page.keyboard.press('Enter');
}

/** What the notebook on the page is: all its tables, as text. */
const shown = async (page: Page): Promise<string> =>
  (await page.locator('sw-table-cell table').allTextContents()).join('\n').replace(/\s+/g, ' ');

test('by keyboard alone: from an empty notebook to a worked table, faults, a rename, a paste, and all the way back', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    await expect.poll(() => page.evaluate(() => customElements.get('sw-block-bar') !== undefined)).toBe(true);
    await press(page, /^Notebook$/);
    await press(page, /^New notebook$/);
    await press(page, /^Begin$/);
    await page.locator('sw-empty-notebook').waitFor();
    await press(page, /^Take readings$/);

    const wear = tableCard(page, 'Wear');
    await wear.waitFor();
    await tabTo(page, /^Wear, /);
    await page.keyboard.press('Enter');
    await expect.poll(() => wear.locator('[data-row="0"][data-col="0"]:focus').count()).toBe(1);
    for (const part of ['Chain', 'Front pads', 'Rear tyre']) {
      await page.keyboard.type(part);
      await page.keyboard.press('Enter');
    }
    await expect.poll(() => columnWords(wear, 0)).toEqual(['Chain', 'Front pads', 'Rear tyre']);

    // Now and Limit, as another program has them.
    await putOnClipboard(page, '319,6\t323,9\r\n4,8\t1\r\n6\t2\r\n');
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Control+v');
    await expect.poll(() => columnWords(wear, 3)).toEqual(['323.9', '1.0', '2.0']);

    await page.keyboard.press('Escape');
    await press(page, /^Add a column$/);
    await tabTo(page, /^Head$/);
    await page.keyboard.type('Left over');
    await tabTo(page, /^Figures/);
    await page.keyboard.type('worked');
    await wear.locator('.cm-content').waitFor();
    await tabTo(page, /^Formula of the new column$/);
    await page.keyboard.type('abs(limt - now)');
    await wear.locator('.cm-content mark').waitFor();
    await page.keyboard.press('Enter');
    await wear.getByText('unknown name').first().waitFor();

    await expect.poll(() => focused(page)).toBe('319.6');
    await press(page, /^Use limit$/);
    await expect.poll(() => columnWords(wear, 6)).toEqual(['4.3', '3.8', '4.0']);

    // The head of Now opens its settings; the formula that reads the column follows its new name.
    await tabTo(page, /^319\.6$|^Now$|^Left over$/, true);
    await page.keyboard.press('Control+Home');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await tabTo(page, /^Name in formulas$/);
    await page.keyboard.press('Control+a');
    await page.keyboard.type('reading');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Escape');
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await expect.poll(() => wear.locator('.written .fx').textContent()).toMatch(/limit.*reading/);
    await page.keyboard.press('Escape');
    await expect.poll(() => columnWords(wear, 6)).toEqual(['4.3', '3.8', '4.0']);

    const end = await shown(page);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    const undo = page.locator('sw-head-bar').getByRole('button', { name: 'Undo', exact: true }).first();
    const redo = page.locator('sw-head-bar').getByRole('button', { name: 'Redo', exact: true }).first();
    for (let i = 0; i < 40 && (await undo.isEnabled()); i += 1) await page.keyboard.press('Control+z');
    await page.locator('sw-empty-notebook').waitFor();
    for (let i = 0; i < 40 && (await redo.isEnabled()); i += 1) await page.keyboard.press('Control+Shift+Z');
    await expect.poll(() => shown(page)).toBe(end);
    await page
      .getByText(/^Kept on this device/)
      .first()
      .waitFor();
    await page.reload();
    await expect.poll(() => shown(page)).toBe(end);
    await expect.poll(() => undo.isEnabled()).toBe(true);
  });
});
