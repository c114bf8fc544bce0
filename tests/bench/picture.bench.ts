import type { CDPSession, Page } from 'playwright-core';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { LEGS, PARTS, wideNotebook } from '../browser/support/wide-notebook.ts';
import { openFile, SCREEN, withBrowser } from './built-page.ts';
import { median, type RatioResult } from './support.ts';

/** What a picture may take of the page's own thread, ms. */
const ALLOWED_MS = 50;
const ROUNDS = 15;

interface PageApp extends Element {
  readonly session: { readonly notebook: LiveNotebook };
}

/** Processor time that the page's own thread has spent so far, ms: what others do on the machine is not in it. */
async function spentMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find((metric) => metric.name === 'TaskDuration')?.value ?? Number.NaN);
}

/** Does something on the page and waits until it is painted and the page rests; its processor time, ms. */
async function cost(
  page: Page,
  session: CDPSession,
  work: (round: number) => Promise<void>,
  ready: () => Promise<void> = async () => {},
): Promise<number> {
  const took: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await ready();
    const before = await spentMs(session);
    await work(round);
    await page.evaluate(async () => {
      for (let frame = 0; frame < 3; frame += 1) await new Promise((then) => requestAnimationFrame(then));
      await new Promise((then) => setTimeout(then, 100));
    });
    took.push((await spentMs(session)) - before);
  }
  return median(took);
}

const card = (page: Page, title: string) =>
  page.locator('sw-picture-cell').filter({ has: page.locator('h2', { hasText: title }) });

/** Multiplies the first part's rate, which every figure of both pictures hangs on. */
const edit = (page: Page, round: number): Promise<void> =>
  page.evaluate((by) => {
    const { notebook } = (document.querySelector('sparewell-app') as PageApp).session;
    const [before, after] = by % 2 === 0 ? [1, 30] : [30, 1];
    notebook.apply({ kind: 'entry', cell: 'parts', column: 'rate', row: 0, before, after });
  }, round);

/** What pictures of 40 parts on 60 legs take of the page's own thread, in processor time. */
export async function bench(): Promise<readonly RatioResult[]> {
  return withBrowser(async (browser, url) => {
    const page = await browser.newPage({ viewport: SCREEN });
    await page.goto(url);
    await openFile(page, 'wide.sparewell.json', writeNotebookFile(wideNotebook()));
    const map = card(page, 'Map');
    const band = card(page, 'Band');
    await map.getByRole('button', { name: `Show all ${PARTS}` }).waitFor();
    await band.locator('svg.drawn').waitFor();
    const session = await page.context().newCDPSession(page);
    await session.send('Performance.enable', { timeDomain: 'threadTicks' });
    const nothing = await cost(page, session, async () => {});
    const turn = (): Promise<void> =>
      map.locator('.more button').evaluate((button: HTMLElement) => button.click());
    const fewer = async (): Promise<void> => {
      const all = map.getByRole('button', { name: `Show all ${PARTS}` });
      if ((await all.count()) === 0) await turn();
      await all.waitFor();
    };
    const drawn = await cost(page, session, turn, fewer);
    // Each row's shades are as many boxes as there are legs.
    const boxes = await map
      .locator('svg.map path[data-h]')
      .evaluateAll((paths) =>
        paths.reduce((sum, path) => sum + (path.getAttribute('d')?.split('M').length ?? 1) - 1, 0),
      );
    if (boxes !== PARTS * LEGS) throw new Error('The map does not show all its cells.');
    const followed = await cost(page, session, (round) => edit(page, round));
    const choice = band.getByRole('combobox', { name: 'Which one is drawn' });
    const another = await cost(page, session, (round) =>
      choice.evaluate((select: HTMLSelectElement, at) => {
        select.selectedIndex = at + 1;
        select.dispatchEvent(new Event('change'));
      }, round),
    );
    const result = (name: string, candidateMs: number): RatioResult => ({
      name: `picture of ${PARTS} parts on ${LEGS} legs, processor time against ${ALLOWED_MS} ms: ${name}`,
      candidateMs: candidateMs - nothing,
      baselineMs: ALLOWED_MS,
      ratio: (candidateMs - nothing) / ALLOWED_MS,
    });
    return [
      result('map drawn, every part', drawn),
      result('edit that changes the map and the band', followed),
      result('band drawn for another part', another),
    ];
  });
}
