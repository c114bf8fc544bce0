import { headText } from './column-head.ts';
import type { Entry } from './entry.ts';
import { safeText } from './safe-text.ts';

/** A column to be written; its head becomes `name (unit)`. */
export interface WrittenColumn {
  readonly name: string;
  readonly unit?: string;
  readonly entries: readonly Entry[];
}

/**
 * Columns as a CSV text after RFC 4180: comma, CR LF after each record, quotes doubled inside quotes. Numbers
 * have a decimal point, yes/no is written in words, dates as they are, a missing entry is an empty field. A text
 * that a sheet would run gets an apostrophe before it, which our reading takes off again.
 *
 * @example writeCsv([{ name: 'km', unit: 'km', entries: [240, null] }]) // 'km (km)\r\n240\r\n\r\n'
 */
export function writeCsv(columns: readonly WrittenColumn[]): string {
  if (columns.length === 0) return '';
  const records = [columns.map((column) => safeText(headText(column.name, column.unit)))];
  const rows = Math.max(...columns.map((column) => column.entries.length));
  for (let row = 0; row < rows; row += 1) {
    records.push(columns.map((column) => safeEntryText(column.entries[row] ?? null)));
  }
  return writeRecords(records);
}

/** Records of text as RFC 4180 writes them. */
export function writeRecords(records: readonly (readonly string[])[], separator = ','): string {
  const field = (text: string): string =>
    /["\r\n]/.test(text) || text.includes(separator) ? `"${text.replaceAll('"', '""')}"` : text;
  return records.map((record) => `${record.map(field).join(separator)}\r\n`).join('');
}

function safeEntryText(entry: Entry): string {
  return typeof entry === 'string' ? safeText(entry) : entryText(entry);
}

/** An entry as files hold it: the text that readFileEntry reads back as the same entry. */
export function entryText(entry: Entry): string {
  if (entry === null) return '';
  if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
  return String(entry);
}
