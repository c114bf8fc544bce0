import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atRest } from './support/at-rest.ts';
import { axe } from './support/axe.ts';
import { withApp } from './support/open-app.ts';
import { sharedApp } from './support/shared-app.ts';

const TALLY_TOTAL = 4;

/** The worked example without its plan, one page for the tests that leave it as it was. */
const example = sharedApp({ plan: false });

async function ready(page: Page): Promise<void> {
  await page.locator('sw-road .stop').first().waitFor();
  await expect.poll(() => page.locator('sw-tally-strip .fig').nth(TALLY_TOTAL).textContent()).toMatch(/\d/);
}

/** Labels of the first cards on the road: name and state. */
const road = (page: Page): Promise<readonly (string | null)[]> =>
  page
    .locator('sw-road .stop[data-stop]')
    .evaluateAll((stops) => stops.map((stop) => stop.getAttribute('aria-label')));

/** Id of the stop that the keyboard stands on, or on whose inside it stands. */
const focusedStop = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const road = document.querySelector('sparewell-app')?.shadowRoot?.querySelector('sw-road')?.shadowRoot;
    return road?.activeElement?.closest<HTMLElement>('.stop')?.dataset.stop ?? null;
  });

const field = (page: Page, label: string): Locator =>
  page.locator(`sw-value-cell input[aria-label="${label}"]`);

/** A formula card by its heading; other cards name it too while it is selected. */
const formulaCard = (page: Page, heading: string): Locator =>
  page.locator('sw-formula-cell').filter({ has: page.locator('h2', { hasText: heading }) });

interface FramedApp extends Element {
  readonly session: {
    readonly notebook: {
      readonly document: {
        readonly cells: readonly {
          id: string;
          kind: string;
          name?: string;
          columns?: readonly { id: string; name: string; entries?: readonly unknown[] }[];
        }[];
      };
      apply(edit: object): void;
      read(name: string): unknown;
      settled(): Promise<unknown>;
    };
  };
}

describe('the page', () => {
  it('refuses what cannot be read where it stands, and keeps what was there', async () => {
    const page = await example();
    await ready(page);
    const hour = field(page, 'An hour of work');
    await hour.click();
    await page.keyboard.type('lots');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('sw-value-cell .refusal').allTextContents())
      .toEqual([expect.stringMatching(/^'lots' is not a number\. /)]);
    expect(await hour.inputValue()).toBe('lots');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    await expect.poll(() => hour.inputValue()).toBe('25.00');
    expect(await page.locator('sw-tally-strip .edit .what').textContent()).toContain('Each edit shows here');
  });

  it('paints every figure on the screen with the frame of the edit, and works out the others after it', async () => {
    await withApp({ plan: false }, async ({ page }) => {
      await ready(page);
      await atRest(page);
      const found = await page.evaluate(async () => {
        const app = document.querySelector('sparewell-app') as unknown as FramedApp;
        const { notebook } = app.session;
        const road = app.shadowRoot?.querySelector('sw-road')?.shadowRoot;
        const cell = notebook.document.cells.find((one) => one.kind === 'table' && one.name === 'wear');
        const column = cell?.columns?.find((one) => one.name === 'now');
        const card = [...(road?.querySelectorAll('sw-table-cell') ?? [])].find(
          (one) => (one as unknown as { cellId: string }).cellId === cell?.id,
        );
        if (!cell || !column || !card) throw new Error('the worked example has no wear.now');
        card.scrollIntoView();
        await new Promise((then) => setTimeout(then, 500));
        const figures = (): string[] =>
          [
            ...(card.shadowRoot?.querySelector('sw-table-view')?.shadowRoot?.querySelectorAll('tbody td') ??
              []),
          ].map((figure) => figure.textContent?.trim() ?? '');
        const tally = (): string => JSON.stringify(notebook.read('expected_total'));
        const [before, tallyBefore] = [figures(), tally()];
        await new Promise(requestAnimationFrame);
        notebook.apply({
          kind: 'entry',
          cell: cell.id,
          column: column.id,
          row: 0,
          before: column.entries?.[0] as number,
          after: (column.entries?.[0] as number) - 0.4,
        });
        await new Promise<void>((painted) => {
          const channel = new MessageChannel();
          channel.port1.onmessage = () => painted();
          channel.port2.postMessage(null);
        });
        const inFrame = figures();
        const state = card.shadowRoot?.querySelector('.state')?.textContent?.trim();
        await notebook.settled();
        await new Promise((then) => setTimeout(then, 500));
        return {
          changed: inFrame.filter((figure, at) => figure !== before[at]).length,
          later: figures().filter((figure, at) => figure !== inFrame[at]),
          state,
          total: tally() !== tallyBefore,
        };
      });
      // The reading itself, and what is worked out from it down the row.
      expect(found.changed).toBeGreaterThan(2);
      expect(found.later).toEqual([]);
      expect(found.state).toBe('settled');
      expect(found.total).toBe(true);
    });
  });

  it('is walked by the keyboard, card by card, in and out, and undone', async () => {
    const page = await example();
    await ready(page);
    const [first, second] = await page
      .locator('sw-road .stop')
      .evaluateAll((stops) => stops.map((stop) => (stop as HTMLElement).dataset.stop ?? ''));
    await page.locator('sw-road .stop').first().focus();
    await page.keyboard.press('Tab');
    expect(await focusedStop(page)).toBe(second);
    await page.keyboard.press('Shift+Tab');
    expect(await focusedStop(page)).toBe(first);
    const before = await road(page);
    await page.keyboard.press('Alt+ArrowDown');
    await expect.poll(async () => (await road(page))[1]).toBe(before[0]);
    expect(await focusedStop(page)).toBe(first);
    await page.keyboard.press('Control+z');
    await expect.poll(() => road(page)).toEqual(before);
    await page.keyboard.press('Enter');
    await page.keyboard.type('f');
    expect(await page.locator('sw-note-cell textarea').inputValue()).toMatch(/f$/);
    await page.keyboard.press('Escape');
    await expect.poll(() => page.locator('sw-note-cell textarea').count()).toBe(0);
    expect(await focusedStop(page)).toBe(first);
  });

  it('holds a card that the keyboard went to in sight, but not against what else scrolls', async () => {
    const page = await example();
    await ready(page);
    await atRest(page);
    await page.locator('sw-road .stop').first().focus();
    await page.keyboard.press('Tab');
    // As a screen reader or a search in the page does, while the card is still held.
    const wentTo = await page.evaluate(async () => {
      const before = scrollY;
      scrollTo(0, document.documentElement.scrollHeight / 2);
      const wanted = scrollY;
      await new Promise((then) => setTimeout(then, 500));
      return { far: wanted - before, off: Math.abs(scrollY - wanted) };
    });
    expect(wentTo.far).toBeGreaterThan(2000);
    expect(wentTo.off).toBeLessThan(1000);
  });

  it('says what an edit did, with the old figure struck beside the new one', async () => {
    const page = await example();
    await ready(page);
    await field(page, 'An hour of work').click();
    await page.keyboard.type('35');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('sw-tally-strip .edit .what').textContent())
      .toBe('An hour of work: 25 to 35 EUR/h');
    await expect
      .poll(() => page.locator('sw-tally-strip .tl').nth(TALLY_TOTAL).locator('.delta').textContent())
      .toMatch(/^[−+]\d+ EUR$/);
    expect(await page.locator('sw-value-cell .was').textContent()).toBe('was 25.00');
    expect(await page.locator('sw-road-log .what').first().textContent()).toContain('25 to 35 EUR/h');
    await page.locator('sw-tally-strip .edit button').click();
    await expect
      .poll(() => page.locator('sw-tally-strip .edit .what').textContent())
      .toMatch(/^Undone: An hour of work/);
  });
});

describe('the name of the notebook', () => {
  it('is not taken back while it is typed and the head bar is drawn again', async () => {
    const page = await example();
    await ready(page);
    const name = page.locator('sw-head-bar h1 input');
    await name.fill('Gravel and');
    await page.locator('sw-head-bar').evaluate(async (bar) => {
      const drawn = bar as HTMLElement & { requestUpdate(): void; updateComplete: Promise<unknown> };
      drawn.requestUpdate();
      await drawn.updateComplete;
    });
    expect(await name.inputValue()).toBe('Gravel and');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.title()).toBe('Gravel and, Sparewell');
    await name.fill('Something else');
    await page.keyboard.press('Escape');
    await expect.poll(() => name.inputValue()).toBe('Gravel and');
  });
});

describe('a formula', () => {
  it('shows its fault as it is typed, with the place and the mend, and leaves on Escape', async () => {
    const page = await example();
    await ready(page);
    await atRest(page);
    const card = formulaCard(page, 'Work in the shed');
    await card.locator('.fx').click();
    const area = card.locator('sw-formula-line').getByRole('textbox');
    await expect.poll(() => card.locator('sw-formula-line .would').textContent()).toMatch(/EUR$/);
    await expect.poll(() => area.textContent()).not.toBe('');
    const kept = await area.textContent();
    await page.keyboard.type(' + 3 km');
    await expect.poll(() => card.locator('sw-formula-line .bad').textContent()).toContain('cannot be added');
    expect(await card.locator('sw-formula-line mark').textContent()).toBe('+');
    // The first Escape may have gone to the list of names that fit.
    const left = async (): Promise<number> => {
      if ((await area.count()) > 0) await page.keyboard.press('Escape');
      return area.count();
    };
    await expect.poll(left).toBe(0);
    await card.locator('.fx').click();
    await expect.poll(() => area.textContent()).toBe(kept);
    await expect.poll(left).toBe(0);
  });

  it('is kept with its fault: its card says so, what reads it waits, the rest goes on', async () => {
    const page = await example();
    await ready(page);
    const card = formulaCard(page, 'Work in the shed');
    await card.locator('.fx').click();
    await page.keyboard.type(' + hour_valu');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => card.locator('.fault-box').textContent())
      .toContain('There is no figure, column or unit called hour_valu');
    await expect
      .poll(async () => (await road(page)).filter((label) => label?.includes('waits for work_cost')).length)
      .toBeGreaterThan(1);
    expect(await road(page)).toContain('Work in the shed, 1 fault');
    expect(await road(page)).toContain('Fuel, settled');
  });

  it('leads from its result down to the figures it reads, and back', async () => {
    const page = await example();
    await ready(page);
    await page.locator('sw-tally-strip .tl').nth(TALLY_TOTAL).click();
    const panel = page.locator('sw-side-panel');
    await expect.poll(() => panel.locator('header h2').first().textContent()).toBe('Expected total');
    await panel.locator('sw-figure-slip .list .go').first().click();
    await expect
      .poll(() => panel.locator('header h2').first().textContent())
      .toBe('Fuel and other trip costs');
    await panel.locator('.crumbs button').click();
    await expect.poll(() => panel.locator('header h2').first().textContent()).toBe('Expected total');
  });
});

describe('the road', () => {
  it('takes a card of each kind, renames and removes one, and has all undone', async () => {
    const page = await example();
    await ready(page);
    const before = await road(page);
    const words = ['Note', 'Value', 'Table', 'Formula', 'Pairing', 'Calls', 'Tally'];
    for (const [at, word] of words.entries()) {
      await page.locator('sw-road .add button', { hasText: word }).click();
      await expect.poll(async () => (await road(page)).length).toBe(before.length + at + 1);
    }
    await page.locator('sw-card-slip button', { hasText: 'Remove' }).click();
    await expect.poll(async () => (await road(page)).length).toBe(before.length + words.length - 1);
    for (let step = 0; step <= words.length; step++)
      await page.locator('sw-head-bar button', { hasText: 'Undo' }).click();
    await expect.poll(() => road(page)).toEqual(before);
  });

  it('renames a figure in every formula that reads it', async () => {
    const page = await example();
    await ready(page);
    await page.locator('sw-value-cell .name', { hasText: 'hour_value' }).click();
    const name = page.locator('sw-card-slip input[aria-label="Name"]');
    await name.click();
    await page.keyboard.type('work_rate');
    await page.keyboard.press('Enter');
    const card = formulaCard(page, 'Work in the shed');
    await expect.poll(() => card.locator('.fx').textContent()).toContain('workrate');
    await expect
      .poll(async () => (await road(page)).filter((label) => !label?.endsWith(', settled')))
      .toEqual([]);
  });
});

describe('a new notebook', () => {
  it('begins empty with four ways in, and is there again after a reload', async () => {
    await withApp({ plan: false }, async ({ page }) => {
      await ready(page);
      await page.locator('sw-head-bar .holder > .btn').click();
      await page.locator('sw-head-bar .menu button', { hasText: 'New notebook' }).click();
      await page.locator('sw-new-notebook-dialog button', { hasText: 'Begin' }).click();
      expect(await page.locator('sw-empty-notebook .first .btn').count()).toBe(4);
      await page.locator('sw-empty-notebook .first .btn').first().click();
      await expect.poll(() => road(page)).toEqual(['Trip values, 6 to fill in']);
      await expect.poll(() => page.locator('sw-head-bar .kept').first().textContent()).toMatch(/^Kept/);
      await page.reload();
      await expect.poll(() => road(page)).toEqual(['Trip values, 6 to fill in']);
    });
  });
});

describe('the look', () => {
  it('remembers the light that was chosen', async () => {
    await withApp({ valuesAlone: true, colorScheme: 'light' }, async ({ page }) => {
      const stop = page.locator('sw-road .stop').first();
      await stop.waitFor();
      const theme = (): Promise<string | undefined> =>
        page.evaluate(() => document.documentElement.dataset.theme);
      expect(await theme()).toBe('day');
      await page.locator('sw-head-bar .light button', { hasText: 'Shed' }).click();
      expect(await theme()).toBe('shed');
      await page.reload();
      await stop.waitFor();
      expect(await theme()).toBe('shed');
    });
  });

  it.each([
    ['day', 1440],
    ['shed', 390],
  ] as const)(
    'has no accessibility fault in the %s theme at %d px, at rest, in the panel and while writing',
    async (theme, width) => {
      const colorScheme = theme === 'day' ? 'light' : 'dark';
      await withApp({ plan: false, colorScheme, viewport: { width, height: 900 } }, async ({ page }) => {
        await ready(page);
        expect(await axe(page)).toEqual([]);
        await page.locator('sw-tally-strip .tl').nth(TALLY_TOTAL).click();
        await page.locator('sw-figure-slip .big-figure').waitFor();
        expect(await axe(page, ['sparewell-app', 'sw-side-panel'])).toEqual([]);
        await page.locator('sw-side-panel .x').click();
        await page.locator('sw-note-cell .plain').first().click();
        await page.locator('sw-note-cell textarea').waitFor();
        expect(await axe(page, ['sparewell-app', 'sw-road', 'sw-note-cell'])).toEqual([]);
      });
    },
  );

  it('fits a phone: nothing wider than the page, the panel a sheet that folds', async () => {
    await withApp({ plan: false, viewport: { width: 390, height: 844 }, touch: true }, async ({ page }) => {
      await ready(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390);
      const panel = page.locator('sw-side-panel .panel');
      // One far from the page's foot, where the panel has its place in the page.
      const formula = page.locator('sw-formula-cell').first();
      await formula.locator('h2').tap();
      expect(await panel.isVisible()).toBe(false);
      await formula.locator('.res').tap();
      const foot = async () => {
        const box = await panel.boundingBox();
        return (box?.y ?? 0) + (box?.height ?? 0);
      };
      await expect.poll(foot).toBe(844);
      const open = (await panel.boundingBox())?.height ?? 0;
      await page.locator('sw-side-panel .fold').tap();
      await expect.poll(async () => (await panel.boundingBox())?.height ?? 0).toBeLessThan(open / 2);
      await page.locator('sw-side-panel .x').tap();
      await expect.poll(() => panel.isVisible()).toBe(false);
    });
  });
});
