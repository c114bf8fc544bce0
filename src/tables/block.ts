import Papa from 'papaparse';
import { layOut } from './csv-layout.ts';
import { writeRecords } from './write-csv.ts';

/**
 * A block of fields as other programs put it on the clipboard: fields parted by tabs, rows by line breaks.
 * A quote that is never closed is taken as an ordinary sign: inches are often written so.
 *
 * @example readBlock('240\tgravel\r\n90\tsand\r\n') // [['240', 'gravel'], ['90', 'sand']]
 */
export function readBlock(text: string): string[][] {
  const layout = layOut(text, '\t');
  const rows =
    'text' in layout
      ? Papa.parse<string[]>(layout.text, { header: false, delimiter: '\t', newline: '\n' }).data
      : text.split(/\r\n|\r|\n/).map((line) => line.split('\t'));
  const last = rows.at(-1);
  if (last !== undefined && last.length === 1 && last[0] === '') rows.pop();
  return rows;
}

/** A block of fields for the clipboard. */
export function writeBlock(rows: readonly (readonly string[])[]): string {
  return writeRecords(rows, '\t');
}
