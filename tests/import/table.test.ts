import { describe, expect, test } from 'vitest';
import { dayOrder, readDate } from '../../src/import/day-order.ts';
import { matchTable, type WantedColumn } from '../../src/import/match-table.ts';
import { readMeasure } from '../../src/import/measure-cell.ts';
import { readTable } from '../../src/import/read-table.ts';
import { rowNoun } from '../../src/import/table-words.ts';
import { reading } from './support.ts';

const ROUTE: readonly WantedColumn[] = [
  { name: 'leg', kind: 'text' },
  { name: 'start_place', kind: 'text' },
  { name: 'end_place', kind: 'text' },
  { name: 'distance', kind: 'number', unit: 'km' },
  { name: 'surface', kind: 'choice', options: ['sealed', 'gravel', 'sand'] },
  { name: 'shop', kind: 'yes_no' },
];

function table(text: string, wanted: readonly WantedColumn[] = ROUTE) {
  const read = reading(text);
  const match = matchTable(read, wanted);
  const back = readTable(read, match);
  expect(back.rows + back.aside.length).toBe(read.records.length - read.bodyFrom);
  return {
    match,
    back,
    entries: Object.fromEntries(back.columns.map(({ name, entries }) => [name, entries])),
  };
}

describe('a route', () => {
  test('in our own words', () => {
    const { entries, match } = table(
      'leg,start_place,end_place,distance (km),surface,shop\nA to B,Ansel,Siding,260,sealed,yes\nB to C,Siding,Wells,310.5,gravel,no\n',
    );
    expect(entries).toEqual({
      leg: ['A to B', 'B to C'],
      start_place: ['Ansel', 'Siding'],
      end_place: ['Siding', 'Wells'],
      distance: [260, 310.5],
      surface: ['sealed', 'gravel'],
      shop: [true, false],
    });
    expect(match.questions).toEqual([]);
    expect(match.unused).toEqual([]);
  });

  test('in German, with miles in the head', () => {
    const { entries } = table(
      'Etappe;von;nach;Entfernung [mi];Belag\n1a;Ansel;Siding;100;Gravel\n2a;Siding;Wells;50,5;sand\n',
    );
    // 100 mi and 50.5 mi: 1 mi is 1.609344 km (international mile, exact).
    expect(entries.distance).toEqual([160.9344, 81.271872]);
    expect(entries.start_place).toEqual(['Ansel', 'Siding']);
    expect(entries.surface).toEqual(['gravel', 'sand']);
    expect(entries.shop).toEqual([null, null]);
  });

  test('with units in the fields, no header, and the last line cut off', () => {
    const { back, entries, match } = table('Ansel;Siding;29.676 KM\nSiding;Wells;125.525 KM\nWells;Ki');
    expect(match.columns.find(({ name }) => name === 'distance')).toMatchObject({ column: 2, unit: 'km' });
    // 29.676 KM and 125.525 KM as written: as thousands, the second would go round the earth.
    expect(entries.distance).toEqual([29.676, 125.525]);
    expect(back.aside).toEqual([
      {
        record: 2,
        line: 3,
        reason: 'cut-off',
        fields: ['Wells', 'Ki'],
        raw: 'Wells;Ki',
        sentence:
          'The row ends before its last column: the file may be cut off here. Ask for it again, or fill the row in.',
      },
    ]);
  });

  test('a distance without unit is asked about, and the answer is kept', () => {
    const read = reading('leg,length\nA,10\nB,20\n');
    const match = matchTable(read, ROUTE);
    expect(match.questions.map(({ sentence }) => sentence)).toEqual([
      "The column 'length' names no unit; its figures are taken as km. Is that right?",
    ]);
    const inMiles = matchTable(read, ROUTE, { units: { distance: 'mi' } });
    expect(inMiles.questions).toEqual([]);
    // 10 mi and 20 mi at 1.609344 km a mile.
    expect(readTable(read, inMiles).columns[3]!.entries).toEqual([16.09344, 32.18688]);
  });

  test('columns are set by hand, none among them', () => {
    const match = matchTable(reading('a,b,c\nx,1,2\ny,3,4\n'), ROUTE, {
      columns: { leg: 0, distance: 2, surface: null },
    });
    expect(match.columns.map(({ column }) => column)).toEqual([0, null, null, 2, null, null]);
    expect(match.unused).toEqual([1]);
  });

  test('totals and titles are no legs', () => {
    const { back } = table('Our trip,,\nleg,surface,km\nA,sand,10\nB,sand,20\nTotal,,30\n');
    expect(back.aside.map(({ line, sentence }) => [line, sentence])).toEqual([
      [5, 'It is a total, not a leg.'],
    ]);
    expect(back.rows).toBe(2);
  });

  test.each([
    [['part', 'wear_class', 'now'], 'a part'],
    [['part', 'date', 'now'], 'a reading'],
    [['leg', 'distance'], 'a leg'],
    [['surface', 'factor'], 'a row of the table'],
  ])('a row with the columns %j is %s', (columns, noun) => {
    expect(rowNoun(columns)).toBe(noun);
  });
});

test('fields that are not of their kind stay as their text, each with its line', () => {
  const { back, entries } = table(
    'leg,distance (km),surface,shop\nA,ten,sealed,maybe\nB,5 kg,ice,ja\nC,7,sand,nein\n',
  );
  expect(entries.distance).toEqual(['ten', '5 kg', 7]);
  expect(entries.shop).toEqual(['maybe', true, false]);
  expect(back.remarks.map(({ sentence }) => sentence)).toEqual([
    "Line 2: 'ten' is not a number.",
    "Line 2: 'maybe' is neither yes nor no.",
    "Line 3: '5 kg' is in kg, the column is in km.",
    "Line 3: 'ice' is not one of the choices.",
  ]);
});

test('readings with dates', () => {
  const wanted: readonly WantedColumn[] = [
    { name: 'part', kind: 'text' },
    { name: 'date', kind: 'date' },
    { name: 'now', kind: 'number', unit: 'mm' },
  ];
  const { entries } = table(
    'Teil;Datum;Messwert (mm)\nReifen;19.05.2026;7,5\nKette;2026-06-01;1,2\n',
    wanted,
  );
  expect(entries).toEqual({ part: ['Reifen', 'Kette'], date: ['2026-05-19', '2026-06-01'], now: [7.5, 1.2] });
});

describe('dates', () => {
  test.each([
    [['03/04/2026', '25/04/2026'], 'day-first'],
    [['03/04/2026', '04/25/2026'], 'month-first'],
    [['03/04/2026'], null],
    [['25/04/2026', '04/25/2026'], null],
  ] as const)('%j: %s', (cells, order) => {
    expect(dayOrder(cells)).toBe(order);
  });

  test('one that could be either is not read', () => {
    expect(readDate('03/04/2026', null)).toBe(null);
    expect(readDate('03/04/2026', 'day-first')).toBe('2026-04-03');
    expect(readDate('03/04/2026', 'month-first')).toBe('2026-03-04');
    expect(readDate('31.02.2026', null)).toBe(null);
    expect(readDate('20260519', null)).toBe('2026-05-19');
  });
});

test.each([
  ['29.676 KM', 'km', '', '.', 29.676], // 29.676 as written
  ['120 mi', 'km', '', null, 193.12128], // 120 mi at 1.609344 km
  ['1,5', 'mm', 'cm', ',', 15],
  ['€ 4,50', 'EUR', '', ',', 4.5],
  ['7', '', '', null, 7],
] as const)('%j in %j', (text, wanted, head, decimal, figure) => {
  expect(readMeasure(text, wanted, head, decimal)).toMatchObject({ figure });
});

test.each([
  ['5 USD', 'EUR', 'money is not exchanged here'],
  ['5 furlongz', 'km', 'has a unit that is not known: furlongz'],
  ['1.234', 'km', 'could be read two ways'],
  ['far', 'km', 'is not a number'],
])('%j for %j: %s', (text, wanted, words) => {
  expect(readMeasure(text, wanted, '', null)).toEqual({ reason: expect.stringContaining(words) });
});
