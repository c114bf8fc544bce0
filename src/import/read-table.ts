import type { Entry } from '../tables/entry.ts';
import { readIsoDate } from '../tables/read-date.ts';
import { readYesNo } from '../tables/read-yes-no.ts';
import { bareText } from '../tables/safe-text.ts';
import { asideSentence } from './aside-words.ts';
import { type DayOrder, dayOrder, readDate } from './day-order.ts';
import { foldText } from './fold-words.ts';
import { KINDS, kindCode, type RecordKind } from './frame.ts';
import type { TableColumnMatch, TableMatch, WantedColumn } from './match-table.ts';
import { readMeasure } from './measure-cell.ts';
import { type Reading, rawText } from './reading.ts';
import { rowNoun } from './table-words.ts';

/** A field that could not be read as its column's kind; its text is kept as the entry. */
export interface TableRemark {
  /** Record of the file, from 0. */
  readonly record: number;
  /** Line of the file, from 1. */
  readonly line: number;
  /** Row of the table, from 0. */
  readonly row: number;
  readonly column: string;
  readonly text: string;
  readonly sentence: string;
}

/** Why a record is no row of a table: what it is, nothing in the columns that are taken, or cut off. */
export type TableAsideReason = Exclude<RecordKind, 'before' | 'head' | 'row'> | 'nothing' | 'cut-off';

export interface TableAside {
  readonly record: number;
  readonly line: number;
  readonly reason: TableAsideReason;
  /** The fields of the file, as far as the record goes. */
  readonly fields: readonly string[];
  readonly raw: string;
  readonly sentence: string;
}

/** Rows of a notebook table. Rows and rows set aside together are all records below the header. */
export interface ReadTable {
  readonly columns: readonly { readonly name: string; readonly entries: readonly Entry[] }[];
  readonly rows: number;
  /** Line of the file of each row. */
  readonly lines: readonly number[];
  readonly remarks: readonly TableRemark[];
  readonly aside: readonly TableAside[];
}

const NOT_ROW = 'It has nothing in the columns that are taken.';
const CUT_OFF =
  'The row ends before its last column: the file may be cut off here. Ask for it again, or fill the row in.';

/**
 * Reads a file into the columns of a notebook table, as matched. A field that is not of its kind stays as its
 * text, with a remark; totals, headings, empty rows and a row that is cut off are set aside.
 *
 * @example readTable(reading, matchTable(reading, [{ name: 'distance', kind: 'number', unit: 'km' }])).columns
 * // [{ name: 'distance', entries: [7.7, 4.7] }]
 */
export function readTable(reading: Reading, match: TableMatch): ReadTable {
  const readers = match.wanted.map((want, at) => fieldReader(reading, want, match.columns[at]!));
  const columns = match.wanted.map(({ name }) => ({ name, entries: [] as Entry[] }));
  const lines: number[] = [];
  const remarks: TableRemark[] = [];
  const aside: TableAside[] = [];
  const rowCode = kindCode('row');
  const noun = rowNoun(match.wanted.map(({ name }) => name));
  for (let record = reading.bodyFrom; record < reading.records.length; record += 1) {
    const line = reading.lines[record]!;
    const fields = reading.records.at(record);
    const reason =
      reading.kinds[record] === rowCode
        ? reasonAgainst(reading, match, record)
        : (KINDS[reading.kinds[record]!] as TableAsideReason);
    if (reason !== null) {
      const sentence = sentenceFor(reason, noun);
      aside.push({ record, line, reason, fields, raw: rawText(reading, record), sentence });
      continue;
    }
    const row = lines.length;
    lines.push(line);
    readers.forEach((read, at) => {
      const { entry, reason, text } = read(fields);
      columns[at]!.entries.push(entry);
      if (reason === null) return;
      const column = columns[at]!.name;
      remarks.push({ record, line, row, column, text, sentence: `Line ${line}: ${reason}.` });
    });
  }
  return { columns, rows: lines.length, lines, remarks, aside };
}

/** Why a record is no row of the table: it has nothing to take, or the file ends within it. */
function reasonAgainst(reading: Reading, match: TableMatch, record: number): 'nothing' | 'cut-off' | null {
  const fields = reading.records.at(record);
  const used = match.columns.flatMap(({ column }) => (column === null ? [] : [column]));
  if (used.every((column) => (fields[column] ?? '').trim() === '')) {
    const isCutOff = used.some((column) => column >= fields.length);
    return isCutOff ? 'cut-off' : 'nothing';
  }
  const isLast = record === reading.records.length - 1;
  return isLast && used.some((column) => column >= fields.length) ? 'cut-off' : null;
}

function sentenceFor(reason: TableAsideReason, noun: string): string {
  if (reason === 'cut-off') return CUT_OFF;
  return reason === 'nothing' ? NOT_ROW : asideSentence(reason, '', noun);
}

interface FieldRead {
  readonly entry: Entry;
  readonly reason: string | null;
  readonly text: string;
}

function fieldReader(
  reading: Reading,
  want: WantedColumn,
  match: TableColumnMatch,
): (fields: readonly string[]) => FieldRead {
  const { column } = match;
  if (column === null) return () => ({ entry: null, reason: null, text: '' });
  const order = want.kind === 'date' ? orderOf(reading, column) : null;
  const decimal = reading.decimalByColumn[column] ?? null;
  return (fields) => {
    const text = bareText(fields[column] ?? '');
    const bare = text.trim();
    if (bare === '' || (want.kind !== 'text' && /^[-–—]$/.test(bare)))
      return { entry: null, reason: null, text };
    switch (want.kind) {
      case 'number': {
        const read = readMeasure(bare, want.unit ?? '', match.unit, decimal);
        return 'figure' in read
          ? { entry: read.figure, reason: null, text }
          : { entry: text, reason: read.reason, text };
      }
      case 'text':
        return { entry: text, reason: null, text };
      case 'choice':
        return readChoice(text, bare, want.options ?? []);
      case 'date':
        return readDay(text, bare, order);
      case 'yes_no':
        return readAnswer(text, bare);
    }
  };
}

function orderOf(reading: Reading, column: number): DayOrder | null {
  const cells: string[] = [];
  for (let at = reading.bodyFrom; at < reading.records.length; at += 1) {
    cells.push(reading.records.field(at, column));
  }
  return dayOrder(cells);
}

function readChoice(text: string, bare: string, options: readonly string[]): FieldRead {
  if (options.length === 0) return { entry: text, reason: null, text };
  const known = options.find((option) => option.toLowerCase() === bare.toLowerCase());
  return known === undefined
    ? { entry: text, reason: `'${bare.slice(0, 40)}' is not one of the choices`, text }
    : { entry: known, reason: null, text };
}

function readDay(text: string, bare: string, order: DayOrder | null): FieldRead {
  const date = readIsoDate(bare) ?? readDate(bare, order);
  if (date !== null) return { entry: date, reason: null, text };
  const why =
    order === null && /^\d{1,2}\/\d{1,2}\/\d{2,4}$/.test(bare)
      ? 'could have the day or the month first, and nothing in the file tells; write it as year-month-day'
      : 'is not a date; write it as year-month-day';
  return { entry: text, reason: `'${bare.slice(0, 40)}' ${why}`, text };
}

const YES: ReadonlySet<string> = new Set('ja oui si tak да x yes y true 1 sim kylla ano'.split(' '));
const NO: ReadonlySet<string> = new Set('nein nee non nie нет no n false 0 nao ei ne nej'.split(' '));

function readAnswer(text: string, bare: string): FieldRead {
  const folded = foldText(bare);
  const answer =
    readYesNo(bare) ?? (YES.has(folded) || /^[✓✔☑]$/.test(bare) ? true : NO.has(folded) ? false : null);
  return answer === null
    ? { entry: text, reason: `'${bare.slice(0, 40)}' is neither yes nor no`, text }
    : { entry: answer, reason: null, text };
}
