import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { type PdfPage, packed, pdfPages } from './support/pdf-text.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const sheet = (page: Page): Locator => page.locator('sw-prep-cell');
const list = (page: Page, title: string): Locator =>
  sheet(page)
    .locator('.list')
    .filter({ has: page.locator('h4', { hasText: title }) });

/** Waits until the sheet is there, and keeps the printer's dialog shut. */
async function ready(page: Page): Promise<void> {
  await page.evaluate(() => {
    window.print = () => undefined;
  });
  await list(page, 'Shopping').getByRole('row').nth(2).waitFor({ state: 'attached', timeout: 40_000 });
  await sheet(page).locator('header .state', { hasText: 'settled' }).waitFor();
}

/** Rows of the sheet as they stand on the screen, each as the words of its cells. */
const rowsOnScreen = (rows: Locator): Promise<string[][]> =>
  rows.evaluateAll((all) =>
    all.map((row) =>
      [...row.children]
        .map((cell) =>
          [...cell.childNodes]
            .filter(
              (node) => !(node instanceof Comment) && !(node instanceof HTMLElement && node.matches('.sr')),
            )
            .map((node) => node.textContent)
            .join('')
            .replace(/\s+/g, ' ')
            .trim(),
        )
        .filter((words) => words !== ''),
    ),
  );

/** Heads that a page may begin with when a list goes over to it; or the caution, once all lists are through. */
const HEADS = /Job, in this order|Part Number|Spare|Likely|Leaving|Now Limit|Carried|Change|Brakes/;

async function checkPaper(
  page: Page,
  format: 'A4' | 'Letter',
  [width, height]: readonly [number, number],
  mostPages: number,
): Promise<void> {
  await sheet(page).getByRole('button', { name: 'Print' }).click();
  const pages: readonly PdfPage[] = await pdfPages(await page.pdf({ format }));
  expect(pages.length).toBeLessThanOrEqual(mostPages);
  for (const [at, one] of pages.entries()) {
    expect(Math.abs(one.width - width)).toBeLessThan(1);
    expect(Math.abs(one.height - height)).toBeLessThan(1);
    expect(one.lines.at(-1)?.text).toMatch(new RegExp(`page ${at + 1} of ${pages.length}`));
    // Nothing in the margins: 11 mm (31 points) above, 14 mm below.
    for (const line of one.lines.slice(0, -1)) {
      expect(line.y, line.text).toBeLessThan(one.height - 31);
      expect(line.y, line.text).toBeGreaterThan(38);
    }
  }
  // A list that goes over to the next page has its head again.
  for (const one of pages.slice(1)) {
    const top = one.lines.slice(0, 3).map((line) => line.text);
    expect(top.join(' ')).toMatch(HEADS);
  }
  // Every row is on one page as a whole, also where its text takes two lines.
  const rows = await rowsOnScreen(sheet(page).locator('tbody tr'));
  expect(rows.length).toBeGreaterThan(80);
  for (const row of rows) {
    const whole = pages.filter((one) => row.every((words) => one.packed.includes(packed(words))));
    expect(whole.length, row.join(' | ')).toBeGreaterThan(0);
  }
  // And the rows that take one line stand in one line.
  const lines = pages.flatMap((one) => one.lines.map((line) => packed(line.text)));
  const shopping = await rowsOnScreen(list(page, 'Shopping').locator('tbody tr:not(.group)'));
  expect(shopping.length).toBeGreaterThan(10);
  for (const row of shopping) {
    const together = lines.some((line) => row.every((words) => line.includes(packed(words))));
    expect(together, row.join(' | ')).toBe(true);
  }
  const strip = await page.locator('sw-tally-strip .fig').allInnerTexts();
  expect(strip.length).toBe(6);
  for (const figure of strip)
    expect(pages[0]?.packed).toContain(packed(/^[\d,.−]+/.exec(figure)?.[0] ?? 'none'));
}

/** Every colour on the sheet, as it is painted now. */
const coloursOf = (host: Locator): Promise<string[]> =>
  host.evaluate((element) => {
    const found = new Set<string>();
    for (const part of element.shadowRoot!.querySelectorAll('.page *')) {
      const style = getComputedStyle(part);
      found.add(style.color).add(style.backgroundColor);
      if (style.borderBottomWidth !== '0px') found.add(style.borderBottomColor);
      if (part instanceof SVGElement) found.add(style.fill).add(style.stroke);
    }
    return [...found].filter((one) => one.startsWith('rgb'));
  });

test('it prints on A4 and Letter: whole rows, heads again, the notebook’s figures, black on white', async () => {
  await withApp({ server, colorScheme: 'dark' }, async ({ page }) => {
    // Once there is a plan it pays freight.
    await list(page, 'Shopping')
      .getByRole('row', { name: /Freight/ })
      .waitFor({ timeout: 40_000 });
    await ready(page);
    await checkPaper(page, 'A4', [595.9, 842.9], 2);
    await checkPaper(page, 'Letter', [612, 792], 2);
    await sheet(page).getByRole('button', { name: 'Print' }).click();
    await page.emulateMedia({ media: 'print' });
    for (const colour of await coloursOf(sheet(page))) {
      const [r, g, b] = (/\d+, \d+, \d+/.exec(colour)?.[0] ?? '').split(', ').map(Number);
      expect([g, b], colour).toEqual([r, r]);
    }
    expect(await page.locator('sw-road .stop:visible').count()).toBe(1);
    await page.emulateMedia({ media: 'screen' });
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    expect(await page.locator('sw-road .stop:visible').count()).toBeGreaterThan(20);
  });
});

test('it is saved as files, follows an edit, fits a phone, and is clean to axe', async () => {
  const viewport = { width: 390, height: 844 };
  await withApp({ server, plan: false, viewport, touch: true }, async ({ page }) => {
    await ready(page);
    const saved = async (name: string): Promise<{ file: string; text: string }> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        sheet(page).getByRole('button', { name }).click(),
      ]);
      const chunks: Buffer[] = [];
      for await (const chunk of await download.createReadStream()) chunks.push(chunk as Buffer);
      return { file: download.suggestedFilename(), text: Buffer.concat(chunks).toString('utf8') };
    };
    const csv = await saved('CSV file');
    const markdown = await saved('Markdown file');
    expect([csv.file, markdown.file]).toEqual(['plateau-loop-prep-sheet.csv', 'plateau-loop-prep-sheet.md']);
    expect(csv.text.startsWith('\uFEFFList,Group,Done,Item,What,Value\r\n')).toBe(true);
    for (const [part] of await rowsOnScreen(list(page, 'Shopping').locator('tbody tr:not(.group)'))) {
      expect(csv.text).toContain(part);
      expect(markdown.text).toContain(`| [ ] | ${part} |`);
    }
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
    // Nor does a list of the sheet have to be scrolled sideways.
    const scrolled = await sheet(page)
      .locator('.scroll')
      .evaluateAll((all) =>
        all.filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.ariaLabel),
      );
    expect(scrolled).toEqual([]);
    expect(await axe(page, ['sparewell-app', 'sw-road', 'sw-prep-cell'])).toEqual([]);

    const jobs = list(page, 'Shed jobs').locator('tbody th[scope=row]');
    expect(await jobs.allInnerTexts()).toContain('Battery');
    const calls = page.locator('sw-calls-cell');
    await calls
      .getByRole('row')
      .filter({ has: page.getByRole('rowheader', { name: 'Battery' }) })
      .getByRole('rowheader')
      .click();
    await page.keyboard.press('1');
    await expect.poll(() => jobs.allInnerTexts(), { timeout: 40_000 }).not.toContain('Battery');
  });
});
