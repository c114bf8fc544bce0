import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { LEG, LEG_COUNT, legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { figure, tableCard, words } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

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

test('typing writes, Enter and Tab keep and move on, Escape puts the old figure back, and what is no number is refused', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
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
    // In the field it stands in full.
    await page.keyboard.press('Enter');
    await expect.poll(() => legs.locator('sw-figure-field input').inputValue()).toBe('321.8688');
    await page.keyboard.press('Escape');

    // What is no number is refused where it was typed, and what was there stays.
    await figure(legs, 2, 1).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('12x');
    await page.keyboard.press('Enter');
    await legs.getByText("'x' is not a unit").waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => words(figure(legs, 2, 1))).toBe('240.0');
  });
});

test('what was left by Escape is not written by a click elsewhere, in a table nor on a form', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const undo = page.locator('sw-head-bar').getByRole('button', { name: 'Undo', exact: true });
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, LEG.length).click();
    await page.keyboard.type('999');
    await page.keyboard.press('Escape');
    await legs.getByRole('heading', { name: 'Legs' }).click();
    expect(await words(figure(legs, 0, LEG.length))).toBe('260');
    expect(await legs.locator('sw-figure-field').count()).toBe(0);

    const value = page.locator('sw-value-cell').getByRole('textbox');
    await value.click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('999');
    await page.keyboard.press('Escape');
    await legs.getByRole('heading', { name: 'Legs' }).click();
    await expect.poll(() => value.inputValue()).toBe('25');
    // A choice, too, is as it was.
    await figure(legs, 0, LEG.surface).click();
    await page.keyboard.press('Escape');
    await legs.getByRole('heading', { name: 'Legs' }).click();
    expect(await words(figure(legs, 0, LEG.surface))).toBe('sealed');
    expect(await undo.isDisabled()).toBe(true);

    // The same keys without Escape do write: the click is what keeps them.
    await figure(legs, 0, LEG.length).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('999');
    await legs.getByRole('heading', { name: 'Legs' }).click();
    await expect.poll(() => words(figure(legs, 0, LEG.length))).toBe('999');
    expect(await undo.isDisabled()).toBe(false);
  });
});

test('a figure with its unit goes into the unit of its own row, or is refused there', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const wear = tableCard(page, 'Wear');
    const write = async (row: number, text: string): Promise<void> => {
      await figure(wear, row, 1).focus();
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    };
    await write(2, '3/8 in');
    // 25.4 mm to the inch exactly (NIST SP 811, appendix B.8).
    await expect.poll(() => words(figure(wear, 2, 1))).toBe('9.525');
    expect(await words(figure(wear, 0, 1))).toBe('319.6');
    await write(1, '3/8 in');
    await wear.getByText('this field is in %').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => words(figure(wear, 1, 1))).toBe('2');
    await write(3, '4 mm');
    await wear.getByText('Write its unit under In first').waitFor();
    await page.keyboard.press('Escape');
  });
});

test('of a long table only what is in view is in the page, and the keyboard reaches its end', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const ride = tableCard(page, 'Where parts go');
    await ride.getByRole('button', { name: 'Open Where parts go' }).click();
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

    // Elements are lent from row to row: wherever one comes from, a row shows its own figures.
    const rowsShown = (): Promise<[place: string, words: string][]> =>
      grid.evaluate((table) =>
        [...table.querySelectorAll('tbody tr[aria-rowindex]')].map((row) => [
          row.getAttribute('aria-rowindex') ?? '',
          [...row.children].map((each) => `${each.getAttribute('data-row')} ${each.textContent}`).join('|'),
        ]),
      );
    const first = new Map(await rowsShown());
    await grid.evaluate((table) => table.parentElement?.scrollTo(0, 400 * 31));
    await expect.poll(async () => (await rowsShown()).some(([place]) => place === '402')).toBe(true);
    const elements = await grid.locator('tbody tr').count();
    for (const top of [380, 200, 12, 5, 0]) {
      await grid.evaluate((table, px) => table.parentElement?.scrollTo(0, px), top * 31);
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
      expect(await grid.locator('tbody tr').count()).toBeLessThanOrEqual(elements + 1);
    }
    await expect.poll(async () => (await rowsShown()).slice(0, 20)).toEqual([...first].slice(0, 20));
  });
});

test('a worked column is added, changed and found faulty in its place, and the others go on', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await legs.getByRole('button', { name: 'Add a column' }).click();
    await legs.getByLabel('Head').fill('Both ways');
    await legs.getByLabel('Figures').selectOption('worked');
    await legs.getByLabel('Formula of the new column').fill('distance + distance');
    await page.keyboard.press('Enter');
    const head = legs.getByRole('columnheader', { name: 'Both ways' });
    const place = Number(await head.getAttribute('aria-colindex')) - 1;
    await expect.poll(() => words(figure(legs, 0, place))).toBe('520');

    await head.getByRole('button').click();
    await legs.getByRole('button', { name: 'Edit the formula' }).click();
    await legs.getByLabel('Formula of Both ways').fill('distance + 3 kg');
    await page.keyboard.press('Enter');
    await legs.getByText('units differ').waitFor();
    await expect.poll(() => words(legs.locator('[part=fault]'))).toMatch(/Both ways:.*distance.*kg/);
    expect(await words(figure(legs, 0, 1))).toBe('260');
  });
});

test('on a phone tables scroll inside their cards, and axe has nothing to say', async () => {
  const viewport = { width: 390, height: 844 };
  await withNotebook({ server, viewport, touch: true }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, 1).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await legs.getByRole('button', { name: /^Length/ }).tap();
    await legs.getByLabel('Name in formulas').waitFor();
    expect(await axe(page)).toEqual([]);
  });
});

test('a table is saved as a CSV file from its settings, with what was written in it', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await legs.locator('[data-row="0"][data-col="0"]').waitFor();
    await page.locator('sw-road .stop[data-stop="route"] .post').click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.locator('sw-card-slip').getByRole('button', { name: 'Save as CSV' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('legs.csv');
    const lines = (await readFile(await download.path(), 'utf8')).trimEnd().split('\r\n');
    expect(lines[0]).toMatch(/distance \(km\)/);
    expect(lines.length).toBe(LEG_COUNT + 1);
    expect(lines[1]).toContain(await words(figure(legs, 0, 0)));
  });
});
