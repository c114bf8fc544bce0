import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { entered, notebook, table } from '../notebook/small-notebook.ts';
import { axe } from './support/axe.ts';
import { LEG, legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { columnWords, figure, putOnClipboard, tableCard, words } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const LENGTH = LEG.length;

/** The card of the legs with the keyboard on a figure, nothing being written. */
async function legsAt(page: Page, row: number, column: number): Promise<Locator> {
  const legs = tableCard(page, 'Legs');
  await figure(legs, row, column).focus();
  return legs;
}

/** What axe finds in the tables; other cards have tests of their own. */
async function tableViolations(page: Page): Promise<readonly string[]> {
  const found = (await axe(page)).flatMap(({ rule, elements }) =>
    elements.map((element) => `${rule}: ${element}`),
  );
  return found.filter((each) => /sw-(table|pairing)-cell/.test(each));
}

const marked = (of: Locator): Locator => of.locator('[aria-selected="true"]');

/** Whether what is fetched when the keyboard comes into a grid, and later, is there. */
async function handsReady(page: Page): Promise<void> {
  await expect.poll(() => page.evaluate(() => customElements.get('sw-block-bar') !== undefined)).toBe(true);
}

test('by keyboard a block is marked, filled, emptied, and each is one step of undo', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const legs = await legsAt(page, 0, LENGTH);
    const before = await columnWords(legs, LENGTH);
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowDown');
    await expect.poll(() => marked(legs).count()).toBe(3);
    await legs.getByText('3 rows × 1 column marked').waitFor();

    await page.keyboard.press('Control+d');
    await expect
      .poll(() => columnWords(legs, LENGTH))
      .toEqual([before[0], before[0], before[0], ...before.slice(3)]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(before);

    // Across, into a column in another unit: 260 and 310 km of 1.609344 km to the mile.
    await page.keyboard.press('Shift+ArrowUp');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Control+Shift+D');
    await expect
      .poll(async () => (await columnWords(legs, LEG.spare)).slice(0, 3))
      .toEqual(['161.6', '192.6', '–']);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => (await columnWords(legs, LEG.spare))[0]).toBe('–');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowLeft');

    await page.keyboard.press('Delete');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(['–', '–', '–', ...before.slice(3)]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(before);

    await page.keyboard.press('Escape');
    await expect.poll(() => marked(legs).count()).toBe(0);
    await page.keyboard.press('Shift+Space');
    const columns = Number(await legs.getByRole('grid').getAttribute('aria-colcount'));
    await expect.poll(() => marked(legs).count()).toBe(columns);
    expect(await tableViolations(page)).toEqual([]);
  });
});

test('a table from another program is pasted over the figures, and a copy of them can be pasted back', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const html =
      '<meta charset="utf-8"><table><tr><td>111,5</td></tr><tr><td>1<b>22</b>&nbsp;km</td></tr></table>';
    await putOnClipboard(page, '111,5 122 km', html);
    const legs = await legsAt(page, 0, LENGTH);
    const before = await columnWords(legs, LENGTH);
    await page.keyboard.press('Control+v');
    await expect
      .poll(async () => (await columnWords(legs, LENGTH)).slice(0, 3))
      .toEqual(['111.5', '122.0', `${before[2]}.0`]);
    await page.keyboard.press('Control+z');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(before);

    // What was pasted stays marked until Escape.
    await page.keyboard.press('Escape');
    await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Control+x');
    await expect.poll(async () => (await columnWords(legs, LENGTH)).slice(0, 2)).toEqual(['–', '–']);
    await page.keyboard.press('Escape');
    await figure(legs, 3, LENGTH).focus();
    await page.keyboard.press('Control+v');
    await expect
      .poll(async () => (await columnWords(legs, LENGTH)).slice(0, 5))
      .toEqual(['–', '–', before[2], before[0], before[1]]);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(before);
    const held = await page.evaluate(() => navigator.clipboard.readText());
    expect(held).toBe(`${before[0]}\r\n${before[1]}\r\n`);
  });
});

test('by pointer a block is dragged over or marked with Shift; the click that ends a drag writes nothing', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = await legsAt(page, 0, LENGTH);
    await figure(legs, 1, LENGTH).hover();
    await page.mouse.down();
    await figure(legs, 2, LENGTH).hover();
    await figure(legs, 3, LENGTH + 1).hover();
    await page.mouse.up();
    await expect.poll(() => marked(legs).count()).toBe(6);
    expect(await legs.locator('sw-figure-field').count()).toBe(0);

    await figure(legs, 0, LENGTH).focus();
    await page.keyboard.press('Escape');
    await figure(legs, 4, LENGTH).click({ modifiers: ['Shift'] });
    await expect.poll(() => marked(legs).count()).toBe(5);
    await figure(legs, 2, LENGTH).click();
    await expect.poll(() => legs.locator('sw-figure-field').count()).toBe(1);
    expect(await marked(legs).count()).toBe(0);
  });
});

test('rows are put in, moved and taken out where they stand', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const legs = await legsAt(page, 1, 0);
    const before = await columnWords(legs, 0);
    await page.keyboard.press('Shift+Space');
    await legs.getByRole('button', { name: 'Move up' }).click();
    await expect
      .poll(async () => (await columnWords(legs, 0)).slice(0, 3))
      .toEqual([before[1], before[0], before[2]]);
    await legs.getByRole('button', { name: 'Add one below' }).click();
    await expect
      .poll(async () => (await columnWords(legs, 0)).slice(0, 3))
      .toEqual([before[1], '–', before[0]]);
    await legs.getByRole('button', { name: 'Remove the row' }).click();
    await expect
      .poll(async () => (await columnWords(legs, 0)).slice(0, 3))
      .toEqual([before[1], before[0], before[2]]);
    for (let i = 0; i < 3; i += 1) await page.keyboard.press('Control+z');
    await expect.poll(() => columnWords(legs, 0)).toEqual(before);
  });
});

test('a sorted and sifted table is another view of the same rows: what is written goes into its own row', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const legs = await legsAt(page, 0, LENGTH);
    const more = legs.getByRole('button', { name: /^Show all \d+ rows$/ });
    if ((await more.count()) > 0) await more.click();
    const before = await columnWords(legs, LENGTH);
    const rising = before.map(Number).sort((a, b) => a - b);
    await legs.getByRole('button', { name: 'Find and sort' }).click();
    await legs
      .getByLabel('Sorted by')
      .selectOption({ label: await words(legs.getByRole('columnheader').nth(LENGTH).locator('.t')) });
    await expect.poll(async () => (await columnWords(legs, LENGTH)).map(Number)).toEqual(rising);
    expect(await legs.getByRole('columnheader').nth(LENGTH).getAttribute('aria-sort')).toBe('ascending');

    await figure(legs, 0, LENGTH).focus();
    await page.keyboard.type('9999');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await columnWords(legs, LENGTH))[0]).toBe('9,999');
    await legs.getByRole('button', { name: 'Look again' }).click();
    await expect.poll(async () => (await columnWords(legs, LENGTH)).at(-1)).toBe('9,999');

    await legs.getByRole('button', { name: 'Show only rows…' }).click();
    await legs.getByLabel('Column', { exact: true }).selectOption({ index: LENGTH });
    await legs.getByLabel('Test').selectOption('least');
    await legs.getByLabel(/is compared with/).fill('5000 km');
    await legs.getByLabel(/is compared with/).press('Tab');
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(['9,999']);
    await legs.getByText(`1 of ${before.length} rows shown.`, { exact: false }).waitFor();
    expect(await tableViolations(page)).toEqual([]);

    await legs.getByRole('button', { name: 'As the table stands' }).click();
    const least = before.indexOf(String(rising[0]));
    await expect.poll(() => columnWords(legs, LENGTH)).toEqual(before.with(least, '9,999'));
  });
});

test('what is chosen and typed while a long table is still being looked through stays', async () => {
  const rows = Array.from({ length: 50_000 }, (_, row) => row);
  const offers = table(
    'offers',
    entered(
      'part',
      'text',
      rows.map((row) => `Part ${(row * 7_919) % 50_000}`),
      { title: 'Part' },
    ),
    entered(
      'from',
      'text',
      rows.map((row) => `Store ${row % 37}`),
      { title: 'From' },
    ),
  );
  await withNotebook({ server }, notebook(offers), async ({ page }) => {
    await handsReady(page);
    const card = page.locator('sw-table-cell');
    await card.getByRole('button', { name: 'Find and sort' }).click();
    // Sorting 50,000 words takes longer than what follows.
    await card.getByLabel('Sorted by').selectOption({ label: 'Part' });
    await card.getByRole('button', { name: 'Show only rows…' }).click();
    // All before the rows are known: a person is slower, but so is an old phone.
    await card.locator('sw-table-lens').evaluate(async (line) => {
      const field = (label: string) =>
        line.shadowRoot?.querySelector<HTMLInputElement | HTMLSelectElement>(`[aria-label="${label}"]`);
      const write = async (label: string, value: string): Promise<void> => {
        const into = field(label);
        if (!into) throw new Error(`There is no field of ${label}.`);
        into.value = value;
        into.dispatchEvent(new Event('change'));
        for (let turn = 0; turn < 20; turn += 1) await Promise.resolve();
      };
      await write('Column', 'from');
      await write('Test', 'is');
      field('What From is compared with')?.focus();
    });
    await page.keyboard.type('Store 3', { delay: 30 });
    await page.keyboard.press('Enter');
    // By hand: of 0 to 49,999 those that leave 3 when divided by 37 are 3 + 37 k with k from 0 to 1,351.
    await card.getByText('1,352 of 50,000 rows shown', { exact: false }).first().waitFor({ timeout: 15_000 });
  });
});

test('finding goes from figure to figure, in rows that are not yet in the page too', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, 0).focus();
    const last = await words(legs.locator('tbody th').last());
    await page.keyboard.press('Control+f');
    await legs.getByLabel('Find', { exact: true }).fill(last.slice(0, 12));
    await page.keyboard.press('Enter');
    await expect
      .poll(() => legs.locator('tbody [tabindex="0"]').getAttribute('data-row'))
      .toBe(String((await legs.locator('tbody tr').count()) - 1));
    await page.keyboard.press('Escape');
    await expect.poll(() => legs.getByLabel('Find', { exact: true }).count()).toBe(0);
  });
});

test('by touch alone a block is marked corner by corner, filled and emptied', async () => {
  const viewport = { width: 390, height: 844 };
  await withNotebook({ server, viewport, touch: true }, legsNotebook(), async ({ page }) => {
    await handsReady(page);
    const legs = tableCard(page, 'Legs');
    const before = await columnWords(legs, LENGTH);
    await legs.getByRole('button', { name: 'Mark a block' }).tap();
    await legs.getByText('Tap the first corner, then the other.').waitFor();
    await figure(legs, 1, LENGTH).tap();
    await figure(legs, 3, LENGTH).tap();
    await expect.poll(() => marked(legs).count()).toBe(3);
    await legs.getByRole('button', { name: 'Fill down' }).tap();
    await expect
      .poll(async () => (await columnWords(legs, LENGTH)).slice(0, 5))
      .toEqual([before[0], before[1], before[1], before[1], before[4]]);
    expect(await tableViolations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    await legs.getByRole('button', { name: 'Done' }).tap();
    await expect.poll(() => marked(legs).count()).toBe(0);
    await figure(legs, 1, LENGTH).tap();
    // Each kind of column brings up its own keyboard, or the device's own list or calendar.
    const field = legs.locator('sw-figure-field input, sw-figure-field select');
    const editor = () =>
      field.evaluate((each) => [each.localName, each.getAttribute('type'), each.getAttribute('inputmode')]);
    await expect.poll(editor).toEqual(['input', 'text', 'decimal']);
    await page.keyboard.press('Escape');
    await figure(legs, 1, LEG.start).tap();
    await expect.poll(editor).toEqual(['input', 'date', 'text']);
    await page.keyboard.press('Escape');
    await figure(legs, 1, LEG.surface).tap();
    await expect.poll(editor).toEqual(['select', null, null]);
    await field.selectOption('sand');
    await page.keyboard.press('Escape');
    await expect.poll(() => words(figure(legs, 1, LEG.surface))).toBe('sand');
  });
});

test('dates, choices and yes or no have editors of their own, by keyboard', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = await legsAt(page, 0, LEG.start);
    const field = legs.locator('sw-figure-field input, sw-figure-field select');
    await page.keyboard.press('Enter');
    await field.waitFor();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Tab');
    await expect.poll(() => words(figure(legs, 0, LEG.start))).toBe('2026-03-03');

    await page.keyboard.press('Enter');
    await field.waitFor();
    await expect.poll(() => field.locator('option').allTextContents()).toEqual(['–', 'yes', 'no']);
    await page.keyboard.press('n');
    await page.keyboard.press('Enter');
    await expect.poll(() => words(figure(legs, 0, LEG.shop))).toBe('no');

    await figure(legs, 0, LEG.surface).focus();
    await page.keyboard.press('Enter');
    await field.waitFor();
    await page.keyboard.press('g');
    await page.keyboard.press('Enter');
    await expect.poll(() => words(figure(legs, 0, LEG.surface))).toBe('gravel');

    // What is no date is refused where it is typed, and the date that was there stays.
    await figure(legs, 1, LEG.start).click();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('soon');
    await page.keyboard.press('Enter');
    await legs.getByText("'soon' is not a date").waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => words(figure(legs, 1, LEG.start))).toBe('2026-03-02');
  });
});
