import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { FUNCTIONS } from '../../src/formula/functions/registry.ts';
import { axe } from './support/axe.ts';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** The card of a formula, being written in the editor. */
async function writing(page: Page, heading: string): Promise<Locator> {
  const card = page
    .locator('sw-formula-cell')
    .filter({ has: page.getByRole('heading', { name: heading, exact: true }) });
  await card.locator('.fx').click();
  await card.locator('.cm-content').waitFor();
  return card;
}

const offers = (card: Locator): Locator => card.getByRole('listbox').getByRole('option');

test('names are completed, the function at hand explains itself, and the result stands below before it is kept', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const card = await writing(page, 'Work in the shed');
    const kept = await card.locator('.cm-content').textContent();
    await page.keyboard.type(' + max(hour_v');
    await offers(card).filter({ hasText: 'hour_value' }).waitFor();
    const call = card.locator('.call');
    await expect.poll(() => call.textContent()).toMatch(/^max\(/);
    await expect.poll(() => call.locator('.now').textContent()).toBe('x');
    await page.keyboard.press('Tab');
    await expect.poll(() => card.locator('.cm-content').textContent()).toBe(`${kept} + max(hour_value)`);
    await page.keyboard.type(' * 2 h, 0 EUR');
    await expect.poll(() => card.locator('.would').textContent()).toMatch(/EUR$/);
    expect(
      (await axe(page)).filter(({ elements }) => elements.some((each) => each.includes('sw-formula'))),
    ).toEqual([]);

    // Enter keeps, even while something is offered that has not been gone to.
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await expect.poll(() => card.locator('.cm-content').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await card.locator('.fx').click();
    await expect.poll(() => card.locator('.cm-content').textContent()).toBe(kept);
  });
});

test('a fault is marked where it is, and its one mend is taken with one press', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const card = await writing(page, 'Work in the shed');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('hour_valu * 3 h');
    await expect.poll(() => card.locator('.cm-content mark').textContent()).toBe('hour_valu');
    expect(await card.locator('.cm-content').getAttribute('aria-invalid')).toBe('true');
    await card.getByRole('button', { name: 'Use hour_value' }).click();
    await expect.poll(() => card.locator('.cm-content').textContent()).toBe('hour_value * 3 h');
    expect(await card.locator('.cm-content mark').count()).toBe(0);
    await page.keyboard.press('Escape');
    await expect.poll(() => card.locator('.cm-content').count()).toBe(0);
  });
});

test('all functions are listed from the registry, and one is written where the cursor is', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const card = await writing(page, 'Work in the shed');
    await page.keyboard.type(' + ');
    await card.getByRole('button', { name: 'Functions' }).click();
    const list = card.getByRole('dialog', { name: 'Functions' });
    await expect.poll(() => list.locator('article').count()).toBe(FUNCTIONS.size);
    expect(
      (await axe(page)).filter(({ elements }) => elements.some((each) => each.includes('sw-function'))),
    ).toEqual([]);
    await list.getByRole('searchbox').fill('survival');
    await expect.poll(() => list.locator('article').count()).toBeLessThan(6);
    await list.getByRole('button', { name: /^Write it\s?: survival$/ }).click();
    await expect.poll(() => card.locator('.cm-content').textContent()).toMatch(/ \+ survival\($/);
    await expect.poll(() => card.locator('.call').textContent()).toMatch(/^survival\(/);
  });
});

test('on a phone the offers stay on the screen, leave what a function takes in sight, and are taken by a tap', async () => {
  const viewport = { width: 390, height: 844 };
  await withNotebook({ server, viewport, touch: true }, legsNotebook(), async ({ page }) => {
    const card = await writing(page, 'Work in the shed');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('hour_v');
    const offer = offers(card).filter({ hasText: 'hour_value' }).first();
    await offer.waitFor();
    const box = (await offer.boundingBox())!;
    expect(box.x).toBeGreaterThanOrEqual(0);
    expect(box.x + box.width).toBeLessThanOrEqual(390);
    expect(box.height).toBeGreaterThanOrEqual(44);
    await offer.tap();
    await expect.poll(() => card.locator('.cm-content').textContent()).toBe('hour_value');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('max(hour_v');
    await offer.waitFor();
    const list = (await card.getByRole('listbox').boundingBox())!;
    const takes = (await card.locator('.call').boundingBox())!;
    expect(list.y + list.height <= takes.y || list.y >= takes.y + takes.height).toBe(true);
  });
});
