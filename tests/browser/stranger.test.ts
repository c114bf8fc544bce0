import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { distFolder } from '../../src/commands/project.mjs';
import type { Cell, NotebookDocument } from '../../src/notebook/document.ts';
import { entered, formula, notebook, number, pairing, table, worked } from '../notebook/small-notebook.ts';
import { type OpenAppOptions, withApp } from './support/open-app.ts';

/** Texts that run something, fetch something or go somewhere if they are taken for more than text. */
const HOSTILE = [
  '<img src=x onerror="canary()">',
  '<script>canary()</script>',
  '"><svg onload=canary()>',
  '<style>*{display:none}</style>',
  '[here](javascript:canary())',
  '[here](data:text/html,<script>canary()</script>)',
  '![far](http://192.0.2.1/far.png)',
  '<http://192.0.2.1/>',
  '{{canary()}}',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: this very text is to be shown
  '${canary()}',
  "'-canary()-'",
  '=HYPERLINK("http://192.0.2.1/","x")',
  '&lt;img src=x onerror=canary()&gt;',
];

const note = (id: string, text: string): Cell => ({ kind: 'note', id, title: text, text });

/** A notebook with hostile text in every place that takes text. */
function hostileNotebook(): NotebookDocument {
  const all = HOSTILE.join('\n\n');
  const [first, second] = HOSTILE as [string, string];
  const cells: Cell[] = [
    { ...note('n1', all), title: 'All' },
    ...HOSTILE.map((text, at) => ({ ...note(`n${at + 2}`, text), title: text })),
    { ...number('price', 3, 'EUR'), title: first } as Cell,
    { ...formula('constructor_cost', 'price * 2'), title: second } as Cell,
    {
      ...table(
        'parts',
        entered('part', 'text', HOSTILE, { title: first }),
        entered('kg', 'number', HOSTILE, { title: second }),
        worked('twice', 'kg * 2'),
      ),
      title: HOSTILE[2]!,
      source: all,
    } as Cell,
    { ...pairing('both', 'parts', 'parts', worked('same', 'twice')), title: HOSTILE[3]! } as Cell,
    { ...formula('broken', first), title: HOSTILE[4]! } as Cell,
  ];
  return { ...notebook(...cells), id: 'stranger', title: first, gist: second };
}

async function openFile(page: Page, text: string): Promise<void> {
  await page.locator('sw-head-bar .holder > .btn').click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.locator('sw-head-bar .menu button', { hasText: 'Open file' }).click(),
  ]);
  await chooser.setFiles({
    name: 'stranger.sparewell.json',
    mimeType: 'application/json',
    buffer: Buffer.from(text),
  });
}

/** The app, watched: nothing may run, open a window, ask a question, or reach for another host. */
async function watched(options: OpenAppOptions, use: (page: Page) => Promise<void>): Promise<void> {
  await withApp({ plan: false, ...options }, async ({ page, context, url }) => {
    const reached: string[] = [];
    context.on('request', (request) => {
      const { origin, protocol } = new URL(request.url());
      if (origin !== new URL(url).origin && protocol !== 'blob:') reached.push(request.url());
    });
    page.on('dialog', (dialog) => {
      reached.push(`dialog ${dialog.message()}`);
      void dialog.dismiss();
    });
    await page.exposeFunction('canary', () => {
      reached.push('canary');
    });
    await page.locator('sw-road .stop').first().waitFor();
    await use(page);
    expect(reached).toEqual([]);
    expect(context.pages()).toHaveLength(1);
  });
}

describe("a stranger's notebook", () => {
  it('with hostile text everywhere shows it as text, and runs and fetches nothing', async () => {
    await watched({}, async (page) => {
      await openFile(page, JSON.stringify(hostileNotebook()));
      await expect.poll(() => page.locator('sw-head-bar h1 input').inputValue()).toBe(HOSTILE[0]);
      await expect.poll(() => page.locator('sw-note-cell').count()).toBe(HOSTILE.length + 1);
      // Into each card, so that its panel is drawn too.
      for (const stop of await page.locator('sw-road .stop').all()) {
        await stop.scrollIntoViewIfNeeded();
        await stop.click({ position: { x: 8, y: 8 } });
      }
      for (const link of await page.locator('sw-note-cell a').all())
        expect(await link.getAttribute('href')).not.toMatch(/^\s*(javascript|data|vbscript):/i);
      expect(
        await page.locator('sw-note-cell img, sw-note-cell script, sw-note-cell style[data]').count(),
      ).toBe(0);
      await expect.poll(() => page.locator('sw-head-bar .kept').first().textContent()).toMatch(/^Kept/);
      await page.reload();
      await expect.poll(() => page.locator('sw-head-bar h1 input').inputValue()).toBe(HOSTILE[0]);
    });
  });

  const refused = [
    ['is not one', '{"format":"shopping"}', /not a Sparewell notebook/],
    ['is cut off', JSON.stringify(hostileNotebook()).slice(0, 900), /not a whole notebook file/],
    [
      'is nested too deep',
      JSON.stringify(hostileNotebook()).replace(
        '"cells"',
        `"x":${'['.repeat(5000)}${']'.repeat(5000)},"cells"`,
      ),
      /deep in one another/,
    ],
    [
      'sets a prototype',
      JSON.stringify(hostileNotebook()).replace('"cells"', '"__proto__":{"polluted":1},"cells"'),
      /__proto__/,
    ],
  ] as const;

  it('that is none, cut off, nested too deep or sets a prototype is refused with a sentence, and the open one stays', async () => {
    await watched({}, async (page) => {
      for (const [what, text, sentence] of refused) {
        await openFile(page, text);
        const says = () => page.locator('sw-head-bar .says').textContent();
        await expect.poll(says, { message: what }).toMatch(sentence);
        expect(await says()).toContain('stranger.sparewell.json');
        expect(await page.locator('sw-head-bar h1 input').inputValue()).toBe('Plateau loop');
        expect(await page.evaluate(() => 'polluted' in {})).toBe(false);
      }
    });
  });

  it('with a pairing past the bound is told its count, and the rest works', async () => {
    const rows = Array.from({ length: 2000 }, (_, at) => at);
    const file = notebook(
      table('left', entered('a', 'number', rows)),
      table('right', entered('b', 'number', rows)),
      pairing('both', 'left', 'right', worked('c', 'a * b')),
      formula('fine', 'sum(left.a)'),
    );
    await watched({}, async (page) => {
      await openFile(page, JSON.stringify(file));
      await expect.poll(() => page.locator('sw-pairing-cell').textContent()).not.toBe(null);
      await expect
        .poll(() => page.locator('sw-formula-cell .res').textContent())
        .toMatch(/1[,\s ]?999[,\s ]?000/);
      expect(
        await page.evaluate(() =>
          (
            document.querySelector('sparewell-app') as unknown as {
              session: { notebook: { faults(): readonly { message: string }[] } };
            }
          ).session.notebook
            .faults()
            .map((fault) => fault.message),
        ),
      ).toEqual([expect.stringContaining('4,000,000')]);
    });
  });
});

describe('hostile text that is typed', () => {
  it('into the name of the notebook, a note, a field and a formula stays text', async () => {
    await watched({}, async (page) => {
      for (const text of HOSTILE.slice(0, 6)) {
        await page.locator('sw-head-bar h1 input').fill(text);
        await page.keyboard.press('Enter');
        await expect.poll(() => page.title()).toBe(`${text}, Sparewell`);
      }
      await page.locator('sw-note-cell .plain').first().click();
      await page.locator('sw-note-cell textarea').fill(HOSTILE.join('\n\n'));
      await page.keyboard.press('Escape');
      const hour = page.locator('sw-value-cell input[aria-label="An hour of work"]');
      await hour.click();
      await page.keyboard.type(HOSTILE[0]!);
      await page.keyboard.press('Enter');
      await expect
        .poll(() => page.locator('sw-value-cell .refusal').textContent())
        .toContain('is not a number');
      await page.keyboard.press('Escape');
      const card = page.locator('sw-formula-cell').first();
      await card.locator('.fx').click();
      await card.locator('.cm-content').waitFor();
      await page.keyboard.press('Control+a');
      await page.keyboard.insertText('globalThis.canary() + constructor.constructor("canary()")()');
      await page.keyboard.press('End');
      await page.keyboard.press('Enter');
      await expect.poll(() => card.locator('.fault-box').count()).toBe(1);
    });
  });
});

describe('the built page', () => {
  it('has no script, style or handler of its own inside its text', () => {
    const page = readFileSync(join(distFolder, 'index.html'), 'utf8');
    expect(page).not.toMatch(/<script(?![^>]*\bsrc=)[^>]*>/i);
    expect(page).not.toMatch(/<style|\sstyle=|\son\w+=|javascript:/i);
  });
});
