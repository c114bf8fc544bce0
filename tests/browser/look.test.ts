import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axe } from './support/axe.ts';
import { weakContrasts } from './support/colour.ts';
import { withApp } from './support/open-app.ts';
import { type AppServer, serveApp } from './support/server.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** Waits until every card is settled. */
async function settled(page: Page): Promise<void> {
  await page.locator('sw-road .stop').first().waitFor();
  await expect
    .poll(() =>
      page
        .locator('sw-road .stop[data-stop]')
        .evaluateAll((stops) => stops.filter((stop) => !stop.ariaLabel?.endsWith(', settled')).length),
    )
    .toBe(0);
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

describe.each(['light', 'dark'] as const)('in the %s theme', (colorScheme) => {
  test('every text and sign stands off its ground by WCAG 2.2 AA, a card and a part picked', async () => {
    await withApp({ server, colorScheme }, async ({ page }) => {
      await settled(page);
      await page.locator('sw-calls-cell').getByRole('rowheader', { name: 'Battery' }).click();
      await page.locator('sw-call-choices').waitFor();
      const { texts, marks, weak } = await weakContrasts(page);
      expect(texts).toBeGreaterThan(1000);
      expect(marks).toBeGreaterThan(40);
      expect(weak).toEqual([]);
    });
  });
});

test('nothing moves while the page is opened, nor when a figure is edited', async () => {
  await withApp({ server }, async ({ page }) => {
    await settled(page);
    expect(await shiftSoFar(page)).toEqual({ score: 0, what: [] });
    const hour = page.locator('sw-value-cell input[aria-label="An hour of work"]');
    await hour.click();
    await page.keyboard.type('31');
    await page.keyboard.press('Enter');
    await settled(page);
    // The words at the right of the tally's labels change, and begin elsewhere: that much, and nothing below it.
    const { score, what } = await shiftSoFar(page);
    expect(score).toBeLessThan(0.0005);
    const belowTally = what.filter((one) => Number(one.split(' ')[1]) > 110);
    expect(belowTally).toEqual([]);
  });
});

test('the faces come with the app, and nothing is fetched from elsewhere', async () => {
  await withApp({ server }, async ({ page, url }) => {
    await settled(page);
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
});

test.each([320, 390, 800, 1280])('nothing is wider than a page of %i px', async (width) => {
  await withApp({ server, viewport: { width, height: 800 } }, async ({ page }) => {
    await settled(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  });
});

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

test.each([390, 1280])('at twice the text size nothing is cut off nor too wide at %i px', async (width) => {
  await withApp({ server, viewport: { width, height: 800 } }, async ({ page }) => {
    await settled(page);
    await page.evaluate(() => document.documentElement.style.setProperty('font-size', '200%'));
    await settled(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
    expect(await cutTexts(page)).toEqual([]);
  });
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

test.each(['light', 'dark'] as const)(
  'calls are told apart by their shapes in the %s theme, in colour blindness and in grey',
  async (colorScheme) => {
    await withApp({ server, colorScheme }, async ({ page }) => {
      await settled(page);
      for (const [sight, seen] of Object.entries(SEEN)) {
        const apart = await page.evaluate(glyphsApart, seen);
        expect(apart.glyphs, sight).toBe(5);
        // Of all pixels that either of two signs inks, those that only one of them does: at least a tenth.
        expect(apart.leastDifference, sight).toBeGreaterThan(0.1);
        // Each sign stands off its own wash (WCAG 2.2, 1.4.11) as it is seen.
        expect(apart.leastContrast, sight).toBeGreaterThan(3);
      }
    });
  },
);

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

test('the walk is offered at a first visit, shows each stop, can be left anywhere and is found again', async () => {
  await withApp({ server }, async ({ page }) => {
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
    expect(await axe(page)).toEqual([]);
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
