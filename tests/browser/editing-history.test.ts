import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { figure, tableCard, words } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const LENGTH = 1;

async function writeLength(page: Page, row: number, text: string): Promise<void> {
  const legs = tableCard(page, 'Legs');
  await figure(legs, row, LENGTH).focus();
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

const kept = (page: Page): Promise<void> =>
  page
    .getByText(/^Kept on this device/)
    .first()
    .waitFor();

async function moments(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Notebook', exact: true }).click();
  await page.getByRole('button', { name: 'Moments and what-ifs' }).click();
  const dialog = page.getByRole('dialog', { name: 'Moments and what-ifs' });
  await dialog.waitFor();
  return dialog;
}

test('undo and redo go on after the page was loaded again', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, LENGTH).waitFor();
    const first = await words(figure(legs, 0, LENGTH));
    await writeLength(page, 0, '111');
    await writeLength(page, 0, '222');
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('222');
    const undo = page.getByRole('button', { name: 'Undo', exact: true }).first();
    const redo = page.getByRole('button', { name: 'Redo', exact: true }).first();
    await undo.click();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('111');
    await kept(page);

    await page.reload();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('111');
    await expect.poll(() => redo.isEnabled()).toBe(true);
    await redo.click();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('222');
    await undo.click();
    await undo.click();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe(first);
    expect(await undo.isEnabled()).toBe(false);
  });
});

test('a what-if stands beside what is on the page, and is gone to or dropped', async () => {
  await withApp({ server, plan: false }, async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, LENGTH).waitFor();
    const first = await words(figure(legs, 0, LENGTH));
    let dialog = await moments(page);
    await dialog.getByLabel(/^Name of what stands/).fill('as planned');
    await dialog.getByRole('button', { name: 'Note it' }).click();
    await dialog.getByRole('listitem').filter({ hasText: 'as planned' }).waitFor();
    await dialog.getByRole('button', { name: 'Close the moments' }).click();

    await writeLength(page, 0, '1900');
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('1,900');
    dialog = await moments(page);
    await dialog.getByLabel('beside now as planned').check();
    const totals = dialog.getByRole('table', { name: 'Totals' });
    await expect
      .poll(() => totals.getByRole('columnheader').allTextContents())
      .toEqual(['Figure', 'now', 'as planned']);
    await expect.poll(() => totals.locator('td.differs').count()).toBeGreaterThan(0);
    await expect.poll(() => totals.getByText('working', { exact: true }).count()).toBe(0);
    await dialog.getByText(`${first} to 1,900 km`).waitFor();
    expect(await axe(page, ['sparewell-app', 'sw-moments'])).toEqual([]);

    await dialog.getByRole('button', { name: /^Go to it/ }).click();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe(first);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await expect.poll(() => words(figure(legs, 0, LENGTH))).toBe('1,900');
    dialog = await moments(page);
    await dialog.getByRole('button', { name: /^Drop it/ }).click();
    await expect.poll(() => dialog.getByRole('listitem').count()).toBe(0);
  });
});
