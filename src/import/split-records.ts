import Papa from 'papaparse';
import { showCount } from '../formula/show.ts';
import { breaksIn, type Separator } from '../tables/csv-layout.ts';
import { MOST_COLUMNS, MOST_ROWS } from '../tables/entry.ts';
import { type Broken, cutPiece, MOST_LINE, type Quote } from './cut-piece.ts';
import { GrowingNumbers } from './growing.ts';
import type { Steps } from './in-steps.ts';
import { type PackedRecords, RecordPacker } from './packed-records.ts';

/** All records of a file, blank lines left out, with the line (from 1) on which each begins. */
export interface Records {
  readonly records: PackedRecords;
  readonly lines: Uint32Array;
  /** Lines on which a quote was not as it should be and was read as it stands. */
  readonly strayLines: readonly number[];
  readonly blankLines: number;
}

export interface Refusal {
  /** One or two sentences: what is wrong, where, and what mends it. */
  readonly refusal: string;
  /** What reads the file all the same: quotes as signs like any other. */
  readonly mend?: 'plain-quotes';
}

/** Signs in a piece: a few milliseconds of work, and few enough that its strings are short-lived. */
const PIECE = 1 << 16;

/**
 * Splits a text into records of fields, untouched. Wholly blank lines are no records, except in a file of one
 * column, where the caller cannot tell; they are counted.
 */
export function* splitRecords(whole: string, separator: Separator, quote: Quote): Steps<Records | Refusal> {
  // The mark of the letters, where it was not taken off with them.
  const text = whole.charCodeAt(0) === 0xfeff ? whole.slice(1) : whole;
  const records = new RecordPacker(text, quote);
  const lines = new GrowingNumbers();
  const strayLines: number[] = [];
  let blankLines = 0;
  let line = 1;
  let at = 0;
  while (at < text.length) {
    const piece = cutPiece({ text, separator, quote, pieceLength: PIECE }, at);
    if ('broken' in piece) {
      const refusal = brokenWords(text, piece, line, at);
      return piece.broken === 'long-line' ? { refusal } : { refusal, mend: 'plain-quotes' };
    }
    for (const stray of piece.strayAt) strayLines.push(lineAt(text, at, stray, line));
    records.beginPiece(piece.text, piece.isAsIs);
    for (const record of parsePiece(piece.text, separator, quote)) {
      if (record.length > MOST_COLUMNS) return { refusal: wideWords(record.length, line) };
      const isBlank = record.length === 1 && record[0] === '';
      records.add(record, !isBlank);
      if (isBlank) blankLines += 1;
      else lines.push(line);
      line += 1;
      if (piece.hasBreaks) for (const field of record) line += breaksInField(field);
    }
    if (records.length > MOST_ROWS + 1000) {
      return {
        refusal: `The file has more than ${showCount(MOST_ROWS)} rows, which is the most that can be brought in. Split it, or leave out what is not needed.`,
      };
    }
    at = piece.end;
    yield { stage: 'records', done: at, of: text.length };
  }
  return { records: records.finish(), lines: lines.toArray(), strayLines, blankLines };
}

/** The first records of a text, at most about `length` signs of it, for finding out how it is written. */
export function sampleRecords(text: string, separator: Separator, quote: Quote, length: number): string[][] {
  const records: string[][] = [];
  let at = 0;
  while (at < text.length && at < length) {
    const piece = cutPiece({ text, separator, quote, pieceLength: Math.min(8192, length) }, at);
    if ('broken' in piece) {
      // A quote that is never closed is told later, by its line: it has no say in how fields are parted.
      return quote === 'none' ? records : sampleRecords(text, separator, 'none', length);
    }
    for (const record of parsePiece(piece.text, separator, quote)) {
      if (record.length > 1 || record[0] !== '') records.push(record);
    }
    at = piece.end;
  }
  return records;
}

/**
 * PapaParse's parser proper, without the streaming around it: what Papa.parse returns for one piece is held on to
 * until the next full collection, so that all strings of a long file would be moved about in memory.
 */
function parsePiece(text: string, separator: Separator, quote: Quote): readonly string[][] {
  if (text === '') return [['']];
  const isPlain = quote === 'none' || !text.includes(quote);
  const parser = new Papa.Parser({
    delimiter: separator,
    newline: '\n',
    quoteChar: quote === 'none' ? '"' : quote,
    fastMode: isPlain,
  });
  return (parser.parse(text, 0, false) as { readonly data: readonly string[][] }).data;
}

function breaksInField(field: string): number {
  return field.includes('\n') || field.includes('\r') ? breaksIn(field) : 0;
}

/** Line of a place in the text, given the line of an earlier place. CR CR LF is one break. */
function lineAt(text: string, from: number, to: number, lineOfFrom: number): number {
  return lineOfFrom + breaksIn(text.slice(from, to).replace(/\r+\n/g, '\n'));
}

function brokenWords(text: string, broken: Broken, line: number, from: number): string {
  const brokenLine = lineAt(text, from, broken.at, line);
  if (broken.broken === 'long-line') {
    return `Line ${brokenLine} has more than ${showCount(MOST_LINE)} signs, which no row of a table has: the file is damaged or is not a table of text. Ask for it again, or save it anew as CSV.`;
  }
  const start = Math.max(text.lastIndexOf('\n', broken.at), text.lastIndexOf('\r', broken.at)) + 1;
  const shown = text.slice(broken.at, broken.at + 30).split(/[\r\n]/)[0]!;
  return `Line ${brokenLine}, sign ${broken.at - start + 1}: a quote opens a field (${shown}) and is never closed, so that the rest of the file would be one field. Close it in the file, or read quotes as ordinary signs.`;
}

function wideWords(fields: number, line: number): string {
  return `Line ${line} has ${showCount(fields)} fields; at most ${showCount(MOST_COLUMNS)} columns can be brought in. Another separator may be the right one.`;
}
