import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { readFile } from '../../src/shell/session/notebook-files.ts';
import { defaultNotebook } from '../../src/starter/default-notebook.ts';
import { smallTrip } from '../notebook/small-notebook.ts';
import { FUZZ_TIMEOUT_MS, fuzz } from './fuzz-run.ts';
import { type Chance, HOSTILE, mutate } from './random.ts';

const FOLDER = 'datasets/plateau-loop';

/** The worked example with at most two rows a table: every kind of cell, quick to reckon. */
function shortExample(): unknown {
  const files = readdirSync(FOLDER).filter((name) => name.endsWith('.csv'));
  const document = defaultNotebook(
    Object.fromEntries(files.map((name) => [name, readFileSync(`${FOLDER}/${name}`, 'utf8')])),
  );
  return JSON.parse(
    JSON.stringify(document, (key, value) =>
      key === 'entries' && Array.isArray(value) ? value.slice(0, 2) : value,
    ),
  );
}

const SOURCES = [JSON.stringify(smallTrip()), JSON.stringify(shortExample())];

const FILES = SOURCES.map((source) => writeNotebookFile(JSON.parse(source)));

function nested(levels: number): unknown {
  let held: unknown = 1;
  for (let level = 0; level < levels; level++) held = level % 2 ? [held] : { cells: held };
  return held;
}

const ODD: readonly unknown[] = [
  null,
  true,
  0,
  -1,
  1e308,
  '',
  [],
  {},
  [null],
  { type: 'number' },
  ['__proto__'],
  nested(40),
  'x'.repeat(60_000),
  Array.from({ length: 3000 }, () => 1),
  ...HOSTILE,
];

/** Every place in a parsed file: what holds it, and under which key. */
function places(
  value: unknown,
  found: [Record<string, unknown>, string][] = [],
): [Record<string, unknown>, string][] {
  if (typeof value !== 'object' || value === null) return found;
  for (const key of Object.keys(value)) {
    found.push([value as Record<string, unknown>, key]);
    places((value as Record<string, unknown>)[key], found);
  }
  return found;
}

function changedTree(chance: Chance): string {
  const tree: unknown = JSON.parse(chance.of(SOURCES));
  for (let left = 1 + chance.below(3); left > 0; left--) {
    const all = places(tree);
    const [holder, key] = chance.of(all);
    const way = chance.below(6);
    if (way === 0) Reflect.deleteProperty(holder, key);
    else if (way === 1)
      Object.defineProperty(holder, chance.of(['__proto__', 'constructor', 'toString', 'extra']), {
        value: structuredClone(chance.of(ODD)),
        enumerable: true,
        configurable: true,
        writable: true,
      });
    else if (way === 2) {
      const [other, otherKey] = chance.of(all);
      holder[key] = structuredClone(other[otherKey]);
    } else if (way === 3 && typeof holder[key] === 'string')
      holder[key] = mutate(chance, String(holder[key]), ['km', 'sum(', 'route.km', 'ride', 'EUR']);
    else holder[key] = structuredClone(chance.of(ODD));
  }
  const text = JSON.stringify(tree);
  // A key that only text can hold: assigning it would set a prototype instead.
  return chance.once(5) ? text.replace('"id":', '"__proto__":{"polluted":1},"id":') : text;
}

/** The file of a notebook with one or two of its bits or bytes turned, a run of bytes the same, or its end cut off. */
function flippedBytes(chance: Chance): Uint8Array<ArrayBuffer> {
  const bytes = new TextEncoder().encode(chance.once(3) ? FILES[1] : FILES[0]);
  for (let left = 1 + chance.below(2); left > 0; left--) {
    const at = chance.below(bytes.length);
    const way = chance.below(8);
    if (way === 0) bytes[at] = chance.below(256);
    else if (way === 1) bytes.fill(chance.below(256), at, at + chance.below(16));
    else bytes[at] = bytes[at]! ^ (1 << chance.below(8));
  }
  return chance.once(10) ? bytes.subarray(0, chance.below(bytes.length)) : bytes;
}

/** Every text of a value. */
function texts(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(texts) : [];
}

test('1,000 notebook files with flipped bytes: opened as written or refused, and what is open stays as it is', {
  timeout: FUZZ_TIMEOUT_MS,
}, async () => {
  const open = LiveNotebook.open(JSON.parse(SOURCES[1]!));
  await open.settled();
  const held = {
    document: open.document,
    file: writeNotebookFile(open.document),
    faults: open.faults().length,
  };
  const report = await fuzz('Notebook files, bytes', { test: 1_000, whole: 50_000 }, async (chance) => {
    const opened = await readFile(new File([flippedBytes(chance)], 'flipped.sparewell.json'));
    expect(open.document).toBe(held.document);
    if ('refusal' in opened) {
      expect(opened.refusal).toMatch(/^\S.{10,1900}[.?]$/s);
      return false;
    }
    expect(texts(opened.document).filter((text) => text.includes('\ufffd'))).toEqual([]);
    expect(readNotebookFile(writeNotebookFile(opened.document))).toEqual(opened);
    // The large one takes long to be worked out: random and changed files, below, do that.
    if (opened.document.cells.length > 20) return true;
    const live = LiveNotebook.open(opened.document);
    try {
      await live.settled();
      expect(live.faults().every(({ message }) => message.trim() !== '')).toBe(true);
    } finally {
      live.dispose();
    }
    return true;
  });
  expect(report.taken).toBeGreaterThan(report.cases / 20);
  expect(report.taken).toBeLessThan(report.cases);
  expect(writeNotebookFile(open.document)).toBe(held.file);
  expect(open.faults()).toHaveLength(held.faults);
  open.dispose();
});

test('random and changed notebook files: a notebook that works, or a sentence', {
  timeout: FUZZ_TIMEOUT_MS,
}, async () => {
  const report = await fuzz('Notebook files', { test: 1_500, whole: 100_000 }, async (chance) => {
    const text = chance.once(4)
      ? mutate(chance, chance.of(SOURCES), ['{', '}', '[', ']', ',', '"', ':'])
      : changedTree(chance);
    const opened = readNotebookFile(text);
    if ('refusal' in opened) {
      if (opened.refusal.trim() === '' || opened.refusal.length > 2000)
        throw new Error('a refusal without bounds');
      return false;
    }
    const written = writeNotebookFile(opened.document);
    const again = readNotebookFile(written);
    if ('refusal' in again) throw new Error(`what was written cannot be read: ${again.refusal}`);
    if (writeNotebookFile(again.document) !== written) throw new Error('written twice, it differs');
    const live = LiveNotebook.open(opened.document);
    try {
      await live.settled();
      for (const fault of live.faults())
        if (fault.message.trim() === '') throw new Error('a fault without words');
    } finally {
      live.dispose();
    }
    return true;
  });
  expect(report.taken).toBeGreaterThan(report.cases / 20);
});
