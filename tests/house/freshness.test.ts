import { mkdir, mkdtemp, rm, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { buildNeeded, installNeeded } from '../../src/commands/freshness.mjs';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'sparewell-fresh-'));
});

afterEach(async () => {
  await rm(folder, { recursive: true });
});

/** Writes a file and dates it, and every folder above it, by a plain count of seconds. */
async function write(path: string, second: number): Promise<void> {
  const whole = join(folder, path);
  await mkdir(dirname(whole), { recursive: true });
  await writeFile(whole, '');
  for (let at = whole; at !== folder; at = dirname(at)) await utimes(at, second, second);
}

describe('installing', () => {
  test('is needed when there are no packages', async () => {
    await write('package-lock.json', 10);
    expect(installNeeded(folder)).toBe(true);
  });

  test.each([
    ['older', 9, true],
    ['as old', 10, false],
    ['newer', 11, false],
  ])('with packages %s than the lock file', async (_, second, needed) => {
    await write('package-lock.json', 10);
    await write('node_modules/.package-lock.json', second);
    expect(installNeeded(folder)).toBe(needed);
  });

  test('is needed when an install broke off before its last file', async () => {
    await write('package-lock.json', 10);
    await write('node_modules/half/index.js', 11);
    expect(installNeeded(folder)).toBe(true);
  });
});

describe('building', () => {
  beforeEach(async () => {
    await write('src/shell/index.html', 10);
    await write('cells/note/note.ts', 10);
  });

  test('is needed when the app was never built', () => {
    expect(buildNeeded(folder)).toBe(true);
  });

  test('is not needed after the last change', async () => {
    await write('dist/index.html', 11);
    expect(buildNeeded(folder)).toBe(false);
  });

  test.each([
    'src/shell/deep/down.ts',
    'cells/table/table.ts',
    'datasets/demo/legs.csv',
    'vite.config.ts',
    'tsconfig.json',
    'package-lock.json',
  ])('is needed after a change of %s', async (path) => {
    await write('dist/index.html', 11);
    await write(path, 12);
    expect(buildNeeded(folder)).toBe(true);
  });

  test.each(['tests/shell/x.test.ts', 'README.md'])('is not needed after a change of %s', async (path) => {
    await write('dist/index.html', 11);
    await write(path, 12);
    expect(buildNeeded(folder)).toBe(false);
  });

  test('is not needed after a change of the commands, which are not in the app', async () => {
    await write('src/commands/serve.mjs', 10);
    await write('dist/index.html', 11);
    await writeFile(join(folder, 'src/commands/serve.mjs'), 'changed now');
    expect(buildNeeded(folder)).toBe(false);
  });

  test('is needed after a source was taken away', async () => {
    await write('cells/note/old.ts', 10);
    await write('dist/index.html', 11);
    await rm(join(folder, 'cells/note/old.ts'));
    expect(buildNeeded(folder)).toBe(true);
  });
});
