import { readFileSync } from 'node:fs';
import { cp, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { distFolder } from '../../src/commands/project.mjs';
import { withApp } from './support/open-app.ts';
import { serveApp } from './support/server.ts';

/** What a first visit may fetch as JavaScript before the notebook can be read and edited, gzipped. */
const MOST_BYTES = 190_000;

const textOf = (name: string): string => readFileSync(join(distFolder, name), 'utf8');

/** The scripts that the page loads by itself: those it names, and all that these need before they run. */
function firstScripts(): ReadonlySet<string> {
  const named = textOf('index.html').matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g);
  const found = new Set([...named].map((match) => match[1]!));
  for (const script of found) {
    for (const [, needed] of textOf(script).matchAll(/(?:\bfrom|\bimport)\s*["'`]\.\/([\w.-]+\.js)["'`]/g))
      found.add(`assets/${needed}`);
  }
  return found;
}

test('at most 190 kB of gzipped JavaScript do to read and edit the notebook', async () => {
  const first = firstScripts();
  const bytes = [...first].reduce((sum, name) => sum + gzipSync(textOf(name), { level: 9 }).length, 0);
  expect(bytes).toBeLessThanOrEqual(MOST_BYTES);

  // All other scripts are taken away, and the notebook is read and edited all the same.
  const folder = await mkdtemp(join(tmpdir(), 'sparewell-weight-'));
  await cp(distFolder, folder, { recursive: true });
  const later = (await readdir(join(folder, 'assets'))).filter(
    (name) => name.endsWith('.js') && !first.has(`assets/${name}`),
  );
  expect(later).not.toEqual([]);
  for (const name of later) await rm(join(folder, 'assets', name));
  const server = await serveApp(folder);
  try {
    await withApp({ server, plan: false, expected: [/404/] }, async ({ page }) => {
      const total = page.locator('sw-tally-strip .fig').nth(4);
      await expect.poll(() => total.textContent()).toMatch(/\d/);
      const before = await total.textContent();
      await page.locator('sw-value-cell input[aria-label="An hour of work"]').click();
      await page.keyboard.type('45');
      await page.keyboard.press('Enter');
      await expect.poll(() => total.textContent()).toMatch(/\d/);
      await expect.poll(() => total.textContent()).not.toBe(before);
      // What was taken away is missed: it is told in a sentence.
      await expect
        .poll(() => page.locator('sw-head-bar .says').textContent())
        .toContain('A part of the page could not be fetched.');
    });
  } finally {
    await server.close();
    await rm(folder, { recursive: true });
  }
});
