import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findSeparator } from '../../src/import/find-separator.ts';
import { finish } from '../../src/import/in-steps.ts';
import { splitRecords } from '../../src/import/split-records.ts';
import { reading, recordsOf } from './support.ts';

const require = createRequire(import.meta.url);

describe('csv-spectrum 2.0.0', () => {
  const folder = dirname(require.resolve('csv-spectrum/package.json'));
  const names = readdirSync(join(folder, 'csvs')).map((file) => file.replace('.csv', ''));

  test('has its twelve files', () => {
    expect(names.length).toBe(12);
  });

  test.each(names)('%s', (name) => {
    const bytes = new Uint8Array(readFileSync(join(folder, 'csvs', `${name}.csv`)));
    const wanted = JSON.parse(readFileSync(join(folder, 'json', `${name}.json`), 'utf8')) as
      | Record<string, string>
      | Record<string, string>[];
    const read = reading(bytes, { head: { at: 0, rows: 1 } });
    const rows = recordsOf(read.records)
      .slice(read.bodyFrom)
      .map((fields) =>
        Object.fromEntries(read.heads.map((head, column) => [head.title, fields[column] ?? ''])),
      );
    // One of the files has its only row without a list around it, and there a telephone number that its CSV,
    // which says 2095257564, does not have.
    const corrected = [wanted]
      .flat()
      .map((row) =>
        name === 'location_coordinates' ? { ...row, 'Contact Phone Number': '2095257564' } : row,
      );
    expect(rows).toEqual(corrected);
  });
});

interface ParserCase {
  readonly description: string;
  readonly input: string;
  readonly config?: Record<string, unknown>;
  readonly expected: { readonly data: readonly (readonly string[])[]; readonly errors: readonly unknown[] };
  readonly disabled?: boolean;
}

/** The tables of cases in PapaParse 5.7.1's own suite (MIT), which its package ships: tests/test-cases.js. */
function papaCases(table: 'CORE_PARSER_TESTS' | 'PARSE_TESTS'): readonly ParserCase[] {
  const folder = dirname(require.resolve('papaparse/package.json'));
  const source = readFileSync(join(folder, 'tests/test-cases.js'), 'utf8');
  const start = source.indexOf(`var ${table} = [`);
  const code = source.slice(start, source.indexOf('\n];', start) + 3);
  const run = new Function('RECORD_SEP', 'UNIT_SEP', 'Papa', `${code}; return ${table};`) as (
    ...given: readonly unknown[]
  ) => readonly ParserCase[];
  return run('\u001e', '\u001f', require('papaparse'));
}

/** Settings of cases that are about splitting text into fields, and no more. */
const SPLITTING: ReadonlySet<string> = new Set(['delimiter', 'newline', 'fastMode']);

/** It wants a break of another kind to glue two rows together; ours parts them. */
const NOT_OURS = 'Mixed slash n and slash r should choose first as precident';

function concernsUs({ description, config = {}, input, disabled, expected }: ParserCase): boolean {
  if (disabled === true || description === NOT_OURS || input.trim() === '' || !Array.isArray(expected.data))
    return false;
  if (!expected.data.every((row) => Array.isArray(row))) return false;
  const isOurs = Object.entries(config).every(
    ([name, value]) =>
      SPLITTING.has(name) && (name !== 'delimiter' || [',', ';', '\t', '|'].includes(value as string)),
  );
  return isOurs && expected.errors.every((error) => (error as { type?: string }).type !== 'Quotes');
}

describe.each(['CORE_PARSER_TESTS', 'PARSE_TESTS'] as const)("PapaParse's own %s", (table) => {
  const cases = papaCases(table).filter(concernsUs);

  test('enough of them concern the splitting of text', () => {
    expect(cases.length).toBeGreaterThanOrEqual(table === 'CORE_PARSER_TESTS' ? 35 : 20);
  });

  test.each(cases.map((each, at) => [`${at + 1}: ${each.description}`, each] as const))('%s', (_, each) => {
    const separator = (each.config?.delimiter as ',' | undefined) ?? findSeparator(each.input, '"').separator;
    const split = finish(splitRecords(each.input, separator, '"'));
    if ('refusal' in split) throw new Error(split.refusal);
    // Blank lines are no records of ours: they are counted.
    const blank = each.expected.data.filter((row) => row.length === 1 && row[0] === '');
    expect(recordsOf(split.records)).toEqual(each.expected.data.filter((row) => !blank.includes(row)));
  });
});

test('a quote that is never closed is refused, not read to the end of the file', () => {
  // Input of PapaParse's case 'Quoted field has no closing quote'.
  const split = finish(splitRecords('a,"b,c\nd,e,f', ',', '"'));
  expect(split).toEqual({
    mend: 'plain-quotes',
    refusal: expect.stringContaining('Line 1, sign 3: a quote opens a field ("b,c)'),
  });
});
