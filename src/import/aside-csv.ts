import { safeText } from '../tables/safe-text.ts';
import { writeRecords } from '../tables/write-csv.ts';
import type { AsideRow } from './price-row.ts';
import type { Reading } from './reading.ts';

/**
 * Rows set aside as a CSV text (RFC 4180): their line, their reason, and their fields under the file's heads.
 * Other programs open it safely.
 *
 * @example asideCsv(reading, rows.aside) // 'line,reason,Art. no.,Price\r\n8,Its price is on request...\r\n'
 */
export function asideCsv(reading: Reading, aside: readonly AsideRow[]): string {
  const head = ['line', 'reason', ...reading.heads.map((held) => held.label)];
  const records = aside.map(({ line, sentence, record }) => [
    String(line),
    sentence,
    ...reading.records.at(record),
  ]);
  return writeRecords([head, ...records].map((fields) => fields.map(safeText)));
}
