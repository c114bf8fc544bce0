import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { EXAMPLE } from './without-plan.ts';

const hashOf = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('base64');

/** The name of a script in the next version: its hash the other way round, so that no two become one. */
export const nextName = (name: string): string =>
  name.replace(/-([\w-]{8})\.js$/, (_, hash: string) => `-${[...hash].reverse().join('')}.js`);

/**
 * Turns a copy of the built app into another version of it, as a new build would: every script gets a new
 * name, the page and the scripts name the new ones, and the service worker lists the new files.
 * @param mark stands in the page as <meta name="version"> and in the name of the version; no hexadecimal digits
 * @returns old names of the scripts in `assets`
 */
export function makeNextVersion(folder: string, mark: string): readonly string[] {
  const assets = join(folder, 'assets');
  const scripts = readdirSync(assets).filter((name) => name !== nextName(name));
  const anyScript = new RegExp(scripts.map((name) => name.replaceAll('.', '\\.')).join('|'), 'g');
  const withNewNames = (text: string): string => text.replace(anyScript, nextName);
  const page = join(folder, 'index.html');
  const oldHashes = [page, ...scripts.map((name) => join(assets, name))].map(hashOf);
  for (const name of scripts) {
    const text = withNewNames(readFileSync(join(assets, name), 'utf8'));
    rmSync(join(assets, name));
    writeFileSync(join(assets, nextName(name)), text);
  }
  writeFileSync(
    page,
    withNewNames(readFileSync(page, 'utf8')).replace(
      '</head>',
      `<meta name="version" content="${mark}"></head>`,
    ),
  );
  const newHashes = [page, ...scripts.map((name) => join(assets, nextName(name)))].map(hashOf);
  const worker = join(folder, 'service-worker.js');
  const text = oldHashes.reduce(
    (changed, hash, at) => changed.replaceAll(hash, newHashes[at]!),
    withNewNames(readFileSync(worker, 'utf8')),
  );
  // The version's own name: no other run of 16 hexadecimal digits.
  writeFileSync(worker, text.replace(/(["'`])[0-9a-f]{16}\1/g, `"${mark}"`));
  return scripts;
}

/** Puts what `change` makes of it in place of the worked example of a copy of the built app. */
export function changeExample(folder: string, change: (text: string) => string): void {
  const example = join(folder, EXAMPLE);
  const worker = join(folder, 'service-worker.js');
  const before = hashOf(example);
  writeFileSync(example, change(readFileSync(example, 'utf8')));
  const listed = readFileSync(worker, 'utf8');
  if (!listed.includes(before)) throw new Error('The service worker does not list the worked example.');
  writeFileSync(worker, listed.replaceAll(before, hashOf(example)));
}
