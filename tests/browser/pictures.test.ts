import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DIGIT_LINES } from '../../cells/picture/digit-lines.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { atRest } from './support/at-rest.ts';
import { axe } from './support/axe.ts';
import { type OpenedApp, openApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { withTablesOnly } from './support/tables-only.ts';
import { LEGS, PARTS, wideNotebook } from './support/wide-notebook.ts';

/** A busy machine takes its time. */
const SLOWLY = { timeout: 20_000 };

let server: AppServer;
// One opening for all that is looked at: a test leaves the page as the next one needs it.
let app: OpenedApp;

beforeAll(async () => {
  server = await serveApp();
  app = await openApp({ server, plan: false });
  await atRest(app.page);
}, 60_000);

afterAll(async () => {
  await app?.close();
  await server.close();
});

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
  const { page } = app;
  const picture = card(page, 'A reading along the road');
  await picture.locator('svg.drawn').waitFor();
  await picture.locator('details.figures > summary').click();
  const rows = await tableOf(picture);
  expect(rows.length).toBe(26);
  // One dot for each row, from left to right as the distances grow.
  const dots = await picture
    .locator('svg.drawn g:not(.pointer) > circle')
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
  const told = async (): Promise<string> => {
    await picture.locator('#plot').hover({ position: { x: x1!, y: 80 } });
    return words(picture.locator('.readout'));
  };
  await expect.poll(told).toContain(`${last[0]}, ${last[1]} km: likely ${last[2]} mm`);
  // Where the page moves under the pointer it is pointed at anew.
  await expect
    .poll(async () => {
      await told();
      return picture.locator('tr.lit th').allTextContents();
    })
    .toEqual([last[0]]);
  await picture.locator('#plot').focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => words(picture.locator('tr.lit th'))).toBe(rows.at(-2)![0]);
  expect((await picture.boundingBox())!.height).toBe(height);

  // In every frame painted while another part is drawn there is one drawing, and it stands where it stood.
  const frames = await watchFrames(page, 'A reading along the road');
  await picture.getByRole('combobox', { name: 'Which one is drawn' }).selectOption('Rear tyre');
  await expect.poll(() => words(picture.locator('.words'))).toMatch(/^Rear tyre: likely/);
  await page.keyboard.press('Control+z');
  await expect.poll(() => words(picture.locator('.words'))).toMatch(/^Drive chain: likely/);
  const painted = await frames();
  expect(painted.length).toBeGreaterThan(2);
  expect(new Set(painted).size, [...new Set(painted)].join('; ')).toBe(1);
  expect(painted[0]).toMatch(/^1 drawing/);
});

/** Notes for each frame how many drawings a picture has and where it stands, until what is returned is called. */
async function watchFrames(page: Page, title: string): Promise<() => Promise<string[]>> {
  const element = await card(page, title).elementHandle();
  await page.evaluate((host) => {
    const notes: string[] = [];
    const note = (): void => {
      const { top, height } = host!.getBoundingClientRect();
      const drawn = host!.shadowRoot!.querySelectorAll('svg.drawn path').length;
      notes.push(
        `${drawn > 0 ? '1 drawing' : 'none'} at ${Math.round(top + scrollY)}, ${Math.round(height)} high`,
      );
      if (!host!.hasAttribute('data-watched')) return;
      requestAnimationFrame(note);
    };
    host!.setAttribute('data-watched', '');
    requestAnimationFrame(note);
    Object.assign(host!, { notes });
  }, element);
  return () =>
    page.evaluate((host) => {
      host!.removeAttribute('data-watched');
      return (host as unknown as { notes: string[] }).notes;
    }, element);
}

const number = (text: string): number => Number(text.replaceAll(',', '').replace('−', '-'));

/** What the map draws: for each part its figures leg by leg, the steps of their shades, and its totals. */
const drawnMap = (map: Locator): Promise<Record<string, DrawnRow>> =>
  map.locator('svg.map').evaluate((svg, digits) => {
    const rows: Record<string, DrawnRow> = {};
    for (const group of svg.querySelectorAll<SVGGElement>('g[data-part]')) {
      // Each shade's path begins a box at the left edge of its leg.
      const shades = [...group.querySelectorAll('path[data-h]')].flatMap((path) =>
        [...(path.getAttribute('d') ?? '').matchAll(/M(\d+),/g)].map((edge) => ({
          left: Number(edge[1]),
          step: Number(path.getAttribute('data-h')),
        })),
      );
      shades.sort((a, b) => a.left - b.left);
      const figures = shades.map(() => '');
      for (const lines of group.querySelectorAll('path.digits')) {
        // Each digit begins in its middle, and is what its lines say.
        for (const [, x, line = ''] of (lines.getAttribute('d') ?? '').matchAll(/M([\d.]+) [\d.]+([^M]+)/g))
          figures[shades.findLastIndex(({ left }) => left <= Number(x))] += String(digits.indexOf(line));
      }
      rows[group.dataset.part ?? ''] = {
        figures,
        steps: shades.map(({ step }) => step),
        totals: [...group.querySelectorAll('text.total')].map((total) => total.textContent ?? ''),
      };
    }
    return rows;
  }, DIGIT_LINES);

interface DrawnRow {
  figures: string[];
  steps: number[];
  totals: string[];
}

test('the map draws the figures of its table, tells a cell that is pointed at and opens it in the panel', async () => {
  const { page } = app;
  const map = card(page, 'Where it would hurt');
  await map.locator('svg.map').waitFor();
  expect(Object.keys(await drawnMap(map)).length).toBe(14);
  expect(await axe(page, ['sparewell-app', 'sw-road', 'sw-picture-cell'])).toEqual([]);
  await map.getByRole('button', { name: 'Show all 36' }).click();
  await expect.poll(() => map.locator('svg.map g[data-part]').count()).toBe(36);
  await map.locator('details.figures > summary').click();
  await map.locator('details.figures tbody tr').first().waitFor();
  const table = await tableOf(map);
  expect(table.length).toBe(36);
  const drawn = await drawnMap(map);
  const bounds = (await map.locator('.key span').allTextContents()).flatMap((key) =>
    key.startsWith('from') ? [number(key.slice(5))] : [],
  );
  expect(bounds.length).toBe(5);
  for (const [part, ...cells] of table) {
    const { figures, steps, totals } = drawn[part!]!;
    expect(cells.slice(-2), part).toEqual(totals);
    cells.slice(0, -2).forEach((cell, leg) => {
      // Chance in percent with one decimal, and what is at stake with two, one under the other.
      const [, chance = '', cost = ''] = /^(<?[\d,]+\.\d)(<?[\d,]+\.\d\d)$/.exec(cell) ?? [];
      const percent = chance.startsWith('<') ? 0 : number(chance);
      // Half a percent shown may be a little less or more than half of one.
      if (percent % 1 !== 0.5)
        expect(figures[leg], `${part} ${leg}`).toBe(percent < 0.5 ? '' : String(Math.round(percent)));
      const stake = cost.startsWith('<') ? 0 : number(cost);
      expect(steps[leg], `${part} ${leg}`).toBe(bounds.filter((bound) => stake >= bound).length);
    });
  }
  await map.locator('details.figures > summary').click();

  const [part = '', row] = Object.entries(drawn).find(([, { steps }]) => steps.includes(5))!;
  const peak = map.locator(`g[data-part="${part}"] .peak`);
  const told = async (): Promise<string> => {
    await peak.hover({ force: true, position: { x: 9, y: 9 } });
    return words(map.locator('.readout'));
  };
  await expect.poll(told).toMatch(new RegExp(`^${part}, .* gives up here in `));
  expect(await words(map.locator('.names .lit'))).toBe(part);
  // By keyboard from the first cell: to the right, and down.
  await map.locator('#map').focus();
  await page.mouse.move(0, 0);
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key);
  const second = table[1]!;
  const percent = /^<?[\d,]+\.\d/.exec(second[2]!)![0];
  await expect
    .poll(() => words(map.locator('.readout')))
    .toMatch(new RegExp(`^${second[0]}, .* gives up here in ${percent} of 100 trips`));
  expect(row.figures.length).toBe(26);
  await page.keyboard.press('Enter');
  await page.locator('sw-side-panel').getByText(second[0]!).first().waitFor();
});

test('the bars of the costs carry the figures of their table, and each part has its own', async () => {
  const { page } = app;
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
});

test('an edit draws again what it changed, out of sight not before it comes near; a folded one is there again', async () => {
  const { page } = app;
  const band = card(page, 'A reading along the road');
  const costs = card(page, 'What the trip costs');
  await costs.locator('svg.drawn').waitFor();
  const before = await band.locator('svg.drawn').elementHandle();
  const figures = (): Promise<string[]> =>
    costs.locator('svg.drawn text').evaluateAll((all) => all.map((text) => text.textContent ?? ''));
  const drawn = await figures();
  const hour = page.getByRole('textbox', { name: 'An hour of work' });
  await hour.scrollIntoViewIfNeeded();
  await expect.poll(() => costs.getAttribute('far'), SLOWLY).not.toBeNull();
  await hour.fill('52');
  await hour.press('Enter');
  const told = page.locator('sw-tally-strip .delta', { hasText: 'EUR' });
  await told.first().waitFor();
  // The table under the picture follows when there is time, the drawing when it is seen.
  const table = async (): Promise<string[]> => (await tableOf(costs)).map(([, figure]) => figure ?? '');
  const isOld = async (): Promise<boolean> => (await table()).every((figure) => drawn.includes(figure));
  await expect.poll(isOld, SLOWLY).toBe(false);
  expect(await figures()).toEqual(drawn);
  await costs.scrollIntoViewIfNeeded();
  // Both go on until the plan is there.
  const isAsItsTable = async (): Promise<boolean> => {
    const inTable = await table();
    const inPicture = await figures();
    return inTable.every((figure) => inPicture.includes(figure));
  };
  await expect.poll(isAsItsTable, SLOWLY).toBe(true);
  // What a part's gauge shows does not hang on wages.
  expect(await before?.evaluate((svg) => svg.isConnected)).toBe(true);
  await band.getByRole('button', { name: 'Fold A reading' }).click();
  await band.locator('svg.drawn').waitFor({ state: 'detached' });
  await band.getByRole('button', { name: 'Open A reading' }).click();
  await band.locator('svg.drawn').waitFor();
});

test('working tables stand folded at first; what is opened stays open for this viewer', async () => {
  await withTablesOnly({ server }, async ({ page }) => {
    const suppliers = page
      .locator('sw-table-cell')
      .filter({ has: page.locator('h2', { hasText: 'Suppliers' }) });
    await suppliers.waitFor();
    expect(await suppliers.locator('table').count()).toBe(0);
    expect(await words(suppliers.locator('header'))).toMatch(/\d rows/);
    await suppliers.getByRole('button', { name: 'Open Suppliers' }).click();
    await suppliers.locator('table').first().waitFor();
    await page.reload();
    await suppliers.locator('table').first().waitFor();
    await suppliers.getByRole('button', { name: 'Fold Suppliers' }).click();
    await suppliers.locator('table').first().waitFor({ state: 'detached' });
  });
});

test('forty parts on sixty legs of a notebook from a file are drawn, every one of them', async () => {
  const { page } = app;
  await page.locator('sw-head-bar').getByRole('button', { name: 'Notebook', exact: true }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.locator('sw-head-bar').getByRole('button', { name: 'Open file' }).click();
  await (await chooser).setFiles({
    name: 'wide.sparewell.json',
    mimeType: 'application/json',
    buffer: Buffer.from(writeNotebookFile(wideNotebook())),
  });
  const map = card(page, 'Map');
  await map.getByRole('button', { name: 'Show all 40' }).click();
  await expect.poll(() => map.locator('svg.map g[data-part]').count()).toBe(PARTS);
  const drawn = Object.values(await drawnMap(map));
  expect(drawn.length).toBe(PARTS);
  for (const { steps } of drawn) expect(steps.length).toBe(LEGS);
  const band = card(page, 'Band');
  await band.locator('svg.drawn').waitFor();
  expect(await band.locator('svg.drawn g:not(.pointer) > circle').count()).toBe(LEGS);
});
