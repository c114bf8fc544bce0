import { tryUnit } from '../formula/unit-text.ts';
import type { DecimalMark } from '../tables/number-policy.ts';
import { shapeOf } from './cell-shape.ts';
import type { FileHead } from './file-heads.ts';
import { scoreHead } from './head-words.ts';
import type { Steps } from './in-steps.ts';
import { markEvidence } from './marked-number.ts';
import type { PackedRecords } from './packed-records.ts';

/** Asked once for the file, when its figures do not tell what 1.234 is. */
export interface MarkQuestion {
  readonly kind: 'decimal-mark';
  readonly sentence: string;
  /** Figures of the file that could be either. */
  readonly examples: readonly string[];
  readonly answers: readonly { readonly decimal: DecimalMark; readonly words: string }[];
}

export interface FoundMarks {
  /** Decimal mark of the whole file; null when no figure tells it. */
  readonly decimal: DecimalMark | null;
  /** Decimal mark of each column: its own where it has shown one, else the file's. */
  readonly byColumn: readonly (DecimalMark | null)[];
  readonly reason: string;
  readonly question: MarkQuestion | null;
}

interface ColumnMarks {
  point: number;
  comma: number;
  either: number;
  examples: string[];
  evidence: string;
}

const SAMPLE = 200;
const COMMA = 44;
const POINT = 46;
/** So many figures of one mind tell a column's mark; one of another mind is seen when its row is read. */
const ENOUGH = 4000;
/** Once round the earth, km: no leg of a journey is longer. */
const ROUND_THE_EARTH_KM = 40_075;

/**
 * The decimal mark of a file and of each column, from all its figures. Columns of part numbers have no say:
 * theirs are not figures. Where nothing tells what 1.234 is, there is a question.
 *
 * @param isRow whether a record is a row of the table
 */
export function* findMarks(
  records: PackedRecords,
  isRow: (at: number) => boolean,
  heads: readonly FileHead[],
): Steps<FoundMarks> {
  const marks: (ColumnMarks | null)[] = [];
  const total: ColumnMarks = { point: 0, comma: 0, either: 0, examples: [], evidence: '' };
  for (let column = 0; column < heads.length; column += 1) {
    const counted = holdsFigures(records, isRow, column, heads[column]!)
      ? countMarks(records, isRow, column, heads[column]!)
      : null;
    marks.push(counted);
    if (counted !== null) addUp(total, counted);
    yield { stage: 'figures', done: column + 1, of: heads.length };
  }
  const decimal = leading(total);
  const byColumn = marks.map((own) => (own === null ? null : leading(own)) ?? decimal);
  const open = marks.find((own, column) => own !== null && own.either > 0 && byColumn[column] === null);
  const question = open === undefined || open === null ? null : asked(open.examples);
  return { decimal, byColumn, reason: reasonFor(total, decimal, question), question };
}

/** Is a column one of figures, and none of part numbers? */
function holdsFigures(
  records: PackedRecords,
  isRow: (at: number) => boolean,
  column: number,
  head: FileHead,
): boolean {
  if (scoreHead(head.words, 'part_number').score >= 0.5 && scoreHead(head.words, 'price').score < 0.5)
    return false;
  let filled = 0;
  let figures = 0;
  const step = Math.max(1, Math.floor(records.length / SAMPLE));
  for (let at = 0; at < records.length; at += step) {
    if (!isRow(at)) continue;
    const shape = shapeOf(records.field(at, column));
    if (shape === 'blank') continue;
    filled += 1;
    if (shape === 'figure' || shape === 'money' || shape === 'measure' || shape === 'percent') figures += 1;
  }
  // Prices have a say even where most of them are ranges and words.
  const least = scoreHead(head.words, 'price').score >= 0.5 ? 0.02 : 0.3;
  return figures > 0 && figures >= filled * least;
}

function countMarks(
  records: PackedRecords,
  isRow: (at: number) => boolean,
  column: number,
  head: FileHead,
): ColumnMarks {
  const marks: ColumnMarks = { point: 0, comma: 0, either: 0, examples: [], evidence: '' };
  for (let at = 0; at < records.length; at += 1) {
    if (marks.point + marks.comma >= ENOUGH && Math.min(marks.point, marks.comma) === 0) break;
    if (!records.hasSign(at, column, COMMA, POINT) || !isRow(at)) continue;
    const cell = records.field(at, column);
    const evidence = markEvidence(cell);
    if (evidence === 'none') continue;
    // A mark in words ('per 1,000 pieces') is no figure's: longer texts are looked at more closely.
    if (cell.length > 14 && shapeOf(cell) === 'words') continue;
    if (evidence === 'either') noteEither(marks, cell, head);
    else if (evidence === '.') {
      marks.point += 1;
      if (marks.point === 1) marks.evidence ||= cell.trim();
    } else {
      marks.comma += 1;
      if (marks.comma === 1) marks.evidence ||= cell.trim();
    }
  }
  return marks;
}

function noteEither(marks: ColumnMarks, cell: string, head: FileHead): void {
  const decimal = beyondTheEarth(cell, head.unit);
  if (decimal !== null) {
    if (decimal === '.') marks.point += 1;
    else marks.comma += 1;
    marks.evidence ||= cell.trim();
    return;
  }
  marks.either += 1;
  if (marks.examples.length < 3) marks.examples.push(cell.trim());
}

/** A distance that is longer than once round the earth when its mark is taken for a group's: it is a decimal. */
function beyondTheEarth(cell: string, headUnit: string): DecimalMark | null {
  const parts = /^\s*(\d{1,3})([.,])(\d{3})\s*([A-Za-z]*)\s*$/.exec(cell);
  if (parts === null) return null;
  const unit = tryUnit(parts[4] === '' ? headUnit : parts[4]!.toLowerCase());
  // Dimension 1 is length, in metres.
  if (
    unit === null ||
    unit.dimensions[1] !== 1 ||
    unit.dimensions.some((power, i) => i !== 1 && power !== 0)
  ) {
    return null;
  }
  const asGroupKm = (Number(parts[1] + parts[3]!) * unit.factor) / 1000;
  return asGroupKm > ROUND_THE_EARTH_KM ? (parts[2] as DecimalMark) : null;
}

function addUp(total: ColumnMarks, own: ColumnMarks): void {
  total.point += own.point;
  total.comma += own.comma;
  total.either += own.either;
  total.evidence ||= own.evidence;
}

/** The mark that nearly all telling figures show; null when none tells, or they are of two minds. */
function leading({ point, comma }: { readonly point: number; readonly comma: number }): DecimalMark | null {
  if (point === comma) return null;
  const [most, least] = point > comma ? [point, comma] : [comma, point];
  if (least > most * 0.25) return null;
  return point > comma ? '.' : ',';
}

function asked(examples: readonly string[]): MarkQuestion {
  const example = examples[0]!;
  const bare = /\d{1,3}[.,]\d{3}/.exec(example)?.[0] ?? example;
  const [before, after] = bare.split(/[.,]/) as [string, string];
  const used: DecimalMark = bare.includes('.') ? '.' : ',';
  const other: DecimalMark = used === '.' ? ',' : '.';
  return {
    kind: 'decimal-mark',
    sentence: `The file writes ${example}, and nothing in it tells whether that is ${before}${after} or a little over ${before}. Which is it?`,
    examples,
    answers: [
      { decimal: other, words: `${bare} is ${before}${after}: the mark parts thousands` },
      { decimal: used, words: `${bare} is ${before} and ${after} thousandths: the mark is the decimal one` },
    ],
  };
}

function reasonFor(total: ColumnMarks, decimal: DecimalMark | null, question: MarkQuestion | null): string {
  if (question !== null) return `figures such as ${question.examples[0]} could be read two ways`;
  if (decimal === null) {
    return total.point + total.comma === 0
      ? 'no figure of the file has a mark'
      : 'its columns differ in their marks';
  }
  const words = decimal === '.' ? 'a decimal point' : 'a decimal comma';
  return `figures such as ${total.evidence.slice(0, 24)} have ${words}`;
}
