import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readCsvFile } from '../../src/tables/csv.ts';
import { decodeText } from '../../src/tables/decode-text.ts';
import { MOST_COLUMNS, MOST_ROWS } from '../../src/tables/entry.ts';
import { tableFromCsv } from '../../src/tables/table-from-csv.ts';
import { FUZZ_TIMEOUT_MS, fuzz } from './fuzz-run.ts';
import { type Chance, HOSTILE, mutate } from './random.ts';

const FOLDER = 'datasets/plateau-loop';
const FILES = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.csv'))
  .map((name) => readFileSync(`${FOLDER}/${name}`, 'utf8').slice(0, 4000));

const PIECES = [
  ',',
  ';',
  '\t',
  '|',
  '"',
  '""',
  '\n',
  '\r\n',
  '\r',
  ' ',
  '1.234,56',
  '1,234.56',
  '€ 12',
  '2027-04-01',
];

function bytesOf(chance: Chance): Uint8Array {
  if (chance.once(5)) return Uint8Array.from({ length: chance.below(400) }, () => chance.below(256));
  const text = chance.once(4)
    ? Array.from({ length: chance.below(120) }, () => chance.of(chance.once(6) ? HOSTILE : PIECES)).join('')
    : mutate(chance, chance.of(FILES), PIECES);
  const bytes = new TextEncoder().encode(text);
  // Bytes that are no letters, and letters cut in half.
  if (chance.once(3) && bytes.length > 0)
    for (let left = chance.below(5); left > 0; left--) bytes[chance.below(bytes.length)] = chance.below(256);
  return bytes;
}

test('random and changed CSV files: a table or a sentence', { timeout: FUZZ_TIMEOUT_MS }, async () => {
  const report = await fuzz('CSV files', { test: 5_000, whole: 100_000 }, (chance) => {
    const bytes = bytesOf(chance);
    const csv = readCsvFile(bytes);
    if ('refusal' in csv) {
      if (csv.refusal.trim() === '') throw new Error('a refusal without words');
      return false;
    }
    if (csv.rows.length > MOST_ROWS || csv.header.length > MOST_COLUMNS) throw new Error('past the bounds');
    if (csv.rows.length !== csv.lines.length) throw new Error('a row without its line');
    const plans = csv.header.slice(0, 5).map((head, at) => ({
      name: `column_${at}`,
      head,
      kind: chance.of(['number', 'text', 'date', 'yes_no'] as const),
    }));
    const table = tableFromCsv(decodeText(bytes).text, plans);
    if ('refusal' in table) return false;
    for (const { entries } of table.columns) {
      if (entries.length !== table.columns[0]!.entries.length) throw new Error('columns of unlike length');
      if (entries.some((entry) => typeof entry === 'object' && entry !== null))
        throw new Error('an odd entry');
    }
    return true;
  });
  expect(report.taken).toBeGreaterThan(report.cases / 10);
});
