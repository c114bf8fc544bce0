import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { openDocument } from '../../src/notebook/schema.ts';
import { sampleNotebook, spoiled } from './sample.ts';

function refusalOf(json: unknown): string {
  const opened = openDocument(json);
  return 'refusal' in opened ? opened.refusal : 'opened';
}

describe('openDocument', () => {
  it('opens a sound notebook and builds it anew', () => {
    const json: unknown = JSON.parse(JSON.stringify(sampleNotebook()));
    const opened = openDocument(json);
    expect(opened).toEqual({ document: sampleNotebook() });
    if ('document' in opened) expect(opened.document.cells).not.toBe((json as { cells: unknown }).cells);
  });

  it('leaves no field undefined that the file does not have', () => {
    const opened = openDocument(JSON.parse(JSON.stringify(sampleNotebook())));
    if ('refusal' in opened) throw new Error(opened.refusal);
    expect(Object.keys(opened.document.cells[1]!).sort()).toEqual(['content', 'id', 'kind', 'name', 'title']);
  });

  it.each([
    [null, 'This is not a Sparewell notebook: the file does not hold a notebook.'],
    [[], 'This is not a Sparewell notebook: the file does not hold a notebook.'],
    [{}, "This is not a Sparewell notebook: it has no 'format'."],
    [
      { format: 'shopping' },
      "This is not a Sparewell notebook: its 'format' is 'shopping', not 'sparewell-notebook'.",
    ],
  ])('refuses a foreign file %j', (json, sentence) => {
    expect(refusalOf(json)).toBe(sentence);
  });

  it('says that a newer file needs a newer Sparewell', () => {
    expect(refusalOf(spoiled(['version'], 2))).toBe(
      'This notebook was saved by a newer Sparewell (file version 2; this one reads up to 1). Load the newest Sparewell, then open it again.',
    );
  });

  it.each(['1', 0, 1.5, null, undefined])('refuses the version %j', (version) => {
    expect(refusalOf(spoiled(['version'], version))).toContain(
      "its 'version' is missing or is not a whole number",
    );
  });

  it.each<[(string | number)[], unknown, string]>([
    [['title'], 5, 'title must be text'],
    [['money'], 'euro', 'money must be a currency code of three capitals, such as EUR'],
    [['cells'], {}, 'cells must be a list of cells'],
    [['cells', 3, 'columns', 2, 'unit'], 7, "cell 4 'wear', column 'rate': unit must be text"],
    [
      ['cells', 3, 'columns', 2, 'entries', 1],
      true,
      "cell 4 'wear', column 'rate': entries row 2 must be a number or empty",
    ],
    [
      ['cells', 3, 'columns', 2, 'entries', 1],
      Number.NaN,
      "cell 4 'wear', column 'rate': entries row 2 must be a finite number",
    ],
    [
      ['cells', 3, 'columns', 0, 'entries', 2],
      4,
      "cell 4 'wear', column 'part': entries row 3 must be text or empty",
    ],
    [
      ['cells', 3, 'columns', 0, 'kind'],
      'formula',
      "cell 4 'wear', column 'part': kind 'formula' is not one that this version of Sparewell knows",
    ],
    [
      ['cells', 1, 'content', 'type'],
      'colour',
      "cell 2 'budget': content, type 'colour' is not one that this version of Sparewell knows",
    ],
    [['cells', 1, 'content', 'step'], 0, "cell 2 'budget': content, step must be above 0"],
    [['cells', 1, 'content', 'low'], 2001, "cell 2 'budget': low is 2001, above high, which is 2000"],
    [
      ['cells', 2, 'content', 'options'],
      ['dry', 'dry'],
      "cell 3 'season': content, options lists one choice twice",
    ],
    [['cells', 5, 'formula'], undefined, "cell 6 'total_km': formula is missing"],
    [
      ['cells', 5, 'colour'],
      'red',
      "cell 6 'total_km': colour is nothing that this version of Sparewell knows",
    ],
    [
      ['cells', 7, 'figures', 0, 'figure'],
      'a b',
      "cell 8 'Tally', figure 1 'Length': figure must be a plain name, or a table and a column such as wear.rate",
    ],
    [['cells', 8, 'pins', 'Chain'], 3, "cell 9 'decision': pins holds no call for 'Chain'"],
    [
      ['cells', 6, 'columns', 0, 'kind'],
      'text',
      "cell 7 'ride', column 'reach': kind must be 'worked': the columns of a pairing all have formulas",
    ],
    [['cells', 4, 'name'], 'wear', "cells 4 and 5 are both named 'wear'; every name may be used once"],
    [['cells', 4, 'id'], 'wear', "cells 4 and 5 have the same id 'wear'"],
    [
      ['cells', 4, 'columns', 1, 'name'],
      'leg',
      "cell 5 'route': has two columns named 'leg'; rename one of them",
    ],
    [
      ['cells', 4, 'columns', 1, 'id'],
      'route-leg',
      "cell 5 'route': has two columns with the id 'route-leg'",
    ],
    [
      ['cells', 4, 'columns', 1, 'entries'],
      [1],
      "cell 5 'route': column 'km' has 1 rows, but 'leg' has 2; all must have as many",
    ],
  ])('says where and what is wrong: %j = %j', (path, value, clause) => {
    expect(refusalOf(spoiled(path, value))).toBe(`This notebook cannot be opened: ${clause}.`);
  });

  it.each([
    '',
    '2nd',
    'front pads',
    '_now',
    'ré',
    'a'.repeat(61),
    'constructor',
    'prototype',
    '__proto__',
    'toString',
  ])('refuses the name %j of a cell and of a column', (name) => {
    expect(refusalOf(spoiled(['cells', 1, 'name'], name))).toMatch(
      /^This notebook cannot be opened: cell 2.*name cannot be used: /,
    );
    expect(refusalOf(spoiled(['cells', 3, 'columns', 1, 'name'], name))).toMatch(/name cannot be used: /);
  });

  it('takes the longest plain name', () => {
    expect(refusalOf(spoiled(['cells', 1, 'name'], 'a'.repeat(60)))).toBe('opened');
  });

  it.each(['__proto__', 'constructor', 'toString'])(
    'refuses %s as a key and leaves every object alone',
    (word) => {
      expect(refusalOf(spoiled(['cells', 8, 'pins', word], 'leave'))).toContain('a word that cannot be used');
      expect(refusalOf(spoiled(['cells', 0, word], { polluted: true }))).toContain(
        'is nothing that this version',
      );
      expect(refusalOf(spoiled([word], { polluted: true }))).toContain('is nothing that this version');
      expect(refusalOf(spoiled(['cells', 0, 'id'], word))).toMatch(
        /id is a word that cannot be used|id must be/,
      );
      expect(({} as { polluted?: boolean }).polluted).toBe(undefined);
    },
  );

  it.each<[string, (string | number)[], unknown]>([
    [
      'cells',
      ['cells'],
      Array.from({ length: 2001 }, (_, i) => ({ id: `n${i}`, kind: 'note', title: '', text: '' })),
    ],
    [
      'columns',
      ['cells', 4, 'columns'],
      Array.from({ length: 401 }, (_, i) => ({ id: `c${i}`, name: `c${i}`, kind: 'text', entries: [] })),
    ],
    [
      'rows',
      ['cells', 4, 'columns'],
      [{ id: 'a', name: 'a', kind: 'number', entries: new Array(200_001).fill(0) }],
    ],
    ['characters', ['cells', 0, 'text'], 'a'.repeat(50_001)],
    ['characters', ['cells', 5, 'formula'], '1'.repeat(10_001)],
    ['characters', ['cells', 3, 'columns', 0, 'entries', 0], 'a'.repeat(4001)],
  ])('refuses what is past the bound of %s', (word, path, value) => {
    expect(refusalOf(spoiled(path, value))).toMatch(new RegExp(`(more than|at most) [\\d,]+ .*|${word}`));
    expect(refusalOf(spoiled(path, value))).toContain(word);
  });

  it('takes 2,000 cells and 200,000 rows', () => {
    const cells = Array.from({ length: 2000 }, (_, i) => ({
      id: `n${i}`,
      kind: 'note',
      title: '',
      text: '',
    }));
    expect(refusalOf(spoiled(['cells'], cells))).toBe('opened');
    const columns = [{ id: 'km', name: 'km', kind: 'number', entries: new Array(200_000).fill(1) }];
    expect(refusalOf(spoiled(['cells', 4, 'columns'], columns))).toBe('opened');
  });

  it('refuses what is nested very deep without walking down for ever', () => {
    const deep: unknown = JSON.parse(`${'['.repeat(100_000)}${']'.repeat(100_000)}`);
    expect(refusalOf(spoiled(['cells', 0, 'text'], deep))).toBe(
      'This notebook cannot be opened: its parts lie more than 12 deep in one another.',
    );
  });

  it('answers any file with a sound document or one sentence, and never throws', () => {
    const places = pathsIn(JSON.parse(JSON.stringify(sampleNotebook())));
    const odd = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom<unknown>('', '__proto__', 'wear', -1, 1e308, 0.5, [], {}, [null], true, {
        kind: 'note',
      }),
    );
    fc.assert(
      fc.property(fc.constantFrom(...places), odd, (path, value) => {
        const opened = openDocument(spoiled(path, value));
        if ('refusal' in opened) expect(opened.refusal).toMatch(/^This .*\.$/s);
        else expect(openDocument(JSON.parse(JSON.stringify(opened.document)))).toEqual(opened);
      }),
      { numRuns: 2000 },
    );
  });
});

/** Ways to every value inside a parsed file. */
function pathsIn(value: unknown): (string | number)[][] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, held]) => {
    const step = Array.isArray(value) ? Number(key) : key;
    return [[step], ...pathsIn(held).map((path) => [step, ...path])];
  });
}
