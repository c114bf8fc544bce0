import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { LEGS, PARTS, wideNotebook } from './support/wide-notebook.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const card = (page: Page, title: string): Locator =>
  page.locator('sw-picture-cell').filter({ has: page.locator('h2', { hasText: title }) });

const words = async (of: Locator): Promise<string> =>
  ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();

/** Figures of the open table under a picture, row by row. */
const tableOf = (picture: Locator): Promise<string[][]> =>
  picture
    .locator('details.figures tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.children].map((cell) => cell.textContent?.trim() ?? '')),
    );

test('a reading along the road is drawn from its table, told when pointed at, and follows another part', async () => {
  await withApp({ server }, async ({ page }) => {
    const picture = card(page, 'A reading along the road');
    await picture.locator('svg.drawn').waitFor();
    await picture.locator('details.figures > summary').click();
    const rows = await tableOf(picture);
    expect(rows.length).toBe(26);
    // One dot for each row, from left to right as the distances grow.
    const dots = await picture
      .locator('svg.drawn circle')
      .evaluateAll((all) => all.map((dot) => [dot.getAttribute('cx'), dot.getAttribute('cy')].map(Number)));
    expect(dots.length).toBe(rows.length);
    const [x0, y0] = dots[0]!;
    const [x1, y1] = dots.at(-1)!;
    dots.forEach(([x, y], at) => {
      const share = (value: string, first: string, last: string): number =>
        (number(value) - number(first)) / (number(last) - number(first));
      expect((x! - x0!) / (x1! - x0!)).toBeCloseTo(share(rows[at]![1]!, rows[0]![1]!, rows.at(-1)![1]!), 3);
      // Readings are shown with two decimals, of a range of some three millimetres.
      expect(
        Math.abs((y! - y0!) / (y1! - y0!) - share(rows[at]![2]!, rows[0]![2]!, rows.at(-1)![2]!)),
      ).toBeLessThan(0.006);
    });

    const height = (await picture.boundingBox())!.height;
    const last = rows.at(-1)!;
    // Cards above may still grow while the plan is made: the pointer goes where the place stands now.
    const told = async (): Promise<string> => {
      await picture.locator('#plot').hover({ position: { x: x1!, y: 80 } });
      return words(picture.locator('.readout'));
    };
    await expect.poll(told).toContain(`${last[0]}, ${last[1]} km: likely ${last[2]} mm`);
    expect(await words(picture.locator('tr.lit th'))).toBe(last[0]);
    await picture.locator('#plot').focus();
    await page.keyboard.press('ArrowLeft');
    await expect.poll(() => words(picture.locator('tr.lit th'))).toBe(rows.at(-2)![0]);
    expect((await picture.boundingBox())!.height).toBe(height);

    await picture.getByRole('combobox', { name: 'Which one is drawn' }).selectOption('Rear tyre');
    await expect.poll(() => words(picture.locator('.words'))).toMatch(/^Rear tyre: likely/);
    await page.keyboard.press('Control+z');
    await expect.poll(() => words(picture.locator('.words'))).toMatch(/^Drive chain: likely/);
  });
});

const number = (text: string): number => Number(text.replaceAll(',', '').replace('−', '-'));

test('the map tells a cell that is pointed at, opens it in the panel, and the bars carry their figures', async () => {
  await withApp({ server }, async ({ page }) => {
    // Cards above still grow while the plan is made.
    await page.locator('sw-plan-cell').getByText('Proven best').waitFor();
    const map = card(page, 'Where it would hurt');
    await map.locator('table.heat').waitFor();
    expect(await map.locator('tbody tr[data-part]').count()).toBe(14);
    await map.getByRole('button', { name: 'Show all 36' }).click();
    expect(await map.locator('tbody tr[data-part]').count()).toBe(36);
    const cell = map.locator('td.h.peak').first();
    const [percent, part] = [await words(cell), await words(cell.locator('xpath=../th'))];
    const told = async (): Promise<string> => {
      await cell.hover();
      return words(map.locator('.readout'));
    };
    await expect.poll(told).toMatch(new RegExp(`^${part}, .* gives up here in ${percent}?`));
    expect(await words(map.locator('tr.lit th'))).toBe(part);
    await cell.click();
    await page.locator('sw-side-panel').getByText(part).first().waitFor();

    const costs = card(page, 'What the trip costs');
    await costs.locator('svg.drawn').waitFor();
    await costs.locator('details.figures > summary').click();
    const rows = await tableOf(costs);
    const drawn = await costs.locator('svg.drawn').evaluate((svg) => svg.textContent ?? '');
    for (const [name, figure] of rows) {
      expect(drawn).toContain(name);
      expect(drawn).toContain(figure);
    }
    const takes = card(page, 'What each part takes');
    expect(await takes.locator('tbody tr').count()).toBe(12);
    expect(await axe(page)).toEqual([]);
  });
});

test('forty parts on sixty legs of a notebook from a file are drawn, every one of them', async () => {
  const folder = await mkdtemp(join(tmpdir(), 'sparewell-wide-'));
  const path = join(folder, 'wide.sparewell.json');
  await writeFile(path, writeNotebookFile(wideNotebook()));
  try {
    await withApp({ server }, async ({ page }) => {
      await page.locator('sw-head-bar').getByRole('button', { name: 'Notebook' }).click();
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.locator('sw-head-bar').getByRole('button', { name: 'Open file' }).click(),
      ]);
      await chooser.setFiles(path);
      const map = card(page, 'Map');
      await map.getByRole('button', { name: 'Show all 40' }).click();
      expect(await map.locator('td.h').count()).toBe(PARTS * LEGS);
      const band = card(page, 'Band');
      await band.locator('svg.drawn').waitFor();
      expect(await band.locator('svg.drawn circle').count()).toBe(LEGS);
    });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
});

test('working tables stand folded at first; what is opened stays open for this viewer', async () => {
  await withApp({ server }, async ({ page }) => {
    const severity = page
      .locator('sw-table-cell')
      .filter({ has: page.locator('h2', { hasText: 'Severity' }) });
    await severity.waitFor();
    expect(await severity.locator('table').count()).toBe(0);
    expect(await words(severity.locator('header'))).toContain('128 rows');
    await severity.getByRole('button', { name: 'Open Severity' }).click();
    await severity.locator('table').first().waitFor();
    await page.reload();
    await severity.locator('table').first().waitFor();
    await severity.getByRole('button', { name: 'Fold Severity' }).click();
    await severity.locator('table').first().waitFor({ state: 'detached' });
  });
});
