import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { distFolder } from '../../src/commands/project.mjs';
import { CONTENT_SECURITY_POLICY } from '../../src/commands/serve.mjs';
import { dropFile } from './support/drop-file.ts';
import { fewPartsOnAllCards } from './support/few-parts.ts';
import { changeExample, makeNextVersion, nextName } from './support/next-version.ts';
import { withApp } from './support/open-app.ts';
import { pdfPages } from './support/pdf-text.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { valuesAlone } from './support/without-plan.ts';

/** What a browser says of a server that is gone; the page itself says nothing. */
const NO_SERVER = [/ERR_CONNECTION_REFUSED/, /error occurred when fetching the script/];

let folder: string;
let server: AppServer;
let isUp: boolean;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sparewell-offline-'));
  await cp(distFolder, join(folder, 'dist'), { recursive: true, filter: (path) => !path.endsWith('.map') });
  server = await serveApp(join(folder, 'dist'));
  isUp = true;
});

afterEach(async () => {
  if (isUp) await server.close();
  await rm(folder, { recursive: true, maxRetries: 10 });
});

/** Has the app open a notebook that is there at once, where it does not matter which. */
const openValuesAlone = (): void => changeExample(join(folder, 'dist'), valuesAlone);

/** Switches the network off: nothing answers at the page's address any more. */
async function switchOff(): Promise<void> {
  isUp = false;
  await server.close();
}

const hour = (page: Page) => page.locator('sw-value-cell input[aria-label="An hour of work"]');
const bar = (page: Page) => page.locator('sw-slips [data-slip=version]');

async function keptOnDevice(page: Page): Promise<void> {
  await hour(page).waitFor();
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
}

async function setHour(page: Page, figure: string): Promise<void> {
  await hour(page).click();
  await page.keyboard.type(figure);
  await page.keyboard.press('Enter');
  await expect.poll(() => page.locator('sw-head-bar .kept').first().textContent()).toMatch(/^Kept/);
}

/** A list of one part at a price that beats all others, brought in from a new supplier. */
async function bringInPrice(page: Page): Promise<void> {
  await dropFile(page, 'list.csv', 'Part no;Article;Price\nK-1;Drive chain 520 sealed;7,50\n');
  const dialog = page.locator('sw-import-dialog dialog');
  await dialog.locator('#supplier').selectOption({ label: 'A new supplier…' });
  await dialog.getByLabel('Name of the new supplier').fill('Kiln & Sons');
  await page.keyboard.press('Enter');
  await dialog.locator('.question').getByRole('button', { name: 'EUR' }).click();
  await dialog.locator('.offers label', { hasText: 'Drive chain 520' }).click();
  await dialog.getByRole('button', { name: /^Bring in .*1 row/ }).click();
  await dialog.waitFor({ state: 'hidden' });
}

/** The entries of the table of prices, as they would be written. */
const offers = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { notebook } = (document.querySelector('sparewell-app') as unknown as App).session;
    return JSON.stringify(notebook.document.cells.find(({ name }) => name === 'prices'));
  });

interface App {
  readonly session: { readonly notebook: { readonly document: { cells: readonly { name?: string }[] } } };
}

/** Text of what is printed. */
async function printed(page: Page): Promise<string> {
  const pages = await pdfPages(await page.pdf());
  return pages.flatMap(({ lines }) => lines.map(({ text }) => text)).join('\n');
}

const version = (page: Page): Promise<string | null> =>
  page.evaluate(() => document.querySelector('meta[name="version"]')?.getAttribute('content') ?? null);

/** Names of the scripts that this page has loaded. */
const scripts = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .map((entry) => entry.name.replace(/^.*\//, ''))
      .filter((name) => name.endsWith('.js')),
  );

describe('without a network, after one visit', () => {
  it('loads, solves, takes edits and a list, prints, keeps all, and starts afresh in a new browser', async () => {
    const userDataFolder = join(folder, 'profile');
    // With all its cards, and a plan that is there in a moment each of the many times that it is worked out here.
    changeExample(join(folder, 'dist'), fewPartsOnAllCards);
    await withApp({ server, userDataFolder, offline: true, expected: NO_SERVER }, async ({ page }) => {
      await keptOnDevice(page);
      await switchOff();
      const response = await page.reload();
      expect(await response?.headerValue('content-security-policy')).toBe(CONTENT_SECURITY_POLICY);
      await page.locator('sw-plan-cell').getByText('Proven best').first().waitFor();
      await setHour(page, '31');
      await bringInPrice(page);
      const paper = await printed(page);
      expect(paper).toMatch(/31\.00 EUR/);
      expect(paper).toContain('Fuel and water');
      await page.reload();
      await expect.poll(() => hour(page).inputValue()).toBe('31.00');
      expect(await offers(page)).toContain('K-1');
    });
    await withApp({ server, userDataFolder, offline: true, expected: NO_SERVER }, async ({ page }) => {
      await expect.poll(() => hour(page).inputValue()).toBe('31.00');
      // The worked example is a file beside the page.
      await page.locator('sw-head-bar .holder > .btn').click();
      await page.locator('sw-head-bar .menu button', { hasText: 'New notebook' }).click();
      await page.locator('sw-new-notebook-dialog button', { hasText: 'Take it' }).click();
      await expect.poll(() => hour(page).inputValue()).toBe('25.00');
    });
  });

  it('has every file of the app, those that are first used later included', async () => {
    openValuesAlone();
    await withApp({ server, offline: true, expected: NO_SERVER }, async ({ page }) => {
      await keptOnDevice(page);
      const files = await page.evaluate(async () => {
        const [name] = await caches.keys();
        return (await (await caches.open(name!)).keys()).map((request) => new URL(request.url).pathname);
      });
      await switchOff();
      const answers = await page.evaluate(
        (asked) => Promise.all(asked.map(async (file) => (await fetch(file)).ok)),
        files,
      );
      expect(answers).toEqual(files.map(() => true));
      const built = await readdir(join(folder, 'dist'), { recursive: true, withFileTypes: true });
      const wanted = built
        .filter(
          (entry) => entry.isFile() && !entry.name.endsWith('.map') && entry.name !== 'service-worker.js',
        )
        .map((entry) => join(entry.parentPath, entry.name).slice(join(folder, 'dist').length));
      expect([...files].sort()).toEqual(wanted.sort());
      expect(wanted.some((file) => file.endsWith('.wasm'))).toBe(true);
    });
  });
});

describe('a new version', () => {
  beforeEach(openValuesAlone);

  it('is offered, and taken only when asked for: then all files are of it', async () => {
    await withApp({ server, offline: true }, async ({ page }) => {
      await keptOnDevice(page);
      await setHour(page, '32');
      const old = makeNextVersion(join(folder, 'dist'), 'NextVersion');
      await page.reload();
      await expect.poll(() => bar(page).textContent()).toContain('A new version is ready.');
      // Even loaded again, the page is the one that this device holds whole.
      await page.reload();
      await expect.poll(() => bar(page).textContent()).toContain('A new version is ready.');
      expect(await version(page)).toBeNull();
      expect((await scripts(page)).filter((name) => !old.includes(name))).toEqual([]);
      await bar(page).locator('button', { hasText: 'Take it' }).click();
      await expect.poll(() => version(page)).toBe('NextVersion');
      await expect.poll(() => hour(page).inputValue()).toBe('32.00');
      await expect.poll(async () => (await scripts(page)).length).toBeGreaterThan(5);
      expect((await scripts(page)).filter((name) => old.includes(name))).toEqual([]);
      await expect
        .poll(() => page.evaluate(() => caches.keys()))
        .toEqual([expect.stringMatching(/NextVersion$/)]);
    });
  });

  it('taken in one tab leaves the other whole, with the old files, until it is loaded again', async () => {
    await withApp({ server, offline: true }, async ({ page, context }) => {
      await keptOnDevice(page);
      const oldLater = (await scripts(page)).find((name) => name.includes('register-later-')) ?? '';
      const other = await context.newPage();
      await other.goto(server.url);
      await keptOnDevice(other);
      makeNextVersion(join(folder, 'dist'), 'NextVersion');
      await page.reload();
      await bar(page).locator('button', { hasText: 'Take it' }).click();
      await expect.poll(() => version(page)).toBe('NextVersion');
      await expect.poll(() => bar(other).textContent()).toContain('Another tab has taken a new version.');
      expect(await version(other)).toBeNull();
      expect(
        await other.evaluate(async (address) => (await fetch(address)).status, `assets/${oldLater}`),
      ).toBe(200);
      await bar(other).locator('button', { hasText: 'Load again' }).click();
      await expect.poll(() => version(other)).toBe('NextVersion');
    });
  });

  it('that cannot be fetched whole is not offered: the one before stays', async () => {
    await withApp({ server, offline: true, expected: [/404/] }, async ({ page }) => {
      await keptOnDevice(page);
      const [name = ''] = makeNextVersion(join(folder, 'dist'), 'NextVersion');
      await rm(join(folder, 'dist/assets', nextName(name)));
      const ended = page.evaluate(async () => {
        const registration = await navigator.serviceWorker.getRegistration();
        const coming = new Promise<string>((resolve) => {
          registration?.addEventListener('updatefound', () => {
            const next = registration.installing;
            next?.addEventListener('statechange', () => resolve(next.state));
          });
        });
        await registration?.update();
        return coming;
      });
      expect(await ended).toBe('redundant');
      await page.reload();
      await hour(page).waitFor();
      expect(await version(page)).toBeNull();
      expect(await bar(page).count()).toBe(0);
    });
  });
});

describe('installing', () => {
  it('the page names a manifest whose icons are there in the sizes it gives', async () => {
    openValuesAlone();
    await withApp({ server, offline: true, onDisk: true }, async ({ page, context }) => {
      await hour(page).waitFor();
      const session = await context.newCDPSession(page);
      const { errors, data } = await session.send('Page.getAppManifest');
      expect(errors).toEqual([]);
      const manifest = JSON.parse(data ?? '') as { icons: readonly { src: string; sizes: string }[] };
      expect(manifest).toMatchObject({ name: 'Sparewell', display: 'standalone', start_url: './' });
      for (const { src, sizes } of manifest.icons) {
        const picture = await readFile(join(distFolder, src));
        // A PNG gives its width and height, 4 bytes each, from byte 16 on (PNG specification, section 11.2.2).
        expect(`${picture.readUInt32BE(16)}x${picture.readUInt32BE(20)}`).toBe(sizes);
      }
      const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
      expect(installabilityErrors).toEqual([]);
    });
  });
});
