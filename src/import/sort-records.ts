import { isFigureShape, shapeOf } from './cell-shape.ts';
import { type Frame, kindCode, type RecordKind } from './frame.ts';
import type { PackedRecords } from './packed-records.ts';
import { isTotalWord } from './price-words.ts';

type Row = readonly string[];

/** How full the rows of a table are, from a sample of them. */
interface Fill {
  readonly typical: number;
  /** Columns that are filled in nearly every row. */
  readonly usual: readonly number[];
  /** Columns that nearly always hold words. */
  readonly words: readonly number[];
  /** Columns that nearly always hold figures. */
  readonly figures: readonly number[];
}

const SAMPLE = 300;

/**
 * Sorts the records of a file by what they are: rows, headings between them, totals, notes and settings below
 * them, the header again. Nothing is left out: what is no row is set aside later, with its kind as the reason.
 *
 * @returns a code of KINDS for each record
 */
export function sortRecords(records: PackedRecords, frame: Frame): Uint8Array {
  const kinds = new Uint8Array(records.length).fill(kindCode('row'));
  const bodyFrom = frame.headAt + frame.headRows;
  kinds.fill(kindCode('before'), 0, frame.headAt);
  kinds.fill(kindCode('head'), frame.headAt, bodyFrom);
  const fill = measureFill(records, bodyFrom, records.length);
  const head = frame.headRows === 0 ? null : records.at(bodyFrom - 1);
  for (let at = bodyFrom; at < records.length; at += 1) {
    const kind = kindOf(records, at, fill, head);
    // One field that repeats the row above goes on with it; it heads nothing.
    const goesOn = kind === 'section' && at > bodyFrom && repeats(records.at(at), records.at(at - 1));
    if (kind !== 'row' && !goesOn) kinds[at] = kindCode(kind);
  }
  // What stands at the foot has no say in what the rows are like.
  const upper = bodyFrom + Math.ceil((records.length - bodyFrom) * 0.7);
  sortFoot(records, kinds, bodyFrom, measureFill(records, bodyFrom, upper));
  return kinds;
}

function isBlank(cell: string): boolean {
  // Most fields begin with a sign that is no space: the quick way out.
  return cell === '' || (!(cell.charCodeAt(0) > 32 && cell.charCodeAt(0) < 0x80) && cell.trim() === '');
}

function measureFill(records: PackedRecords, from: number, to: number): Fill {
  const sample: Row[] = [];
  const fills: number[] = [];
  const step = Math.max(1, Math.floor((to - from) / SAMPLE));
  for (let at = from; at < to; at += step) {
    if (records.filled(at) === 0) continue;
    sample.push(records.at(at));
    fills.push(records.filled(at));
  }
  fills.sort((a, b) => a - b);
  const width = sample.reduce((most, row) => Math.max(most, row.length), 0);
  const usual: number[] = [];
  const words: number[] = [];
  const figures: number[] = [];
  for (let column = 0; column < width; column += 1) {
    const shapes = sample.map((row) => shapeOf(row[column] ?? '')).filter((shape) => shape !== 'blank');
    if (shapes.length < sample.length * 0.85) continue;
    usual.push(column);
    const asFigures = shapes.filter(isFigureShape).length;
    if (asFigures <= shapes.length * 0.2) words.push(column);
    if (asFigures >= shapes.length * 0.85) figures.push(column);
  }
  return { typical: fills[fills.length >> 1] ?? 0, usual, words, figures };
}

function kindOf(records: PackedRecords, at: number, fill: Fill, head: Row | null): RecordKind {
  const filled = records.filled(at);
  if (filled === 0) return 'empty';
  if (head !== null && isHeadAgain(records, at, head)) return 'head-again';
  if (filled < fill.typical || filled <= 2) {
    if (
      records.at(at).some((cell) => cell !== '' && isTotalWord(cell.trim())) &&
      filled <= Math.max(2, fill.typical * 0.75)
    ) {
      return 'total';
    }
  }
  if (filled === 1 && fill.typical >= 3) return 'section';
  return 'row';
}

function repeats(row: Row, above: Row): boolean {
  return row.every((cell, column) => isBlank(cell) || cell === above[column]);
}

function isHeadAgain(records: PackedRecords, at: number, head: Row): boolean {
  if (!records.isField(at, 0, head[0]) && !records.isField(at, 1, head[1])) return false;
  const row = records.at(at);
  let same = 0;
  let named = 0;
  for (let column = 0; column < head.length; column += 1) {
    if (isBlank(head[column]!)) continue;
    named += 1;
    if ((row[column] ?? '').trim() === head[column]!.trim()) same += 1;
  }
  return named >= 2 && same >= named * 0.8;
}

/** The records at the end: single fields are notes, figures alone are totals, names with one figure settings. */
function sortFoot(records: PackedRecords, kinds: Uint8Array, from: number, fill: Fill): void {
  const row = kindCode('row');
  let at = records.length - 1;
  for (; at >= from; at -= 1) {
    if (kinds[at] === kindCode('section')) kinds[at] = kindCode('note');
    else if (kinds[at] === row && isFiguresAlone(records.at(at), fill)) kinds[at] = kindCode('total');
    else if (kinds[at] === row) break;
  }
  for (; at >= from && kinds[at] === row && isSetting(records.at(at), fill); at -= 1) {
    kinds[at] = kindCode('setting');
  }
}

function isFiguresAlone(row: Row, fill: Fill): boolean {
  if (fill.words.length === 0 || fill.words.some((column) => !isBlank(row[column] ?? ''))) return false;
  return row.every((cell) => isBlank(cell) || shapeOf(cell) === 'figure' || shapeOf(cell) === 'money');
}

/**
 * A setting: its first field is a word where every item has a number, and most of what an item has is missing.
 */
function isSetting(row: Row, fill: Fill): boolean {
  const first = fill.usual[0];
  if (first === undefined || fill.figures[0] !== first || fill.usual.length < 3) return false;
  const name = row[first] ?? '';
  if (isBlank(name) || /\d/.test(name)) return false;
  const missing = fill.usual.filter((column) => isBlank(row[column] ?? '')).length;
  return missing >= 1 && missing >= (fill.usual.length - 1) * 0.25;
}
