import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { CSV_MEDIA_TYPE, readCsv, readCsvFile } from '../../src/tables/csv.ts';
import { layOut } from '../../src/tables/csv-layout.ts';
import { writeCsv, writeRecords } from '../../src/tables/write-csv.ts';

/** All records of a text, the header with them. */
function records(text: string): readonly (readonly string[])[] {
  const csv = readCsv(text, ',');
  if ('refusal' in csv) throw new Error(csv.refusal);
  return [csv.header, ...csv.rows];
}

function refusal(text: string): string {
  const csv = readCsv(text);
  return 'refusal' in csv ? csv.refusal : 'read';
}

/** Check values CSV-01 to CSV-10: RFC 4180, the section named with each row. */
const CHECK_ROWS: [id: string, source: string, text: string, expected: string[][]][] = [
  ['CSV-01', 'RFC 4180 s.2 rule 7', '"aaa","b""bb","ccc"\r\n', [['aaa', 'b"bb', 'ccc']]],
  [
    'CSV-02',
    'RFC 4180 s.2 rule 6',
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    'CSV-03',
    'RFC 4180 s.2 rule 2',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['CSV-04', 'RFC 4180 s.2 rule 4', 'aaa, bbb ,ccc', [['aaa', ' bbb ', 'ccc']]],
  ['CSV-05', 'RFC 4180 s.2 rule 7', '""""', [['"']]],
  ['CSV-06', 'RFC 4180 s.2 rule 6', '"1,5",2', [['1,5', '2']]],
  ['CSV-10', 'RFC 4180 s.2 grammar', 'a,,c', [['a', '', 'c']]],
];

describe('RFC 4180', () => {
  it.each(CHECK_ROWS)('%s (%s) is read', (_id, _source, text, expected) => {
    expect(records(text)).toEqual(expected);
  });

  it.each(CHECK_ROWS)('%s (%s) is written so that it reads the same', (_id, _source, _text, expected) => {
    expect(records(writeRecords(expected))).toEqual(expected);
  });

  it('CSV-07 (RFC 4180 s.2 rule 1 and s.3): records end with CR LF', () => {
    expect(
      writeRecords([
        ['a', 'b'],
        ['c', 'd'],
      ]),
    ).toBe('a,b\r\nc,d\r\n');
  });

  it('CSV-08, CSV-09 (RFC 4180 title and s.3): the media type and its header parameter', () => {
    const [type, ...parameters] = CSV_MEDIA_TYPE.split('; ');
    expect(type).toBe('text/csv');
    expect(parameters).toContain('header=present');
  });
});

describe('readCsv', () => {
  it.each<[string, string]>([
    ['', 'The file is empty'],
    ['\ufeff \r\n', 'The file is empty'],
    ['a,b\r\n1,"2\r\n3,4\r\n', 'Line 2: a quote opens a field and is not closed'],
    ['a,b\r\n"x\r\ny",1\r\n1,"2"3\r\n', 'Line 4: a quote opens a field and is not closed'],
    [`${'a,'.repeat(400)}a`, 'Line 1 has 401 fields; at most 400 columns'],
    [`a\r\n${'x'.repeat(4001)}`, 'Line 2, field 1 is 4001 characters long'],
    [`a,b\r\n${'1,2\r\n'.repeat(200_001)}`, 'The file has 200001 rows; at most 200000'],
  ])('refuses with a sentence %#', (text, sentence) => {
    expect(refusal(text)).toContain(sentence);
  });

  it('tells the line on which each row begins, blank lines and breaks inside quotes counted', () => {
    const csv = readCsv('a,b\r\n\r\n1,"x\ny\r\nz"\r\n\r\n2,3');
    expect(csv).toMatchObject({
      rows: [
        ['1', 'x\ny\r\nz'],
        ['2', '3'],
      ],
      lines: [3, 7],
    });
  });

  it('reads line breaks of every kind in one file', () => {
    expect(records('a,b\n1,2\r\n3,4\r5,6')).toEqual([
      ['a', 'b'],
      ['1', '2'],
      ['3', '4'],
      ['5', '6'],
    ]);
  });

  it.each([
    [',', 'a,b'],
    [';', 'a;b'],
    ['\t', 'a\tb'],
    ['|', 'a|b'],
    [';', 'a,x;b;c'],
    [',', 'alone'],
    [';', '"a,b,c";d'],
  ])('finds the separator %j of %j', (separator, head) => {
    expect(readCsv(`${head}\r\n`)).toMatchObject({ separator });
  });

  it('keeps hostile heads and fields as the text they are', () => {
    expect(records('__proto__,constructor,__proto__\r\n1,__proto__,3')).toEqual([
      ['__proto__', 'constructor', '__proto__'],
      ['1', '__proto__', '3'],
    ]);
    expect(({} as { 1?: unknown })[1]).toBe(undefined);
  });

  it('reads the bytes of a file, whatever its letters', () => {
    const expected = { header: ['teil', 'länge'], rows: [['Gummi', '5']] };
    const utf8 = new TextEncoder().encode('teil,länge\r\nGummi,5\r\n');
    const latin = Uint8Array.from([...'teil,länge\r\nGummi,5\r\n'].map((sign) => sign.charCodeAt(0)));
    expect(readCsvFile(utf8)).toMatchObject(expected);
    expect(readCsvFile(latin)).toMatchObject(expected);
  });

  it('leaves a quote inside an unquoted field alone', () => {
    expect(records('size,n\r\n5" pipe,1')).toEqual([
      ['size', 'n'],
      ['5" pipe', '1'],
    ]);
  });

  it('keeps empty fields of a file of one column, but no row for the last line break', () => {
    expect(records('a\r\n\r\n1\r\n\r\n')).toEqual([['a'], [''], ['1'], ['']]);
  });

  it('agrees with the parser alone wherever the layout is sound', () => {
    const text = fc.string({ unit: fc.constantFrom('"', ',', '\n', '\r\n', 'a', ' ', '1'), maxLength: 30 });
    fc.assert(
      fc.property(text, (given) => {
        const layout = layOut(given, ',');
        if ('quoteFromLine' in layout) return;
        const parsed = Papa.parse<string[]>(layout.text, { delimiter: ',', newline: '\n' });
        expect(parsed.errors).toEqual([]);
        // Nothing is glued together: quoting every field anew gives the same records.
        const again = parsed.data
          .map((row) => row.map((field) => `"${field.replaceAll('"', '""')}"`).join(','))
          .join('\n');
        expect(Papa.parse<string[]>(again, { delimiter: ',', newline: '\n' }).data).toEqual(parsed.data);
      }),
      { numRuns: 500 },
    );
  });

  it('reads whatever text was written', () => {
    const row = fc.array(fc.string({ unit: 'binary', maxLength: 12 }), { minLength: 2, maxLength: 5 });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        const [header = [], ...rest] = rows;
        // A mark at the very beginning of a file is not part of its first head.
        fc.pre(!header[0]!.startsWith('\ufeff') && header.some((head) => head.trim() !== ''));
        expect(records(writeRecords([header, ...rest]))).toEqual([header, ...rest]);
      }),
      { numRuns: 500 },
    );
  });
});

describe('writeCsv', () => {
  it('writes heads with units, yes and no, dates and missing entries', () => {
    const text = writeCsv([
      { name: 'part', entries: ['Chain, rear', null] },
      { name: 'rate', unit: '1/(1000 km)', entries: [0.25, null] },
      { name: 'critical', entries: [true, false] },
      { name: 'fitted', entries: ['2026-01-05', 'spring'] },
    ]);
    expect(text).toBe(
      'part,rate (1/(1000 km)),critical,fitted\r\n"Chain, rear",0.25,yes,2026-01-05\r\n,,no,spring\r\n',
    );
  });

  it('writes the example of its docblock', () => {
    expect(writeCsv([{ name: 'km', unit: 'km', entries: [240, null] }])).toBe('km (km)\r\n240\r\n\r\n');
    expect(writeCsv([])).toBe('');
  });
});
