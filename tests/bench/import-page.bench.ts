import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BrowserType, Page } from 'playwright-core';
import { findBrowser } from '../../src/commands/find-browser.mjs';
import { serve } from '../../src/commands/serve.mjs';
import { makeList } from './price-list.ts';
import type { RatioResult } from './support.ts';

const ROWS = 100_000;
const LONGEST_TASK_MS = 50;

interface Frames {
  readonly frames: { longestMs: number; tasks: number[]; stop: boolean };
}

/** Has the page note every task over 50 ms from now on, and the longest wait between two messages to itself. */
function watchTasks(page: Page): Promise<void> {
  return page.evaluate(() => {
    const frames = { longestMs: 0, tasks: [] as number[], stop: false };
    Object.assign(globalThis, { frames });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) frames.tasks.push(duration);
    }).observe({ type: 'longtask' });
    const channel = new MessageChannel();
    let lastMs = performance.now();
    channel.port1.onmessage = () => {
      const nowMs = performance.now();
      frames.longestMs = Math.max(frames.longestMs, nowMs - lastMs);
      lastMs = nowMs;
      if (!frames.stop) channel.port2.postMessage(null);
    };
    channel.port2.postMessage(null);
  });
}

async function longestTaskMs(page: Page): Promise<number> {
  return page.evaluate(() => {
    const { frames } = globalThis as unknown as Frames;
    frames.stop = true;
    return Math.max(frames.longestMs, ...frames.tasks);
  });
}

/** Drops the list on the page. The file is made before, so that only the page's own work is measured. */
async function drop(page: Page, text: string): Promise<void> {
  await page.evaluate((content) => {
    Object.assign(globalThis, { listFile: new File([content], 'list.csv') });
  }, text);
  // What takes files is fetched after the notebook.
  await page.waitForTimeout(1000);
  await watchTasks(page);
  await page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add((globalThis as unknown as { listFile: File }).listFile);
    const event = { dataTransfer, bubbles: true, composed: true, cancelable: true };
    document.body.dispatchEvent(new DragEvent('drop', event));
  });
}

async function search(page: Page, words: string): Promise<void> {
  const dialog = page.locator('sw-import-dialog dialog');
  await dialog
    .getByRole('button', { name: /^Another row for / })
    .first()
    .click();
  await page.keyboard.type(words);
  await dialog.locator('sw-part-finder li').nth(11).waitFor();
}

async function pageMegabytes(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return usedSize / 1e6;
}

/**
 * A price list of 100,000 rows and 8 columns read, typed, fitted and searched in the dialog of the built app: the
 * longest time for which the page could not answer, and what the page itself holds of it (the rows stay in the
 * worker).
 */
export async function bench(): Promise<readonly RatioResult[]> {
  const executablePath = findBrowser();
  if (executablePath === null)
    throw new Error('No Chrome or Chromium found: install one, or set CHROME_PATH.');
  const library = pathToFileURL(resolve('node_modules/playwright-core/index.mjs')).href;
  const { chromium } = (await import(library)) as { readonly chromium: BrowserType };
  const server = await serve(resolve('dist'));
  const profile = mkdtempSync(join(tmpdir(), 'sparewell-bench-'));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    headless: true,
    serviceWorkers: 'block',
    viewport: { width: 1440, height: 900 },
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  });
  try {
    const page = await context.newPage();
    await page.goto(server.url);
    await page.locator('sw-plan-cell').getByText('Proven best').waitFor({ timeout: 60_000 });
    const before = await pageMegabytes(page);
    await drop(page, makeList(ROWS));
    const dialog = page.locator('sw-import-dialog dialog');
    await dialog.locator('.fits').waitFor({ timeout: 120_000 });
    const readMs = await longestTaskMs(page);
    await watchTasks(page);
    await search(page, 'chain rear');
    const searchMs = await longestTaskMs(page);
    const held = await pageMegabytes(page);
    return [
      against50('import page: longest task while 100,000 rows are read, against 50 ms', readMs),
      against50('import page: longest task while they are searched, against 50 ms', searchMs),
      {
        name: 'import page: memory of the page with the list open, against before',
        unit: 'MB',
        candidateMs: held,
        baselineMs: before,
        ratio: held / before,
      },
    ];
  } finally {
    await context.close();
    await server.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 10 });
  }
}

const against50 = (name: string, ms: number): RatioResult => ({
  name,
  candidateMs: ms,
  baselineMs: LONGEST_TASK_MS,
  ratio: ms / LONGEST_TASK_MS,
});
