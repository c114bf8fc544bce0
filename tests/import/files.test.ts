import { describe, expect, test } from 'vitest';
import { type Match, matchColumns } from '../../src/import/match-columns.ts';
import type { AsideRow, PriceRow } from '../../src/import/price-row.ts';
import { readFile } from '../../src/import/read-file.ts';
import { readRows } from '../../src/import/read-rows.ts';
import type { Reading } from '../../src/import/reading.ts';
import { type ExpectedRow, expectedFiles } from './expected-rows.ts';

const files = expectedFiles();

/** What was made of each record, as the tables have it. */
function outcomes(reading: Reading, match: Match): { row: ExpectedRow; words: string }[] {
  const { taken, remarked, aside } = readRows(reading, match);
  const kept =
    (outcome: 'taken' | 'remarked') =>
    ({ line, partNumber, description, price, currency, remarks }: PriceRow) => ({
      row: { line, outcome, partNumber, description, price, currency, note: '' },
      words: remarks.join(' '),
    });
  const left = ({ line, reason, sentence }: AsideRow) => ({
    row: {
      line,
      outcome: 'aside' as const,
      partNumber: null,
      description: null,
      price: null,
      currency: null,
      note: reason,
    },
    words: sentence,
  });
  return [...taken.map(kept('taken')), ...remarked.map(kept('remarked')), ...aside.map(left)].sort(
    (a, b) => a.row.line - b.row.line,
  );
}

/** The facts of a reading and its match by the names that the tables use. */
function factsOf(reading: Reading, match: Match): Record<string, string> {
  const { headAt, headRows } = reading.frame.value;
  return {
    letters: reading.letters.value,
    separator: reading.separator.value === '\t' ? '\\t' : reading.separator.value,
    decimal: String(reading.decimal.value),
    head: `${headAt} ${headRows}`,
    before: String(headAt),
    strays: String(
      reading.remarks.filter(({ sentence }) => sentence.includes('quote')).map(({ line }) => line),
    ),
    question: reading.question?.kind ?? '',
    asks: match.questions.map(({ kind }) => kind).join(' '),
    currency: match.currency ?? '',
    labels: reading.heads.map(({ label }) => label).join('|'),
    roles: match.columns.map(({ role }) => role).join('|'),
  };
}

test('there are at least thirty files, each covering something of its own', () => {
  expect(files.length).toBeGreaterThanOrEqual(30);
  const covered = new Set(files.map(({ facts }) => facts.get('covers')));
  expect(covered.size).toBe(files.length);
});

describe.each(files)('$name', ({ bytes, facts, rows }) => {
  const reading = readFile(bytes);
  const refusal = facts.get('refusal');
  if (refusal !== undefined) {
    test('is refused with a sentence that says where', () => {
      expect(reading).toMatchObject({ refusal: expect.stringContaining(refusal) });
    });
    return;
  }
  if ('refusal' in reading) throw new Error(reading.refusal);
  const match = matchColumns(reading);
  const found = outcomes(reading, match);

  test('is read as its table says', () => {
    const wanted = Object.fromEntries([...facts].filter(([name]) => name !== 'covers'));
    const known = factsOf(reading, match);
    const shown = Object.fromEntries(Object.keys(wanted).map((name) => [name, known[name]]));
    expect(shown).toEqual(wanted);
    // What the table does not say is asked is not asked.
    if (!facts.has('asks')) expect(known.asks).toBe('');
    if (!facts.has('question')) expect(known.question).toBe('');
  });

  test('each row comes out as its table says', () => {
    expect(found.map(({ row }) => row)).toEqual(
      rows.map((row) => (row.outcome === 'aside' ? row : { ...row, note: '' })),
    );
    const remarked = rows.filter(({ outcome }) => outcome === 'remarked');
    for (const { line, note } of remarked) {
      expect(found.find(({ row }) => row.line === line)?.words).toContain(note);
    }
  });

  test('no record below the header is lost, and each that is set aside has a sentence', () => {
    expect(found.length).toBe(reading.records.length - reading.bodyFrom);
    for (const { row, words } of found) {
      expect(words === '' ? 'none' : 'some').toBe(row.outcome === 'taken' ? 'none' : 'some');
    }
  });
});
