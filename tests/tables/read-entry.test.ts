import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { EntryColumn } from '../../src/tables/entry.ts';
import { readEntry } from '../../src/tables/read-entry.ts';

const plain: EntryColumn = { kind: 'number' };
const inUnit = (unit: string): EntryColumn => ({ kind: 'number', unit });

describe('numbers typed by hand', () => {
  it.each<[string, number]>([
    ['3.1', 3.1],
    ['3,1', 3.1],
    ['1.234', 1.234],
    ['1,234', 1.234],
    ['0,5', 0.5],
    ['.5', 0.5],
    ['5.', 5],
    ['-2,5', -2.5],
    ['\u22122.5', -2.5],
    ['+4', 4],
    ['1e3', 1000],
    ['1,5e-3', 0.0015],
    ['12,345.6', 12_345.6],
    ['12.345,6', 12_345.6],
    ['1,234,567', 1_234_567],
    ['1.234.567', 1_234_567],
    ["12'345.6", 12_345.6],
    ['12’345', 12_345],
    ['12 345,6', 12_345.6],
    ['12\u202f345', 12_345],
    ['3/8', 0.375],
    ['1 3/8', 1.375],
    ['-1 1/2', -1.5],
    ['40 %', 0.4],
    ['  7 ', 7],
    ['-0', 0],
  ])('%j is %d', (text, figure) => {
    expect(readEntry(text, plain)).toEqual({ entry: figure });
  });

  it('is settled by the reader’s own mark where one mark could be either', () => {
    expect(readEntry('1,234', plain, 'en-GB')).toEqual({ entry: 1234 });
    expect(readEntry('1.234', plain, 'en-GB')).toEqual({ entry: 1.234 });
    expect(readEntry('1.234', plain, 'de')).toEqual({ entry: 1234 });
    expect(readEntry('0,234', plain, 'en-GB')).toEqual({ entry: 0.234 });
    expect(readEntry('3,1', plain, 'en-GB')).toEqual({ entry: 3.1 });
    expect(readEntry('1,234', plain, 'no such locale')).toEqual({ entry: 1234 });
  });

  it.each(['', '   ', '-', '–', '—'])('%j empties the field', (text) => {
    expect(readEntry(text, plain)).toEqual({ entry: null });
  });

  // Conversions are exact by definition (NIST SP 811, appendix B.8).
  it.each<[string, string, number]>([
    // NIST SP 811, B.8: 1 mi = 1.609344 km.
    ['4 mi', 'km', 6.437376],
    // NIST SP 811, B.8: 1 in = 25.4 mm.
    ['3/8 in', 'mm', 9.525],
    ['3/8"', 'mm', 9.525],
    // 1.375 times 25.4, by hand.
    ['1 3/8 inch', 'mm', 34.925],
    ['1,5 mm', 'mm', 1.5],
    ['1,5mm', 'mm', 1.5],
    // NIST SP 811, B.8: 1 lb = 0.45359237 kg, 1 US gallon = 3.785411784 L.
    ['2 lb', 'kg', 0.90718474],
    ['1 galUS', 'L', 3.785411784],
    // A thousandth of what was typed.
    ['12,345.6 m', 'km', 12.3456],
    ['1e3 m', 'km', 1],
    ['45 EUR', 'EUR', 45],
    ['€45,50', 'EUR', 45.5],
    ['45 €', 'EUR', 45],
    ['EUR 45', 'EUR', 45],
    ['40%', '%', 40],
    ['0.4 mm per 1,000 km', 'mm/(1000 km)', 0.4],
    ['1.2/(1000 km)', '1/(1000 km)', 1.2],
    ['1.2 per 1000 km', '1/(1000 km)', 1.2],
    ['32 °F', 'degC', 0],
    ['7', 'no unit at all', 7],
  ])('%j in a column of %s is %d', (text, unit, figure) => {
    expect(readEntry(text, inUnit(unit))).toEqual({ entry: figure });
  });

  it.each<[string, EntryColumn, string, string]>([
    ['abc', plain, "'abc' is not a number", 'Type a number such as 3.1, or leave the field empty.'],
    [
      '3.1.2',
      plain,
      "'3.1.2' cannot be told apart into thousands and decimals",
      'Type it without marks between thousands, such as 12345.6.',
    ],
    [
      '12,34,56',
      plain,
      "'12,34,56' cannot be told apart into thousands and decimals",
      'Type it without marks between thousands, such as 12345.6.',
    ],
    [
      '1,23.4',
      plain,
      "'1,23.4' cannot be told apart into thousands and decimals",
      'Type it without marks between thousands, such as 12345.6.',
    ],
    [
      '12 34',
      plain,
      "'12 34' cannot be told apart into thousands and decimals",
      'Type it without marks between thousands, such as 12345.6.',
    ],
    [
      '1,234,56',
      plain,
      "'1,234,56' cannot be told apart into thousands and decimals",
      'Type it without marks between thousands, such as 12345.6.',
    ],
    ['3/0', plain, "'3/0' divides by nought", 'Type a fraction such as 3/8.'],
    ['3/8/2', plain, "'3/8/2' is not a number", 'Type a number such as 3.1, or leave the field empty.'],
    ['Infinity', plain, "'Infinity' is not a finite number", 'Type a number, or leave the field empty.'],
    ['-∞', plain, "'-∞' is not a finite number", 'Type a number, or leave the field empty.'],
    ['NaN', plain, "'NaN' is not a finite number", 'Type a number, or leave the field empty.'],
    ['1e999', plain, "'1e999' is not a finite number", 'Type a number, or leave the field empty.'],
    [
      '4 mm',
      plain,
      "'mm' does not fit: this field has no unit",
      'Type the number alone; this field has no unit.',
    ],
    [
      '4 kg',
      inUnit('km'),
      "'kg' does not fit: this field is in km",
      'Type it in km, or in a unit of the same kind.',
    ],
    ['4 parsnips', inUnit('km'), "'parsnips' is not a unit", 'Type it in km, or in a unit of the same kind.'],
    [
      '45 USD',
      inUnit('EUR'),
      'USD is another currency than EUR',
      'Type the amount in EUR; a field does not exchange money.',
    ],
    [
      '$45',
      inUnit('USD'),
      'the $ sign is used by several currencies',
      'Write the code instead, such as USD or AUD.',
    ],
    ['km', inUnit('km'), "'km' is not a number", 'Type a number such as 3.1, or leave the field empty.'],
    ['=1+1', plain, "'=1+1' is not a number", 'Type a number such as 3.1, or leave the field empty.'],
  ])('%j is refused', (text, column, reason, mend) => {
    expect(readEntry(text, column)).toEqual({ reason, mend });
  });

  it('reads back any number as JavaScript and as other hands write it', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (figure) => {
        const expected = { entry: figure === 0 ? 0 : figure };
        expect(readEntry(String(figure), plain)).toEqual(expected);
        expect(readEntry(String(figure).replace('.', ','), plain)).toEqual(expected);
      }),
    );
    const amounts = fc.integer({ min: 1_000_000, max: 999_999_999 }).map((cents) => cents / 100);
    fc.assert(
      fc.property(amounts, fc.constantFrom('en-GB', 'de', 'fr', 'de-CH'), (amount, locale) => {
        const shown = new Intl.NumberFormat(locale, { minimumFractionDigits: 2 }).format(amount);
        expect(readEntry(shown, plain, locale)).toEqual({ entry: amount });
        expect(readEntry(shown, plain)).toEqual({ entry: amount });
      }),
    );
  });

  it('answers anything with an entry that can be kept, or with both sentences', () => {
    const kinds = fc.constantFrom<EntryColumn>(
      plain,
      inUnit('km'),
      { kind: 'date' },
      { kind: 'yes_no' },
      { kind: 'text' },
      { kind: 'choice', options: ['dry'] },
    );
    const typed = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(...'0123456789.,/ -+e%km\'"€') }),
    );
    fc.assert(
      fc.property(typed, kinds, (text, column) => {
        const read = readEntry(text, column);
        if ('entry' in read) expect(typeof read.entry !== 'number' || Number.isFinite(read.entry)).toBe(true);
        else expect([read.reason.length > 5, read.mend.endsWith('.')]).toEqual([true, true]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('other entries typed by hand', () => {
  it.each<[string, EntryColumn, unknown]>([
    ['2026-03-14', { kind: 'date' }, '2026-03-14'],
    ['2026-3-4', { kind: 'date' }, '2026-03-04'],
    ['2028-02-29', { kind: 'date' }, '2028-02-29'],
    ['Yes', { kind: 'yes_no' }, true],
    ['n', { kind: 'yes_no' }, false],
    ['0', { kind: 'yes_no' }, false],
    [' Salt Gate ', { kind: 'text' }, 'Salt Gate'],
    ['-', { kind: 'text' }, '-'],
    ['GRAVEL', { kind: 'choice', options: ['sealed', 'gravel'] }, 'gravel'],
    ['anything', { kind: 'choice' }, 'anything'],
    ['', { kind: 'text' }, null],
  ])('%j is read', (text, column, entry) => {
    expect(readEntry(text, column)).toEqual({ entry });
  });

  it.each<[string, EntryColumn, string, string]>([
    [
      'soon',
      { kind: 'date' },
      "'soon' is not a date",
      'Write the date as year-month-day, such as 2026-03-14.',
    ],
    [
      '2026-02-29',
      { kind: 'date' },
      "'2026-02-29' is not a date",
      'Write the date as year-month-day, such as 2026-03-14.',
    ],
    [
      '14/3/2026',
      { kind: 'date' },
      "'14/3/2026' is not a date",
      'Write the date as year-month-day, such as 2026-03-14.',
    ],
    ['perhaps', { kind: 'yes_no' }, "'perhaps' is neither yes nor no", 'Type yes or no.'],
    [
      'tar',
      { kind: 'choice', options: ['sealed', 'gravel'] },
      "'tar' is not one of the choices",
      'Choose from sealed, gravel.',
    ],
    [
      'x',
      { kind: 'choice', options: [...'abcdefghij'] },
      "'x' is not one of the choices",
      'Choose from a, b, c, d, e, f, g, h, or one of 2 more.',
    ],
    [
      'a'.repeat(4001),
      { kind: 'text' },
      'the text is 4001 characters long',
      'Keep it under 4000 characters.',
    ],
  ])('%.12j is refused', (text, column, reason, mend) => {
    expect(readEntry(text, column)).toEqual({ reason, mend });
  });
});
