import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readHeads, splitHead } from '../../src/tables/column-head.ts';
import type { Entry, EntryKind } from '../../src/tables/entry.ts';
import { freeName } from '../../src/tables/plain-name.ts';
import { readFileEntry } from '../../src/tables/read-file-entry.ts';
import { type ColumnPlan, type CsvTable, tableFromCsv } from '../../src/tables/table-from-csv.ts';
import { writeCsv } from '../../src/tables/write-csv.ts';

function tableOf(text: string, plans: readonly ColumnPlan[]): CsvTable {
  const table = tableFromCsv(text, plans);
  if ('refusal' in table) throw new Error(table.refusal);
  return table;
}

const PLANS: ColumnPlan[] = [
  { name: 'part', kind: 'text' },
  { name: 'rate', kind: 'number', unit: '1/(1000 km)' },
  { name: 'surface', kind: 'choice', options: ['sealed', 'gravel'] },
  { name: 'fitted', kind: 'date' },
  { name: 'critical', kind: 'yes_no' },
];

describe('tableFromCsv', () => {
  it('reads each kind', () => {
    const text =
      'part,rate (1/(1000 km)),surface,fitted,critical\r\nChain,0.25,gravel,2026-01-05,yes\r\n,,,,\r\n';
    expect(tableOf(text, PLANS)).toEqual({
      columns: [
        { name: 'part', entries: ['Chain', null] },
        { name: 'rate', entries: [0.25, null] },
        { name: 'surface', entries: ['gravel', null] },
        { name: 'fitted', entries: ['2026-01-05', null] },
        { name: 'critical', entries: [true, null] },
      ],
      problems: [],
      unused: [],
    });
  });

  it('keeps what it cannot read as its text, with the line and the reason', () => {
    const text =
      'part,rate,surface,fitted,critical\r\nChain,"0,25",tar,5.1.2026,perhaps\r\nSeals,soon,sealed,2026-02-30,no';
    const table = tableOf(text, PLANS);
    expect(table.columns.map((column) => column.entries)).toEqual([
      ['Chain', 'Seals'],
      ['0,25', 'soon'],
      ['tar', 'sealed'],
      ['5.1.2026', '2026-02-30'],
      ['perhaps', false],
    ]);
    expect(table.problems).toEqual([
      { line: 2, row: 0, column: 'rate', text: '0,25', reason: "'0,25' is written with a comma" },
      { line: 3, row: 1, column: 'rate', text: 'soon', reason: "'soon' is not a number" },
      { line: 2, row: 0, column: 'surface', text: 'tar', reason: "'tar' is not one of the choices" },
      {
        line: 2,
        row: 0,
        column: 'fitted',
        text: '5.1.2026',
        reason: "'5.1.2026' is not a date written as year-month-day",
      },
      {
        line: 3,
        row: 1,
        column: 'fitted',
        text: '2026-02-30',
        reason: "'2026-02-30' is not a date written as year-month-day",
      },
      { line: 2, row: 0, column: 'critical', text: 'perhaps', reason: "'perhaps' is neither yes nor no" },
    ]);
  });

  it('converts a column whose head is in another unit of the same kind', () => {
    // 1 international mile is 1.609344 km (NIST SP 811, appendix B.8).
    expect(
      tableOf('km (mi)\r\n1\r\n4', [{ name: 'km', kind: 'number', unit: 'km' }]).columns[0]!.entries,
    ).toEqual([1.609344, 6.437376]);
  });

  it('keeps the figures of a column in a unit of another kind as text', () => {
    const table = tableOf('km (kg)\r\n1\r\n\r\n', [{ name: 'km', kind: 'number', unit: 'km' }]);
    expect(table.columns[0]!.entries).toEqual(['1', null]);
    expect(table.problems[0]!.reason).toBe(
      "the file's column is in kg, the table's in km; its figures are kept as text",
    );
    const money = tableOf('price (USD)\r\n1', [{ name: 'price', kind: 'number', unit: 'EUR' }]);
    expect(money.columns[0]!.entries).toEqual(['1']);
  });

  it('finds columns by their own heads, tells of missing ones and of those not asked for', () => {
    const text = 'Part No.,price (net),stock\r\nA-1,12,3';
    const plans: ColumnPlan[] = [
      { name: 'number', head: 'Part No.', kind: 'text' },
      { name: 'price', head: 'price (net)', kind: 'number', unit: 'EUR' },
      { name: 'weight', kind: 'number', unit: 'kg' },
    ];
    const table = tableOf(text, plans);
    expect(table.columns.map((column) => column.entries)).toEqual([['A-1'], [12], [null]]);
    expect(table.unused).toEqual(['stock']);
    expect(table.problems.map((problem) => problem.reason)).toEqual(["the file has no column 'weight'"]);
  });

  it('tells of rows that are too short or too long', () => {
    const table = tableOf('part,km\r\nA\r\nB,2,3,4', [
      { name: 'part', kind: 'text' },
      { name: 'km', kind: 'number' },
    ]);
    expect(table.columns[1]!.entries).toEqual([null, 2]);
    expect(table.problems).toMatchObject([
      { line: 2, row: 0, reason: 'the row has 1 fields, the header 2; the others are left empty' },
      {
        line: 3,
        row: 1,
        text: '3,4',
        reason: 'the row has 4 fields, the header 2; what stands behind the last column is left out',
      },
    ]);
  });

  it('refuses a wanted column that stands twice', () => {
    expect(tableFromCsv('km,km\r\n1,2', [{ name: 'km', kind: 'number' }])).toEqual({
      refusal: "Two columns of the file are headed 'km'; rename or remove one of them.",
    });
  });

  it('reads a hostile head as any other', () => {
    const plans: ColumnPlan[] = [{ name: 'proto', head: '__proto__', kind: 'text' }];
    expect(tableOf('__proto__,x\r\nleave,1', plans).columns).toEqual([{ name: 'proto', entries: ['leave'] }]);
  });

  it('reads back whatever table was written', () => {
    const kinds: EntryKind[] = ['number', 'text', 'choice', 'date', 'yes_no'];
    const text = fc.string({ unit: 'binary', minLength: 1, maxLength: 10 });
    const raw = (kind: EntryKind) =>
      text.filter((word) => readFileEntry(word, { kind }).reason !== undefined);
    const entries: Record<EntryKind, fc.Arbitrary<Entry>> = {
      number: fc.oneof(
        fc.double({ noNaN: true, noDefaultInfinity: true }).map((x) => (x === 0 ? 0 : x)),
        raw('number'),
      ),
      text,
      choice: text,
      date: fc.oneof(
        fc
          .date({ min: new Date('1000-01-01'), max: new Date('9999-12-31'), noInvalidDate: true })
          .map((day) => day.toISOString().slice(0, 10)),
        raw('date'),
      ),
      yes_no: fc.oneof(fc.boolean(), raw('yes_no')),
    };
    const column = fc.constantFrom(...kinds).chain((kind) =>
      fc.record({
        kind: fc.constant(kind),
        entries: fc.array(fc.option(entries[kind]), { minLength: 4, maxLength: 4 }),
      }),
    );
    fc.assert(
      fc.property(fc.array(column, { minLength: 1, maxLength: 6 }), (given) => {
        const columns = given.map((each, at) => ({
          ...each,
          name: `c${at}`,
          unit: each.kind === 'number' ? 'mm/(1000 km)' : undefined,
        }));
        const plans = columns.map(({ name, kind, unit }): ColumnPlan => ({ name, kind, unit }));
        expect(tableOf(writeCsv(columns), plans).columns).toEqual(
          columns.map(({ name, entries: held }) => ({ name, entries: held })),
        );
      }),
      { numRuns: 300 },
    );
  });
});

describe('heads', () => {
  it.each([
    ['rate (1/(1000 km))', { title: 'rate', unit: '1/(1000 km)' }],
    ['km (km)', { title: 'km', unit: 'km' }],
    ['price (net)', { title: 'price (net)', unit: '' }],
    ['(km)', { title: '(km)', unit: '' }],
    ['a) (km', { title: 'a) (km', unit: '' }],
    [' now ', { title: 'now', unit: '' }],
    ['now ()', { title: 'now ()', unit: '' }],
  ])('splitHead(%j)', (text, head) => {
    expect(splitHead(text)).toEqual(head);
  });

  it('gives every column a plain name of its own, whatever its head', () => {
    const names = readHeads([
      'km',
      'km',
      '__proto__',
      'constructor',
      '',
      'Prix à vie (EUR)',
      '2nd',
      'toString',
    ]).map((head) => head.name);
    expect(names).toEqual([
      'km',
      'km_2',
      'proto',
      'column_constructor',
      'column_5',
      'prix_a_vie',
      'column_2nd',
      'tostring',
    ]);
  });

  it('makes names that are plain, short and free for any heads', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 80 })), (header) => {
        const names = readHeads(header).map((head) => head.name);
        expect(new Set(names).size).toBe(names.length);
        for (const name of names) {
          expect(name).toMatch(/^[A-Za-z][A-Za-z0-9_]{0,59}$/);
          expect(name in Object.prototype).toBe(false);
        }
      }),
    );
  });

  it('counts on when a name is taken', () => {
    expect(freeName('Front pads (mm)', new Set(['front_pads_mm']))).toBe('front_pads_mm_2');
    expect(freeName('km', new Set(['km', 'km_2']))).toBe('km_3');
  });
});
