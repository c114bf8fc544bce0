import { sameCurrencies, sameDimensions } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import { splitHead } from './column-head.ts';
import { convertFigure } from './convert-figure.ts';
import { type CsvText, readCsv } from './csv.ts';
import type { Separator } from './csv-layout.ts';
import type { Entry, EntryColumn } from './entry.ts';
import { type FileEntryRead, readFileEntry } from './read-file-entry.ts';
import { bareText } from './safe-text.ts';

/** A column as the notebook wants it from a file. */
export interface ColumnPlan extends EntryColumn {
  /** Name in the notebook. */
  readonly name: string;
  /** Head of the column in the file, without its unit; the name if absent. */
  readonly head?: string;
}

/** Something in the file that the reader should see; the rest of it came in. */
export interface CsvProblem {
  /** Line of the file, from 1. */
  readonly line: number;
  /** Row of the table, from 0; null when the whole column or file is meant. */
  readonly row: number | null;
  readonly column: string | null;
  /** The text in question, as the file has it. */
  readonly text: string;
  readonly reason: string;
}

export interface CsvTable {
  /** In the order of the plans, all of the same length. */
  readonly columns: readonly { readonly name: string; readonly entries: Entry[] }[];
  readonly problems: readonly CsvProblem[];
  /** Heads in the file that no plan asked for. */
  readonly unused: readonly string[];
}

/**
 * Reads the columns that are wanted out of a CSV text. An entry that cannot be read as its column's kind stays
 * as its raw text, with a problem that says why: nothing is dropped and nothing is guessed. Figures in a
 * column whose head gives another unit of the same kind are converted.
 *
 * @example tableFromCsv('leg,km\r\n1,240', [{ name: 'km', kind: 'number', unit: 'km' }]).columns
 * // [{ name: 'km', entries: [240] }]
 */
export function tableFromCsv(
  text: string,
  plans: readonly ColumnPlan[],
  separator?: Separator,
): CsvTable | { readonly refusal: string } {
  const csv = readCsv(text, separator);
  if ('refusal' in csv) return csv;
  const header = csv.header.map(bareText);
  const heads = header.map(splitHead);
  const problems: CsvProblem[] = unevenRows(csv);
  const used = new Set<number>();
  const columns: { name: string; entries: Entry[] }[] = [];
  for (const plan of plans) {
    const wanted = plan.head ?? plan.name;
    const places = heads.flatMap((head, at) => (isHead(head, header[at]!, wanted) ? [at] : []));
    if (places.length > 1) {
      return { refusal: `Two columns of the file are headed '${wanted}'; rename or remove one of them.` };
    }
    const at = places[0];
    if (at === undefined) {
      problems.push({
        line: 1,
        row: null,
        column: plan.name,
        text: wanted,
        reason: `the file has no column '${wanted}'`,
      });
      columns.push({ name: plan.name, entries: new Array<Entry>(csv.rows.length).fill(null) });
      continue;
    }
    used.add(at);
    columns.push({ name: plan.name, entries: readColumn(csv, at, heads[at]!.unit, plan, problems) });
  }
  return { columns, problems, unused: csv.header.filter((_, at) => !used.has(at)) };
}

function isHead(head: { readonly title: string }, raw: string, wanted: string): boolean {
  return head.title === wanted || raw.trim() === wanted;
}

/** Rows that are longer than the header hold figures under no head; shorter ones leave fields empty. */
function unevenRows(csv: CsvText): CsvProblem[] {
  const width = csv.header.length;
  return csv.rows.flatMap((record, row) => {
    if (record.length === width) return [];
    const reason =
      record.length > width
        ? `the row has ${record.length} fields, the header ${width}; what stands behind the last column is left out`
        : `the row has ${record.length} fields, the header ${width}; the others are left empty`;
    return [
      { line: csv.lines[row]!, row, column: null, text: record.slice(width).join(csv.separator), reason },
    ];
  });
}

function readColumn(
  csv: CsvText,
  at: number,
  fileUnit: string,
  plan: ColumnPlan,
  problems: CsvProblem[],
): Entry[] {
  const convert = plan.kind === 'number' ? conversion(fileUnit, plan.unit ?? '') : null;
  if (convert !== null && 'reason' in convert) {
    problems.push({ line: 1, row: null, column: plan.name, text: csv.header[at]!, reason: convert.reason });
    return csv.rows.map((record) => rawEntry(record[at]));
  }
  return csv.rows.map((record, row) => {
    const text = bareText(record[at] ?? '');
    const read: FileEntryRead = readFileEntry(text, plan);
    if (read.reason !== undefined) {
      problems.push({ line: csv.lines[row]!, row, column: plan.name, text, reason: read.reason });
    }
    return typeof read.entry === 'number' && convert !== null ? convert.apply(read.entry) : read.entry;
  });
}

function rawEntry(text: string | undefined): Entry {
  return text === undefined || text === '' ? null : bareText(text);
}

/** How the figures of a column get into its unit; the reason when they cannot. */
function conversion(
  fileUnit: string,
  wanted: string,
): { readonly apply: (figure: number) => number } | { readonly reason: string } {
  if (fileUnit === '' || fileUnit === wanted) return { apply: (figure) => figure };
  const from = tryUnit(fileUnit);
  const to = tryUnit(wanted);
  if (
    from === null ||
    to === null ||
    !sameDimensions(from, to) ||
    !sameCurrencies(from.currencies, to.currencies)
  ) {
    return {
      reason: `the file's column is in ${fileUnit}, the table's in ${wanted || 'plain numbers'}; its figures are kept as text`,
    };
  }
  return { apply: (figure) => convertFigure(figure, from, to) };
}
