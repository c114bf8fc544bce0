import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { dropFile } from './support/drop-file.ts';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const title = (page: Page): Promise<string> =>
  page.getByRole('textbox', { name: 'Notebook name' }).inputValue();

/** The list of notebooks, open. */
async function list(page: Page): Promise<Locator> {
  const dialog = page.getByRole('dialog', { name: 'Notebooks on this device' });
  await chooseInMenu(page, 'All notebooks', dialog);
  await dialog.getByRole('listitem').first().waitFor();
  return dialog;
}

const line = (dialog: Locator, name: string): Locator =>
  dialog.getByRole('listitem').filter({ has: dialog.page().getByText(name, { exact: true }) });

test('notebooks are copied, renamed, opened, removed and put back', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    const first = await title(page);
    let dialog = await list(page);
    await expect
      .poll(() => line(dialog, first).textContent())
      .toMatch(/open now, changed today, .* cards, [\d.]+ kB/);
    expect(await axe(page, ['sparewell-app', 'sw-notebooks'])).toEqual([]);

    await line(dialog, first).getByRole('button', { name: /^Copy/ }).click();
    await expect.poll(() => title(page)).toBe(`${first}, copy`);

    dialog = await list(page);
    await line(dialog, first)
      .getByRole('button', { name: /^Rename/ })
      .click();
    await page.keyboard.type('Long way round');
    await page.keyboard.press('Enter');
    await line(dialog, 'Long way round').getByRole('button', { name: /^Open/ }).click();
    await expect.poll(() => title(page)).toBe('Long way round');

    dialog = await list(page);
    await line(dialog, 'Long way round')
      .getByRole('button', { name: /^Remove/ })
      .click();
    await dialog.getByText('Long way round was removed.').waitFor();
    await expect.poll(() => title(page)).toBe(`${first}, copy`);
    expect(await line(dialog, 'Long way round').count()).toBe(0);
    await dialog.getByRole('button', { name: 'Put it back' }).click();
    await line(dialog, 'Long way round').getByRole('button', { name: /^Open/ }).click();
    await expect.poll(() => title(page)).toBe('Long way round');

    await page.reload();
    await expect.poll(() => title(page)).toBe('Long way round');
    expect(await page.getByText('This device has lost').count()).toBe(0);
  });
});

test('a dropped file is opened; a newer, damaged or foreign one is refused with a sentence, and what is open stays', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    const first = await title(page);
    const sound = {
      format: 'sparewell-notebook',
      version: 1,
      id: 'dropped',
      title: 'Dropped trip',
      gist: '',
      money: 'EUR',
      cells: [],
    };
    const refused: readonly (readonly [string, unknown])[] = [
      ['newer.json', { ...sound, version: 99 }],
      ['foreign.json', { hello: 'world' }],
      ['damaged.json', 'half a fi'],
    ];
    for (const [name, content] of refused) {
      const text = typeof content === 'string' ? content : JSON.stringify(content);
      await dropFile(page, name, text);
      await page
        .locator('sw-head-bar .says')
        .filter({ hasText: new RegExp(`^${name}: .*What was open stays open\\.$`) })
        .waitFor();
      expect(await title(page)).toBe(first);
    }
    await dropFile(page, 'trip.sparewell.json', JSON.stringify(sound));
    await expect.poll(() => title(page)).toBe('Dropped trip');
  });
});
