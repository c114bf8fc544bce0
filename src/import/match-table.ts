import { sameDimensions } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import type { EntryColumn } from '../tables/entry.ts';
import { shapeOf } from './cell-shape.ts';
import { foldWords } from './fold-words.ts';
import { kindCode } from './frame.ts';
import { unitName } from './measure-cell.ts';
import type { Reading } from './reading.ts';
import { nearness } from './table-words.ts';

/** A column of a notebook table that is to be filled. */
export interface WantedColumn extends EntryColumn {
  readonly name: string;
  readonly title?: string;
}

/** Which column of the file fills a column of the table. */
export interface TableColumnMatch {
  readonly name: string;
  /** Column of the file, from 0; null: none, its entries are empty. */
  readonly column: number | null;
  readonly score: number;
  readonly reason: string;
  /** Unit of figures that name none, '' for plain numbers. */
  readonly unit: string;
  readonly by: 'proposal' | 'hand';
}

export interface UnitQuestion {
  readonly kind: 'unit';
  readonly name: string;
  readonly sentence: string;
}

/** Plain data: can be changed, kept and handed to `readTable`. */
export interface TableMatch {
  readonly wanted: readonly WantedColumn[];
  readonly columns: readonly TableColumnMatch[];
  /** Columns of the file that fill nothing. */
  readonly unused: readonly number[];
  readonly questions: readonly UnitQuestion[];
}

export interface TableChoices {
  /** Column of the file by name of the table's column; null: none. */
  readonly columns?: Readonly<Record<string, number | null>>;
  /** Unit of the file's figures by name of the table's column. */
  readonly units?: Readonly<Record<string, string>>;
}

const PROPOSED_FROM = 0.4;
const SAMPLE = 200;

/** What the rows of a file's column hold. */
interface Content {
  readonly cells: readonly string[];
  /** Share of figures of any kind. */
  readonly figures: number;
  /** Unit that most of its fields name; '' when they name none. */
  readonly unit: string;
}

/**
 * Matches a file to the columns of any notebook table (a route, wear, readings): by the words of the heads in
 * several languages, by units, and by choices that the fields are.
 *
 * @example matchTable(reading, [{ name: 'distance', kind: 'number', unit: 'km' }]).columns[0]!.column // 4
 */
export function matchTable(
  reading: Reading,
  wanted: readonly WantedColumn[],
  choices: TableChoices = {},
): TableMatch {
  const contents = reading.heads.map((_, column) => contentOf(reading, column));
  const fixed = new Map(Object.entries(choices.columns ?? {}));
  const taken = new Set<number>();
  for (const column of fixed.values()) if (column !== null) taken.add(column);
  const pairs = wanted.flatMap((want) =>
    fixed.has(want.name)
      ? []
      : reading.heads.map((_, column) => ({
          name: want.name,
          column,
          ...scorePair(reading, contents[column]!, column, want),
        })),
  );
  pairs.sort((a, b) => b.score - a.score || a.column - b.column);
  const proposed = new Map<string, (typeof pairs)[number]>();
  for (const pair of pairs) {
    if (pair.score < PROPOSED_FROM || taken.has(pair.column) || proposed.has(pair.name)) continue;
    proposed.set(pair.name, pair);
    taken.add(pair.column);
  }
  const questions: UnitQuestion[] = [];
  const columns = wanted.map((want): TableColumnMatch => {
    const pair = proposed.get(want.name);
    const isByHand = fixed.has(want.name);
    const column = isByHand ? (fixed.get(want.name) ?? null) : (pair?.column ?? null);
    const unit = unitOf(reading, contents, want, column, choices.units?.[want.name], questions);
    const reason = isByHand ? 'Set by hand.' : (pair?.reason ?? 'No column of the file is like it.');
    return {
      name: want.name,
      column,
      score: isByHand ? 1 : (pair?.score ?? 0),
      reason,
      unit,
      by: isByHand ? 'hand' : 'proposal',
    };
  });
  const unused = reading.heads.flatMap((_, column) => (taken.has(column) ? [] : [column]));
  return { wanted, columns, unused, questions };
}

function contentOf(reading: Reading, column: number): Content {
  const cells: string[] = [];
  const rowCode = kindCode('row');
  const step = Math.max(1, Math.floor((reading.records.length - reading.bodyFrom) / SAMPLE));
  for (let at = reading.bodyFrom; at < reading.records.length; at += step) {
    const cell = reading.records.field(at, column).trim();
    if (reading.kinds[at] === rowCode && cell !== '') cells.push(cell);
  }
  let figures = 0;
  const units = new Map<string, number>();
  for (const cell of cells) {
    const shape = shapeOf(cell);
    if (shape === 'figure' || shape === 'money' || shape === 'measure' || shape === 'percent') figures += 1;
    const behind = /\d\s*([^\d\s.,][^\d]{0,12})$/u.exec(cell)?.[1];
    const unit = behind === undefined ? '' : unitName(behind);
    if (unit !== '') units.set(unit, (units.get(unit) ?? 0) + 1);
  }
  const [most] = [...units].sort((a, b) => b[1] - a[1]);
  const of = Math.max(1, cells.length);
  return { cells, figures: figures / of, unit: most !== undefined && most[1] >= of * 0.5 ? most[0] : '' };
}

function scorePair(
  reading: Reading,
  content: Content,
  column: number,
  want: WantedColumn,
): { score: number; reason: string } {
  const head = reading.heads[column]!;
  const words = [foldWords(want.name), foldWords(want.title ?? '')];
  const byHead = Math.max(
    ...words.map((word) => Math.max(nearness(word, head.words), nearness(word, foldWords(head.title)))),
  );
  const fits = contentFits(content, want);
  if (fits === -1 || content.cells.length === 0) return { score: 0, reason: '' };
  const unit = head.unit || content.unit;
  const isOfKind = want.kind === 'number' && (want.unit ?? '') !== '' && isSameKind(unit, want.unit!);
  const score = byHead + fits + (isOfKind ? 0.45 : 0);
  const parts: string[] = [];
  if (byHead > 0) parts.push(`its head says '${head.title.slice(0, 40)}'`);
  if (isOfKind) parts.push(`its figures are in ${unit}`);
  if (fits >= 0.4) parts.push('its fields are choices of the column');
  const reason = parts.join(', and ');
  return { score, reason: reason === '' ? '' : `${reason[0]!.toUpperCase()}${reason.slice(1)}.` };
}

/** What the fields say: -1 when they cannot be of the kind, above 0 when they speak for it. */
function contentFits(content: Content, want: WantedColumn): number {
  switch (want.kind) {
    case 'number':
      return content.figures < 0.5 ? -1 : 0;
    case 'text':
      return content.figures > 0.9 ? -0.5 : 0;
    case 'date':
      return content.cells.filter((cell) => shapeOf(cell) === 'date').length >= content.cells.length * 0.5
        ? 0.3
        : -1;
    case 'choice': {
      const options = new Set((want.options ?? []).map((option) => option.toLowerCase()));
      if (options.size === 0) return 0;
      const known = content.cells.filter((cell) => options.has(cell.toLowerCase())).length;
      return known >= content.cells.length * 0.5 ? 0.6 : known === 0 ? -0.3 : 0;
    }
    case 'yes_no':
      return content.figures > 0.5 && content.cells.some((cell) => !/^[01]$/.test(cell)) ? -1 : 0;
  }
}

function isSameKind(unit: string, wanted: string): boolean {
  const [a, b] = [tryUnit(unit), tryUnit(wanted)];
  return unit !== '' && a !== null && b !== null && sameDimensions(a, b);
}

/** The unit of figures that name none; a question when neither head nor fields tell it. */
function unitOf(
  reading: Reading,
  contents: readonly Content[],
  want: WantedColumn,
  column: number | null,
  chosen: string | undefined,
  questions: UnitQuestion[],
): string {
  if (want.kind !== 'number') return '';
  const wanted = want.unit ?? '';
  if (chosen !== undefined || column === null) return chosen ?? wanted;
  const head = reading.heads[column]!;
  const unit = head.unit || contents[column]!.unit;
  if (unit !== '' || wanted === '') return unit || wanted;
  questions.push({
    kind: 'unit',
    name: want.name,
    sentence: `The column '${head.label}' names no unit; its figures are taken as ${wanted}. Is that right?`,
  });
  return wanted;
}
