import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, figure, tableCard, words } from './support/table-card.ts';

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
  const dialog = page.getByRole('dialog', { name: 'Moments and what-ifs' });
  await chooseInMenu(page, 'Moments and what-ifs', dialog);
  return dialog;
}

test('undo and redo go on after the page was loaded again', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
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
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
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
    await dialog.getByLabel('compare with now as planned').check();
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

test('two tabs are one notebook: edits made in both are kept, and undone from one of them', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page, context }) => {
    await figure(tableCard(page, 'Legs'), 0, LENGTH).waitFor();
    await writeLength(page, 0, '111');
    await kept(page);
    const other = await context.newPage();
    await other.goto(page.url());
    const [here, there] = [tableCard(page, 'Legs'), tableCard(other, 'Legs')];
    await expect.poll(() => words(figure(there, 0, LENGTH))).toBe('111');

    await writeLength(other, 1, '222');
    await expect.poll(() => words(figure(here, 1, LENGTH))).toBe('222');
    // At the same time, one in each.
    await Promise.all([writeLength(page, 2, '333'), writeLength(other, 3, '444')]);
    const all = ['111', '222', '333', '444'];
    for (const legs of [here, there])
      await expect.poll(async () => (await columnWords(legs, LENGTH)).slice(0, 4)).toEqual(all);

    // One notebook has one past: from either tab it is gone back to the beginning, and the other follows.
    const undo = page.locator('sw-head-bar').getByRole('button', { name: 'Undo', exact: true });
    for (let steps = 0; (await undo.isEnabled()) && steps < 10; steps += 1) await undo.click();
    for (const legs of [here, there])
      await expect
        .poll(async () => (await columnWords(legs, LENGTH)).slice(0, 4))
        .toEqual(['260', '310', '240', '230']);
  });
});
