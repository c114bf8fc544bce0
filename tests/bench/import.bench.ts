import Papa from 'papaparse';
import { matchColumns } from '../../src/import/match-columns.ts';
import { readFile } from '../../src/import/read-file.ts';
import { readRows } from '../../src/import/read-rows.ts';
import { Search } from '../../src/import/search.ts';
import { type RatioResult, ratio } from './support.ts';

const NOUNS = ['Chain', 'Sprocket', 'Bearing', 'Brake pad', 'Fork seal', 'Tyre', 'Tube', 'Lever', 'Cable'];
const SIDES = ['rear', 'front', 'left', 'right', 'upper', 'lower', 'inner', 'outer'];
const MAKES = ['heavy duty', 'sealed', 'sintered', 'ribbed', 'forged', 'plated', 'with clip, boxed'];

/** An invented list of 100,000 rows and 8 columns, about 10 MB, with quotes in about one row of four. */
function makeList(rows: number): string {
  const lines = ['Art. no.;Description;Price;Currency;Per pack;Rebate (%);Lead time (days);Fits'];
  for (let row = 0; row < rows; row += 1) {
    const noun = NOUNS[row % NOUNS.length]!;
    const words = `${noun} ${SIDES[row % 8]} ${10 + (row % 90)} x ${17 + (row % 5)}, ${MAKES[row % 7]}, lot ${row % 997}`;
    const text = row % 4 === 0 ? `"${words} 3/8"" drive; new"` : words;
    const price = row % 500 === 0 ? 'POA' : `${1 + (row % 900)},${String(row % 100).padStart(2, '0')}`;
    lines.push(
      `LS-${100000 + row}-${row % 10};${text};${price};EUR;${1 + (row % 10)};${row % 25};${2 + (row % 20)};Wayfarer ${400 + (row % 6) * 50} ${2001 + (row % 24)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Reading, typing and indexing a large price list against PapaParse splitting the same text. */
export async function bench(): Promise<readonly RatioResult[]> {
  const text = makeList(100_000);
  const bytes = new TextEncoder().encode(text);
  const parse = (): number =>
    Papa.parse<string[]>(text, { header: false, delimiter: ';', newline: '\n', skipEmptyLines: false }).data
      .length;
  const read = (): ReturnType<typeof readFile> => readFile(bytes);
  const readAll = (): Search => {
    const reading = readFile(bytes);
    if ('refusal' in reading) throw new Error(reading.refusal);
    const rows = readRows(reading, matchColumns(reading));
    if (rows.taken.length + rows.remarked.length + rows.aside.length !== 100_000)
      throw new Error('Rows are missing.');
    return Search.of([...rows.taken, ...rows.remarked]);
  };
  const options = { rounds: 7, warmUps: 2 };
  return [
    await ratio('price list of 100,000 rows: read, against PapaParse alone', read, parse, options),
    await ratio('price list of 100,000 rows: read, typed, searchable', readAll, parse, options),
  ];
}
