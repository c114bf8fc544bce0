import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { finish } from '../../src/import/in-steps.ts';
import { matchColumns } from '../../src/import/match-columns.ts';
import { quickPrice, readPrice } from '../../src/import/read-price.ts';
import { rowSteps } from '../../src/import/read-rows.ts';
import { Search } from '../../src/import/search.ts';
import { searchTextOfRecords } from '../../src/import/search-text.ts';
import { splitRecords } from '../../src/import/split-records.ts';
import { reading, recordsOf } from './support.ts';

const field = fc.string({
  unit: fc.constantFrom('a', 'b', ' ', '"', ';', '\n', '1', ',', 'é', 'ß', '😀', '\ufeff'),
  maxLength: 6,
});
const table = fc
  .integer({ min: 2, max: 4 })
  .chain((width) =>
    fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 12 }),
  );

describe('records packed into one text', () => {
  test('are the fields that were written', () => {
    fc.assert(
      fc.property(table, (rows) => {
        const split = finish(splitRecords(Papa.unparse(rows, { delimiter: ';', quotes: true }), ';', '"'));
        if ('refusal' in split) throw new Error(split.refusal);
        expect(recordsOf(split.records)).toEqual(rows);
        rows.forEach((row, at) => {
          expect(split.records.width(at)).toBe(row.length);
          expect(split.records.filled(at)).toBe(row.filter((cell) => cell.trim() !== '').length);
          row.forEach((cell, column) => {
            expect(split.records.field(at, column)).toBe(cell);
            expect(split.records.isField(at, column, cell)).toBe(true);
            expect(split.records.isField(at, column, `${cell}x`)).toBe(false);
            expect(split.records.hasSign(at, column, 44, 46)).toBe(cell.includes(','));
          });
          expect(split.records.field(at, row.length)).toBe('');
        });
      }),
    );
  });

  test('are the fields that PapaParse finds, whatever the text', () => {
    const text = fc.string({ unit: fc.constantFrom('a', ';', '\n', '\r\n', ' ', '1', 'é'), maxLength: 60 });
    fc.assert(
      fc.property(text, (written) => {
        const split = finish(splitRecords(written, ';', 'none'));
        if ('refusal' in split) throw new Error(split.refusal);
        const parsed = Papa.parse<string[]>(written.replaceAll('\r\n', '\n'), {
          delimiter: ';',
          newline: '\n',
        });
        const wanted = parsed.data.filter((row) => row.length > 1 || row[0] !== '');
        expect(recordsOf(split.records)).toEqual(wanted);
      }),
    );
  });

  test('one is set anew, and the others stay', () => {
    const { records } = reading('part;price\nHub;"4;5"\nRim;9,50\n');
    const mended = records.withRecord(1, ['Hub', '48.50', 'more']);
    expect(recordsOf(mended)).toEqual([
      ['part', 'price'],
      ['Hub', '48.50', 'more'],
      ['Rim', '9,50'],
    ]);
    expect([mended.field(1, 2), mended.width(1), mended.filled(1), mended.hasSign(1, 1, 44, 46)]).toEqual([
      'more',
      3,
      3,
      true,
    ]);
    expect(records.at(1)).toEqual(['Hub', '4;5']);
    expect(mended.at(3)).toEqual([]);
  });
});

test('the quick way to read a plain price says what the long way says', () => {
  const text = fc.string({
    unit: fc.constantFrom('0', '1', '2', '9', '.', ',', ' ', '-', 'O'),
    maxLength: 9,
  });
  const decimal = fc.constantFrom('.' as const, ',' as const, null);
  fc.assert(
    fc.property(text, decimal, (written, mark) => {
      const quick = quickPrice(written, mark);
      if (quick === null) return;
      expect(readPrice(written, mark)).toMatchObject({ price: quick, currency: null, odd: false, words: '' });
    }),
    { numRuns: 2000 },
  );
  expect(quickPrice('22,1O', ',')).toBeNull();
  expect([quickPrice('12,50', ','), quickPrice('7', null), quickPrice('0', '.')]).toEqual([12.5, 7, null]);
});

describe('searching the text of the file itself', () => {
  const words = fc.constantFrom(
    'chain',
    'Chain-520',
    'ölfilter',
    'Stoß',
    'rear',
    'AB-12',
    'ab',
    '520',
    'цепь',
  );
  const line = fc.array(words, { maxLength: 3 }).map((held) => held.join(' '));
  const rows = fc.array(fc.tuple(line, words, line), { minLength: 1, maxLength: 20 });

  test('finds what searching the rows one by one finds, with the same scores', () => {
    fc.assert(
      fc.property(rows, fc.array(words, { minLength: 1, maxLength: 3 }), (lines, asked) => {
        // The part number stands behind the description, and a column that is not searched between them.
        const body = lines.map(([text, number, other], at) => `${text};${other};${number};${at + 1},50`);
        const read = reading(`Description;Remarks;Part no;Price\n${body.join('\n')}\n`, {
          separator: ';',
          head: { at: 0, rows: 1 },
          footFrom: null,
        });
        const match = matchColumns(read, {
          roles: { 0: 'description', 1: 'ignore', 2: 'part_number', 3: 'price' },
        });
        const { rows: found } = finish(rowSteps(read, match));
        const byText = new Search(searchTextOfRecords(read.records, found, 2, [0]));
        const byRows = Search.of([...found].map((row) => ({ ...row, fits: null })));
        expect(byText.find(asked.join(' '), 30)).toEqual(byRows.find(asked.join(' '), 30));
      }),
    );
  });
});
