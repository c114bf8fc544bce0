import type { Page } from 'playwright-core';
import type { NotebookDocument, ValueContent } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { longestTurnMs, SCREEN, withBrowser } from './built-page.ts';
import { median, type RatioResult } from './support.ts';

/** What a rider is asked to wait for a new plan at most, and the longest that the page may not answer. */
const ALLOWED_PLAN_MS = 1000;
const ALLOWED_TASK_MS = 50;

const BUDGETS = [700, 760, 820, 880, 940, 1000, 1060, 1120];

/** The page's own objects, as far as they are used here. */
interface PageApp extends Element {
  readonly session: { readonly notebook: LiveNotebook };
}

/** Sets the budget and waits for the new plan, ms. */
function planAfter(page: Page, budget: number): Promise<number> {
  return page.evaluate(async (value) => {
    const { notebook } = (document.querySelector('sparewell-app') as PageApp).session;
    const cell = notebook.document.cells.find((one) => one.kind === 'value' && one.name === 'cash_limit');
    if (cell?.kind !== 'value') throw new Error('The demo has no budget.');
    const start = performance.now();
    const after = { ...cell.content, value } as ValueContent;
    notebook.apply({ kind: 'value', cell: cell.id, before: cell.content, after });
    await notebook.settled();
    const planMs = performance.now() - start;
    await new Promise((done) => setTimeout(done, 300));
    return planMs;
  }, budget);
}

/** When the first plan is there, ms from the start of the visit. */
async function firstPlanMs(page: Page): Promise<number> {
  await page.locator('sw-plan-cell').getByText('Proven best').waitFor({ timeout: 60_000 });
  return page.evaluate(() => performance.now());
}

const sizesOf = (page: Page): Promise<NotebookDocument['title']> =>
  page.evaluate(() => {
    const { notebook } = (document.querySelector('sparewell-app') as PageApp).session;
    return `${notebook.rowsOf('wear')} parts, ${notebook.rowsOf('prices')} offers`;
  });

/**
 * Time to the new plan after an edit of the demo, in the page, and the longest turn of the page's thread meanwhile.
 */
export async function bench(): Promise<readonly RatioResult[]> {
  return withBrowser(async (browser, url) => {
    const page = await browser.newPage({ viewport: SCREEN });
    await page.goto(url);
    const firstMs = await firstPlanMs(page);
    const sizes = await sizesOf(page);
    const found: number[] = [];
    const longestMs = await longestTurnMs(browser, page, async () => {
      for (const budget of BUDGETS) found.push(await planAfter(page, budget));
    });
    const planMs = median(found);
    const result = (name: string, candidateMs: number, baselineMs: number): RatioResult => ({
      name: `plan in the page, ${sizes}: ${name}`,
      candidateMs,
      baselineMs,
      ratio: candidateMs / baselineMs,
    });
    return [
      result('first plan after the visit began', firstMs, 10 * ALLOWED_PLAN_MS),
      result('new plan after an edit, median of 8', planMs, ALLOWED_PLAN_MS),
      result('longest turn of the page’s thread meanwhile, processor time', longestMs, ALLOWED_TASK_MS),
    ];
  });
}
