import { type Match, type MatchChoices, matchColumns } from '../../src/import/match-columns.ts';
import type { PackedRecords } from '../../src/import/packed-records.ts';
import type { PriceRow, SortedRows } from '../../src/import/price-row.ts';
import { readFile } from '../../src/import/read-file.ts';
import { type RowOptions, readRows } from '../../src/import/read-rows.ts';
import type { ReadChoices, Reading } from '../../src/import/reading.ts';

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** A reading that must not be refused. */
export function reading(text: string | Uint8Array, choices: ReadChoices = {}): Reading {
  const read = readFile(typeof text === 'string' ? bytesOf(text) : text, choices);
  if ('refusal' in read) throw new Error(read.refusal);
  return read;
}

/** The sentence of a reading that must be refused. */
export function refusal(text: string | Uint8Array, choices: ReadChoices = {}): string {
  const read = readFile(typeof text === 'string' ? bytesOf(text) : text, choices);
  if (!('refusal' in read)) throw new Error('The file was read.');
  return read.refusal;
}

/** A file read, matched and sorted at once. */
export function imported(
  text: string,
  choices: MatchChoices = {},
  options: RowOptions = {},
): SortedRows & { readonly match: Match } {
  const read = reading(text);
  const match = matchColumns(read, choices);
  return { ...readRows(read, match, options), match };
}

/** A row with what a test is about; the rest is empty. */
export function offer(fields: Partial<PriceRow>): PriceRow {
  return {
    record: 1,
    line: 2,
    partNumber: null,
    description: null,
    price: 10,
    currency: 'EUR',
    priceFor: 1,
    unit: null,
    fromQuantity: null,
    packQuantity: null,
    discountShare: null,
    taxShare: null,
    leadDays: null,
    supplier: null,
    fits: null,
    stock: null,
    section: null,
    remarks: [],
    ...fields,
  };
}

/** All records of a file as arrays. */
export function recordsOf(records: PackedRecords): string[][] {
  return Array.from({ length: records.length }, (_, at) => [...records.at(at)]);
}
