import { mkdtempSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { findBrowser } from '../../src/commands/find-browser.mjs';
import { serve } from '../../src/commands/serve.mjs';

/** How the page of every bench is shown. */
export const SCREEN = { width: 1440, height: 900 };

// A bench is bundled, and the browser's driver cannot be: it is taken from where it is installed.
const { chromium } = createRequire(resolve('package.json'))(
  'playwright-core',
) as typeof import('playwright-core');

/** Options of the browser's start. @throws Error when no Chrome or Chromium is found */
function launchOptions(): { readonly executablePath: string; readonly args: string[] } {
  const executablePath = findBrowser();
  if (executablePath === null)
    throw new Error('No Chrome or Chromium found: install one, or set CHROME_PATH to where it is.');
  return {
    executablePath,
    args: ['--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-background-networking'],
  };
}

/** Serves the built app and lends a browser to look at it with; both are ended afterwards. */
export async function withBrowser<Found>(
  use: (browser: Browser, url: string) => Promise<Found>,
): Promise<Found> {
  const options = launchOptions();
  const server = await serve(resolve('dist'));
  const browser = await chromium.launch(options);
  try {
    return await use(browser, server.url);
  } finally {
    await browser.close();
    await server.close();
  }
}

/**
 * The same with a profile on disk, where what is saved goes as on the rider's own device.
 * @param flags more of the browser's own switches
 */
export async function withProfile<Found>(
  use: (context: BrowserContext, url: string) => Promise<Found>,
  flags: readonly string[] = [],
): Promise<Found> {
  const options = launchOptions();
  const server = await serve(resolve('dist'));
  const profile = mkdtempSync(join(tmpdir(), 'sparewell-page-'));
  const context = await chromium.launchPersistentContext(profile, {
    ...options,
    args: [...options.args, ...flags],
    viewport: SCREEN,
  });
  try {
    return await use(context, server.url);
  } finally {
    await context.close();
    await server.close();
    rmSync(profile, { recursive: true, force: true, maxRetries: 10 });
  }
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  /** Start and length, microseconds. */
  readonly ts: number;
  readonly dur?: number;
  /** Processor time that the thread itself has spent, microseconds. */
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/**
 * Processor time of the longest turn of the page's own thread while something is done, ms: what others do on the
 * machine meanwhile is not in it. With TRACE_WHY set, what it was spent on is told on the console.
 */
export async function longestTurnMs(
  browser: Browser,
  page: Page,
  work: () => Promise<void>,
): Promise<number> {
  await browser.startTracing(page, {
    categories: ['devtools.timeline', 'disabled-by-default-devtools.timeline', 'toplevel'],
  });
  await work();
  const trace = await browser.stopTracing();
  const { traceEvents } = JSON.parse(trace.toString()) as { readonly traceEvents: readonly TraceEvent[] };
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const pages = new Set(
    traceEvents
      .filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain')
      .map(threadOf),
  );
  const turns = traceEvents.filter(
    (event) => event.ph === 'X' && /RunTask/.test(event.name) && pages.has(threadOf(event)),
  );
  if (turns.length < 10) throw new Error('The browser has traced too few turns of the page’s own thread.');
  const longest = turns.reduce((most, each) => ((each.tdur ?? 0) > (most.tdur ?? 0) ? each : most));
  if (process.env.TRACE_WHY) why(traceEvents, longest);
  return (longest.tdur ?? 0) / 1000;
}

function why(events: readonly TraceEvent[], { pid, tid, ts, dur = 0 }: TraceEvent): void {
  const inside = events.filter(
    (event) =>
      event.pid === pid && event.tid === tid && event.ts >= ts && event.ts + (event.dur ?? 0) <= ts + dur,
  );
  for (const event of inside.sort((a, b) => (b.dur ?? 0) - (a.dur ?? 0)).slice(0, 12))
    console.error(
      `  ${event.name} ${((event.tdur ?? 0) / 1000).toFixed(1)} ms ${JSON.stringify(event.args ?? {}).slice(0, 200)}`,
    );
}

/** What the page holds: its objects, and the figures of its columns, which lie outside them; MB. */
export async function heapMegabytes(page: Page): Promise<number> {
  const session = await page.context().newCDPSession(page);
  await session.send('HeapProfiler.collectGarbage');
  const { usedSize, backingStorageSize } = await session.send('Runtime.getHeapUsage');
  await session.detach();
  return (usedSize + backingStorageSize) / 1e6;
}

/** Opens a notebook's file as the rider does: by the menu. */
export async function openFile(page: Page, name: string, content: string): Promise<void> {
  await page.locator('sw-head-bar .holder > .btn').click();
  const [chooser] = await Promise.all([
    page.waitForEvent('filechooser'),
    page.locator('sw-head-bar .menu button', { hasText: 'Open file' }).click(),
  ]);
  await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
}
