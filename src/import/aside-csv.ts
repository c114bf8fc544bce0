import { safeText } from '../tables/safe-text.ts';
import { writeRecords } from '../tables/write-csv.ts';
import type { Reading } from './reading.ts';

/** A record that is set aside, with its reason as a sentence. */
export interface AsideLine {
  readonly record: number;
  readonly line: number;
  readonly sentence: string;
}

/**
 * Rows set aside as a CSV text (RFC 4180): their line, their reason, and their fields under the file's heads.
 * Other programs open it safely.
 *
 * @example asideCsv(reading, rows.aside) // 'line,reason,Art. no.,Price\r\n8,Its price is on request...\r\n'
 */
export function asideCsv(reading: Reading, aside: readonly AsideLine[]): string {
  const head = ['line', 'reason', ...reading.heads.map((held) => held.label)];
  const records = aside.map(({ line, sentence, record }) => [
    String(line),
    sentence,
    ...reading.records.at(record),
  ]);
  // Every record as wide as the widest: RFC 4180 has them all alike, and rows set aside are often short.
  const width = records.reduce((widest, { length }) => Math.max(widest, length), head.length);
  const even = [head, ...records].map((fields) => Array.from({ length: width }, (_, at) => fields[at] ?? ''));
  return writeRecords(even.map((fields) => fields.map(safeText)));
}
