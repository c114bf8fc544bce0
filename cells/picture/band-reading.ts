import { columnDecimals, showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { ColumnReader, type ReadNotebook } from '../shared/column-reader.ts';

/** One place along the road. */
export interface BandPoint {
  readonly row: number;
  readonly place: string;
  readonly along: number;
  readonly middle: number;
  readonly low: number;
  readonly high: number;
}

/** A reading along the road with its 80% band. */
export interface Band {
  /** Names that can be drawn, and the one that is. */
  readonly names: readonly string[];
  readonly one: string;
  readonly points: readonly BandPoint[];
  /** NaN when there is no limit. */
  readonly limit: number;
  /** Unit of the reading, and of the distance. */
  readonly unit: string;
  readonly alongUnit: string;
}

/**
 * Reads the line of one name: every row with a likely figure, in the order of the table. Without a name, or
 * with one that has no figures, the first that has.
 */
export function readBand(notebook: ReadNotebook, cell: PictureCell): Band {
  const reader = new ColumnReader(notebook, cell.reads);
  const byName = new Map<string, number[]>();
  for (let row = 0; row < reader.rows('of'); row++) {
    if (Number.isNaN(reader.number('middle', row))) continue;
    const name = reader.text('of', row);
    const rows = byName.get(name);
    if (rows) rows.push(row);
    else byName.set(name, [row]);
  }
  const names = [...byName.keys()];
  const one = cell.one !== undefined && byName.has(cell.one) ? cell.one : (names[0] ?? '');
  const rows = byName.get(one) ?? [];
  const first = rows[0] ?? 0;
  return {
    names,
    one,
    points: rows.map((row) => pointAt(reader, row)),
    limit: reader.number('limit', first),
    unit: reader.text('unit', first) || reader.unit('middle'),
    alongUnit: reader.unit('along'),
  };
}

function pointAt(reader: ColumnReader<keyof PictureCell['reads']>, row: number): BandPoint {
  const [a, b] = [reader.number('low', row), reader.number('high', row)];
  return {
    row,
    place: reader.text('place', row),
    along: reader.number('along', row),
    middle: reader.number('middle', row),
    low: Math.min(a, b),
    high: Math.max(a, b),
  };
}

/** Decimals that suit all readings of a band. */
export function bandDecimals(band: Band): number {
  const spread = band.points.flatMap((point) => [point.low, point.high]);
  const reach = Math.max(...spread) - Math.min(...spread);
  if (!(reach > 0))
    return Math.min(2, columnDecimals({ kind: 'number', values: Float64Array.from(spread), faults: null }));
  return Math.min(4, Math.max(0, Math.ceil(2 - Math.log10(reach))));
}

/** The first place where the likely reading is at the limit or past it; null when there is none. */
export function reachesLimit(band: Band): BandPoint | null {
  const first = band.points[0];
  if (first === undefined || Number.isNaN(band.limit)) return null;
  const last = band.points.at(-1) as BandPoint;
  const rising = last.middle > first.middle;
  return (
    band.points.find((point) => (rising ? point.middle >= band.limit : point.middle <= band.limit)) ?? null
  );
}

/** One point in words, for the line under the picture. */
export function pointWords(band: Band, point: BandPoint): string {
  const decimals = bandDecimals(band);
  const unit = band.unit ? ` ${band.unit}` : '';
  const place = point.place ? `${point.place}, ` : '';
  const limit = Number.isNaN(band.limit) ? '' : `; limit ${showNumber(band.limit)}${unit}`;
  return `${place}${showNumber(point.along, 0)} ${band.alongUnit}: likely ${showNumber(point.middle, decimals)}${unit}, eight in ten between ${showNumber(point.low, decimals)} and ${showNumber(point.high, decimals)}${limit}`;
}

/** The picture in words. */
export function bandWords(band: Band): string {
  const [first, last] = [band.points[0], band.points.at(-1)];
  if (first === undefined || last === undefined) return 'No row has a likely reading.';
  const decimals = bandDecimals(band);
  const unit = band.unit ? ` ${band.unit}` : '';
  const at = reachesLimit(band);
  const limit = Number.isNaN(band.limit)
    ? ''
    : at === null
      ? ` The limit of ${showNumber(band.limit)}${unit} is not likely to be reached.`
      : ` The limit of ${showNumber(band.limit)}${unit} is likely to be reached by ${at.place || `${showNumber(at.along, 0)} ${band.alongUnit}`}.`;
  return `${band.one}: likely ${showNumber(first.middle, decimals)}${unit} at ${showNumber(first.along, 0)} ${band.alongUnit} and ${showNumber(last.middle, decimals)}${unit} at ${showNumber(last.along, 0)} ${band.alongUnit}; eight in ten trips end between ${showNumber(last.low, decimals)} and ${showNumber(last.high, decimals)}${unit}.${limit}`;
}
