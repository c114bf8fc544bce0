import { showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { cellNamed } from '../../src/notebook/lookup.ts';
import { wilsonInterval } from '../../src/trade/wilson-interval.ts';
import { ColumnReader, type ReadNotebook } from '../shared/column-reader.ts';

/** One reading that was taken, beside what was expected there. */
export interface TakenReading {
  readonly row: number;
  readonly part: string;
  readonly place: string;
  /** Distance at which it was taken; NaN where it is not told. */
  readonly along: number;
  readonly unit: string;
  readonly taken: number;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  /** Null where nothing was expected of it. */
  readonly held: boolean | null;
}

export interface Taken {
  readonly readings: readonly TakenReading[];
  readonly alongUnit: string;
  /** Title of the table that is read, '' when none is. */
  readonly table: string;
}

/** Reads every row in which a reading was taken, in the order of the table. */
export function readTaken(notebook: ReadNotebook, cell: PictureCell): Taken {
  const reader = new ColumnReader(notebook, cell.reads);
  const readings: TakenReading[] = [];
  for (let row = 0; row < reader.rows('taken'); row++) {
    const taken = reader.number('taken', row);
    if (Number.isNaN(taken)) continue;
    const [a, b] = [reader.number('low', row), reader.number('high', row)];
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    readings.push({
      row,
      part: reader.text('of', row),
      place: reader.text('place', row),
      along: reader.number('along', row),
      unit: reader.text('unit', row) || reader.unit('taken'),
      taken,
      middle: reader.number('middle', row),
      low,
      high,
      held: Number.isNaN(low) ? null : taken >= low && taken <= high,
    });
  }
  const [table = ''] = (cell.reads.taken ?? '').split('.');
  return {
    readings,
    alongUnit: reader.unit('along'),
    table: cellNamed(notebook.document, table)?.title ?? '',
  };
}

/** Share of the true readings that the band is to hold. */
const EXPECTED_SHARE = 0.8;
const CONFIDENCE = 0.95;

/**
 * How many readings the band held, in words, with the interval in which the true share is likely to lie.
 *
 * @example takenWords(taken)
 * // '7 of 9 readings lie in their band; eight in ten are expected to. ...'
 */
export function takenWords({ readings, table }: Taken): string {
  if (table === '')
    return 'No table of readings is read yet: choose its columns under What this picture shows.';
  const judged = readings.filter((reading) => reading.held !== null);
  if (judged.length === 0)
    return readings.length === 0
      ? `Nothing has been measured on the road yet. Write each reading into ${table}, with its part and its leg; it then stands here beside what was expected of it.`
      : `Of the readings in ${table} nothing was expected: see that part and leg are written as in their tables.`;
  const held = judged.filter((reading) => reading.held).length;
  const [low, high] = wilsonInterval(held, judged.length, CONFIDENCE);
  const count = judged.length === 1 ? '1 reading lies' : `${judged.length} readings lie`;
  const verdict =
    EXPECTED_SHARE < low || EXPECTED_SHARE > high
      ? 'so the rates or their spread are worth another look'
      : 'which so few readings cannot tell from eight in ten';
  return `${held} of ${count} in the band; eight in ten are expected to. The true share is likely between ${showNumber(low * 100, 0)} and ${showNumber(high * 100, 0)} %, ${verdict}.`;
}

/** Decimals that tell a reading from its band. */
export function takenDecimals({ low, high }: TakenReading): number {
  const reach = high - low;
  return reach > 0 ? Math.min(4, Math.max(0, Math.ceil(2 - Math.log10(reach)))) : 2;
}

/**
 * Where a figure stands on the strip, 0 to 1: the band is the middle third, what lies further out than its own
 * width stands at the edge.
 *
 * @example placeOnStrip({ low: 2, high: 4 }, 3) // 0.5
 */
export function placeOnStrip({ low, high }: Pick<TakenReading, 'low' | 'high'>, figure: number): number {
  const width = high - low;
  if (!(width > 0)) return figure < low ? 0 : figure > high ? 1 : 0.5;
  return Math.min(1, Math.max(0, (1 + (figure - low) / width) / 3));
}
