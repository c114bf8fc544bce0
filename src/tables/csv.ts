import Papa from 'papaparse';
import { breaksIn, layOut, type Separator } from './csv-layout.ts';
import { decodeText } from './decode-text.ts';
import { ENTRY_LENGTH, MOST_COLUMNS, MOST_ROWS } from './entry.ts';

/** RFC 4180, section 3: the media type of what writeCsv gives, with its header parameter. */
export const CSV_MEDIA_TYPE = 'text/csv; charset=utf-8; header=present';

export interface CsvText {
  readonly header: readonly string[];
  /** Rows below the header, each as long as the file has it: short and long rows stay so. */
  readonly rows: readonly (readonly string[])[];
  /** Line of the file, from 1, on which each row begins. */
  readonly lines: readonly number[];
  readonly separator: Separator;
}

export interface CsvRefusal {
  /** One sentence: what is wrong, where, and what mends it. */
  readonly refusal: string;
}

/**
 * Splits a CSV text (RFC 4180) into its header and rows of text, untouched: nothing is trimmed, typed or
 * guessed. Blank lines are passed over, except in a file of one column, where they are empty fields.
 *
 * @param separator left out: the sign that the header line has most of, a comma when it has none
 * @example readCsv('part,price\r\nChain,48').rows // [['Chain', '48']]
 */
export function readCsv(text: string, separator?: Separator): CsvText | CsvRefusal {
  const bare = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  if (bare.trim() === '')
    return { refusal: 'The file is empty; choose a file with a line of column names and rows below it.' };
  const sign = separator ?? likelySeparator(bare);
  const layout = layOut(bare, sign);
  if ('quoteFromLine' in layout) {
    return {
      refusal: `Line ${layout.quoteFromLine}: a quote opens a field and is not closed as it should be; close it, or double every quote inside it.`,
    };
  }
  const parsed = Papa.parse<string[]>(layout.text, {
    header: false,
    delimiter: sign,
    newline: '\n',
    quoteChar: '"',
    skipEmptyLines: false,
  });
  return arranged(parsed.data, sign);
}

/** readCsv for the bytes of a file, whose letters may be UTF-8, UTF-16 or windows-1252. */
export function readCsvFile(bytes: Uint8Array, separator?: Separator): CsvText | CsvRefusal {
  return readCsv(decodeText(bytes).text, separator);
}

/** Records below one another, with their lines; the first that is not blank is the header. */
function arranged(records: readonly string[][], separator: Separator): CsvText | CsvRefusal {
  const isBlank = (record: readonly string[]): boolean => record.length === 1 && record[0] === '';
  // A line break after the last record is no record of its own.
  const last =
    records.length > 0 && isBlank(records[records.length - 1]!) ? records.length - 1 : records.length;
  let header: string[] | null = null;
  let line = 1;
  const rows: string[][] = [];
  const lines: number[] = [];
  for (let i = 0; i < last; i += 1) {
    const record = records[i]!;
    const oversize = refuseSize(record, line);
    if (oversize !== null) return oversize;
    if (header === null) {
      if (!isBlank(record)) header = record;
    } else if (!isBlank(record) || header.length === 1) {
      rows.push(record);
      lines.push(line);
    }
    line += 1 + record.reduce((breaks, field) => breaks + breaksIn(field), 0);
  }
  if (rows.length > MOST_ROWS)
    return { refusal: `The file has ${rows.length} rows; at most ${MOST_ROWS} can be brought in.` };
  return { header: header ?? [], rows, lines, separator };
}

function refuseSize(record: readonly string[], line: number): CsvRefusal | null {
  if (record.length > MOST_COLUMNS) {
    return {
      refusal: `Line ${line} has ${record.length} fields; at most ${MOST_COLUMNS} columns can be brought in.`,
    };
  }
  const long = record.findIndex((field) => field.length > ENTRY_LENGTH);
  if (long === -1) return null;
  return {
    refusal: `Line ${line}, field ${long + 1} is ${record[long]!.length} characters long; at most ${ENTRY_LENGTH} can be brought in.`,
  };
}

function likelySeparator(text: string): Separator {
  const headerLine = /^[\r\n]*([^\r\n]*)/.exec(text)![1]!.replace(/"(?:[^"]|"")*"/g, '');
  let best: Separator = ',';
  let most = headerLine.split(',').length - 1;
  for (const sign of [';', '\t', '|'] as const) {
    const count = headerLine.split(sign).length - 1;
    if (count > most) [best, most] = [sign, count];
  }
  return best;
}
