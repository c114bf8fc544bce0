import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compareLists } from '../../src/import/compare-lists.ts';
import { confirmFit, fitParts } from '../../src/import/fit-parts.ts';
import { foldText } from '../../src/import/fold-words.ts';
import { partKey } from '../../src/import/part-key.ts';
import { Search } from '../../src/import/search.ts';
import { offer } from './support.ts';

const rows = [
  offer({ partNumber: 'NG-1104', description: 'Rear tyre 150/70-17, mixed tread' }),
  offer({ partNumber: 'NG-1117', description: 'Front tyre 90/90-21, mixed tread' }),
  offer({ partNumber: 'NG-1201', description: 'Chain 520 sealed, 118 links' }),
  offer({ partNumber: 'NG-1300', description: 'Zębatka tylna, Kettenöl' }),
  offer({ partNumber: null, description: 'Rear brake pads, sintered' }),
];

describe('search', () => {
  const search = Search.of(rows);
  const found = (words: string) => search.find(words, 3).map(({ row }) => row);

  test.each([
    ['rear tyre', [0, 4, 1]],
    ['tyre rear', [0, 4, 1]],
    ['TYRE fro', [1, 0]],
    ['chain', [2]],
    ['cha', [2]],
    ['ng1201', [2]],
    ['NG-1201', [2]],
    ['zebatka', [3]],
    ['KETTENOL', [3]],
    ['90/90', [1]],
    ['nothing such', []],
    ['', []],
    ['  ,;', []],
  ])('%j', (words, wanted) => {
    expect(found(words).slice(0, wanted.length)).toEqual(wanted);
    if (wanted.length === 0) expect(found(words)).toEqual([]);
  });

  test('a row with all the words scores more than one with some, and none above 1', () => {
    const [best, next] = search.find('rear tyre', 3);
    expect(best!.score).toBeCloseTo(1, 9);
    expect(next!.score).toBeLessThan(0.7);
  });

  test('finds exactly the rows that have a word beginning so', () => {
    const word = fc.constantFrom('ab', 'abc', 'ad', 'b1', 'bc', 'c', 'xyz', 'é', 'Ñu', 'цепь');
    const texts = fc.array(
      fc.array(word, { maxLength: 4 }).map((words) => words.join(' - ')),
      { maxLength: 30 },
    );
    fc.assert(
      fc.property(texts, word, (descriptions, asked) => {
        const hits = Search.of(descriptions.map((description) => ({ partNumber: null, description })))
          .find(asked, 100)
          .map(({ row }) => row)
          .sort((a, b) => a - b);
        const beginning = foldText(asked);
        const wanted = descriptions.flatMap((description, row) => {
          const words = foldText(description).split(' ');
          const has = words.some((held) =>
            beginning.length < 2 ? held === beginning : held.startsWith(beginning),
          );
          return has ? [row] : [];
        });
        expect(hits).toEqual(wanted);
      }),
    );
  });

  test('a thousand rows with one word are ranked by the rarer one', () => {
    const many = Array.from({ length: 30_000 }, (_, at) =>
      offer({ partNumber: `P-${at}`, description: at === 29_000 ? 'common bolt rare' : 'common bolt' }),
    );
    expect(Search.of(many).find('common bolt rare', 1)).toMatchObject([{ row: 29_000 }]);
  });
});

describe('fitting parts', () => {
  test('by part number exactly, whatever its dashes and capitals', () => {
    const [fit] = fitParts(rows, [{ name: 'Chain', partNumbers: ['ng 1201'] }]);
    expect(fit!.fits[0]).toEqual({
      row: 2,
      score: 1,
      by: 'part-number',
      reason: 'Its part number NG-1201 is the same.',
    });
  });

  test('by words, ranked, and never as sure as a number', () => {
    const [fit] = fitParts(rows, [{ name: 'Rear tyre' }]);
    expect(fit!.fits[0]).toMatchObject({ row: 0, by: 'words' });
    expect(fit!.fits[0]!.score).toBeLessThanOrEqual(0.9);
    expect(fit!.fits[0]!.score).toBeGreaterThan(fit!.fits[1]?.score ?? 0);
  });

  test('a confirmed choice goes first, as plain data, and only for its supplier', () => {
    const kept = JSON.parse(
      JSON.stringify([confirmFit('Gannet', 'Rear tyre', rows[1]!), confirmFit('Gannet', 'Chain', null)]),
    );
    const parts = [{ name: 'Rear tyre' }, { name: 'Chain' }];
    const [tyre, chain] = fitParts(rows, parts, { supplier: 'Gannet', confirmed: kept });
    expect(tyre!.fits[0]).toMatchObject({ row: 1, by: 'confirmed', score: 1 });
    expect(chain!.hasNone).toBe(true);
    const [other] = fitParts(rows, parts, { supplier: 'Quill', confirmed: kept });
    expect(other!.fits[0]).toMatchObject({ row: 0, by: 'words' });
  });

  test('a confirmed offer without number is found again by its words', () => {
    const kept = confirmFit('Gannet', 'Pads', rows[4]!);
    expect(
      fitParts(rows, [{ name: 'Pads' }], { supplier: 'Gannet', confirmed: [kept] })[0]!.fits[0],
    ).toMatchObject({
      row: 4,
      by: 'confirmed',
    });
  });
});

test.each([
  ['ng 11-04.a', 'NG1104A'],
  ['NG1104A', 'NG1104A'],
  ['0123', '0123'],
  ['ＮＧ１', 'NG1'],
  [' - ', ''],
])('part number %j is compared as %j', (number, key) => {
  expect(partKey(number)).toBe(key);
});

describe('a newer list', () => {
  const before = [
    offer({ partNumber: 'A-1', price: 100 }),
    offer({ partNumber: 'A-2', price: 50 }),
    offer({ partNumber: 'A-3', price: 20 }),
    offer({ partNumber: 'A-4', price: 8 }),
    offer({ partNumber: null, description: 'Chain  lube', price: 9 }),
    offer({ partNumber: 'A-6', price: 5, currency: 'EUR' }),
    offer({ partNumber: 'A-7', price: 5 }),
    offer({ partNumber: 'A-7', price: 6 }),
  ];
  const after = [
    offer({ partNumber: 'a1', price: 110 }),
    offer({ partNumber: 'A-2', price: 45.5 }),
    offer({ partNumber: 'A-3', price: 20 }),
    offer({ partNumber: 'A-5', price: 3 }),
    offer({ partNumber: null, description: 'chain lube', price: 9.9 }),
    offer({ partNumber: 'A-6', price: 5, currency: 'USD' }),
    offer({ partNumber: 'A-7', price: 5.5 }),
    offer({ partNumber: 'A-7', price: 6 }),
  ];
  const comparison = compareLists(before, after);
  const numbers = (offers: readonly { partNumber: string | null }[]) =>
    offers.map(({ partNumber }) => partNumber);

  test('is sorted into new, gone, dearer, cheaper and unchanged, with the differences', () => {
    expect(numbers(comparison.added)).toEqual(['A-5']);
    expect(numbers(comparison.gone)).toEqual(['A-4']);
    expect(
      comparison.dearer.map(({ after: { partNumber }, difference, share }) => [
        partNumber,
        difference,
        share,
      ]),
    ).toEqual([
      ['a1', 10, 0.1],
      [null, 0.9, 0.1],
    ]);
    expect(comparison.cheaper.map(({ difference, share }) => [difference, share])).toEqual([[-4.5, -0.09]]);
    expect(numbers(comparison.unchanged.map(({ after: offer }) => offer))).toEqual(['A-3']);
  });

  test('what cannot be compared is said, not guessed', () => {
    expect(comparison.unclear.map(({ sentence }) => sentence)).toEqual([
      'A-6 was in EUR and is in USD: the prices are not compared.',
      'A-7 stands in a list more than once: which price follows which is not clear.',
      'A-7 stands in a list more than once: which price follows which is not clear.',
    ]);
  });

  test('every offer of both lists is in it once', () => {
    const price = fc.integer({ min: 1, max: 9 });
    const list = fc.array(
      fc
        .record({ key: fc.constantFrom('A', 'B', 'C', 'D'), price })
        .map((of) => offer({ partNumber: of.key, price: of.price })),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(list, list, (older, newer) => {
        const { added, gone, dearer, cheaper, unchanged, unclear } = compareLists(older, newer);
        const pairs = dearer.length + cheaper.length + unchanged.length + unclear.length;
        expect(added.length + pairs).toBe(newer.length);
        expect(gone.length + pairs).toBe(older.length);
      }),
    );
  });
});
