import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe, type Violation } from './support/axe.ts';
import { FEW_BUDGET, openFewParts } from './support/few-parts.ts';
import { type OpenedApp, openApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';

// A plan is worked out in a second or so; a busy machine takes its time.
const SLOWLY = { timeout: 60_000 };

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

async function words(of: Locator): Promise<string> {
  return ((await of.textContent()) ?? '').replace(/\s+/g, ' ').trim();
}

/** Accessibility faults of the plan, the calls and the panel. */
async function oursIn(page: Page): Promise<readonly Violation[]> {
  const parts = [['sw-road', 'sw-plan-cell'], ['sw-road', 'sw-calls-cell'], ['sw-side-panel']];
  const found: Violation[] = [];
  for (const part of parts) found.push(...(await axe(page, ['sparewell-app', ...part])));
  return found;
}

const plan = (page: Page): Locator => page.locator('sw-plan-cell');
const calls = (page: Page): Locator => page.locator('sw-calls-cell');

function callOf(page: Page, part: string): Locator {
  return calls(page)
    .getByRole('row')
    .filter({ has: page.getByRole('rowheader', { name: part }) });
}

/** The picture of spending against risk, looked at until it has the button. */
async function frontierSeen(page: Page, button: string): Promise<Locator> {
  const frontier = page.locator('sw-picture-cell sw-frontier');
  await frontier.waitFor(SLOWLY);
  // Cards above are still drawn when the page has time, and push it out of sight.
  const looked = async (): Promise<number> => {
    await frontier.evaluate((element) => element.scrollIntoView({ block: 'center' }));
    return frontier.getByRole('button', { name: button }).count();
  };
  await expect.poll(looked, SLOWLY).toBe(1);
  return frontier;
}

/** The same with all its points. */
const spending = (page: Page): Promise<Locator> => frontierSeen(page, 'Work it out again');

/** A figure of the plan's card, such as Cash. */
async function sum(page: Page, name: string): Promise<number> {
  const shown = await words(plan(page).locator('.sums div', { hasText: name }).first().locator('dd'));
  return Number(shown.replaceAll(',', '').replace('−', '-').split(' ')[0]);
}

const settled = (page: Page): Promise<void> =>
  expect.poll(async () => words(plan(page).locator('header .state')), SLOWLY).toMatch(/settled$/);

async function ready(page: Page): Promise<void> {
  await plan(page).getByText('Proven best').waitFor(SLOWLY);
  await settled(page);
}

/** Where what stays stands: words in the head of the calls, and the plan down to its limits. */
async function placesOf(page: Page): Promise<readonly unknown[]> {
  const staying = [
    calls(page).locator('header .in'),
    calls(page).locator('header .state > :last-child'),
    plan(page).locator('header h2'),
    plan(page).locator('.limits tbody'),
  ];
  return Promise.all(staying.map((one) => one.boundingBox()));
}

const budgetField = (page: Page): Locator =>
  page.locator('sw-value-cell').getByLabel('Cash for parts').first();

async function setBudget(page: Page, sumOf: string): Promise<void> {
  const field = budgetField(page);
  await field.fill(sumOf);
  await field.press('Enter');
}

describe('the worked example', () => {
  /** The page that the tests share, in their order. */
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp({ server });
  });
  afterAll(() => app.close());

  test('the plan is proven best; its calls, purchases, limits and totals agree', async () => {
    const { page } = app;
    await ready(page);
    const cash = await sum(page, 'Cash');
    expect(cash).toBeGreaterThan(0);
    expect(cash).toBeLessThanOrEqual(1050);
    const foot = await words(plan(page).locator('.shopping tfoot td').last());
    expect(Number(foot.replaceAll(',', ''))).toBe(cash);
    const shown = Math.round(cash).toLocaleString('en');
    await expect.poll(() => words(page.locator('sw-tally-strip .tally')), SLOWLY).toContain(shown);
    // What one more of each limit would save comes by itself, once the plan rests.
    await plan(page)
      .locator('.limits td.more-saves', { hasText: '50 EUR more saves' })
      .waitFor({ state: 'attached', ...SLOWLY });
  });

  test('every card is settled, and the notebook is kept under its name', async () => {
    const { page } = app;
    const stops = page.locator('sw-road .stop[data-stop]');
    expect(await stops.count()).toBeGreaterThan(20);
    await expect
      .poll(async () => {
        const labels = await stops.evaluateAll((all) => all.map((stop) => stop.getAttribute('aria-label')));
        return labels.filter((label) => !label?.endsWith(', settled'));
      }, SLOWLY)
      .toEqual([]);
    expect(await page.locator('sw-head-bar h1 input').inputValue()).toBe('Plateau loop');
    await expect
      .poll(() => page.locator('sw-head-bar .kept').first().textContent())
      .toMatch(/^Kept on this device, \d\d:\d\d$/);
  });

  test('the page goes on answering while plans are solved, and they can be stopped', async () => {
    const { page } = app;
    await settled(page);
    // Looked at, it is worked out by itself.
    const stop = (await frontierSeen(page, 'Stop')).getByRole('button', { name: 'Stop' });
    const name = page.locator('sw-head-bar h1 input');
    await name.fill('Written meanwhile');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.title()).toBe('Written meanwhile, Sparewell');
    // A dozen plans take longer than that.
    await stop.click();
    await stop.waitFor({ state: 'detached' });
    await page
      .locator('sw-frontier')
      .getByRole('button', { name: /^Work it out/ })
      .waitFor();
  });

  test('stopped, the plan says so and is worked out again when asked', async () => {
    const { page } = app;
    await settled(page);
    // Another one where the test is tried once more, as the same would be no edit.
    const budget = (await budgetField(page).inputValue()) === '700' ? '690' : '700';
    await setBudget(page, budget);
    // Its button comes late so as not to flicker; the keyboard is quicker.
    const stop = plan(page).locator('header .stop');
    await stop.evaluate((button: HTMLElement) => button.click());
    const again = plan(page).getByRole('button', { name: 'Work it out again' });
    await again.waitFor(SLOWLY);
    await again.click();
    await settled(page);
    expect(await sum(page, 'Cash')).toBeLessThanOrEqual(Number(budget));
  });
});

describe('a plan of few parts', () => {
  /** The page that the tests share: each leaves the notebook as it found it, so that one plan serves them all. */
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openFewParts({ server });
  });
  afterAll(() => app.close());

  test('a call set by hand is kept by the plan, which says what it costs; freed, all is as before', async () => {
    const { page } = app;
    await ready(page);
    const before = await sum(page, 'Expected cost');
    const battery = callOf(page, 'Battery');
    await battery.getByRole('rowheader').click();
    await plan(page).getByText('and what one more of each would save').waitFor(SLOWLY);
    const places = await placesOf(page);
    await page.keyboard.press('1');
    await plan(page).getByText('They cost').waitFor(SLOWLY);
    // What stood there has not moved.
    expect(await placesOf(page)).toEqual(places);
    expect(await words(battery.locator('.call'))).toBe('Leave');
    const hand = await words(plan(page).locator('.hand-line'));
    const more = Number(/They cost ([\d.,]+) EUR more/.exec(hand)?.[1]);
    const after = await sum(page, 'Expected cost');
    expect(after - before).toBeCloseTo(more, 1);
    await plan(page).getByRole('button', { name: 'Free Battery' }).click();
    await expect.poll(() => sum(page, 'Expected cost'), SLOWLY).toBe(before);
  });

  test('a lower budget: purchases, calls and totals follow; one that nothing fits names the limit', async () => {
    const { page } = app;
    await ready(page);
    const before = await sum(page, 'Expected cost');
    await setBudget(page, '200');
    await expect.poll(() => sum(page, 'Cash'), SLOWLY).toBeLessThanOrEqual(200);
    await settled(page);
    expect(await sum(page, 'Expected cost')).toBeGreaterThan(before);
    await setBudget(page, '20');
    await plan(page).getByText('Does not meet the limits').waitFor(SLOWLY);
    expect(await words(plan(page).locator('.told .bad').first())).toMatch(
      /^Cash: the nearest plan takes [\d.]+ EUR of 20\.00 EUR, [\d.]+ EUR too much\.$/,
    );
    const undo = page.locator('sw-head-bar').getByRole('button', { name: 'Undo' });
    await undo.click();
    await plan(page).getByText('Proven best').waitFor(SLOWLY);
    await undo.click();
    await expect.poll(() => sum(page, 'Expected cost'), SLOWLY).toBe(before);
  });

  test('a call that safety bars cannot be set by hand, and its caution is said', async () => {
    const { page } = app;
    await ready(page);
    const chain = callOf(page, 'Drive chain');
    const proposed = await words(chain.locator('.call'));
    await chain.getByRole('rowheader').click();
    await page.keyboard.press('1');
    expect(await words(calls(page).getByRole('alert'))).toMatch(
      /^Drive chain, leave: Safety before cost: .*maker’s manual, local rules and a licensed mechanic decide/,
    );
    expect(await words(chain.locator('.call'))).toBe(proposed);
  });

  test('the panel says why a part has its call, and at which figures it would turn', async () => {
    const { page } = app;
    await ready(page);
    await callOf(page, 'Ignition coil').getByRole('rowheader').click();
    const why = page.locator('sw-side-panel sw-call-why');
    // What stands below the reasons has its place before they are there.
    const fedBy = (): Promise<number> =>
      page
        .locator('sw-side-panel section.two')
        .evaluate((links) => links.getBoundingClientRect().top + links.closest('.panel')!.scrollTop);
    await why.getByText('What would change this call').waitFor(SLOWLY);
    const place = await fedBy();
    await why.getByText('Hatched: there the plan has').waitFor(SLOWLY);
    expect(await fedBy()).toBe(place);
    expect(await words(why.locator('.says'))).toMatch(/wins by [\d.]+ EUR over/);
    const scale = why.locator('.scale').first();
    expect(await scale.getAttribute('aria-label')).toMatch(
      /^Price of one: now [\d.]+, turns above [\d.]+ EUR$/,
    );
    expect(await oursIn(page)).toEqual([]);
  });

  test('spending against risk is worked out once it is looked at; Enter on a point sets the budget, which can be undone', async () => {
    const { page } = app;
    await ready(page);
    const frontier = await spending(page);
    // What is drawn is what its table says: the same sums, and places in proportion to them.
    await frontier.locator('summary').click();
    const rows = await frontier
      .locator('tbody tr:not(.today)')
      .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? '')));
    const dots = await frontier
      .locator('.point .dot')
      .evaluateAll((all) => all.map((dot) => [dot.getAttribute('cx'), dot.getAttribute('cy')].map(Number)));
    const figure = (text: string | undefined): number => Number(text?.replaceAll(',', ''));
    expect(dots.length).toBe(rows.length);
    expect(rows.length).toBeGreaterThanOrEqual(12);
    const [first, last] = [rows[0]!, rows.at(-1)!];
    const [from, to] = [dots[0]!, dots.at(-1)!];
    rows.forEach((row, at) => {
      for (const [axis, column, within] of [
        [0, 0, 1e-6],
        [1, 2, 0.01],
      ] as const) {
        const told =
          (figure(row[column]) - figure(first[column])) / (figure(last[column]) - figure(first[column]));
        const drawn = (dots[at]![axis]! - from[axis]!) / (to[axis]! - from[axis]!);
        expect(Math.abs(drawn - told), `${row}`).toBeLessThan(within);
      }
    });
    expect(await words(frontier.locator('tr.today td').first())).toBe(
      (await sum(page, 'Cash')).toLocaleString('en', { minimumFractionDigits: 2 }),
    );
    const point = frontier.getByRole('button', { name: 'Set the budget to 200.00 EUR' }).first();
    await point.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => sum(page, 'Cash'), SLOWLY).toBeLessThanOrEqual(200);
    const field = budgetField(page);
    expect(await field.inputValue()).toBe('200');
    // The budget alone is another, so the picture is still true.
    expect(await frontier.getByText('figures of before').count()).toBe(0);
    await page.locator('sw-tally-strip').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => field.inputValue()).toBe(`${FEW_BUDGET}`);
    expect(await oursIn(page)).toEqual([]);
  });
});

test('on a phone nothing is wider than the page', async () => {
  const viewport = { width: 390, height: 844 };
  const { page, close } = await openFewParts({ server, viewport, touch: true });
  await ready(page);
  await spending(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
  const scroll = plan(page).getByRole('group', { name: 'Limits of the plan' });
  expect(await scroll.evaluate((box) => box.scrollWidth - box.clientWidth)).toBe(0);
  const card = (await plan(page).boundingBox())!;
  for (const table of ['.limits', '.shopping']) {
    const box = (await plan(page).locator(table).boundingBox())!;
    expect(box.x + box.width).toBeLessThanOrEqual(card.x + card.width);
  }
  await close();
});
