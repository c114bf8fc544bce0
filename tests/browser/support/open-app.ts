import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page, type ViewportSize } from 'playwright-core';
import { findBrowser } from '../../../src/commands/find-browser.mjs';
import { type AppServer, serveApp } from './server.ts';
import { Troubles, watchForTroubles } from './troubles.ts';

const FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];

/** The bench of look.md. */
const BENCH_VIEWPORT: ViewportSize = { width: 1440, height: 900 };

export interface OpenAppOptions {
  /** A server that stays up after `close`; without one, the built app is served for this browser alone. */
  readonly server?: AppServer;
  /** Where the browser keeps its data; a fresh folder, removed at the end, if absent. */
  readonly userDataFolder?: string;
  /** Address inside the app, '' if absent. */
  readonly path?: string;
  /** CSS pixels, 1440 x 900 if absent. */
  readonly viewport?: ViewportSize;
  readonly reducedMotion?: 'reduce' | 'no-preference';
  readonly colorScheme?: 'light' | 'dark';
  /** A touch screen with a finger for a pointer. */
  readonly touch?: boolean;
  /** Complaints that the test provokes on purpose. */
  readonly expected?: readonly RegExp[];
}

export interface OpenedApp {
  readonly page: Page;
  readonly context: BrowserContext;
  readonly url: string;
  readonly troubles: Troubles;
  /** Ends the browser. Rejects when a page complained of anything not expected. */
  close(): Promise<void>;
  /** Kills the browser on the spot (SIGKILL), as a power switch would; else like `close`. */
  kill(): Promise<void>;
}

/**
 * Opens the app in a real Chromium, under the server's own Content-Security-Policy. The policy breaks
 * `page.waitForFunction`: wait with locators or with `expect.poll`.
 * @throws when no browser is installed or the app is not built
 */
export async function openApp(options: OpenAppOptions = {}): Promise<OpenedApp> {
  const server = options.server ?? (await serveApp());
  const userDataFolder = options.userDataFolder ?? (await mkdtemp(join(tmpdir(), 'sparewell-browser-')));
  const troubles = new Troubles(options.expected);
  const release = async (): Promise<void> => {
    if (options.server === undefined) await server.close();
    if (options.userDataFolder === undefined) {
      await rm(userDataFolder, { recursive: true, force: true, maxRetries: 10 });
    }
  };
  try {
    const context = await launch(userDataFolder, options);
    await watchForTroubles(context, troubles);
    const page = context.pages()[0] ?? (await context.newPage());
    const end = async (stop: () => Promise<void>): Promise<void> => {
      try {
        await stop();
      } finally {
        await release();
      }
      troubles.check();
    };
    await page.goto(new URL(options.path ?? '', server.url).href);
    const url = server.url;
    const close = () => end(() => context.close());
    return { page, context, url, troubles, close, kill: () => end(() => killBrowser(context)) };
  } catch (error) {
    await release();
    throw error;
  }
}

/** Opens the app, does something with it, and closes it whatever happens. */
export async function withApp(
  options: OpenAppOptions,
  use: (app: OpenedApp) => Promise<void>,
): Promise<void> {
  const app = await openApp(options);
  try {
    await use(app);
  } catch (error) {
    // What the page complained of is most often the cause of what the test could not find.
    const complaint = await app.close().catch((reason: Error) => reason.message);
    if (error instanceof Error && complaint) error.message += `\n${complaint}`;
    throw error;
  }
  await app.close();
}

async function launch(userDataFolder: string, options: OpenAppOptions): Promise<BrowserContext> {
  const executablePath = findBrowser();
  if (executablePath === null) {
    throw new Error('No Chrome or Chromium found: install one, or set CHROME_PATH to where it is.');
  }
  return chromium.launchPersistentContext(userDataFolder, {
    executablePath,
    headless: true,
    args: FLAGS,
    viewport: options.viewport ?? BENCH_VIEWPORT,
    reducedMotion: options.reducedMotion ?? 'no-preference',
    colorScheme: options.colorScheme ?? 'light',
    hasTouch: options.touch ?? false,
    locale: 'en-GB',
    timezoneId: 'UTC',
  });
}

async function killBrowser(context: BrowserContext): Promise<void> {
  const browser = context.browser();
  if (browser === null) throw new Error('This browser does not tell its process.');
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  const main = processInfo.find((entry) => entry.type === 'browser');
  if (main === undefined) throw new Error('This browser does not tell its process.');
  const closed = new Promise<void>((resolve) => context.once('close', () => resolve()));
  process.kill(main.id, 'SIGKILL');
  await closed;
}
