import { readFile } from 'node:fs/promises';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** What stands in an element, in one line. */
async function words(of: Locator): Promise<string> {
  return ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

/** The card of a table or pairing, by its heading. */
function card(page: Page, heading: string): Locator {
  return page
    .locator('sw-table-cell, sw-pairing-cell')
    .filter({ has: page.getByRole('heading', { name: heading, exact: true }) });
}

/** One figure of a card: row and column counted from 0, as they are shown. */
function figure(of: Locator, row: number, column: number): Locator {
  return of.locator(`[data-row="${row}"][data-col="${column}"]`);
}

/** Row and column of the figure that has the keyboard. */
function keyboardAt(page: Page): Promise<string> {
  return page.evaluate(() => {
    let element = document.activeElement;
    while (element?.shadowRoot?.activeElement) {
      const inner: Element = element.shadowRoot.activeElement;
      if (inner.localName === 'sw-figure-field') break;
      element = inner;
    }
    return element instanceof HTMLElement ? `${element.dataset.row} ${element.dataset.col}` : '';
  });
}

test('typing writes, Enter keeps and moves down, Tab keeps and moves right, Escape puts the old figure back', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = card(page, 'Legs');
    await figure(legs, 0, 1).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('265,5');
    await page.keyboard.press('Enter');
    await expect.poll(() => words(figure(legs, 0, 1))).toBe('265.5');
    await expect.poll(() => keyboardAt(page)).toBe('1 1');

    await page.keyboard.type('200 mi');
    await page.keyboard.press('Tab');
    // 200 miles of 1.609344 km exactly (NIST SP 811, appendix B.8) are 321.8688 km; the column has one decimal.
    await expect.poll(() => words(figure(legs, 1, 1))).toBe('321.9');
    await expect.poll(() => keyboardAt(page)).toBe('1 2');

    await page.keyboard.press('ArrowLeft');
    await page.keyboard.type('9');
    await page.keyboard.press('Escape');
    await expect.poll(() => keyboardAt(page)).toBe('1 1');
    expect(await words(figure(legs, 1, 1))).toBe('321.9');
  });
});

test('text that is no number is refused where it was typed, and what was there stays', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = card(page, 'Legs');
    const before = await words(figure(legs, 2, 1));
    await figure(legs, 2, 1).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('12x');
    await page.keyboard.press('Enter');
    await legs.getByText("'x' is not a unit").waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => words(figure(legs, 2, 1))).toBe(before);
  });
});

test('of a long table only what is in view is in the page, and the keyboard reaches its end', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const ride = card(page, 'Where parts give up');
    await ride.getByRole('button', { name: 'Open Where parts give up' }).click();
    await ride.getByRole('button', { name: /^Show all \d+ rows$/ }).click();
    const grid = ride.getByRole('grid');
    const rowCount = Number(await grid.getAttribute('aria-rowcount')) - 1;
    expect(rowCount).toBeGreaterThan(600);
    await figure(ride, 0, 2).click();
    await page.keyboard.press('Control+End');
    await expect.poll(() => keyboardAt(page)).toMatch(new RegExp(`^${rowCount - 1} `));
    expect(await ride.locator('tbody tr').count()).toBeLessThan(120);
    await page.keyboard.press('Control+Home');
    await expect.poll(() => keyboardAt(page)).toBe('0 0');
  });
});

test('a worked column is added, changed and found faulty in its place, and the others go on', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = card(page, 'Legs');
    await legs.getByRole('button', { name: 'Add a column' }).click();
    await legs.getByLabel('Head').fill('Twice');
    await legs.getByLabel('Figures').selectOption('worked');
    await legs.getByLabel('Formula of the new column').fill('distance + distance');
    await page.keyboard.press('Enter');
    const head = legs.getByRole('columnheader', { name: 'Twice' });
    const place = Number(await head.getAttribute('aria-colindex')) - 1;
    await expect.poll(() => words(figure(legs, 0, place))).toBe('520');

    await head.getByRole('button').click();
    await legs.getByRole('button', { name: 'Edit the formula' }).click();
    await legs.getByLabel('Formula of Twice').fill('distance + 3 kg');
    await page.keyboard.press('Enter');
    await legs.getByText('units differ').waitFor();
    await expect.poll(() => words(legs.locator('[part=fault]'))).toMatch(/Twice:.*distance.*kg/);
    expect(await words(figure(legs, 0, 1))).toBe('260');
  });
});

test('on a phone tables scroll inside their cards, and axe has nothing to say', async () => {
  const viewport = { width: 390, height: 844 };
  await withApp({ server, plan: false, viewport, touch: true }, async ({ page }) => {
    const legs = card(page, 'Legs');
    await figure(legs, 0, 1).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await legs.getByRole('button', { name: /^Length/ }).tap();
    await legs.getByLabel('Name in formulas').waitFor();
    expect(await axe(page)).toEqual([]);
  });
});

test('a table is saved as a CSV file from its settings, with what was written in it', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = card(page, 'Legs');
    await legs.locator('[data-row="0"][data-col="0"]').waitFor();
    await page.locator('sw-road .stop[data-stop="route"] .post').click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('sw-card-slip').getByRole('button', { name: 'Save as CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('legs.csv');
    const lines = (await readFile(await download.path(), 'utf8')).trimEnd().split('\r\n');
    expect(lines[0]).toMatch(/distance \(km\)/);
    // The example's 26 legs below the head.
    expect(lines.length).toBe(27);
    expect(lines[1]).toContain(await words(figure(legs, 0, 0)));
  });
});
