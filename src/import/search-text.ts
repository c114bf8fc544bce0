import { foldText } from './fold-words.ts';
import type { PackedRecords } from './packed-records.ts';

/** What is searched: some fields of each row, folded, where they stand in one text. */
export interface SearchText {
  /** Small letters without accents. */
  readonly text: string;
  readonly rows: number;
  /** Where each searched field begins and ends, in rising order; `each` of them a row. */
  readonly starts: Uint32Array;
  readonly ends: Uint32Array;
  /** Searched fields of a row. */
  readonly each: number;
  /** Which of them is its part number, from 0. */
  readonly numberAt: number;
}

/** Letters, digits, and everything beyond plain signs: other alphabets are words throughout. */
export function isWordCode(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 48 && code <= 57) || code >= 0xaa;
}

/** Texts folded and joined for the search: small letters without accents, one text a line. */
function foldLines(texts: readonly string[]): string {
  const joined = texts.join('\n').toLowerCase();
  if (!/[^\x20-\x7e\n]/.test(joined)) return joined;
  // Only what is no plain letter is folded, run by run: most lists have little of it.
  return joined.replace(/[^\x20-\x7e\n]+/g, (run) => foldText(run).padEnd(1, ' '));
}

/**
 * The search text of rows of fields.
 *
 * @param fields for each row as many fields as `each`
 */
export function searchTextOf(fields: readonly string[], each: number, numberAt: number): SearchText {
  const text = foldLines(
    fields.map((field) =>
      field.includes('\n') || field.includes('\r') ? field.replace(/[\r\n]+/g, ' ') : field,
    ),
  );
  const starts = new Uint32Array(fields.length);
  const ends = new Uint32Array(fields.length);
  let at = 0;
  for (let place = 0; place < fields.length; place += 1) {
    const end = text.indexOf('\n', at);
    starts[place] = at;
    ends[place] = end === -1 ? text.length : end;
    at = ends[place]! + 1;
  }
  return { text, rows: fields.length / each, starts, ends, each, numberAt };
}

/**
 * The search text of the rows of a file: the file's own text, folded where it stands. Only where folding makes
 * a text longer or shorter (ß is ss) are the fields taken out and folded one by one.
 *
 * @param rows their records, in rising order
 * @param numberColumn column of the part number; -1: there is none
 * @param others further columns that are searched
 */
export function searchTextOfRecords(
  records: PackedRecords,
  rows: { readonly length: number; readonly recordOf: (row: number) => number },
  numberColumn: number,
  others: readonly number[],
): SearchText {
  const columns = [numberColumn, ...others].sort((a, b) => a - b);
  const numberAt = columns.indexOf(numberColumn);
  const each = columns.length;
  const text = records.isMended ? null : foldInPlace(records.text);
  if (text === null) {
    const fields: string[] = [];
    for (let row = 0; row < rows.length; row += 1) {
      const held = records.at(rows.recordOf(row));
      for (const column of columns) fields.push(held[column] ?? '');
    }
    return searchTextOf(fields, each, numberAt);
  }
  const starts = new Uint32Array(rows.length * each);
  const ends = new Uint32Array(rows.length * each);
  let place = 0;
  for (let row = 0; row < rows.length; row += 1) {
    const record = rows.recordOf(row);
    for (const column of columns) {
      records.putSpan(record, column, starts, ends, place);
      place += 1;
    }
  }
  return { text, rows: rows.length, starts, ends, each, numberAt };
}

/** A text folded letter by letter, as long as it was; null where a letter would become none, or several. */
function foldInPlace(text: string): string | null {
  const small = text.toLowerCase();
  if (small.length !== text.length) return null;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: all plain signs, breaks and tabs among them
  const isPlain = !/[^\x00-\x7f]/.test(small);
  if (isPlain) return small;
  const known = new Map<string, string>();
  let isAsLong = true;
  // biome-ignore lint/suspicious/noControlCharactersInRegex: as above
  const folded = small.replace(/[^\x00-\x7f]/g, (letter) => {
    let plain = known.get(letter);
    if (plain === undefined) {
      plain = foldText(letter) || (/^\p{M}$/u.test(letter) ? '' : ' ');
      known.set(letter, plain);
      if (plain.length !== 1) isAsLong = false;
    }
    return plain;
  });
  return isAsLong ? folded : null;
}
