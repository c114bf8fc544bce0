import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, tableCard, words } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** The dialog, open. */
async function units(page: Page) {
  const dialog = page.getByRole('dialog', { name: 'Units and money' });
  await chooseInMenu(page, 'Units and money', dialog);
  return dialog;
}

const cash = (page: Page) => page.locator('sw-tally-strip .fig').first();
const field = (page: Page, name: string) => page.locator('sw-value-cell').getByRole('textbox', { name });

test('miles and dollars are shown and typed, kept as they were, and undone', async () => {
  await withApp({ server, plan: false, viewport: { width: 390, height: 800 } }, async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    const legs = tableCard(page, 'Legs');
    // Cards further down are drawn when the page has time.
    await expect.poll(async () => (await columnWords(legs, 1)).length).toBeGreaterThan(4);
    const km = (await columnWords(legs, 1)).slice(0, 4);
    await expect.poll(() => words(cash(page))).toMatch(/of 1,050 EUR/);

    const dialog = await units(page);
    await dialog.getByRole('radio', { name: /US gallons/ }).check();
    await dialog.getByRole('combobox').selectOption('USD');
    expect(await axe(page, ['sparewell-app', 'sw-units'])).toEqual([]);
    await dialog.getByRole('button', { name: 'Close' }).click();

    // 1,050 EUR at 0.92 EUR a dollar are 1,141 USD.
    await expect.poll(() => words(cash(page))).toMatch(/of 1,141 USD/);
    const miles = (await columnWords(legs, 1)).slice(0, 4);
    expect(miles).toEqual(km.map((figure) => String(Math.round(Number(figure.replace(',', '')) / 1.609344))));

    await field(page, 'Pack weight').fill('22');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page, 'Pack weight').inputValue()).toBe('22.0');
    await field(page, 'Pack weight').focus();
    // 22 pounds of 0.45359237 kg.
    expect(await field(page, 'Pack weight').inputValue()).toBe('9.97903214 kg');
    await field(page, 'Pack weight').blur();

    const undo = async () => {
      await page.getByRole('button', { name: 'Notebook', exact: true }).click();
      await page.locator('sw-head-bar .menu').getByRole('button', { name: 'Undo' }).click();
    };
    await undo();
    await undo();
    await expect.poll(() => words(cash(page))).toMatch(/of 1,050 EUR/);
    await undo();
    await expect.poll(async () => (await columnWords(legs, 1)).slice(0, 4)).toEqual(km);
  });
}, 120_000);

test('numbers are written and read as the browser’s locale has them', async () => {
  await withApp({ server, plan: false, locale: 'de-DE' }, async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    await expect.poll(() => words(cash(page))).toMatch(/of 1\.050 EUR/);
    await field(page, 'Pack weight').fill('12,5');
    await page.keyboard.press('Enter');
    await expect.poll(() => field(page, 'Pack weight').inputValue()).toBe('12,5');
    await field(page, 'Cash for parts').fill('1.234');
    await page.keyboard.press('Enter');
    await expect.poll(() => words(cash(page))).toMatch(/of 1\.234 EUR/);
  });
});
