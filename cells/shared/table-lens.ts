import type { Column } from '../../src/formula/column.ts';
import type { Refusal } from './table-column-change.ts';
import { figureText } from './table-figure.ts';
import type { Grid, GridColumn } from './table-model.ts';
import { readTyped } from './typed-entry.ts';

/** What a figure is asked before its row is shown. */
export type Test = 'holds' | 'is' | 'least' | 'most' | 'empty' | 'filled' | 'fault';

/** One condition on one column. */
export interface Where {
  /** Id of the column. */
  readonly column: string;
  readonly test: Test;
  /** What the figure is compared with, as typed; not asked of `empty`, `filled` and `fault`. */
  readonly text: string;
}

export interface Sorting {
  /** Id of the column. */
  readonly column: string;
  readonly falling: boolean;
}

/** A way to look at a table: sorted, and of its rows only some. The table itself stays as it is. */
export interface Lens {
  readonly sorting: Sorting | null;
  readonly wheres: readonly Where[];
}

export const CLEAR_LENS: Lens = { sorting: null, wheres: [] };

/** Tests that can be asked of a column, in plain words. */
export function testsFor(column: GridColumn): readonly (readonly [Test, string])[] {
  const kind = kindOf(column);
  const own: readonly (readonly [Test, string])[] =
    kind === 'text'
      ? [
          ['holds', 'holds'],
          ['is', 'is'],
        ]
      : kind === 'yes_no'
        ? [['is', 'is']]
        : [
            ['is', 'is'],
            ['least', 'is at least'],
            ['most', 'is at most'],
          ];
  return [...own, ['empty', 'is empty'], ['filled', 'is not empty'], ['fault', 'has a fault']];
}

export const asksText = (test: Test): boolean => test !== 'empty' && test !== 'filled' && test !== 'fault';

export function kindOf(column: GridColumn): Column['kind'] {
  return column.shown?.type.kind ?? column.shown?.column.kind ?? 'text';
}

type RowTest = (row: number) => boolean;

const isMissing = (figures: Column | undefined, row: number): boolean =>
  figures === undefined ||
  (figures.kind === 'text'
    ? (figures.values[row] ?? '') === ''
    : Number.isNaN(figures.values[row] ?? Number.NaN));

const folded = (text: string): string => text.trim().toLocaleLowerCase('en');

/**
 * Whether a row fulfils a condition, as a function of the row; or why the condition cannot be read.
 *
 * @example rowTest(grid, { column: 'distance', test: 'least', text: '200 mi' }) // rows of 321.9 km and more
 */
export function rowTest(grid: Grid, where: Where): RowTest | Refusal {
  const column = grid.columns.find((each) => each.id === where.column);
  if (column === undefined) return () => true;
  const figures = column.shown?.column;
  switch (where.test) {
    case 'empty':
      return (row) => isMissing(figures, row) && figures?.faults?.has(row) !== true;
    case 'filled':
      return (row) => !isMissing(figures, row);
    case 'fault':
      return (row) => figures?.faults?.has(row) === true;
    default:
      return kindOf(column) === 'text' ? textTest(figures, where) : figureTest(column, where);
  }
}

function textTest(figures: Column | undefined, where: Where): RowTest {
  const wanted = folded(where.text);
  const textAt = (row: number): string => (figures?.kind === 'text' ? folded(figures.values[row] ?? '') : '');
  if (wanted === '') return () => true;
  return where.test === 'is' ? (row) => textAt(row) === wanted : (row) => textAt(row).includes(wanted);
}

function figureTest(column: GridColumn, where: Where): RowTest | Refusal {
  const figures = column.shown?.column;
  if (where.text.trim() === '' || figures === undefined || figures.kind === 'text') return () => true;
  const kind = kindOf(column);
  // Figures are compared as they are shown, in the unit of the head.
  const unit = column.shown?.type.unit?.text ?? column.entered?.unit ?? '';
  const read = readTyped(where.text, { kind: kind as 'number' | 'date' | 'yes_no', unit });
  if ('reason' in read) return read;
  const wanted = figureOf(read.entry);
  const { values } = figures;
  if (where.test === 'least') return (row) => values[row]! >= wanted;
  if (where.test === 'most') return (row) => values[row]! <= wanted;
  // Typed figures are rounded as they are shown: 0.33 finds what is shown as 0.33.
  return (row) =>
    values[row] === wanted || (kind === 'number' && figureText(column, row) === where.text.trim());
}

function figureOf(entry: unknown): number {
  if (typeof entry === 'number') return entry;
  if (typeof entry === 'boolean') return entry ? 1 : 0;
  return typeof entry === 'string' ? Date.parse(`${entry}T00:00:00Z`) / 86_400_000 : Number.NaN;
}

/** Made when rows are first sorted by words: making it takes time that a page which opens needs. */
let collator: Intl.Collator | undefined;
const inOrder = (a: string, b: string): number => {
  collator ??= new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  return collator.compare(a, b);
};

/** Compares two rows by a column; missing figures come last either way, and equal ones as they stand. */
export function rowComparer(grid: Grid, sorting: Sorting): (a: number, b: number) => number {
  const figures = grid.columns.find((column) => column.id === sorting.column)?.shown?.column;
  if (figures === undefined) return (a, b) => a - b;
  const way = sorting.falling ? -1 : 1;
  const compare =
    figures.kind === 'text'
      ? (a: number, b: number) => inOrder(figures.values[a] ?? '', figures.values[b] ?? '')
      : (a: number, b: number) => figures.values[a]! - figures.values[b]!;
  return (a, b) => {
    const [noA, noB] = [isMissing(figures, a), isMissing(figures, b)];
    if (noA || noB) return noA === noB ? a - b : noA ? 1 : -1;
    return compare(a, b) * way || a - b;
  };
}

/** Comparisons or tests made before others get their turn. */
const SLICE = 1_000;

/** The rows that a lens shows, in its order, worked out in slices: each step gives others their turn. */
export function* lensRows(grid: Grid, lens: Lens): Generator<void, Int32Array | Refusal | null> {
  if (lens.sorting === null && lens.wheres.length === 0) return null;
  const tests: RowTest[] = [];
  for (const where of lens.wheres) {
    const test = rowTest(grid, where);
    if (typeof test !== 'function') return test;
    tests.push(test);
  }
  const rows: number[] = [];
  for (let row = 0; row < grid.rowCount; row += 1) {
    if (tests.every((test) => test(row))) rows.push(row);
    if (row % SLICE === SLICE - 1) yield;
  }
  const shown = Int32Array.from(rows);
  return lens.sorting === null ? shown : yield* sorted(shown, rowComparer(grid, lens.sorting));
}

/** Merges ever longer runs, bottom up. */
function* sorted(rows: Int32Array, compare: (a: number, b: number) => number): Generator<void, Int32Array> {
  let from: Int32Array = rows;
  let to: Int32Array = new Int32Array(rows.length);
  let count = 0;
  for (let width = 1; width < rows.length; width *= 2) {
    for (let start = 0; start < rows.length; start += 2 * width) {
      const middle = Math.min(start + width, rows.length);
      const end = Math.min(start + 2 * width, rows.length);
      let [left, right] = [start, middle];
      for (let at = start; at < end; at += 1) {
        const takesLeft = right >= end || (left < middle && compare(from[left]!, from[right]!) <= 0);
        to[at] = takesLeft ? from[left++]! : from[right++]!;
        count += 1;
        if (count % SLICE === 0) yield;
      }
    }
    [from, to] = [to, from];
  }
  return from;
}

/** Whether the rows shown would still be shown, in this order, if the lens were laid on anew. */
export function isStillSo(grid: Grid, lens: Lens, rows: Int32Array): boolean {
  for (const where of lens.wheres) {
    const test = rowTest(grid, where);
    if (typeof test === 'function' && !rows.every((row) => test(row))) return false;
  }
  if (lens.sorting === null) return true;
  const compare = rowComparer(grid, lens.sorting);
  for (let at = 1; at < rows.length; at += 1) if (compare(rows[at - 1]!, rows[at]!) > 0) return false;
  return true;
}

/** Figures looked at before others get their turn, in a search. */
const FIND_SLICE = 500;

/**
 * The next figure whose text holds `wanted`, from a place on (itself left out) and once round; null when no
 * figure does. Places are rows as shown and columns as shown.
 */
export function* findFigure(
  grid: Grid,
  wanted: string,
  from: { readonly row: number; readonly column: number },
  view: {
    readonly placeCount: number;
    readonly rowAt: (place: number) => number;
    readonly backwards: boolean;
  },
): Generator<void, { row: number; column: number } | null> {
  const text = folded(wanted);
  const width = grid.columns.length;
  const all = view.placeCount * width;
  if (text === '' || all === 0) return null;
  const step = view.backwards ? -1 : 1;
  const start = Math.max(-1, from.row * width + from.column);
  for (let i = 1; i <= all; i += 1) {
    const flat = (((start + step * i) % all) + all) % all;
    const place = { row: Math.floor(flat / width), column: flat % width };
    const column = grid.columns[place.column]!;
    if (folded(figureText(column, view.rowAt(place.row))).includes(text)) return place;
    if (i % FIND_SLICE === 0) yield;
  }
  return null;
}
