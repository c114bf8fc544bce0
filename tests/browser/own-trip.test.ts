import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, tableCard } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const steps = (page: Page): Locator => page.getByRole('dialog', { name: 'Start your own trip' });
const title = (page: Page): Promise<string> =>
  page.getByRole('textbox', { name: 'Notebook name' }).inputValue();

/** The page once everything that is fetched later is there. */
async function ready(page: Page): Promise<void> {
  await page.locator('sw-value-cell input').first().waitFor();
  await expect
    .poll(() => page.evaluate(() => customElements.get('sw-empty-notebook') !== undefined))
    .toBe(true);
}

async function sound(page: Page): Promise<void> {
  const faults = await axe(page);
  expect(faults.filter(({ elements }) => elements.some((each) => each.includes('own-trip')))).toEqual([]);
}

/** Goes on with Tab until the focused control has this name; by keys alone. */
async function tabTo(page: Page, name: string): Promise<void> {
  const focused = () =>
    page.evaluate(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      const label = active instanceof HTMLInputElement ? active.labels?.[0]?.textContent : null;
      return (active?.getAttribute('aria-label') ?? label ?? active?.textContent ?? '')
        .replace(/\s+/g, ' ')
        .trim();
    });
  for (let tries = 0; tries < 80; tries += 1) {
    if ((await focused()).startsWith(name)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${name}; it stands on ${await focused()}.`);
}

test('by keyboard at 390 px: from an empty notebook through every step to calls that wait for what is missing', async () => {
  await withApp({ server, plan: false, viewport: { width: 390, height: 780 } }, async ({ page }) => {
    await ready(page);
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: 'New notebook' }).click();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.locator('sw-empty-notebook').waitFor();
    await page.getByRole('button', { name: 'Start your own trip, step by step' }).focus();
    await page.keyboard.press('Enter');
    await steps(page).waitFor();
    await sound(page);

    await tabTo(page, 'Name of the trip');
    await page.keyboard.type('North and back');
    await tabTo(page, 'Cash for parts');
    await page.keyboard.type('1,200 EUR');
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');

    await steps(page).getByRole('heading', { name: 'The parts' }).waitFor();
    await sound(page);
    await tabTo(page, 'Rear tyre, knobbly');
    await page.keyboard.press('Space');
    await tabTo(page, 'Rear tyre, knobbly, now, mm');
    await page.keyboard.type('1/4 in');
    await page.keyboard.press('Enter');
    await tabTo(page, 'Drive chain');
    await page.keyboard.press('Space');
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');

    await steps(page).getByRole('heading', { name: 'The route' }).waitFor();
    await tabTo(page, 'Type the first leg');
    await page.keyboard.press('Enter');
    await tabTo(page, 'From');
    await page.keyboard.type('Home');
    await tabTo(page, 'To');
    await page.keyboard.type('Far');
    await tabTo(page, 'Length, km');
    await page.keyboard.type('200 mi');
    await sound(page);
    await tabTo(page, 'Next');
    await page.keyboard.press('Enter');

    await steps(page).getByRole('heading', { name: 'The prices' }).waitFor();
    await sound(page);
    await tabTo(page, 'Skip this step');
    await page.keyboard.press('Enter');
    await steps(page).getByRole('heading', { name: 'The notebook' }).waitFor();
    await sound(page);
    expect(await steps(page).textContent()).toMatch(/Readings and ages:\s*of 1 of 2 parts: Drive chain/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await tabTo(page, 'Make the notebook');
    await page.keyboard.press('Enter');

    await expect.poll(() => title(page)).toBe('North and back');
    const wear = tableCard(page, 'Wear');
    await expect
      .poll(() => columnWords(wear, 0))
      .toEqual([expect.stringContaining('Rear tyre, knobbly'), expect.stringContaining('Drive chain')]);
    // A quarter of an inch is 6.35 mm, exactly.
    expect((await columnWords(wear, 2))[0]).toBe('6.35');
    // 200 international miles of 1.609344 km are 321.8688 km; legs are in whole ones.
    expect((await columnWords(tableCard(page, 'Legs'), 1))[0]).toBe('322');
    await page.getByText('When it was begun, this was left for later').waitFor({ state: 'attached' });
  });
}, 120_000);

const points = ['Here', 'There', 'Yonder'].map(
  (name, at) => `<rtept lat="${at}" lon="10"><name>${name}</name></rtept>`,
);
const gpx = `<gpx version="1.1"><rte>${points.join('')}</rte></gpx>`;
const prices = readFileSync(
  new URL('../../datasets/plateau-loop/prices-northgate-spares.csv', import.meta.url),
);

/** Brings a file in through the dialog that the step opens. */
async function bringIn(page: Page, step: string, name: string, buffer: Buffer): Promise<Locator> {
  await steps(page).getByRole('button', { name: step }).click();
  const files = page.locator('sw-import-dialog dialog');
  await files.waitFor();
  const chooser = page.waitForEvent('filechooser');
  await files.getByRole('button', { name: 'Choose a file' }).click();
  await (await chooser).setFiles({ name, mimeType: 'text/plain', buffer });
  return files;
}

test('from the list of notebooks: a track and a price list come in on the way, a step is gone back to, and undo begins with the notebook', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    await ready(page);
    const list = page.getByRole('dialog', { name: 'Notebooks on this device' });
    await chooseInMenu(page, 'All notebooks', list);
    await list.getByRole('button', { name: 'Start your own trip' }).click();
    await steps(page)
      .getByRole('button', { name: /The parts/ })
      .click();
    await steps(page).getByRole('button', { name: 'All of Brakes' }).click();
    await steps(page).getByRole('textbox', { name: 'Front brake pads, now, mm' }).fill('2.4');

    await steps(page)
      .getByRole('button', { name: /The route/ })
      .click();
    let files = await bringIn(page, 'Bring in a track or a table', 'way.gpx', Buffer.from(gpx));
    await files.getByRole('button', { name: 'Bring in 2 rows' }).click();
    await files.waitFor({ state: 'hidden' });
    // A degree of the meridian from the equator is 110.57 km and the next 110.58 km (WGS 84, NGA TR8350.2).
    await steps(page).getByText('2 legs, 221 km, from a file.').waitFor();

    await steps(page)
      .getByRole('button', { name: /The prices/ })
      .click();
    files = await bringIn(page, 'Bring in a price list', 'northgate.csv', prices);
    await files.locator('#supplier').selectOption({ label: 'A new supplier…' });
    await files.locator('#new-supplier').fill('Northgate');
    await files.getByRole('button', { name: 'Take', exact: true }).click();
    await files.getByRole('checkbox', { name: /^Bring in all/ }).check();
    await expect.poll(() => files.getByRole('button', { name: /^Bring in \d/ }).isEnabled()).toBe(true);
    await files.getByRole('button', { name: /^Bring in \d/ }).click();
    await files.waitFor({ state: 'hidden' });
    await steps(page)
      .getByText(/offers?, \d+ for parts that you have ticked/)
      .waitFor();

    await steps(page)
      .getByRole('button', { name: /The parts/ })
      .click();
    await steps(page).getByRole('checkbox', { name: 'Brake fluid, 250 mL' }).uncheck();
    // Closed and opened again it goes on where it was.
    await steps(page).getByRole('button', { name: 'Close' }).click();
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.getByRole('button', { name: 'New notebook' }).click();
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    await steps(page).getByRole('heading', { name: 'The parts' }).waitFor();
    expect(await steps(page).getByRole('textbox', { name: 'Front brake pads, now, mm' }).inputValue()).toBe(
      '2.4',
    );
    await steps(page)
      .getByRole('button', { name: /The notebook/ })
      .click();
    await steps(page).getByRole('button', { name: 'Make the notebook' }).click();

    await expect.poll(() => title(page)).toBe('My trip');
    const wear = tableCard(page, 'Wear');
    await expect.poll(() => columnWords(wear, 0)).toHaveLength(6);
    expect((await columnWords(tableCard(page, 'Legs'), 0)).length).toBe(2);
    await page.reload();
    await expect.poll(() => title(page)).toBe('My trip');
    const undo = page.locator('sw-head-bar').getByRole('button', { name: 'Undo', exact: true });
    expect(await undo.isDisabled()).toBe(true);
  });
}, 120_000);
