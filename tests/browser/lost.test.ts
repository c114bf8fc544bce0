import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readNotebookFile } from '../../src/notebook/notebook-file.ts';
import { smallDisk } from './support/loop-disk.ts';
import { withApp } from './support/open-app.ts';

const hour = (page: Page) => page.locator('sw-value-cell input[aria-label="An hour of work"]');
const kept = (page: Page) => page.locator('sw-head-bar .kept').first();
const told = (page: Page) => page.locator('sw-head-bar .says');
const slip = (page: Page, name: string) => page.locator(`sw-slips [data-slip=${name}]`);

async function setHour(page: Page, figure: string): Promise<void> {
  await hour(page).click();
  await page.keyboard.type(figure);
  await page.keyboard.press('Enter');
}

interface Watched {
  readonly session: {
    readonly keeper: { subscribe(listener: (state: { kind: string }) => void): void };
  };
}

/** What the hour is worth in the text of a notebook file. */
function hourIn(text: string): unknown {
  const opened = readNotebookFile(text);
  if ('refusal' in opened) throw new Error(opened.refusal);
  const cell = opened.document.cells.find((one) => one.kind === 'value' && one.name === 'hour_value');
  return cell?.kind === 'value' && 'value' in cell.content ? cell.content.value : null;
}

/** Has the notebook handed out as a file, and reads it. */
async function savedAsFile(page: Page): Promise<string> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.locator('sw-head-bar .failed button', { hasText: 'Save as file' }).click(),
  ]);
  return readFile(await download.path(), 'utf8');
}

describe('a storage that the browser refuses', () => {
  // Side by side, as one of them waits for most of its time.
  it.concurrent.for([
    ['is not there', "Object.defineProperty(globalThis, 'indexedDB', { get: () => undefined })"],
    [
      'may not be touched',
      "Object.defineProperty(globalThis, 'indexedDB', { get: () => { throw new DOMException('No.', 'SecurityError'); } })",
    ],
    [
      'fails to open',
      `IDBFactory.prototype.open = () => {
        const request = new EventTarget();
        setTimeout(() => { request.error = new DOMException('A mutation is not allowed.', 'InvalidStateError'); request.onerror?.(new Event('error')); });
        return request;
      }`,
    ],
    ['never answers', 'IDBFactory.prototype.open = () => new EventTarget()'],
  ] as const)('and %s: told, the notebook works, and goes out as a file', async ([, script], { expect }) => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await page.addInitScript(script);
      // Nothing is kept yet in a profile of its own; what the first load kept is out of reach now.
      await page.reload();
      await hour(page).waitFor({ timeout: 20_000 });
      await expect.poll(() => told(page).textContent(), { timeout: 20_000 }).toMatch(/file/);
      await setHour(page, '41');
      await expect
        .poll(() => page.locator('sw-tally-strip .edit .what').textContent())
        .toBe('An hour of work: 25 to 41 EUR/h');
      await expect.poll(() => kept(page).textContent(), { timeout: 20_000 }).toBe('Not kept');
      expect(await told(page).textContent()).toContain('All edits are still on this page.');
      expect(hourIn(await savedAsFile(page))).toBe(41);
    });
  });
});

describe('a storage that vanishes', () => {
  const emptied = (page: Page): Promise<void> =>
    page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const request = indexedDB.deleteDatabase('sparewell');
          request.onsuccess = () => resolve();
          request.onerror = () => reject(request.error);
        }),
    );

  it('between two visits is told by the names it should have, and the file is asked for', async () => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await setHour(page, '42');
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      await emptied(page);
      await page.reload();
      await expect.poll(() => told(page).textContent()).toContain('This device has lost Plateau loop');
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.locator('sw-head-bar .failed button', { hasText: 'Open file' }).click(),
      ]);
      expect(chooser.isMultiple()).toBe(false);
      // Told once: the next visit has what this one kept.
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      await page.reload();
      await hour(page).waitFor();
      expect(await told(page).count()).toBe(0);
    });
  });

  it('and a worked example that cannot be had: told, and opened once it is there again', async () => {
    await withApp(
      { valuesAlone: true, expected: [/404|Failed to load resource/] },
      async ({ page, context }) => {
        await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
        await emptied(page);
        await context.route('**/worked-example.sparewell.json', (route) => route.fulfill({ status: 404 }));
        await page.reload();
        const alert = page.locator('sparewell-app [role=alert]');
        await expect
          .poll(() => alert.textContent())
          .toContain('The worked example is missing beside the page');
        await context.unroute('**/worked-example.sparewell.json');
        await alert.locator('button', { hasText: 'Load again' }).click();
        await hour(page).waitFor();
        expect(await alert.count()).toBe(0);
      },
    );
  });

  it('under an open page takes nothing: the next edit keeps the whole notebook again', async () => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await setHour(page, '43');
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      await emptied(page);
      await setHour(page, '44');
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      await page.reload();
      await expect.poll(() => hour(page).inputValue()).toBe('44.00');
    });
  });

  it('as a whole is kept again by itself, or it is told that it cannot be', async () => {
    await withApp({ valuesAlone: true }, async ({ page, context, url }) => {
      await setHour(page, '45');
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      const states: string[] = [];
      await page.exposeFunction('tellState', (kind: string) => {
        states.push(kind);
      });
      await page.evaluate(() => {
        const { keeper } = (document.querySelector('sparewell-app') as unknown as Watched).session;
        keeper.subscribe(({ kind }) =>
          (globalThis as unknown as { tellState(kind: string): void }).tellState(kind),
        );
      });
      const session = await context.newCDPSession(page);
      // Chromium clears, and now and then neither answers that it has nor opens the storage ever again.
      void session
        .send('Storage.clearDataForOrigin', { origin: new URL(url).origin, storageTypes: 'indexeddb' })
        .catch(() => undefined);
      await expect.poll(() => states[0], { timeout: 20_000 }).toBe('keeping');
      await expect.poll(() => states[1], { timeout: 20_000 }).toMatch(/^(kept|failed)$/);
      expect(await hour(page).inputValue()).toBe('45.00');
      if (states[1] === 'failed') {
        expect(hourIn(await savedAsFile(page))).toBe(45);
        return;
      }
      await page.reload();
      await expect.poll(() => hour(page).inputValue()).toBe('45.00');
    });
  });
});

describe('no room left', () => {
  it('for this page: told, kept in memory, handed out as a file, and kept once there is room', async () => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await hour(page).waitFor();
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      // As browsers do it when a page has used up its share: the transaction is given up.
      await page.evaluate(() => {
        const { put } = IDBObjectStore.prototype;
        IDBObjectStore.prototype.put = function full(this: IDBObjectStore) {
          throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
        };
        Object.assign(globalThis, { makeRoom: () => Object.assign(IDBObjectStore.prototype, { put }) });
      });
      await setHour(page, '46');
      await expect.poll(() => told(page).textContent()).toContain('this device has no room left');
      expect(hourIn(await savedAsFile(page))).toBe(46);
      await page.evaluate(() => (globalThis as unknown as { makeRoom(): void }).makeRoom());
      // It is tried again by itself, at growing intervals.
      await expect.poll(() => kept(page).textContent(), { timeout: 40_000 }).toMatch(/^Kept/);
      await page.reload();
      await expect.poll(() => hour(page).inputValue()).toBe('46.00');
    });
  });

  it('on the disk: told, and nothing in memory is lost', async () => {
    const disk = smallDisk(96);
    if ('reason' in disk) {
      process.stdout.write(`A full disk was not tried: ${disk.reason}\n`);
      expect(disk.reason).not.toBe('');
      return;
    }
    try {
      await withApp({ valuesAlone: true, userDataFolder: disk.folder, expected: [/./] }, async ({ page }) => {
        await setHour(page, '47');
        await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
        disk.fill();
        // What the browser has set aside already may take an edit or two.
        let written = 47;
        while (written < 60 && (await kept(page).textContent()) !== 'Not kept') {
          written += 1;
          await setHour(page, String(written));
          await expect.poll(() => kept(page).textContent(), { timeout: 30_000 }).not.toBe('Keeping…');
        }
        expect(await kept(page).textContent()).toBe('Not kept');
        expect(await told(page).textContent()).toContain('All edits are still on this page.');
        expect(await hour(page).inputValue()).toBe(`${written}.00`);
        disk.makeRoom();
        await expect.poll(() => kept(page).textContent(), { timeout: 40_000 }).toMatch(/^Kept/);
      });
    } finally {
      disk.remove();
    }
  });
});

describe('a second home', () => {
  /** The dialog of the browser cannot be worked from here: it gives a file of the page's own file system. */
  const PICKER = `globalThis.showSaveFilePicker = async ({ suggestedName }) =>
    (await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true })`;

  const fileText = (page: Page): Promise<string> =>
    page.evaluate(async () => {
      const folder = await navigator.storage.getDirectory();
      return (await (await folder.getFileHandle('plateau-loop.sparewell.json')).getFile()).text();
    });

  it('is offered once, after the first edit, and its file is kept current from then on', async () => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await page.addInitScript(PICKER);
      await page.reload();
      await hour(page).waitFor();
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      expect(await slip(page, 'keeping').count()).toBe(0);
      await setHour(page, '51');
      await slip(page, 'keeping').locator('button', { hasText: 'Keep a file too' }).click();
      await expect
        .poll(() => page.locator('sw-head-bar .kept').nth(1).textContent())
        .toBe('and in plateau-loop.sparewell.json');
      await expect.poll(async () => hourIn(await fileText(page))).toBe(51);
      await setHour(page, '52');
      await expect.poll(async () => hourIn(await fileText(page))).toBe(52);
      await page.reload();
      await setHour(page, '53');
      await expect.poll(async () => hourIn(await fileText(page))).toBe(53);
      expect(await slip(page, 'keeping').count()).toBe(0);
    });
  });

  it('that cannot be written any more is told', async () => {
    await withApp({ valuesAlone: true }, async ({ page }) => {
      await page.addInitScript(PICKER);
      await page.reload();
      await setHour(page, '51');
      await slip(page, 'keeping').locator('button', { hasText: 'Keep a file too' }).click();
      await expect.poll(async () => hourIn(await fileText(page))).toBe(51);
      await page.evaluate(() => {
        FileSystemFileHandle.prototype.createWritable = async () => {
          throw new DOMException('The disk is gone.', 'NotFoundError');
        };
      });
      await setHour(page, '52');
      await expect
        .poll(() => slip(page, 'file').textContent())
        .toContain('The file plateau-loop.sparewell.json could not be written (The disk is gone.)');
      expect(await kept(page).textContent()).toMatch(/^Kept/);
    });
  });

  it('comes with asking the browser, whose answer is told', async () => {
    await withApp({ valuesAlone: true, onDisk: true }, async ({ page }) => {
      await page.addInitScript('StorageManager.prototype.persist = async () => false');
      await page.reload();
      await setHour(page, '51');
      expect(await slip(page, 'keeping').textContent()).toContain('kept in this browser alone');
      await slip(page, 'keeping').locator('button', { hasText: 'Ask the browser' }).click();
      await expect.poll(() => slip(page, 'keeping').textContent()).toContain('makes no such promise');
      await slip(page, 'keeping').locator('button', { hasText: 'Understood' }).click();
      await setHour(page, '52');
      await expect.poll(() => kept(page).textContent()).toMatch(/^Kept/);
      expect(await slip(page, 'keeping').count()).toBe(0);
    });
  });
});
