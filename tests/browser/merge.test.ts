import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { EXAMPLE, withoutPlan } from './support/without-plan.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

interface Json {
  cells: {
    id: string;
    content?: { value: unknown };
    pins?: Record<string, string>;
    columns?: { id: string; entries: unknown[] }[];
  }[];
  [field: string]: unknown;
}

/** The worked example as a partner might send it back. */
async function partnersFile(page: Page, url: string): Promise<Json> {
  const whole = await page.request.get(new URL(EXAMPLE, url).href);
  const json = JSON.parse(withoutPlan(await whole.text())) as Json;
  const cell = (id: string) => json.cells.find((one) => one.id === id)!;
  const entries = (name: string) => cell('wear').columns!.find(({ id }) => id === name)!.entries;
  const chain = entries('part').indexOf('Drive chain');
  cell('cash_limit').content!.value = 900;
  entries('now')[chain] = 320.2;
  cell('decision').pins = { 'Clutch cable': 'replace' };
  return json;
}

test('a partner’s file is compared, taken one by one and whole, and undone; others are refused or told apart', async () => {
  await withApp({ server, plan: false, viewport: { width: 390, height: 800 } }, async ({ page, url }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    const dialog = page.getByRole('dialog', { name: 'A partner’s file' });
    await chooseInMenu(page, 'Compare a partner’s file', dialog);
    const give = async (name: string, content: unknown): Promise<void> => {
      const text = typeof content === 'string' ? content : JSON.stringify(content);
      const chooser = page.waitForEvent('filechooser');
      await dialog.getByRole('button', { name: 'Choose the file' }).click();
      await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    const theirs = await partnersFile(page, url);
    await give('damaged.json', '{"format"');
    await dialog
      .getByText(/damaged\.json: This is not a whole notebook file.*Nothing was changed\./)
      .waitFor();
    await give('newer.json', { ...theirs, version: 99 });
    await dialog.getByText(/newer\.json: This notebook was saved by a newer Sparewell/).waitFor();
    await give('other.json', { ...theirs, id: 'other', title: 'Other trip' });
    await dialog.getByText('other.json is another notebook,').waitFor();

    await give('back.json', theirs);
    await dialog.getByText('3 things differ').waitFor();
    expect(await dialog.getByText('another notebook,').count()).toBe(0);
    expect(await axe(page, ['sparewell-app', 'sw-merge'])).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    const cash = page.locator('sw-value-cell').getByRole('textbox', { name: 'Cash for parts', exact: true });
    await dialog.getByRole('button', { name: /^Take Cash for parts/ }).focus();
    await page.keyboard.press('Enter');
    await dialog.getByText('Cash for parts taken; Undo puts yours back.').waitFor();
    await dialog.getByText('2 things differ').waitFor();
    expect(await cash.inputValue()).toBe('900');
    await dialog.getByRole('button', { name: 'Take all' }).click();
    await dialog.getByText('back.json has nothing that differs.').waitFor();
    await dialog.getByRole('button', { name: 'Close' }).click();

    for (const left of ['900', '1,050']) {
      await page.getByRole('button', { name: 'Notebook', exact: true }).click();
      await page.locator('sw-head-bar .menu').getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => cash.inputValue()).toBe(left);
    }
  });
}, 120_000);
