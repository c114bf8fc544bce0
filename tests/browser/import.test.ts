import { readFileSync } from 'node:fs';
import axeCore from 'axe-core';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dropFile } from './support/drop-file.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { withTablesOnly } from './support/tables-only.ts';

/** A plan is worked out in a second or so; a busy machine takes its time. */
const SLOWLY = { timeout: 30_000 };

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

const dialog = (page: Page): Locator => page.locator('sw-import-dialog dialog');
const foot = (page: Page): Locator => dialog(page).locator('.foot .sum');
const total = (page: Page): Locator => page.locator('sw-tally-strip .fig').nth(4);
const bringIn = (page: Page): Locator => dialog(page).getByRole('button', { name: /^Bring in / });
const undo = (page: Page): Locator =>
  page.locator('sw-head-bar').getByRole('button', { name: 'Undo', exact: true });

/** The page with its figures standing still. */
async function ready(page: Page): Promise<void> {
  await expect.poll(() => total(page).textContent(), SLOWLY).toMatch(/\d/);
  await page.locator('sw-tally-strip').getByText('working').first().waitFor({ state: 'hidden' });
}

/** The page with its tables, where nothing is worked out. */
const tablesThere = (page: Page): Promise<void> =>
  page.getByRole('heading', { name: 'Prices' }).waitFor(SLOWLY);

/** The same as \`ready\`, with its plan found. */
async function planned(page: Page): Promise<void> {
  // On a busy machine the time may run out before the best is proven.
  await page
    .locator('sw-plan-cell')
    .getByText(/Proven best|Best found/)
    .first()
    .waitFor(SLOWLY);
  await ready(page);
}

/** What the plan spends; NaN while it is being made. */
const planCash = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const app = document.querySelector('sparewell-app') as unknown as App;
    const read = app.session.notebook.read('plan.cash');
    return read.state === 'settled' ? read.column.values[0]! : Number.NaN;
  });

/** The notebook as it would be written, to be compared. */
const written = (page: Page): Promise<string> =>
  page.evaluate(() =>
    JSON.stringify((document.querySelector('sparewell-app') as unknown as App).session.notebook.document),
  );

interface App {
  readonly session: {
    readonly notebook: {
      readonly document: Written;
      read(node: string): { readonly state: string; readonly column: { readonly values: readonly number[] } };
    };
  };
}

interface Written {
  readonly cells: readonly {
    readonly name?: string;
    readonly columns?: readonly { readonly name: string; readonly entries?: readonly unknown[] }[];
  }[];
}

/** Entries of a row of a table by the names of its columns; undefined when no row has the text. */
async function rowOf(page: Page, table: string, text: string): Promise<Record<string, unknown> | undefined> {
  const { cells } = JSON.parse(await written(page)) as Written;
  const entered = cells.find(({ name }) => name === table)!.columns!.filter(({ entries }) => entries);
  const row = entered.map(({ entries }) => entries!.indexOf(text)).find((at) => at !== -1);
  if (row === undefined) return undefined;
  return Object.fromEntries(entered.map(({ name, entries }) => [name, entries![row]]));
}

/** The figure in the first words of a text that are like this. */
function amount(like: RegExp, text: string | null): number {
  const words = like.exec(text ?? '')?.[0] ?? '';
  return Number(
    words
      .replaceAll(',', '')
      .replace('−', '-')
      .replace(/[^\d.-]/g, '') || Number.NaN,
  );
}

async function nameSupplier(page: Page, name: string): Promise<void> {
  await dialog(page).locator('#supplier').selectOption({ label: 'A new supplier…' });
  await dialog(page).getByLabel('Name of the new supplier').fill(name);
  await page.keyboard.press('Enter');
}

async function shut(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await dialog(page).waitFor({ state: 'hidden' });
}

/** Drops a file on the page, and waits for what is made of it. */
async function drop(page: Page, name: string, content: string | readonly number[]): Promise<void> {
  await dropFile(page, name, content);
  await dialog(page).waitFor();
}

const lines = readFileSync(
  new URL('../../datasets/plateau-loop/prices-dray-and-daughter.csv', import.meta.url),
  'utf8',
)
  .trim()
  .split('\n');

/** The supplier's list with other prices: what `price` makes of each, by part number. */
function newerList(price: (was: number, offer: string) => string): string {
  const rows = lines.slice(1).map((line) => {
    const [offer] = line.split(',');
    return line.replace(/,(\d+\.\d\d),/, (_, was) => `,${price(Number(was), offer!)},`);
  });
  return [lines[0], ...rows, ''].join('\n');
}

/** All a third of what they were, one with two prices in its field. */
const cheaper = newerList((was, offer) => (offer === 'DD4512' ? '13.60/40.84' : (was / 3).toFixed(2)));

describe('a newer list of a known supplier', () => {
  test('is dropped, matched, fitted, mended and accepted; calls and plan follow; one undo brings all back', async () => {
    await withApp({ server }, async ({ page }) => {
      await planned(page);
      const before = await total(page).textContent();
      const cash = await planCash(page);
      await drop(page, 'march.csv', cheaper);
      const supplier = dialog(page).locator('#supplier');
      await expect.poll(() => supplier.inputValue()).toBe('Dray & Daughter');
      // 32 offers stand in the file: one of them is turned away.
      await expect.poll(() => bringIn(page).textContent()).toContain('31 rows');
      await expect
        .poll(() => dialog(page).locator('.changes h3').textContent())
        .toContain('31 prices changed');
      await expect
        .poll(() => dialog(page).locator('.changes').textContent())
        .toContain('Turned away: without a price they leave the table: 1 Fork seals');
      await dialog(page).getByRole('button', { name: 'Read as 13.60' }).click();
      await expect.poll(() => bringIn(page).textContent()).toContain('32 rows');
      await expect.poll(() => foot(page).textContent()).toMatch(/[+−]\d+ EUR expected total/);
      await expect.poll(() => foot(page).textContent()).toMatch(/calls? changes?/);
      expect(await total(page).textContent()).toBe(before);

      await bringIn(page).click();
      await dialog(page).waitFor({ state: 'hidden' });
      await expect
        .poll(() => page.locator('sw-tally-strip .edit').textContent())
        .toContain('Dray & Daughter: 32 prices brought in');
      await expect.poll(() => total(page).textContent(), SLOWLY).not.toBe(before);
      await expect.poll(() => planCash(page), SLOWLY).toBeLessThan(cash);
      await ready(page);

      // The same file again changes nothing more; one with a dearer chain says so.
      await drop(page, 'march.csv', cheaper.replace('13.60/40.84', '13.60'));
      await expect
        .poll(() => dialog(page).locator('.changes h3').textContent())
        .toContain('No price changed');
      await expect
        .poll(() => dialog(page).locator('.side').textContent())
        .toMatch(/Earlier import: \d+ \w+ \d{4}, 32 rows, march\.csv/);
      await dialog(page).getByRole('button', { name: 'Cancel' }).click();
      await drop(page, 'april.csv', cheaper.replace('13.60/40.84', '27.20'));
      const row = dialog(page).locator('.diff tbody tr');
      await expect
        .poll(async () => (await row.allInnerTexts()).map((text) => text.split(/\s*\t\s*/).slice(0, 4)))
        .toEqual([['Fork seals', '13.60', '27.20', '+100.0 %']]);
      await dialog(page).getByRole('button', { name: 'Cancel' }).click();
      await dialog(page).waitFor({ state: 'hidden' });

      await undo(page).click();
      await expect.poll(() => total(page).textContent(), SLOWLY).toBe(before);
      expect(await undo(page).isDisabled()).toBe(true);
    });
  });

  test('tells what is new, gone, dearer and cheaper, and what comes of it, before it is accepted', async () => {
    await withApp({ server, plan: false }, async ({ page }) => {
      await ready(page);
      const before = await total(page).textContent();
      const was = await written(page);
      const other = newerList((price, offer) => (offer === 'DD4680-K' ? price * 2 : price * 0.4).toFixed(2))
        .split('\n')
        .filter((line) => !line.startsWith('DD4561'));
      other.splice(-1, 0, 'DD4777,"Fork seals, low friction",1,12.50,,9');
      await drop(page, 'may.csv', other.join('\n'));
      const changes = dialog(page).locator('.changes');
      await expect.poll(() => changes.textContent()).toContain('Gone from the list: 1 Air filter');
      await dialog(page).getByRole('button', { name: 'Another row for Fork seals', exact: true }).click();
      await page.keyboard.type('low fric');
      await dialog(page).getByRole('button', { name: 'Take line 33 for Fork seals' }).click();
      await expect.poll(() => changes.textContent()).toContain('New: 1 Fork seals');
      // Of 32 offers one is gone, one is dearer: 30 are cheaper.
      expect(await changes.locator('h3').textContent()).toMatch(
        /31 prices changed\s+USD; 1 dearer, 30 cheaper/,
      );
      await expect.poll(() => foot(page).textContent(), SLOWLY).toMatch(/calls? changes?/);
      const foretold = amount(/[+−][\d,]+ EUR expected total/, await foot(page).textContent());
      expect([await total(page).textContent(), await written(page)]).toEqual([before, was]);

      await bringIn(page).click();
      await dialog(page).waitFor({ state: 'hidden' });
      // Rounded once each.
      await expect
        .poll(async () => {
          const now = amount(/[\d,]+/, await total(page).textContent());
          return Math.abs(now - amount(/[\d,]+/, before) - foretold);
        }, SLOWLY)
        .toBeLessThanOrEqual(2);
      // 90.60 x 0.4.
      expect(await rowOf(page, 'prices', 'DD4428')).toMatchObject({ price: 36.24 });
      expect(await rowOf(page, 'prices', 'DD4561')).toBeUndefined();
      await undo(page).click();
      await expect.poll(() => total(page).textContent(), SLOWLY).toBe(before);
      expect(await written(page)).toBe(was);
    });
  });
});

describe('the first list of a new supplier', () => {
  const list = [
    'Kiln & Sons;;',
    'Part no;Article;Price',
    'K-1;Drive chain 520 sealed;71,50',
    'K-2;Clutch cable, long;11,20',
    'K-3;Garden hose;POA',
    'K-4;Seal ring for the fork leg;19,00',
    '',
  ].join('\n');

  test('is asked what it does not tell; rows are confirmed or searched for, and only those come in', async () => {
    await withTablesOnly({ server }, async ({ page }) => {
      await tablesThere(page);
      await drop(page, 'list.csv', list);
      await expect.poll(() => foot(page).textContent()).toContain('choose one under Supplier');
      expect(await bringIn(page).isDisabled()).toBe(true);
      await nameSupplier(page, 'Kiln & Sons');
      await expect.poll(() => foot(page).textContent()).toContain('In which currency');
      await dialog(page).locator('.question').getByRole('button', { name: 'EUR' }).click();
      await expect.poll(() => foot(page).textContent()).toContain('No row is taken yet');

      await dialog(page).locator('.offers label', { hasText: 'Drive chain 520' }).click();
      await expect.poll(() => bringIn(page).textContent()).toContain('1 row');
      await dialog(page).getByRole('button', { name: 'Another row for Fork seals', exact: true }).click();
      await page.keyboard.type('seal ri');
      await dialog(page).getByRole('button', { name: 'Take line 6 for Fork seals' }).click();
      await expect.poll(() => bringIn(page).textContent()).toContain('2 rows');
      // What is on request may be typed in place.
      const price = dialog(page).getByLabel('Price for line 5');
      await price.fill('8,00');
      await price.press('Enter');
      await expect.poll(() => dialog(page).locator('.aside').isVisible()).toBe(false);

      // Its terms are asked for here, and go into the table of suppliers with the prices.
      const terms = dialog(page).getByRole('group', { name: 'New here: the terms of Kiln & Sons' });
      const freight = terms.getByLabel(/^Freight/).first();
      await freight.fill('a lot');
      await freight.press('Enter');
      await terms.getByRole('alert').waitFor();
      await freight.fill('7,50');
      await freight.press('Enter');
      await terms.getByRole('alert').waitFor({ state: 'hidden' });
      await terms.getByLabel(/^Lead time/).fill('5');
      await page.keyboard.press('Enter');

      await bringIn(page).click();
      await dialog(page).waitFor({ state: 'hidden' });
      await expect
        .poll(() => page.locator('sw-tally-strip .edit').textContent())
        .toContain('Kiln & Sons: 2 prices brought in');
      expect(await rowOf(page, 'suppliers', 'Kiln & Sons')).toMatchObject({
        currency: 'EUR',
        freight: 7.5,
        lead_time: 5,
      });
      await undo(page).click();
      await expect.poll(() => rowOf(page, 'suppliers', 'Kiln & Sons')).toBeUndefined();

      // The next file with this header is known: whose it is, its money, and which rows fit which parts.
      await drop(page, 'next.csv', list.replace('71,50', '69,00'));
      await expect.poll(() => dialog(page).locator('#supplier').inputValue()).toBe('Kiln & Sons');
      await expect.poll(() => bringIn(page).textContent()).toContain('2 rows');
      expect(await dialog(page).locator('#money').inputValue()).toBe('EUR');
      expect(await dialog(page).locator('.question').count()).toBe(0);
    });
  });
});

test('what was found in a file is shown and can be changed, and its rows follow', async () => {
  // In Windows-1252, where ü is the byte FC.
  const text =
    'Preisliste;;\nArt.Nr.;Bezeichnung;Preis EUR\nK-1;K\u00fchler;31,50\nK-2;Ketten\u00f6l;1.031,00\nSumme;;1.062,50\n';
  await withTablesOnly({ server }, async ({ page }) => {
    await tablesThere(page);
    await drop(page, 'liste.csv', [...Buffer.from(text, 'latin1')]);
    const rows = dialog(page).locator('.csv tbody');
    const heads = dialog(page).locator('.csv thead .orig');
    const found = (id: string): Locator => dialog(page).locator(`#${id}`);
    await expect.poll(() => rows.textContent()).toContain('K\u00fchler');
    const ids = ['separator', 'quote', 'decimal', 'head', 'letters', 'money'];
    expect(await Promise.all(ids.map((id) => found(id).inputValue()))).toEqual([
      ';',
      '"',
      ',',
      '1/1',
      'windows-1252',
      'EUR',
    ]);
    const others = dialog(page).locator('.aside .others');
    await others.locator('summary').click();
    expect(await others.textContent()).toContain('It is a total, not an offer.');

    // The same byte is a Cyrillic letter in Windows-1251.
    await found('letters').selectOption('windows-1251');
    await expect.poll(() => rows.textContent()).toContain('K\u044chler');
    await found('letters').selectOption('windows-1252');
    await expect.poll(() => rows.textContent()).toContain('K\u00fchler');
    await found('head').selectOption('0/0');
    await expect.poll(() => heads.first().textContent()).toBe('Column 1');
    await found('head').selectOption('1/1');
    await expect.poll(() => heads.first().textContent()).toBe('Art.Nr.');
    await found('separator').selectOption('|');
    await expect.poll(() => heads.count()).toBe(2);
    await found('separator').selectOption(';');
    await expect.poll(() => heads.count()).toBe(4);
    // It was shut when a reading without set-aside lines came between.
    await others.evaluate((details: HTMLDetailsElement) => {
      details.open = true;
    });
    await others.getByRole('button', { name: 'Take as a row: line 5' }).click();
    await expect.poll(() => others.isVisible()).toBe(false);
  });
});

test('where 1.250 could be either, one plain question is asked', async () => {
  await withTablesOnly({ server }, async ({ page }) => {
    await tablesThere(page);
    await drop(
      page,
      'either.csv',
      'part number;description;price EUR\nOV-1;Drive chain;1.250\nOV-2;Subframe;1.480\n',
    );
    await expect.poll(() => dialog(page).locator('.question p').first().textContent()).toContain('1.250');
    // A file was dropped: the heading holds the keyboard, and no ring stands round anything.
    expect(
      await dialog(page)
        .locator('h2')
        .evaluate((head) => head.matches(':focus')),
    ).toBe(true);
    expect(
      await dialog(page)
        .locator('h2')
        .evaluate((head) => getComputedStyle(head).outlineStyle),
    ).toBe('none');
    expect(await bringIn(page).isDisabled()).toBe(true);
    await dialog(page).getByRole('button', { name: 'the mark parts thousands' }).click();
    await expect.poll(() => dialog(page).locator('.offers').first().textContent()).toContain('1,250.00 EUR');
  });
});

test('a file that is no list is refused with a sentence, and hostile heads are words: the notebook stays as it was', async () => {
  await withTablesOnly({ server }, async ({ page }) => {
    await tablesThere(page);
    const was = await written(page);
    const refused = [
      ['empty.csv', '', 'The file is empty'],
      ['photo.csv', [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a], 'a picture (PNG)'],
      ['packed.csv', [0x50, 0x4b, 0x03, 0x04, 0x14, 0, 0, 0], 'a packed archive (zip)'],
      ['damaged.csv', 'part;price\nChain;4\nTy\u0000re;5\n', 'Line 3 has a NUL sign'],
      ['long.csv', `part;price\n${'x'.repeat(5_000_000)}\n`, 'Line 2 has more than'],
      ['quote.csv', 'part;price\n"Chain;4\nTyre;5\n', 'Line 2, sign 1: a quote opens a field'],
    ] as const;
    for (const [name, content, words] of refused) {
      await drop(page, name, content);
      await expect.poll(() => dialog(page).locator('.refused').textContent(), SLOWLY).toContain(words);
      if (name !== 'quote.csv') await shut(page);
    }
    // Only the last of them can be read all the same.
    await dialog(page).getByRole('button', { name: 'Read quotes as ordinary signs' }).click();
    await expect.poll(() => dialog(page).locator('.csv tbody tr').count()).toBe(2);
    expect(await dialog(page).locator('#quote').inputValue()).toBe('none');
    await shut(page);

    const heads =
      '__proto__;constructor;;price EUR;price EUR\nHX-1;Chain guard;a;21,00;20,00\nHX-2;Flap;b;9,50;9,00\n';
    await drop(page, 'heads.csv', heads);
    await expect
      .poll(() => dialog(page).locator('.csv thead .orig').allTextContents())
      .toEqual([
        '__proto__',
        'constructor',
        'Column 3',
        'price EUR',
        'price EUR (2)',
        'part of the notebook',
      ]);
    await expect.poll(() => dialog(page).locator('.csv tbody').textContent()).toContain('Chain guard');
    expect(await page.evaluate(() => Object.keys(Object.prototype).length)).toBe(0);
    await shut(page);
    expect(await written(page)).toBe(was);
    expect(await undo(page).isDisabled()).toBe(true);
  });
});

/** An invented list of many rows, in the second last of which stands what is searched for. */
function bigList(rows: number): string {
  const list = ['Part no;Description;Price EUR;Pack;Days;Fits;Shelf;Note'];
  for (let row = 0; row < rows; row += 1) {
    const what = row === rows - 2 ? 'Quill shaft, ground' : `Bracket ${row % 97} for rail R${row % 1013}x`;
    list.push(
      `BL-${100_000 + row};${what};${1 + (row % 90)},${10 + (row % 80)};1;${row % 30};all;S${row % 40};-`,
    );
  }
  return `${list.join('\n')}\n`;
}

test('a big file tells how far it is and can be stopped; 50,000 rows are searched as one types, and one is fitted', async () => {
  await withTablesOnly({ server }, async ({ page }) => {
    await tablesThere(page);
    const was = await written(page);
    // Pressed by the page itself at the first telling: from here it might come too late.
    await page.evaluate(() => {
      const look = (): void => {
        const root = document.querySelector('sparewell-app')?.shadowRoot?.querySelector('sw-import-dialog');
        const words = root?.shadowRoot?.querySelector('.ask-file p')?.textContent ?? '';
        if (!/ \d+ %$/.test(words)) {
          requestAnimationFrame(look);
          return;
        }
        const share = root?.shadowRoot?.querySelector('progress')?.value;
        Object.assign(globalThis, { told: { words, share } });
        root?.shadowRoot?.querySelector<HTMLButtonElement>('.ask-file .btn')?.click();
      };
      look();
    });
    await drop(page, 'all.csv', bigList(150_000));
    await dialog(page).getByText('Drop a file here, paste rows, or choose one').waitFor(SLOWLY);
    const { words, share } = await page.evaluate(
      () => (globalThis as unknown as { told: { words: string; share: number } }).told,
    );
    expect(words).toMatch(/^(?:reading its letters|parting its rows|looking at its figures), \d+ %$/);
    expect(share).toBeLessThan(1);
    expect(await written(page)).toBe(was);
    expect(await undo(page).isDisabled()).toBe(true);
    await shut(page);

    await drop(page, 'kiln.csv', bigList(50_000));
    await expect.poll(() => dialog(page).locator('.drop').textContent(), SLOWLY).toContain('50,001 lines');
    await nameSupplier(page, 'Kiln & Sons');
    const others = dialog(page).locator('.others', { hasText: 'with nothing in this file' });
    if (!(await others.evaluate((details) => (details as HTMLDetailsElement).open)))
      await others.locator('summary').first().click();
    await dialog(page).getByRole('button', { name: 'Search a row for Fork seals', exact: true }).click();
    await page.keyboard.type('rail r1012x');
    const found = dialog(page).locator('sw-part-finder li .what');
    // Every 1,013th row has the rail; twelve are shown.
    await expect.poll(() => found.count()).toBe(12);
    expect((await found.allTextContents()).every((text) => text.includes('rail R1012x'))).toBe(true);
    await page.keyboard.press('Control+A');
    await page.keyboard.type('quill sh');
    await expect
      .poll(() => found.allTextContents())
      .toEqual([expect.stringContaining('Quill shaft, ground')]);
    await dialog(page).getByRole('button', { name: 'Take line 50000 for Fork seals' }).click();
    await expect.poll(() => bringIn(page).textContent()).toContain('1 row');
    await expect.poll(() => dialog(page).locator('.offers .taken').textContent()).toContain('Quill shaft');
    await shut(page);
    expect(await written(page)).toBe(was);
  });
});

/** Readings as they are copied from a sheet: one in words, a total, and a row that was not copied whole. */
const READINGS = 'part\tnow\tlimit\nRear tyre\t9.1\t3\nFront tyre\tworn\t2\nTotal\t14\t\nDrive chain\t320.5';

const paste = (page: Page, text: string): Promise<void> =>
  page.evaluate((text) => {
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    document.body.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true }));
  }, text);

test('a route of a GPX file makes legs; a pasted block of readings is mended and goes over the rows of its parts', async () => {
  await withTablesOnly({ server }, async ({ page }) => {
    await tablesThere(page);
    const points = [0, 1, 2].map((lon) => `<rtept lat="0" lon="${lon}"><name>Stop ${lon}</name></rtept>`);
    await drop(page, 'loop.gpx', `<gpx version="1.1"><rte>${points.join('')}</rte></gpx>`);
    const into = dialog(page).getByLabel('Goes into');
    await expect.poll(() => into.locator('option:checked').textContent()).toBe('Legs');
    await expect.poll(() => foot(page).textContent()).toContain('2 rows, in the place of the 26 there');
    await dialog(page).getByRole('button', { name: 'Cancel' }).click();
    await dialog(page).waitFor({ state: 'hidden' });

    await paste(page, READINGS);
    await expect.poll(() => foot(page).textContent()).toContain('2 over rows of the same name, 0 added');
    const aside = dialog(page).locator('.aside');
    await expect.poll(() => aside.textContent()).toContain("Line 3: 'worn' is not a number.");
    const [saved] = await Promise.all([
      page.waitForEvent('download'),
      aside.getByRole('button', { name: 'Save the 2 lines set aside as CSV' }).click(),
    ]);
    expect(readFileSync(await saved.path(), 'utf8')).toBe(
      '\uFEFFline,reason,part,now,limit\r\n4,"It is a total, not a part.",Total,14,\r\n5,"The row ends before its last column: the file may be cut off here. Ask for it again, or fill the row in.",Drive chain,320.5,\r\n',
    );
    const now = aside.getByLabel(/ for line 3$/);
    await now.fill('5.1');
    await now.press('Enter');
    await expect.poll(() => aside.textContent()).not.toContain('worn');
    const chain = aside.getByLabel('Limit for line 5', { exact: true });
    await chain.fill('323.9');
    await chain.press('Enter');
    await expect.poll(() => foot(page).textContent()).toContain('3 over rows of the same name, 0 added');
    await bringIn(page).click();
    await expect
      .poll(() => page.locator('sw-tally-strip .edit').textContent())
      .toContain('3 rows brought in');
    expect(await rowOf(page, 'wear', 'Front tyre')).toMatchObject({ now: 5.1, limit: 2 });
    expect(await rowOf(page, 'wear', 'Drive chain')).toMatchObject({ now: 320.5, limit: 323.9 });
  });
});

test.each([
  ['Day at 1440 px', { width: 1440, height: 900 }, 'light'],
  ['Shed at 390 px', { width: 390, height: 844 }, 'dark'],
] as const)('the dialog is accessible and nothing stands out of it: %s', async (_, viewport, colorScheme) => {
  await withTablesOnly({ server, viewport, colorScheme }, async ({ page }) => {
    await tablesThere(page);
    await drop(page, 'march.csv', cheaper);
    await expect.poll(() => foot(page).textContent(), SLOWLY).toMatch(/come in/);
    await expectSound(page);
    await shut(page);
    await paste(page, READINGS);
    await expect.poll(() => foot(page).textContent()).toContain('2 over rows of the same name');
    await dialog(page).locator('.aside .others summary').click();
    await expectSound(page);
  });
});

async function expectSound(page: Page): Promise<void> {
  // The dialog alone: the rest of the page is looked at by the tests of its own.
  await page.evaluate(axeCore.source);
  const own = await page.evaluate(async () => {
    const within = { fromShadowDom: ['sparewell-app', 'sw-import-dialog'] };
    const { axe } = window as unknown as { axe: typeof axeCore };
    const { violations, passes } = await axe.run(within as unknown as axeCore.ElementContext);
    return {
      looked: passes.length,
      broken: violations.map(({ id, nodes }) => [id, nodes[0]?.target.flat().join(' ')]),
    };
  });
  expect(own.broken).toEqual([]);
  expect(own.looked).toBeGreaterThan(10);
  const over = await dialog(page).evaluate((element) => {
    const body = element.querySelector('.body')!;
    return [element.scrollWidth - element.clientWidth, body.scrollWidth - body.clientWidth];
  });
  expect(over).toEqual([0, 0]);
}
