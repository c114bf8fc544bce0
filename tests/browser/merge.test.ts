import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Cell, NotebookDocument } from '../../src/notebook/document.ts';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** The notebook as a partner might send it back. */
function partnersFile(): NotebookDocument {
  const sent = legsNotebook();
  const cells = sent.cells.map((cell): Cell => {
    if (cell.kind === 'value') return { ...cell, content: { ...cell.content, value: 30 } as never };
    if (cell.kind !== 'table') return cell;
    const columns = cell.columns.map((column) => {
      if (column.kind === 'worked') return column;
      if (cell.name === 'wear' && column.name === 'now')
        return { ...column, entries: column.entries.with(0, 320.2) };
      if (cell.name === 'route' && column.name === 'surface')
        return { ...column, entries: column.entries.with(4, 'sand') };
      return column;
    });
    return { ...cell, columns };
  });
  return { ...sent, cells };
}

test('a partner’s file is compared, taken one by one and whole, and undone; others are refused or told apart', async () => {
  await withNotebook({ server, viewport: { width: 390, height: 800 } }, legsNotebook(), async ({ page }) => {
    await page.locator('sw-value-cell input').first().waitFor();
    const dialog = page.getByRole('dialog', { name: 'A partner’s file' });
    await chooseInMenu(page, 'Compare a partner’s file', dialog);
    const give = async (name: string, content: unknown): Promise<void> => {
      const text = typeof content === 'string' ? content : JSON.stringify(content);
      const chooser = page.waitForEvent('filechooser');
      await dialog.getByRole('button', { name: 'Choose the file' }).click();
      await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    const theirs = partnersFile();
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
    const hour = page.locator('sw-value-cell').getByRole('textbox', { name: 'hour_value', exact: true });
    await dialog.getByRole('button', { name: /^Take hour_value/ }).focus();
    await page.keyboard.press('Enter');
    await dialog.getByText('hour_value taken; Undo puts yours back.').waitFor();
    await dialog.getByText('2 things differ').waitFor();
    expect(await hour.inputValue()).toBe('30');
    await dialog.getByRole('button', { name: 'Take all' }).click();
    await dialog.getByText('back.json has nothing that differs.').waitFor();
    await dialog.getByRole('button', { name: 'Close' }).click();

    for (const left of ['30', '25']) {
      await page.getByRole('button', { name: 'Notebook', exact: true }).click();
      await page.locator('sw-head-bar .menu').getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => hour.inputValue()).toBe(left);
    }
  });
});
