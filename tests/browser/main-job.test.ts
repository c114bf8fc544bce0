import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { wholeMoney } from '../../cells/calls/calls-words.ts';
import { showNumber } from '../../src/formula/show.ts';
import type { Entry, TallyCell } from '../../src/notebook/document.ts';
import { entryEdit, valueEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { threadPlanner } from '../notebook/thread-planner.ts';
import { demo, figures, texts } from '../starter/support.ts';
import { openApp, withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { sharedApp } from './support/shared-app.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const card = (page: Page, heading: string): Locator =>
  page.locator('sw-table-cell').filter({ has: page.getByRole('heading', { name: heading, exact: true }) });

/** Cards keep their long tables short until asked. */
async function showAll(of: Locator): Promise<void> {
  const more = of.getByRole('button', { name: /^Show all \d+ rows$/ });
  if ((await more.count()) > 0) await more.click();
}

async function type(page: Page, field: Locator, text: string): Promise<void> {
  await field.click();
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Enter');
}

/** Place of a column among those on the card, by its head. */
async function columnAt(of: Locator, head: RegExp): Promise<number> {
  return Number(await of.getByRole('columnheader', { name: head }).first().getAttribute('aria-colindex')) - 1;
}

async function typeInTable(
  page: Page,
  heading: string,
  row: number,
  head: RegExp,
  text: string,
): Promise<void> {
  const table = card(page, heading);
  await showAll(table);
  await type(page, table.locator(`[data-row="${row}"][data-col="${await columnAt(table, head)}"]`), text);
}

/** The tally and the calls as the page shows them. */
async function shownOnPage(page: Page): Promise<{ tally: string[]; calls: string[] }> {
  const more = page.locator('sw-calls-cell').getByRole('button', { name: /^Show all \d+$/ });
  if ((await more.count()) > 0) await more.click();
  const tally = await page
    .locator('sw-tally-strip .fig[data-node] .n')
    .evaluateAll((all) => all.map((one) => one.textContent ?? ''));
  const calls = await page.locator('sw-calls-cell tbody tr').evaluateAll((rows) =>
    rows.map((row) => {
      const cost = [...(row.querySelector('td.chosen')?.childNodes ?? [])].find(
        (node) => node.nodeType === Node.TEXT_NODE && node.textContent?.trim() !== '',
      );
      return `${row.querySelector('th')?.textContent ?? ''}: ${cost?.textContent ?? ''}`;
    }),
  );
  return { tally: tally.map(bare), calls: calls.map((line) => line.replace(/\s+/g, ' ').trim()).sort() };
}

const bare = (text: string): string => /^[−<]?[\d.,]+/.exec(text.trim())?.[0] ?? text.trim();

/** The same from the notebook without a screen. */
function shownHeadless(live: LiveNotebook): { tally: string[]; calls: string[] } {
  const cell = live.document.cells.find((held): held is TallyCell => held.kind === 'tally');
  const tally = (cell?.figures ?? []).map((figure) => {
    const value = figures(live, figure.figure)[0] as number;
    return showNumber(figure.percent ? value * 100 : value, figure.decimals);
  });
  const costs = figures(live, 'decision.cost');
  const calls = texts(live, 'decision.part').map(
    (part, row) => `${part}: ${wholeMoney(costs[row] as number)}`,
  );
  return { tally, calls: calls.sort() };
}

function put(live: LiveNotebook, table: string, column: string, row: number, entry: Entry): void {
  const cell = live.document.cells.find((held) => held.kind === 'table' && held.name === table);
  const id = cell?.kind === 'table' ? cell.columns.find((held) => held.name === column)?.id : undefined;
  if (id === undefined) throw new Error(`no column ${table}.${column}`);
  live.apply(entryEdit(live.document, table, id, row, entry));
}

async function opened(page: Page): Promise<void> {
  await page.locator('sw-calls-cell tbody tr').first().waitFor();
  await expect.poll(() => page.locator('sw-tally-strip .fig').nth(4).textContent()).toMatch(/\d/);
}

async function expectSame(page: Page, live: LiveNotebook): Promise<void> {
  await live.settled();
  const wanted = shownHeadless(live);
  expect(wanted.calls.length).toBeGreaterThanOrEqual(28);
  await expect.poll(() => shownOnPage(page), { timeout: 40_000 }).toEqual(wanted);
}

describe('the page shows what the notebook without a screen works out', () => {
  test('a leg, a reading, a price and a value are edited, and calls and totals follow', {
    timeout: 180_000,
  }, async () => {
    const live = LiveNotebook.open(demo(), threadPlanner());
    await withApp({ server }, async ({ page }) => {
      await opened(page);
      await expectSame(page, live);
      const first = shownHeadless(live);

      await typeInTable(page, 'Legs', 2, /^Length/, '780');
      put(live, 'route', 'distance', 2, 780);
      const chain = texts(live, 'wear.part').indexOf('Drive chain');
      await typeInTable(page, 'Wear', chain, /^Now/, '321,6');
      put(live, 'wear', 'now', chain, 321.6);
      await expectSame(page, live);

      await typeInTable(page, 'Prices', 3, /^Their price/, '412.50');
      put(live, 'prices', 'price', 3, 412.5);
      await type(page, page.locator('sw-value-cell input[aria-label="A lost day"]'), '130');
      const cell = live.document.cells.find((held) => held.kind === 'value' && held.name === 'day_value');
      if (cell?.kind !== 'value' || cell.content.type !== 'number') throw new Error('no value day_value');
      live.apply(valueEdit(live.document, cell.id, { ...cell.content, value: 130 }));
      await expectSame(page, live);
      expect(shownHeadless(live)).not.toEqual(first);

      // Four edits, four steps back.
      for (let step = 0; step < 4; step++) {
        await page.locator('sw-head-bar').getByRole('button', { name: 'Undo' }).click();
        live.undo();
      }
      await expectSame(page, live);
      expect(shownHeadless(live)).toEqual(first);
    });
  });
});

describe('what is written is there again', () => {
  async function keptFolder(use: (folder: string) => Promise<void>): Promise<void> {
    const folder = await mkdtemp(join(tmpdir(), 'sparewell-kept-'));
    try {
      await use(folder);
    } finally {
      await rm(folder, { recursive: true, force: true, maxRetries: 10 });
    }
  }

  const kept = (page: Page): Locator => page.locator('sw-head-bar .kept').first();
  const hour = (page: Page): Locator => page.locator('sw-value-cell input[aria-label="An hour of work"]');

  test('after a reload, and after the browser is killed as soon as saved shows', async () => {
    await keptFolder(async (userDataFolder) => {
      const first = await openApp({ server, userDataFolder, plan: false });
      await opened(first.page);
      await expect.poll(() => kept(first.page).textContent()).toMatch(/^Kept on this device/);
      await type(first.page, hour(first.page), '31');
      await expect.poll(() => kept(first.page).textContent()).toMatch(/^Kept on this device/);
      await first.page.reload();
      await opened(first.page);
      await expect.poll(() => hour(first.page).inputValue()).toBe('31.00');

      await type(first.page, hour(first.page), '47');
      await expect
        .poll(() => first.page.locator('sw-tally-strip .edit .what').textContent())
        .toMatch(/31 to 47/);
      await expect.poll(() => kept(first.page).textContent()).toMatch(/^Kept on this device/);
      await first.kill();

      const second = await openApp({ server, userDataFolder, plan: false });
      await opened(second.page);
      await expect.poll(() => hour(second.page).inputValue()).toBe('47.00');
      await second.close();
    });
  });
});

describe('faults in the page', () => {
  const example = sharedApp({ plan: false });

  test('an entry that is no number is boxed in its field and listed; the other calls stand', async () => {
    const page = await example();
    await opened(page);
    const before = (await shownOnPage(page)).calls.filter((line) => !line.startsWith('Drive chain'));
    const wear = card(page, 'Wear');
    await showAll(wear);
    // A CSV can bring what a field refuses; the notebook file is the way in here.
    const live = LiveNotebook.open(demo());
    await live.settled();
    const chain = texts(live, 'wear.part').indexOf('Drive chain');
    await type(
      page,
      wear.locator(`[data-row="${chain}"][data-col="${await columnAt(wear, /^Now/)}"]`),
      '319,6O',
    );
    await wear
      .getByText(/is not a (number|unit)/)
      .first()
      .waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    expect((await shownOnPage(page)).calls.filter((line) => !line.startsWith('Drive chain'))).toEqual(before);
  });

  test('a formula with a wrong unit, an unknown name and a circle shows its sentence on its card', async () => {
    const page = await example();
    await opened(page);
    const formula = (heading: string): Locator =>
      page.locator('sw-formula-cell').filter({ has: page.locator('h2', { hasText: heading }) });
    const write = async (heading: string, text: string): Promise<void> => {
      const of = formula(heading);
      await of.locator('.fx').first().click();
      const area = of.locator('sw-formula-line').getByRole('textbox');
      await area.fill(text);
      await area.press('Enter');
    };
    await write('Fuel cost', 'sum(route.fuel_cost) + whole_distance');
    await formula('Fuel cost')
      .getByText(/These cannot be added/)
      .first()
      .waitFor();
    await write('Days to the cut-off', 'days_untill(cut_off)');
    await formula('Days to the cut-off').getByText('There is no function days_untill().').first().waitFor();
    await write('Work in the shed', 'calls_cost * 2');
    await formula('Work in the shed')
      .getByText(/These figures need one another/)
      .first()
      .waitFor();
    await formula('Expected total')
      .getByText(/waits for/i)
      .first()
      .waitFor();
    expect(await page.locator('sw-calls-cell td.chosen').count()).toBeGreaterThan(10);
  });
});
