import { showCount } from '../formula/show.ts';
import type { Letters } from '../tables/decode-text.ts';
import { MOST_ROWS } from '../tables/entry.ts';
import { bareText } from '../tables/safe-text.ts';
import { fileHeads } from './file-heads.ts';
import { findHead } from './find-head.ts';
import { decodeSteps, findLetters } from './find-letters.ts';
import { type FoundMarks, findMarks } from './find-marks.ts';
import { findSeparator, separatorWords } from './find-separator.ts';
import { type Frame, kindCode } from './frame.ts';
import { headerKey } from './header-key.ts';
import { finish, runInSteps, type StepOptions, type Steps } from './in-steps.ts';
import type { PackedRecords } from './packed-records.ts';
import type { Found, ReadChoices, Reading, ReadingRemark } from './reading.ts';
import { refuseFile, refuseText } from './refuse-file.ts';
import { sortRecords } from './sort-records.ts';
import { type Records, type Refusal, splitRecords } from './split-records.ts';

const BY_HAND = 'chosen by hand';

/**
 * Reads the bytes of a file as a table of text. How it is written is found from what is in it; each thing can
 * be set by hand instead. Nothing is dropped: every record is there, with its line and what it is.
 *
 * @returns the reading, or one or two sentences on why the file cannot be read
 * @example readFile(new TextEncoder().encode('Art.-Nr.;Preis\nNG-1104;142,00\n')).decimal.value // ','
 */
export function readFile(bytes: Uint8Array, choices: ReadChoices = {}): Reading | Refusal {
  return finish(readSteps(bytes, choices));
}

/** readFile for pasted text. */
export function readPasted(text: string, choices: ReadChoices = {}): Reading | Refusal {
  const letters = { value: 'utf-8', by: 'file', reason: 'the text was pasted' } as const;
  return finish(readTextSteps(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text, letters, choices));
}

/**
 * readFile with pauses, for a large file: others have their turn, progress is told, and a signal ends it.
 *
 * @throws the signal's reason when it is aborted
 */
export function readFileInSteps(
  bytes: Uint8Array,
  choices: ReadChoices = {},
  options: StepOptions = {},
): Promise<Reading | Refusal> {
  return runInSteps(readSteps(bytes, choices), options);
}

/** The steps of readFile. */
export function* readSteps(bytes: Uint8Array, choices: ReadChoices = {}): Steps<Reading | Refusal> {
  const refusal = refuseFile(bytes);
  if (refusal !== null) return { refusal };
  const letters = chosenOr(choices.letters, () => {
    const found = findLetters(bytes);
    return { value: found.letters, reason: found.reason };
  });
  const text = yield* decodeSteps(bytes, letters.value);
  return yield* readTextSteps(text, letters, choices);
}

function* readTextSteps(
  text: string,
  letters: Found<Letters>,
  choices: ReadChoices,
): Steps<Reading | Refusal> {
  const refusal = refuseText(text);
  if (refusal !== null) return { refusal };
  const named = findSeparator(text, choices.quote);
  const separator = chosenOr(choices.separator, () => ({ value: named.separator, reason: named.reason }));
  const quote = chosenOr(choices.quote, () => ({
    value: named.quote,
    reason: named.quote === '"' ? 'the usual quote' : 'its fields are held by this sign alone',
  }));
  const split = yield* splitRecords(text, separator.value, quote.value);
  if ('refusal' in split) return split;
  return yield* arrange(split, { letters, separator, quote }, choices);
}

type Written = Pick<Reading, 'letters' | 'separator' | 'quote'>;

function* arrange(split: Records, written: Written, choices: ReadChoices): Steps<Reading | Refusal> {
  const first = split.records.at(0);
  const hasNamed = /^sep=.?$/i.test(first[0] ?? '') && first.slice(1).join('') === '';
  const records = hasNamed ? split.records.withoutFirst() : split.records;
  const lines = hasNamed ? split.lines.subarray(1) : split.lines;
  const frame = chosenOr(chosenFrame(choices, records.length), () => {
    const found = findHead(records);
    return { value: found, reason: found.reason };
  });
  const bodyFrom = frame.value.headAt + frame.value.headRows;
  if (records.length - bodyFrom > MOST_ROWS) {
    return {
      refusal: `The file has ${showCount(records.length - bodyFrom)} rows; at most ${showCount(MOST_ROWS)} can be brought in.`,
    };
  }
  yield { stage: 'figures', done: 0, of: 1 };
  const kinds = sortRecords(records, frame.value);
  applyFoot(kinds, choices.footFrom, bodyFrom);
  const rowCode = kindCode('row');
  const headRows: string[][] = [];
  for (let at = frame.value.headAt; at < bodyFrom; at += 1) headRows.push(records.at(at).map(bareText));
  const heads = fileHeads(headRows, widthOf(records, bodyFrom, headRows));
  const marks = yield* findMarks(records, (at) => kinds[at] === rowCode, heads);
  const decimal = chosenOr(choices.decimal, () => ({ value: marks.decimal, reason: marks.reason }));
  return {
    ...written,
    decimal,
    frame,
    decimalByColumn: decimalByColumn(marks, choices),
    question: choices.decimal === undefined ? marks.question : null,
    heads,
    records,
    lines,
    kinds,
    bodyFrom,
    blankLines: split.blankLines,
    remarks: remarksOn(split, written),
    headerKey: headerKey(heads),
  };
}

function chosenOr<Value>(
  chosen: Value | undefined,
  find: () => { readonly value: Value; readonly reason: string },
): Found<Value> {
  return chosen === undefined ? { ...find(), by: 'file' } : { value: chosen, by: 'reader', reason: BY_HAND };
}

function chosenFrame(choices: ReadChoices, records: number): Frame | undefined {
  if (choices.head === undefined) return undefined;
  const headAt = Math.max(0, Math.min(Math.trunc(choices.head.at), records - 1));
  return { headAt, headRows: choices.head.rows, reason: BY_HAND };
}

function applyFoot(kinds: Uint8Array, footFrom: number | null | undefined, bodyFrom: number): void {
  if (footFrom === undefined) return;
  const [row, note, empty] = [kindCode('row'), kindCode('note'), kindCode('empty')];
  for (let at = bodyFrom; at < kinds.length; at += 1) {
    if (footFrom !== null && at >= footFrom) kinds[at] = note;
    // The reader says that there is no foot: all but empty records are rows.
    else if (footFrom === null && kinds[at] !== empty) kinds[at] = row;
  }
}

/** Columns of the table: those of the header, and as many more as at least a tenth of the rows fill. */
function widthOf(records: PackedRecords, bodyFrom: number, headRows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  let rows = 0;
  const step = Math.max(1, Math.floor((records.length - bodyFrom) / 2000));
  for (let at = bodyFrom; at < records.length; at += step) {
    rows += 1;
    const width = records.width(at);
    counts.set(width, (counts.get(width) ?? 0) + 1);
  }
  let widest = Math.max(0, ...headRows.map((row) => row.length));
  if (widest > 0 && rows > 0 && (counts.get(widest) ?? 0) === rows) return widest;
  let atLeast = rows;
  for (const [width, count] of [...counts].sort((a, b) => a[0] - b[0])) {
    if (atLeast >= rows * 0.1) widest = Math.max(widest, width);
    atLeast -= count;
  }
  return Math.max(1, widest);
}

/** A column's own mark holds even against a choice for the file, which is for figures that do not tell. */
function decimalByColumn(marks: FoundMarks, choices: ReadChoices): FoundMarks['byColumn'] {
  if (choices.decimal === undefined) return marks.byColumn;
  const { decimal } = choices;
  return marks.byColumn.map(() => decimal);
}

function remarksOn(split: Records, written: Written): ReadingRemark[] {
  const remarks: ReadingRemark[] = split.strayLines.slice(0, 20).map((line) => ({
    line,
    sentence: `Line ${line}: a quote in a field is not doubled as it should be; the field is read as it stands.`,
  }));
  if (split.strayLines.length > 20) {
    remarks.push({
      line: null,
      sentence: `${showCount(split.strayLines.length - 20)} more lines have a quote that is not doubled as it should be; they are read as they stand.`,
    });
  }
  if (written.letters.value === 'utf-8' || written.letters.by === 'reader') return remarks;
  return [
    ...remarks,
    {
      line: null,
      sentence: `The letters are read as ${written.letters.value} (${written.letters.reason}); choose others if names look wrong. Fields are parted by ${separatorWords(written.separator.value)}.`,
    },
  ];
}
