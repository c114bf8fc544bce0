import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { canFold, Folds, foldedAtFirst } from '../../../cells/shared/folds.ts';
import type { Cell } from '../../../src/notebook/document.ts';

const table = (name: string): Cell => ({ id: `id_${name}`, kind: 'table', title: name, name, columns: [] });

let kept: Map<string, string>;

beforeEach(() => {
  kept = new Map();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  });
});

afterEach(() => {
  vi.unstubAllGlobals();
});

test('working tables stand folded at first, the rider’s own do not', () => {
  expect(foldedAtFirst(table('severity'))).toBe(true);
  expect(foldedAtFirst(table('wear'))).toBe(false);
  expect(foldedAtFirst({ id: 't', kind: 'tally', title: '', figures: [] })).toBe(true);
  expect(
    foldedAtFirst({ id: 'r', kind: 'pairing', title: '', name: 'r', left: 'a', right: 'b', columns: [] }),
  ).toBe(true);
});

test('a caution and a formula cannot be folded', () => {
  expect(canFold({ id: 'n', kind: 'note', title: '', text: '', caution: true })).toBe(false);
  expect(canFold({ id: 'n', kind: 'note', title: '', text: '' })).toBe(true);
  expect(canFold({ id: 'f', kind: 'formula', title: '', name: 'f', formula: '1' })).toBe(false);
});

test('what one viewer folds is remembered for that notebook alone', () => {
  const wear = table('wear');
  new Folds().set('one', wear, true);
  new Folds().set('one', table('severity'), false);
  const again = new Folds();
  expect(again.isFolded('one', wear)).toBe(true);
  expect(again.isFolded('one', table('severity'))).toBe(false);
  expect(again.isFolded('two', wear)).toBe(false);
  expect(again.isFolded('two', table('severity'))).toBe(true);
});

test('only so many notebooks are remembered', () => {
  const folds = new Folds();
  for (let at = 0; at < 60; at += 1) folds.set(`n${at}`, table('wear'), true);
  expect(Object.keys(JSON.parse([...kept.values()][0]!)).length).toBe(40);
  expect(folds.isFolded('n59', table('wear'))).toBe(true);
  expect(folds.isFolded('n0', table('wear'))).toBe(false);
});

test.each(['not json', '[1]', '{"one":{"id_wear":"yes"}}', 'null'])(
  'a kept text of %s counts as nothing',
  (text) => {
    kept.set('sparewell-folded', text);
    expect(new Folds().isFolded('one', table('wear'))).toBe(false);
  },
);
