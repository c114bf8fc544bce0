import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Reading, rawText } from '../../../src/import/reading.ts';
import { isBlock } from '../../../src/shell/import/is-block.ts';
import { isGpx } from '../../../src/shell/import/is-gpx.ts';
import { isNoRow, mendOffer } from '../../../src/shell/import/mend-offers.ts';
import { rawFields } from '../../../src/shell/import/raw-fields.ts';
import { guessSupplier } from '../../../src/shell/import/supplier-guess.ts';

describe('the fields of a raw record', () => {
  test('come back as the file had them, whatever is in them', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: fc.constantFrom('a', '7', ';', '"', '\n', ' ', ',') }), { minLength: 1 }),
        (fields) => {
          const reading = { records: [fields], separator: { value: ';' } } as unknown as Reading;
          expect(rawFields(rawText(reading, 0), ';')).toEqual(fields);
        },
      ),
    );
  });
});

describe('what mends a row', () => {
  test.each([
    ['two-prices', '24,80/46,00', ['24,80', '46,00']],
    ['price-range', '1.090,00 - 1.120,00', ['1.090,00', '1.120,00']],
    ['letter-in-figure', 'l2,5O', ['12,50']],
    ['letter-in-figure', '€ 22,1O', ['€ 22,10']],
    ['not-a-price', 'ask', []],
    ['on-request', 'POA', []],
  ] as const)('%s in %s', (reason, field, prices) => {
    expect(mendOffer(reason, field)).toEqual({ prices, types: 'price' });
  });

  test('is nothing for lines that are no row, and for what one question answers for all', () => {
    expect(isNoRow('total')).toBe(true);
    expect(isNoRow('on-request')).toBe(false);
    expect(mendOffer('total', '99')).toEqual({ prices: [], types: null });
    expect(mendOffer('either-mark', '1.234')).toEqual({ prices: [], types: null });
    expect(mendOffer('no-name', '4')).toEqual({ prices: [], types: 'name' });
  });
});

describe('whose prices they are', () => {
  const offers = ['A1', 'A2', 'B1'].map((partNumber, row) => ({
    row,
    supplier: partNumber.startsWith('A') ? 'Ash Parts' : 'Bitter Moto',
    fits: '',
    partNumber,
    description: null,
    price: 1,
  }));
  const suppliers = ['Ash Parts', 'Bitter Moto'];

  test('is told by two part numbers, before the file’s name', () => {
    expect(guessSupplier('bitter_moto.csv', ['a-1', 'A 2', 'X'], offers, suppliers)).toEqual({
      supplier: 'Ash Parts',
      reason: '2 of its part numbers',
    });
  });

  test('is told by the whole name in the file’s name, and by nothing less', () => {
    expect(guessSupplier('2026-bitter_moto-list.csv', ['B1'], offers, suppliers)?.supplier).toBe(
      'Bitter Moto',
    );
    expect(guessSupplier('moto.csv', ['B1'], offers, suppliers)).toBeNull();
  });
});

test.each([
  ['a\tb\n1\t2', true],
  ['part;price\r\nchain;4', true],
  ['one line, with a comma', false],
  ['two lines\nof prose', false],
  ['', false],
])('%j is a block: %s', (text, is) => {
  expect(isBlock(text)).toBe(is);
});

test.each([
  ['<?xml version="1.0"?>\n<gpx version="1.1">', true],
  ['\uFEFF<gpx>', true],
  ['part,gpx\n<gpx>,1', false],
])('%j is GPX: %s', (text, is) => {
  expect(isGpx(text)).toBe(is);
});
