import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { atRest } from './support/at-rest.ts';
import { axe } from './support/axe.ts';
import { chooseInMenu } from './support/choose-in-menu.ts';
import { weakContrasts } from './support/colour.ts';
import { type OpenedApp, openApp, withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** A plan is worked out in a second or so; a busy machine takes its time. */
const SLOWLY = { timeout: 40_000 };

/** Waits until every card is settled. */
async function settled(page: Page): Promise<void> {
  await page.locator('sw-road .stop').first().waitFor();
  const open = page.locator('sw-road .stop[data-stop]:not([aria-label$=", settled"])');
  await open.first().waitFor({ state: 'detached', ...SLOWLY });
}

/** Shows the page in a theme, once what fades from one to the other has faded. */
async function inLight(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
  await page.evaluate(() =>
    Promise.allSettled(
      document
        .getAnimations()
        .filter((one) => one.effect?.getComputedTiming().iterations !== Number.POSITIVE_INFINITY)
        .map((one) => one.finished),
    ),
  );
}

/** Sum of the browser's own layout shift scores since the page was opened, those after a key stroke included. */
function shiftSoFar(page: Page): Promise<{ score: number; what: string[] }> {
  return page.evaluate(
    () =>
      new Promise((resolve) => {
        let score = 0;
        const what: string[] = [];
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) {
            const shift = entry as PerformanceEntry & {
              value: number;
              sources: { previousRect: DOMRectReadOnly; currentRect: DOMRectReadOnly }[];
            };
            score += shift.value;
            // What moved stands in shadow roots, which the browser keeps to itself: its place tells it.
            const at = ({ x, y, width, height }: DOMRectReadOnly): string =>
              [x, y, width, height].map(Math.round).join(' ');
            for (const { previousRect, currentRect } of shift.sources)
              what.push(`${at(previousRect)} to ${at(currentRect)}`);
          }
        }).observe({ type: 'layout-shift', buffered: true });
        setTimeout(() => resolve({ score, what }), 120);
      }),
  );
}

/** Names, in boxes that cut what is too long for them, that are cut off. */
const cutTexts = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const cut: string[] = [];
    const walk = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        if (element.shadowRoot) walk(element.shadowRoot);
        const { overflowX, overflowY, clipPath } = getComputedStyle(element);
        // Long remarks in a table are shown whole once picked; a field scrolls.
        if (clipPath !== 'none' || element.tagName === 'INPUT' || element.matches('td .text, th .name'))
          continue;
        const wide = overflowX === 'hidden' && element.scrollWidth > element.clientWidth + 1;
        const high = overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1;
        if (element.clientWidth > 1 && (wide || high))
          cut.push(`${element.localName}.${element.className}: ${element.textContent?.trim().slice(0, 40)}`);
      }
    };
    walk(document);
    return cut;
  });

/**
 * Colour blindness as Machado, Oliveira and Fernandes 2009 simulate it (A Physiologically-based Model for
 * Simulation of Color Vision Deficiency, table 1, severity 1.0), on linear RGB; grey is relative luminance.
 */
const SEEN: Readonly<Record<string, readonly (readonly number[])[]>> = {
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritanopia: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
  grey: [
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
    [0.2126, 0.7152, 0.0722],
  ],
};

/** Draws each glyph of a column head in its colour on its wash, as it is seen, and compares what is inked. */
async function glyphsApart(seen: readonly (readonly number[])[]) {
  const [width, height] = [88, 64];
  const root = document.querySelector('sparewell-app')!.shadowRoot!.querySelector('sw-road')!.shadowRoot!;
  const calls = root.querySelector('sw-calls-cell')!.shadowRoot!;
  const kinds = ['leave', 'replace', 'carry', 'keep', 'way'];
  const style = getComputedStyle(document.documentElement);
  const linear = (value: number): number => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  };
  const luminanceOf = (rgb: readonly number[]): number => {
    const from = rgb.map(linear);
    const [r, g, b] = seen.map((row) =>
      Math.min(
        1,
        Math.max(
          0,
          row.reduce((sum, part, i) => sum + part * from[i]!, 0),
        ),
      ),
    );
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
  };
  const drawn = [...calls.querySelectorAll('thead th[data-call] .glyph')];
  const masks: boolean[][] = [];
  let leastContrast = 21;
  for (const [at, glyph] of drawn.entries()) {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [width, height];
    const draw = canvas.getContext('2d', { willReadFrequently: true })!;
    const wash = style.getPropertyValue(`--${kinds[at]}-wash`).trim() || style.getPropertyValue('--sheet');
    draw.fillStyle = wash;
    draw.fillRect(0, 0, width, height);
    const copy = glyph.cloneNode(true) as SVGElement;
    copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
    copy.setAttribute('width', String(width));
    copy.setAttribute('height', String(height));
    copy.setAttribute('color', getComputedStyle(glyph).color);
    const image = new Image();
    image.src = `data:image/svg+xml,${encodeURIComponent(copy.outerHTML)}`;
    await image.decode();
    const ground = luminanceOf([...draw.getImageData(0, 0, 1, 1).data].slice(0, 3));
    draw.drawImage(image, 0, 0, width, height);
    const { data } = draw.getImageData(0, 0, width, height);
    const contrasts = Array.from({ length: width * height }, (_, pixel) => {
      const ink = luminanceOf([data[4 * pixel]!, data[4 * pixel + 1]!, data[4 * pixel + 2]!]);
      return (Math.max(ink, ground) + 0.05) / (Math.min(ink, ground) + 0.05);
    });
    leastContrast = Math.min(leastContrast, Math.max(...contrasts));
    masks.push(contrasts.map((contrast) => contrast >= 2));
  }
  let leastDifference = 1;
  masks.forEach((a, i) => {
    for (const b of masks.slice(i + 1)) {
      const either = a.filter((inked, pixel) => inked || b[pixel]).length;
      const one = a.filter((inked, pixel) => inked !== b[pixel]).length;
      leastDifference = Math.min(leastDifference, one / either);
    }
  });
  return { glyphs: drawn.length, leastDifference, leastContrast };
}

/** What stands out of the open dialog to the right; what scrolls sideways on purpose is left out. */
const standsOut = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const out: string[] = [];
    const look = (element: Element, edge: number): void => {
      if (getComputedStyle(element).clipPath !== 'none') return;
      const { right, width } = element.getBoundingClientRect();
      if (width > 0 && right > edge + 1)
        out.push(
          `${element.localName}.${element.getAttribute('class') ?? ''}: ${Math.round(right - edge)} px`,
        );
      if (element.clientWidth > 0 && /auto|scroll/.test(getComputedStyle(element).overflowX)) {
        if (element.matches('.scroll, .csv, .cm-scroller')) return;
        if (element.scrollWidth > element.clientWidth + 1) out.push(`${element.localName} scrolls sideways`);
      }
      for (const child of [...(element.shadowRoot?.children ?? []), ...element.children]) look(child, edge);
    };
    const walk = (root: Document | ShadowRoot): void => {
      for (const element of root.querySelectorAll('*')) {
        if (element.matches('dialog[open]')) look(element, element.getBoundingClientRect().right);
        else if (element.shadowRoot) walk(element.shadowRoot);
      }
    };
    walk(document);
    return out;
  });

describe('the worked example with its plan', () => {
  // One opening for all that is looked at: each test leaves the page as it found it, or does not mind.
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ server, reducedMotion: 'no-preference' });
    await settled(app.page);
    await app.page.locator('sw-plan-cell').getByText('Proven best').waitFor(SLOWLY);
    await settled(app.page);
  }, 120_000);

  afterAll(() => app?.close());

  test('nothing moves while the page is opened, nor when a figure is edited', async () => {
    const { page } = app;
    expect(await shiftSoFar(page)).toEqual({ score: 0, what: [] });
    const hour = page.locator('sw-value-cell input[aria-label="An hour of work"]');
    await hour.click();
    await page.keyboard.type('31');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await shiftSoFar(page)).toEqual({ score: 0, what: [] });
  });

  test('what an edit changed is ruled with ink for a moment, but not where motion is reduced', async () => {
    const { page } = app;
    const hour = page.locator('sw-value-cell input[aria-label="An hour of work"]');
    const inked = (): Promise<number> =>
      page.evaluate(() => (globalThis as unknown as { inked: number }).inked);
    const edit = async (figure: string): Promise<void> => {
      await page.evaluate(() => {
        const counts = globalThis as unknown as { inked: number };
        counts.inked = 0;
      });
      await hour.fill(figure);
      await page.keyboard.press('Enter');
      await expect
        .poll(() => page.locator('sw-tally-strip .edit .what').textContent())
        .toContain(`to ${figure}`);
      await settled(page);
    };
    await page.evaluate(() => {
      const { animate } = Element.prototype;
      const { pause } = Animation.prototype;
      const count = (): void => {
        (globalThis as unknown as { inked: number }).inked += 1;
      };
      Element.prototype.animate = function (...settings) {
        count();
        return animate.apply(this, settings);
      };
      // A figure that changes again has its rule begin anew, and stand.
      Animation.prototype.pause = function () {
        count();
        pause.apply(this);
      };
    });
    await edit('33.5');
    // Figures out of sight are not ruled.
    await expect.poll(inked).toBeGreaterThan(0);
    // The tally says by how much.
    expect(await page.locator('sw-tally-strip .delta', { hasText: 'EUR' }).count()).toBeGreaterThan(0);
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await edit('25.5');
    // Rules come a moment after the figures are painted; here none may.
    await page.waitForTimeout(200);
    expect(await inked()).toBe(0);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
  });

  test('the faces come with the app, and nothing is fetched from elsewhere', async () => {
    const { page, url } = app;
    const { faces, addresses } = await page.evaluate(() => ({
      faces: [...document.fonts]
        .filter((face) => face.status === 'loaded' && !face.family.includes('stand-in'))
        .map((face) => face.family.replaceAll('"', '')),
      addresses: performance.getEntriesByType('resource').map((entry) => entry.name),
    }));
    expect(new Set(faces)).toEqual(new Set(['Inter Variable', 'Barlow Semi Condensed', 'Alegreya']));
    expect(addresses.filter((address) => !address.startsWith(url))).toEqual([]);
    expect(addresses.filter((address) => /-ext-.*woff2/.test(address))).toEqual([]);
  });

  test.each(['light', 'dark'] as const)(
    'every text and sign stands off its ground by WCAG 2.2 AA in the %s theme, a card and a part picked',
    async (colorScheme) => {
      const { page } = app;
      await inLight(page, colorScheme);
      await page.locator('sw-calls-cell').getByRole('rowheader', { name: 'Battery' }).click();
      await page.locator('sw-call-choices').waitFor();
      const { texts, marks, weak } = await weakContrasts(page);
      expect(texts).toBeGreaterThan(1000);
      expect(marks).toBeGreaterThan(40);
      expect(weak).toEqual([]);
    },
  );

  test.each(['light', 'dark'] as const)(
    'calls are told apart by their shapes in the %s theme, in colour blindness and in grey',
    async (colorScheme) => {
      const { page } = app;
      await inLight(page, colorScheme);
      for (const [sight, seen] of Object.entries(SEEN)) {
        const apart = await page.evaluate(glyphsApart, seen);
        expect(apart.glyphs, sight).toBe(5);
        // Of all pixels that either of two signs inks, those that only one of them does: at least a tenth.
        expect(apart.leastDifference, sight).toBeGreaterThan(0.1);
        // Each sign stands off its own wash (WCAG 2.2, 1.4.11) as it is seen.
        expect(apart.leastContrast, sight).toBeGreaterThan(3);
      }
    },
  );

  test('nothing is wider than the page, whatever its width; at twice the text size nothing is cut off either', async () => {
    const { page } = app;
    const wideAt = async (width: number): Promise<number> => {
      await page.setViewportSize({ width, height: 800 });
      return page.evaluate(() => document.documentElement.scrollWidth);
    };
    for (const width of [1280, 800, 390, 320]) expect(await wideAt(width)).toBe(width);
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    for (const width of [390, 1280, 1440]) {
      expect(await wideAt(width)).toBe(width);
      expect(await cutTexts(page), `${width} px`).toEqual([]);
    }
  });
});

test.each(['light', 'dark'] as const)(
  'before the theme is known the ground is the %s one of the system',
  async (scheme) => {
    await withApp({ server, valuesAlone: true, colorScheme: scheme }, async ({ page }) => {
      const found = await page.evaluate(() => {
        const root = document.documentElement;
        const { theme } = root.dataset;
        delete root.dataset.theme;
        const probe = document.createElement('i');
        probe.style.color = 'Canvas';
        document.body.append(probe);
        const found = { ground: getComputedStyle(probe).color, own: getComputedStyle(root).backgroundColor };
        probe.remove();
        root.dataset.theme = theme;
        return found;
      });
      // Canvas of CSS Color 4 as Chromium has it; the page's own ground is none until then.
      expect(found).toEqual({
        ground: scheme === 'dark' ? 'rgb(18, 18, 18)' : 'rgb(255, 255, 255)',
        own: 'rgba(0, 0, 0, 0)',
      });
    });
  },
);

test('at 320 px nothing stands out of any dialog', async () => {
  const viewport = { width: 320, height: 640 };
  await withApp({ server, plan: false, viewport }, async ({ page }) => {
    await settled(page);
    const dialog = page.locator('dialog[open]');
    // Escape closes the menu while the keyboard is still on its button.
    await page.getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.locator('sw-head-bar .menu').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('sw-head-bar .menu').waitFor({ state: 'detached' });
    const fits = async (what: string): Promise<void> => {
      expect(await standsOut(page), what).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth), what).toBe(320);
    };
    for (const item of [
      'All notebooks',
      'Moments and what-ifs',
      'Units and money',
      'Compare a partner’s file',
      'Import prices or rows',
      'New notebook',
    ]) {
      await chooseInMenu(page, item, dialog);
      await fits(item);
      if (item !== 'New notebook') await page.keyboard.press('Escape');
    }
    await dialog.getByRole('button', { name: 'Start', exact: true }).click();
    const steps = page.getByRole('dialog', { name: 'Start your own trip' });
    for (const step of ['The trip', 'The parts', 'The route', 'The prices', 'The notebook']) {
      await steps.getByRole('button', { name: step }).click();
      if (step === 'The parts') await steps.getByRole('button', { name: 'All of Brakes' }).click();
      if (step === 'The route') await steps.getByRole('button', { name: 'Type the first leg' }).click();
      await fits(step);
    }
    await page.keyboard.press('Escape');

    // A file in the import dialog, a row of it set aside; the functions of the formula editor; the panel as a sheet.
    const list =
      'Kiln & Sons;;\nPart no;Article;Price\nK-1;Drive chain 520 sealed;71,50\nK-3;Garden hose;POA\n';
    await chooseInMenu(page, 'Import prices or rows', dialog);
    const chooser = page.waitForEvent('filechooser');
    await dialog.getByRole('button', { name: 'Choose a file' }).click();
    await (await chooser).setFiles({ name: 'list.csv', mimeType: 'text/csv', buffer: Buffer.from(list) });
    await dialog.getByText('Match the columns').waitFor();
    await fits('the import of a file');
    await page.keyboard.press('Escape');
    const formula = page.locator('sw-formula-cell').first();
    await formula.locator('.fx').click();
    await formula.getByRole('button', { name: 'Functions' }).click();
    await formula.getByRole('dialog', { name: 'Functions' }).locator('article').first().waitFor();
    await fits('the functions');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    const battery = page.locator('sw-calls-cell').getByRole('rowheader', { name: 'Battery' });
    await battery.scrollIntoViewIfNeeded();
    await atRest(page);
    await battery.click();
    await page.locator('sw-side-panel sw-call-choices').waitFor();
    await fits('the panel');
    // In the shopping list of the prep sheet nothing lies over what stands beside it.
    const prep = page.locator('sw-prep-cell');
    await prep.scrollIntoViewIfNeeded();
    await prep.locator('.shop .nr').first().waitFor();
    const gaps = await prep.locator('.shop tbody tr:not(.group)').evaluateAll((rows) =>
      rows.map((row) => {
        // A number may be wider than its cell.
        const number = document.createRange();
        number.selectNodeContents(row.querySelector('.nr')!);
        return row.querySelector('.do')!.getBoundingClientRect().left - number.getBoundingClientRect().right;
      }),
    );
    expect(gaps.length).toBeGreaterThan(5);
    expect(Math.min(...gaps)).toBeGreaterThan(0);
  });
});

test('the walk is offered at a first visit, shows each stop, can be left anywhere and is found again', async () => {
  const viewport = { width: 390, height: 844 };
  await withApp({ server, plan: false, viewport }, async ({ page }) => {
    await page.getByRole('button', { name: 'Show me round' }).first().click();
    const walk = page.getByRole('dialog');
    const title = (): Promise<string | null> => walk.locator('h2').textContent();
    expect(await title()).toBe('The sum in sight1 of 7');
    await walk.getByRole('button', { name: 'Next' }).click();
    await walk.getByRole('button', { name: 'Next' }).click();
    expect(await title()).toBe('Your readings3 of 7');
    const card = page.locator('sw-road .stop[data-stop="wear"] > .card');
    await expect.poll(() => card.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid');
    expect(await card.evaluate((element) => element.getBoundingClientRect().top < innerHeight)).toBe(true);
    expect(await axe(page, ['sparewell-app', 'sw-walk-guide'])).toEqual([]);
    // A card far down stands with its head under the tally, however many were drawn above it meanwhile.
    for (let step = 3; step < 6; step++) await walk.getByRole('button', { name: 'Next' }).click();
    expect(await title()).toBe('On paper6 of 7');
    const prep = page.locator('sw-road .stop[data-stop="prep"] > .card');
    const tally = (await page.locator('sw-tally-strip').boundingBox())!;
    const under = async (): Promise<number> => (await prep.boundingBox())!.y - tally.y - tally.height;
    await atRest(page);
    expect(await under()).toBeGreaterThanOrEqual(0);
    expect(await under()).toBeLessThan(60);
    await page.keyboard.press('Escape');
    await walk.waitFor({ state: 'detached' });
    expect(await card.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('none');
    await page.reload();
    await settled(page);
    expect(await page.locator('.walk-offer').count()).toBe(0);
    await page.locator('sw-head-bar').getByRole('button', { name: 'Notebook', exact: true }).click();
    await page.locator('sw-head-bar').getByRole('button', { name: 'Show me round' }).click();
    expect(await title()).toBe('The sum in sight1 of 7');
  });
});
