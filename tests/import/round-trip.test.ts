import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { matchTable } from '../../src/import/match-table.ts';
import { readTable } from '../../src/import/read-table.ts';
import { bareText, safeText } from '../../src/tables/safe-text.ts';
import { tableFromCsv } from '../../src/tables/table-from-csv.ts';
import { writeCsv } from '../../src/tables/write-csv.ts';
import { reading } from './support.ts';

const RISKY = [
  '=1+1',
  '+49',
  '-x',
  '@home',
  '\tx',
  '\rx',
  "'=x",
  "''-x",
  ' =x',
  '＝x',
  '\n@x',
  "'",
  '-5',
  '+1.5',
];

/** Text as fields hold it: any letters, quotes, separators and breaks among them; not blank at its edges. */
const text = fc.oneof(
  fc.constantFrom(...RISKY.filter((risky) => risky.trim() === risky)),
  fc
    .string({ unit: fc.constantFrom(...'ab "\',;|=+-@\n\té€'.split('')), minLength: 1, maxLength: 12 })
    .map((letters) => letters.trim())
    .filter((letters) => letters !== '' && !/^[-–—]$/.test(letters)),
);
const figure = fc
  .double({ noNaN: true, noDefaultInfinity: true, min: -1e9, max: 1e9 })
  .map((x) => (x === 0 ? 0 : x));
const orEmpty = <Value>(value: fc.Arbitrary<Value>): fc.Arbitrary<Value | null> =>
  fc.option(value, { freq: 5 });

describe('text that a sheet would run', () => {
  test('comes back as it was, whatever it is', () => {
    const anyText = fc.oneof(fc.string({ unit: 'binary' }), fc.constantFrom(...RISKY), text);
    fc.assert(fc.property(anyText, (value) => bareText(safeText(value)) === value));
  });

  test.each(['=', '+', '-', '@', '\t', '\r'])('never begins a field with %j', (sign) => {
    fc.assert(
      fc.property(fc.string(), (rest) => {
        const written = safeText(`${sign}a${rest}`);
        expect(written.startsWith("'")).toBe(true);
      }),
    );
  });

  test('numbers stay numbers, and other words are left alone', () => {
    expect(['-5', '+1.5', '-0,25', 'chain', "'90s badge"].map(safeText)).toEqual([
      '-5',
      '+1.5',
      '-0,25',
      'chain',
      "'90s badge",
    ]);
  });
});

test('any table written out comes back the same by the strict reading of our own files', () => {
  const rows = fc.array(fc.record({ name: orEmpty(text), km: orEmpty(figure), wet: orEmpty(fc.boolean()) }), {
    minLength: 1,
    maxLength: 20,
  });
  fc.assert(
    fc.property(rows, (table) => {
      const columns = [
        { name: 'name', entries: table.map((row) => row.name) },
        { name: 'km', unit: 'km', entries: table.map((row) => row.km) },
        { name: 'wet', entries: table.map((row) => row.wet) },
      ];
      const back = tableFromCsv(writeCsv(columns), [
        { name: 'name', kind: 'text' },
        { name: 'km', kind: 'number', unit: 'km' },
        { name: 'wet', kind: 'yes_no' },
      ]);
      if ('refusal' in back) throw new Error(back.refusal);
      expect(back.columns).toEqual(columns.map(({ name, entries }) => ({ name, entries })));
    }),
  );
});

test('any table written out comes back the same by the reading of any file', () => {
  // A row number keeps rows apart from headings and notes, a label keeps the columns from being empty.
  const rows = fc.array(fc.record({ name: text, km: figure, other: text }), { minLength: 2, maxLength: 20 });
  fc.assert(
    fc.property(rows, (table) => {
      const columns = [
        { name: 'leg', entries: table.map((row) => row.name) },
        { name: 'distance', unit: 'km', entries: table.map((row) => row.km) },
        { name: 'remark', entries: table.map((row) => row.other) },
      ];
      const read = reading(writeCsv(columns), {
        head: { at: 0, rows: 1 },
        separator: ',',
        quote: '"',
        decimal: '.',
        footFrom: null,
      });
      const wanted = [
        { name: 'leg', kind: 'text' as const },
        { name: 'distance', kind: 'number' as const, unit: 'km' },
        { name: 'remark', kind: 'text' as const },
      ];
      const match = matchTable(read, wanted, { columns: { leg: 0, distance: 1, remark: 2 } });
      const back = readTable(read, match);
      expect(back.aside).toEqual([]);
      expect(back.columns.map(({ entries }) => entries)).toEqual(
        columns.map(({ entries }) => entries.map((entry) => entry)),
      );
    }),
  );
});
