import type { Browser, CDPSession, Locator, Page } from 'playwright-core';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { LEGS, PARTS, wideNotebook } from '../browser/support/wide-notebook.ts';
import { longestTurnMs, openFile, SCREEN, withBrowser } from './built-page.ts';
import { median, type RatioResult } from './support.ts';

/** What a picture may take of the page's own thread, ms. */
const ALLOWED_MS = 50;
const ROUNDS = 15;
/** Rounds that are traced for their longest turn, which tracing itself makes longer. */
const TRACED = 5;

interface PageApp extends Element {
  readonly session: { readonly notebook: LiveNotebook };
}

/** Processor time that the page's own thread has spent so far, ms: what others do on the machine is not in it. */
async function spentMs(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics');
  return 1000 * (metrics.find((metric) => metric.name === 'TaskDuration')?.value ?? Number.NaN);
}

/** Processor time of the page's own thread, ms: all that something takes, and its longest turn without a pause. */
interface Cost {
  readonly allMs: number;
  readonly longestMs: number;
}

/** Does something on the page and waits until it is painted and the page rests. */
async function cost(
  browser: Browser,
  page: Page,
  session: CDPSession,
  work: (round: number) => Promise<void>,
  ready: () => Promise<void> = async () => {},
): Promise<Cost> {
  const rest = (): Promise<void> =>
    page.evaluate(async () => {
      for (let frame = 0; frame < 3; frame += 1) await new Promise((then) => requestAnimationFrame(then));
      await new Promise((then) => setTimeout(then, 100));
    });
  const took: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await ready();
    const before = await spentMs(session);
    await work(round);
    await rest();
    took.push((await spentMs(session)) - before);
  }
  const turns: number[] = [];
  for (let round = ROUNDS; round < ROUNDS + TRACED; round += 1) {
    await ready();
    turns.push(
      await longestTurnMs(browser, page, async () => {
        await work(round);
        await rest();
      }),
    );
  }
  return { allMs: median(took), longestMs: median(turns) };
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
    // What is pressed is looked up beforehand: a look-up takes as long as a drawing, on the same thread.
    const press = async (on: Locator): Promise<() => Promise<void>> => {
      const button = await on.elementHandle();
      return () => button!.evaluate((element) => (element as HTMLElement).click());
    };
    const turn = await press(map.locator('.more button'));
    const fewer = async (): Promise<void> => {
      const all = map.getByRole('button', { name: `Show all ${PARTS}` });
      if ((await all.count()) === 0) await turn();
      await all.waitFor();
    };
    const nothing = await cost(browser, page, session, async () => {});
    const drawn = await cost(browser, page, session, turn, fewer);
    // Each row's shades are as many boxes as there are legs.
    const boxes = await map
      .locator('svg.map path[data-h]')
      .evaluateAll((paths) =>
        paths.reduce((sum, path) => sum + (path.getAttribute('d')?.split('M').length ?? 1) - 1, 0),
      );
    if (boxes !== PARTS * LEGS) throw new Error('The map does not show all its cells.');
    const [called, left] = [
      await press(map.getByRole('button', { name: 'As called' })),
      await press(map.getByRole('button', { name: 'All left' })),
    ];
    const anew = await cost(browser, page, session, (round) => (round % 2 === 0 ? called() : left()));
    const followed = await cost(browser, page, session, (round) => edit(page, round));
    const choice = await band.getByRole('combobox', { name: 'Which one is drawn' }).elementHandle();
    const another = await cost(browser, page, session, (round) =>
      choice!.evaluate((select, at) => {
        (select as HTMLSelectElement).selectedIndex = at + 1;
        select.dispatchEvent(new Event('change'));
      }, round),
    );
    const results = (name: string, took: Cost): RatioResult[] =>
      [
        { what: 'in all', ms: took.allMs - nothing.allMs },
        { what: 'longest turn', ms: took.longestMs },
      ].map(({ what, ms }) => ({
        name: `picture of ${PARTS} parts on ${LEGS} legs, processor time against ${ALLOWED_MS} ms: ${name}, ${what}`,
        candidateMs: ms,
        baselineMs: ALLOWED_MS,
        ratio: ms / ALLOWED_MS,
      }));
    return [
      ...results('map drawn, every part', drawn),
      ...results('map drawn anew with the calls as they stand', anew),
      ...results('edit that changes the map and the band', followed),
      ...results('band drawn for another part', another),
    ];
  });
}
