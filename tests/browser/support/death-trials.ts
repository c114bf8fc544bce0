import { cp, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { type LoopDisk, smallDisk } from './loop-disk.ts';
import { type OpenedApp, openApp } from './open-app.ts';
import { type AppServer, serveApp } from './server.ts';

/** What a run of trials found. */
export interface DeathReport {
  readonly trials: number;
  /** Edits that the page showed as kept, over all trials. */
  readonly keptEdits: number;
  /** Trials after which an edit shown as kept was not there. */
  readonly lost: number;
}

interface PageApp {
  readonly session: {
    readonly notebook: { readonly document: { gist: string }; apply(edit: object): void };
    readonly keeper: { subscribe(listener: (state: { kind: string }) => void): void };
  };
}

// What a browser may complain of on a small disk; nothing of it is the page's own.
const EXPECTED = [/ERR_/, /error occurred when fetching the script/, /Failed to access storage/];

/** The long run saves a notebook of the usual size; for a few trials a small one will do, which is open sooner. */
const SIZE = process.env.SPAREWELL_KILLS === undefined ? { valuesAlone: true } : { plan: false };

const openOn = (server: AppServer, userDataFolder: string): Promise<OpenedApp> =>
  openApp({ server, userDataFolder, ...SIZE, expected: EXPECTED });

/** The number of the last edit in the notebook that opens; the notebook must open, and tell of no loss. */
async function lastEdit(page: Page): Promise<number> {
  await page.locator('sw-road .stop').first().waitFor();
  expect(await page.locator('sw-head-bar .says').allTextContents()).toEqual([]);
  const gist = await page.locator('sw-head-bar .gist').inputValue();
  return Number(/^edit (\d+)$/.exec(gist)?.[1] ?? 0);
}

/**
 * Edits from number `from` on, in bursts, at random moments.
 * @returns tells the number of the newest edit that the page has shown as kept
 */
async function beginEditing(page: Page, from: number): Promise<() => number> {
  let kept = from;
  await page.exposeFunction('tellKept', (number: number) => {
    kept = Math.max(kept, number);
  });
  await page.evaluate((first) => {
    const { notebook, keeper } = (document.querySelector('sparewell-app') as unknown as PageApp).session;
    let number = first;
    const edit = (): void => {
      number += 1;
      const before = notebook.document.gist;
      notebook.apply({ kind: 'notebook', field: 'gist', before, after: `edit ${number}` });
      // In bursts, with time between them to be kept on a slow machine: only what rests is shown as kept.
      setTimeout(edit, number % 8 === 0 ? 300 : Math.random() * 25);
    };
    keeper.subscribe(({ kind }) => {
      if (kind === 'kept')
        (globalThis as unknown as { tellKept(kept: number): void }).tellKept(
          Number(notebook.document.gist.slice('edit '.length)),
        );
    });
    edit();
  }, from);
  return () => kept;
}

const moment = (mostMs: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, 50 + Math.random() * mostMs));

/** Kills the browser (SIGKILL) at random moments of editing, again and again on one profile. */
export async function killTrials(trials: number): Promise<DeathReport> {
  const server = await serveApp();
  const folder = await mkdtemp(join(tmpdir(), 'sparewell-kills-'));
  let [keptEdits, lost, shownKept] = [0, 0, 0];
  try {
    for (let trial = 0; trial <= trials; trial++) {
      const app = await openOn(server, folder);
      const found = await lastEdit(app.page);
      if (found < shownKept) lost++;
      if (trial === trials) {
        await app.close();
        break;
      }
      const keptNow = await beginEditing(app.page, found);
      // Now and then before anything is kept; mostly, however slow the machine, after.
      if (trial % 4 > 0) await expect.poll(keptNow).toBeGreaterThan(found);
      await moment(700);
      await app.kill();
      shownKept = keptNow();
      keptEdits += shownKept - found;
    }
  } finally {
    await server.close();
    await rm(folder, { recursive: true, maxRetries: 10 });
  }
  return { trials, keptEdits, lost };
}

/** How the power is cut: from a disk of its own, or, without one, from a copy of the browser's files. */
interface Power {
  readonly folder: string;
  /** @param writers the browser's processes */
  cut(writers: readonly number[]): Promise<{ readonly folder: string; remove(): Promise<void> }>;
  remove(): Promise<void>;
}

async function makePower(): Promise<Power & { readonly weaker: string }> {
  const disk = smallDisk(256);
  if (!('reason' in disk)) return { ...diskPower(disk), weaker: '' };
  const folder = await mkdtemp(join(tmpdir(), 'sparewell-power-'));
  const remove = (path: string) => rm(path, { recursive: true, force: true, maxRetries: 10 });
  return {
    folder,
    weaker: disk.reason,
    async cut() {
      const copy = await mkdtemp(join(tmpdir(), 'sparewell-cut-'));
      await cp(folder, copy, { recursive: true, filter: (path) => !/Singleton/.test(path) });
      return { folder: copy, remove: () => remove(copy) };
    },
    remove: () => remove(folder),
  };
}

function diskPower(disk: LoopDisk): Power {
  return {
    folder: disk.folder,
    async cut(writers) {
      const found = disk.cutPower(writers);
      // The lock names the process that was cut off.
      for (const name of await readdir(found.folder))
        if (name.startsWith('Singleton')) await rm(join(found.folder, name), { force: true });
      return { folder: found.folder, remove: async () => found.remove() };
    },
    remove: async () => disk.remove(),
  };
}

/**
 * Cuts the power at random moments of editing: what the disk holds at that moment is opened in a fresh browser.
 * @param spoil script run in each page first; for the control that shows that the trials can find a loss
 */
export async function powerCutTrials(
  trials: number,
  spoil?: string,
): Promise<DeathReport & { readonly weaker: string }> {
  const server = await serveApp();
  const power = await makePower();
  let [keptEdits, lost] = [0, 0];
  const app = await openOn(server, power.folder);
  try {
    if (spoil) {
      await app.page.addInitScript(spoil);
      await app.page.reload();
    }
    await lastEdit(app.page);
    const keptNow = await beginEditing(app.page, 0);
    let before = 0;
    for (let trial = 0; trial < trials; trial++) {
      if (trial % 4 > 0) await expect.poll(keptNow).toBeGreaterThan(before);
      await moment(1200);
      const writers = await app.processes();
      const shownKept = keptNow();
      const found = await power.cut(writers);
      const next = await openOn(server, found.folder);
      if ((await lastEdit(next.page)) < shownKept) lost++;
      keptEdits += shownKept - before;
      before = shownKept;
      await next.kill();
      await found.remove();
    }
  } finally {
    try {
      await app.kill();
    } finally {
      await server.close();
      await power.remove();
    }
  }
  return { trials, keptEdits, lost, weaker: power.weaker };
}
