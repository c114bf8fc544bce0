import { showNumber } from '../../src/formula/show.ts';
import type { NamedCell, PictureCell } from '../../src/notebook/document.ts';
import { cellNamed, columnHead, columnNamed } from '../../src/notebook/lookup.ts';
import { ColumnReader, type ReadNotebook } from '../shared/column-reader.ts';

/** One figure drawn as a bar. */
export interface Bar {
  readonly name: string;
  /** Its figure in formulas. */
  readonly node: string;
  readonly row: number;
  readonly value: number;
  readonly shown: string;
}

/** Bars of one unit side by side; with rows, one such list for each column. */
export interface BarsMeasure {
  readonly title: string;
  readonly unit: string;
  readonly node: string;
  readonly bars: readonly Bar[];
}

export interface Bars {
  /** Whether each bar is a row of a table; otherwise each is a single figure. */
  readonly byRow: boolean;
  readonly measures: readonly BarsMeasure[];
}

/** Decimals of money, weights and hours alike. */
const DECIMALS = 2;

/** Reads single figures, one bar each, or columns of a table, one bar for each row and column. */
export function readBars(notebook: ReadNotebook, cell: PictureCell): Bars {
  return (cell.reads.of ?? '') === ''
    ? { byRow: false, measures: singleMeasures(notebook, cell.figures) }
    : { byRow: true, measures: cell.figures.map((node) => rowMeasure(notebook, cell, node)) };
}

/** Figures of one unit stand on one scale; another unit begins another list. */
function singleMeasures(notebook: ReadNotebook, figures: readonly string[]): BarsMeasure[] {
  const byUnit = new Map<string, (Bar & { readonly decimals: number })[]>();
  for (const node of figures) {
    const reader = new ColumnReader(notebook, { figure: node });
    const named = cellNamed(notebook.document, node);
    const bar = {
      name: named?.title || node.replaceAll('_', ' '),
      node,
      row: 0,
      value: reader.number('figure'),
      shown: '',
      decimals: decimalsOf(named),
    };
    const unit = reader.unit('figure');
    byUnit.set(unit, [...(byUnit.get(unit) ?? []), bar]);
  }
  return [...byUnit].map(([unit, bars]) => ({
    title: unit || 'figures',
    unit,
    node: bars[0]?.node ?? '',
    bars: alike(bars),
  }));
}

/** Figures of one list have the same decimals: the fewest that one of them is shown with on its own card. */
function alike(bars: readonly (Bar & { readonly decimals: number })[]): Bar[] {
  const decimals = Math.min(...bars.map((bar) => bar.decimals));
  return bars.map(({ name, node, row, value }) => ({
    name,
    node,
    row,
    value,
    shown: showNumber(value, decimals),
  }));
}

/** Decimals of a figure on its own card. */
function decimalsOf(cell: NamedCell | null): number {
  if (cell?.kind === 'formula') return cell.decimals ?? DECIMALS;
  return cell?.kind === 'value' && cell.content.type === 'number'
    ? (cell.content.decimals ?? DECIMALS)
    : DECIMALS;
}

function rowMeasure(notebook: ReadNotebook, cell: PictureCell, node: string): BarsMeasure {
  const reader = new ColumnReader(notebook, { ...cell.reads, figure: node });
  const bars: Bar[] = [];
  for (let row = 0; row < reader.rows('of'); row++) {
    if (reader.has('where') && !reader.yes('where', row)) continue;
    const value = reader.number('figure', row);
    bars.push({ name: reader.text('of', row), node, row, value, shown: showNumber(value, DECIMALS) });
  }
  return { title: columnTitleOf(notebook, node), unit: reader.unit('figure'), node, bars };
}

function columnTitleOf(notebook: ReadNotebook, node: string): string {
  const [table = '', name = ''] = node.split('.');
  const cell = cellNamed(notebook.document, table);
  const column = cell === null ? null : columnNamed(cell, name);
  return column === null ? name.replaceAll('_', ' ') : columnHead(column);
}

/** The rows that have any figure above nought, the greatest of the first measure first. */
export function rowsByWeight(bars: Bars): readonly number[] {
  const [first] = bars.measures;
  if (first === undefined) return [];
  return first.bars
    .map((_, at) => at)
    .filter((at) => bars.measures.some((measure) => Math.abs(measure.bars[at]?.value ?? 0) > 0))
    .sort((a, b) => (first.bars[b]?.value ?? 0) - (first.bars[a]?.value ?? 0));
}

/** The bars in words. */
export function barsWords(bars: Bars): string {
  const words = bars.measures.flatMap((measure) => {
    const known = measure.bars.filter((bar) => !Number.isNaN(bar.value));
    const most = [...known].sort((a, b) => b.value - a.value)[0];
    if (most === undefined) return [];
    const unit = measure.unit ? ` ${measure.unit}` : '';
    const lead = bars.byRow ? `${measure.title}, most` : `Most of ${known.length}`;
    return [`${lead}: ${most.name}, ${most.shown}${unit}`];
  });
  return words.length > 0 ? `${words.join('; ')}.` : 'No figure is chosen yet.';
}
