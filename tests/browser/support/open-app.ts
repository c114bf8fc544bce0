import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
  type ViewportSize,
} from 'playwright-core';
import { findBrowser } from '../../../src/commands/find-browser.mjs';
import { keepPage, pageLike } from './page-again.ts';
import { type AppServer, serveApp } from './server.ts';
import { Troubles, watchForTroubles } from './troubles.ts';
import { builtExample, valuesAlone, withoutPlan } from './without-plan.ts';

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
  /** Where a browser of its own keeps its data; if absent, a fresh profile in memory, forgotten at the end. */
  readonly userDataFolder?: string;
  /** Whether a fresh profile is on disk, as browsers promise less to one in memory; no if absent. */
  readonly onDisk?: boolean;
  /** Address inside the app, '' if absent. */
  readonly path?: string;
  /** CSS pixels, 1440 x 900 if absent. */
  readonly viewport?: ViewportSize;
  /** 'reduce' if absent: what moves is drawn by the processor here, frame by frame, and concerns few tests. */
  readonly reducedMotion?: 'reduce' | 'no-preference';
  readonly colorScheme?: 'light' | 'dark';
  /** A touch screen with a finger for a pointer. */
  readonly touch?: boolean;
  /** Whether the app may keep itself for use offline; no if absent, as that fetches every file of it. */
  readonly offline?: boolean;
  /** False opens the worked example without its plan, which takes seconds to be worked out; true if absent. */
  readonly plan?: boolean;
  /** True opens nothing but the values of the worked example, where the notebook does not matter. */
  readonly valuesAlone?: boolean;
  /** Opens what this makes of the text of the worked example. */
  readonly example?: (text: string) => string;
  /** The browser's language, en-GB if absent. */
  readonly locale?: string;
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
  /** Numbers of all the browser's processes. */
  processes(): Promise<readonly number[]>;
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
  const freshFolder = options.onDisk ? await mkdtemp(join(tmpdir(), 'sparewell-browser-')) : undefined;
  const troubles = new Troubles(options.expected);
  const release = async (): Promise<void> => {
    if (options.server === undefined) await server.close();
    if (freshFolder !== undefined) await rm(freshFolder, { recursive: true, force: true, maxRetries: 10 });
  };
  try {
    server.giveExample(await exampleFor(options));
    const { page, leave } = await takePage(options, options.userDataFolder ?? freshFolder, server, troubles);
    const context = page.context();
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
    const close = () => end(leave);
    const kill = () => end(() => killBrowser(context));
    return { page, context, url, troubles, close, processes: () => processesOf(context), kill };
  } catch (error) {
    await release();
    throw error;
  }
}

/** The notebook that a fresh profile finds, where it is not the built one. */
async function exampleFor({ example, valuesAlone: values, plan }: OpenAppOptions): Promise<string | null> {
  const change = example ?? (values ? valuesAlone : plan === false ? withoutPlan : null);
  return change === null ? null : change(await builtExample());
}

/** A page in a profile that holds nothing, and how it is left. */
async function takePage(
  options: OpenAppOptions,
  userDataFolder: string | undefined,
  server: AppServer,
  troubles: Troubles,
): Promise<{ readonly page: Page; leave(): Promise<void> }> {
  const settings = settingsOf(options);
  if (userDataFolder !== undefined) {
    const context = await chromium.launchPersistentContext(userDataFolder, {
      ...launchOptions(),
      ...settings,
    });
    await watchForTroubles(context, troubles);
    return { page: context.pages()[0] ?? (await context.newPage()), leave: () => context.close() };
  }
  // What serves files of a service worker's stays with its profile.
  const like = options.offline ? null : JSON.stringify(settings);
  const again = like === null ? null : await pageLike(like, server.url, troubles);
  if (again !== null) return again;
  const context = await (await inMemoryBrowser()).newContext(settings);
  if (like !== null) return keepPage(context, like, troubles);
  await watchForTroubles(context, troubles);
  return { page: await context.newPage(), leave: () => context.close() };
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

function settingsOf(options: OpenAppOptions): BrowserContextOptions {
  return {
    viewport: options.viewport ?? BENCH_VIEWPORT,
    reducedMotion: options.reducedMotion ?? 'reduce',
    colorScheme: options.colorScheme ?? 'light',
    hasTouch: options.touch ?? false,
    serviceWorkers: options.offline ? 'allow' : 'block',
    locale: options.locale ?? 'en-GB',
    timezoneId: 'UTC',
  };
}

/** One browser for all profiles in memory of a worker's test files: to start one takes longer than many a test. */
let sharedBrowser: Promise<Browser> | null = null;

/** Ends with the worker; one that died meanwhile is started anew. */
async function inMemoryBrowser(): Promise<Browser> {
  const before = sharedBrowser;
  const there = await before?.catch(() => null);
  if (there?.isConnected()) return there;
  // Another test that runs beside this one may have started it meanwhile.
  if (sharedBrowser === before) sharedBrowser = null;
  sharedBrowser ??= chromium.launch(launchOptions());
  return sharedBrowser;
}

function launchOptions(): { executablePath: string; headless: true; args: string[] } {
  const executablePath = findBrowser();
  if (executablePath === null) {
    throw new Error('No Chrome or Chromium found: install one, or set CHROME_PATH to where it is.');
  }
  return { executablePath, headless: true, args: FLAGS };
}

async function processInfoOf(context: BrowserContext): Promise<readonly { type: string; id: number }[]> {
  const browser = context.browser();
  if (browser === null) throw new Error('This browser does not tell its processes.');
  const session = await browser.newBrowserCDPSession();
  const { processInfo } = await session.send('SystemInfo.getProcessInfo');
  await session.detach();
  return processInfo;
}

async function processesOf(context: BrowserContext): Promise<readonly number[]> {
  return (await processInfoOf(context)).map(({ id }) => id);
}

async function killBrowser(context: BrowserContext): Promise<void> {
  const main = (await processInfoOf(context)).find(({ type }) => type === 'browser');
  if (main === undefined) throw new Error('This browser does not tell its process.');
  const closed = new Promise<void>((resolve) => context.once('close', () => resolve()));
  process.kill(main.id, 'SIGKILL');
  await closed;
}
