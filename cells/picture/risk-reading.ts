import { showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { ColumnReader, type ReadNotebook } from '../shared/column-reader.ts';

/** One part on one leg. */
export interface RiskCell {
  /** Row of the table that is read; -1 where it has none. */
  readonly row: number;
  /** Chance to give up there, 0 to 1, and what is at stake there, in money. */
  readonly chance: number;
  readonly cost: number;
  /** Step of the shade, 0 for nothing to speak of. */
  readonly step: 0 | 1 | 2 | 3 | 4 | 5;
}

export interface RiskLeg {
  readonly name: string;
  /** Where it ends; its whole name where no place is told. */
  readonly place: string;
  /** NaN when lengths or distances to help are not told. */
  readonly length: number;
  readonly far: number;
}

export interface RiskPart {
  readonly name: string;
  readonly cells: readonly RiskCell[];
  /** Over all legs. */
  readonly chance: number;
  readonly cost: number;
}

/**
 * Parts by legs. All left and as called have the same order of parts, the one with most at stake in either
 * first, and the same steps of the shade, so that the two can be compared by eye.
 */
export interface RiskMap {
  readonly parts: readonly RiskPart[];
  readonly legs: readonly RiskLeg[];
  /** Whether all parts are left on, or the calls made as they stand. */
  readonly calls: 'left' | 'called';
  readonly money: string;
  readonly lengthUnit: string;
  readonly farUnit: string;
  /** Amounts between the steps of the shade, rising. */
  readonly bounds: readonly number[];
}

/** Shares of the greatest amount at which a darker shade begins. */
const STEPS = [0.01, 0.05, 0.15, 0.35, 0.65] as const;

/**
 * Reads the map. Amounts are shaded in five steps of the greatest of them, be it with all parts left or as
 * called; the bounds have one figure each, so that the key can be read.
 *
 * @param calls 'called' reads the chance and the cost with the calls as they stand
 */
export function readRisk(
  notebook: ReadNotebook,
  { reads }: PictureCell,
  calls: RiskMap['calls'] = 'left',
): RiskMap {
  const { chance_called = '', cost_called = '' } = reads;
  const left = new ColumnReader(notebook, reads);
  const called = new ColumnReader(notebook, { ...reads, chance: chance_called, cost: cost_called });
  const reader = calls === 'left' ? left : called;
  const legs = new Map<string, number>();
  const parts = new Map<string, number[]>();
  const stakes = new Map<string, number>();
  let most = 0;
  for (let row = 0; row < reader.rows('of'); row++) {
    const leg = reader.text('along', row);
    const at = legs.get(leg) ?? legs.size;
    legs.set(leg, at);
    const name = reader.text('of', row);
    const rows = parts.get(name) ?? [];
    if (rows.length === 0) parts.set(name, rows);
    rows[at] = row;
    const cost = greater(left.number('cost', row), called.number('cost', row));
    if (cost > most) most = cost;
  }
  const bounds = STEPS.map((share) => oneFigure(share * most));
  for (const [name, rows] of parts) stakes.set(name, greater(sumOf(left, rows), sumOf(called, rows)));
  const first = [...parts.values()][0] ?? [];
  return {
    parts: [...parts]
      .map(([name, rows]) => partOf(name, rows, legs.size, reader, bounds))
      .sort((a, b) => (stakes.get(b.name) ?? 0) - (stakes.get(a.name) ?? 0)),
    legs: [...legs].map(([name, at]) => ({
      name,
      place: reader.text('place', first[at] ?? -1) || name,
      length: reader.number('length', first[at] ?? -1),
      far: reader.number('far', first[at] ?? -1),
    })),
    calls,
    money: reader.unit('cost'),
    lengthUnit: reader.unit('length'),
    farUnit: reader.unit('far'),
    bounds,
  };
}

type Reader = ColumnReader<keyof PictureCell['reads']>;

/** The greater of two amounts, of which either may not be known. */
const greater = (a: number, b: number): number => (Number.isNaN(a) || b > a ? b : a);

/** What is at stake over some rows; those without an amount are left out. */
function sumOf(reader: Reader, rows: readonly number[]): number {
  let sum = 0;
  for (const row of rows) {
    const cost = reader.number('cost', row ?? -1);
    if (!Number.isNaN(cost)) sum += cost;
  }
  return sum;
}

const oneFigure = (amount: number): number => (amount > 0 ? Number(amount.toPrecision(1)) : 0);

function partOf(
  name: string,
  rows: readonly number[],
  legs: number,
  reader: Reader,
  bounds: readonly number[],
): RiskPart {
  const cells: RiskCell[] = [];
  let chance = 0;
  let cost = 0;
  for (let at = 0; at < legs; at++) {
    const row = rows[at] ?? -1;
    const [here, stake] = [reader.number('chance', row), reader.number('cost', row)];
    if (here > 0) chance += here;
    if (!Number.isNaN(stake)) cost += stake;
    cells.push({ row, chance: here, cost: stake, step: stepOf(stake, bounds) });
  }
  return { name, cells, chance, cost };
}

function stepOf(cost: number, bounds: readonly number[]): RiskCell['step'] {
  if (!(cost > 0)) return 0;
  let step = 0;
  for (const bound of bounds) if (bound > 0 && cost >= bound) step += 1;
  return step as RiskCell['step'];
}

/**
 * A chance as it stands in a cell of the map, in whole percent: 0, which is not written, below half a percent and
 * where it is not known.
 *
 * @example wholePercent(0.0312) // 3
 */
export function wholePercent(chance: number): number {
  const percent = Math.round(chance * 100);
  return percent >= 1 ? percent : 0;
}

/** One cell in words, for the line under the map. */
export function riskWords(map: RiskMap, part: RiskPart, leg: RiskLeg, cell: RiskCell): string {
  const far = Number.isNaN(leg.far) ? '' : `, help ${showNumber(leg.far, 0)} ${map.farUnit} away`;
  return `${part.name}, ${leg.name}${far}: gives up here in ${showNumber(cell.chance * 100, 1)} of 100 trips ${map.calls === 'left' ? 'if left' : 'as called'}; ${showNumber(cell.cost, 2)} ${map.money} at stake`;
}

/** The map in words. */
export function mapWords(map: RiskMap): string {
  const worst = map.parts.reduce<RiskPart | undefined>(
    (most, part) => (most === undefined || part.cost > most.cost ? part : most),
    undefined,
  );
  if (worst === undefined) return 'No row has a chance to show.';
  let peak = 0;
  worst.cells.forEach((cell, at) => {
    if (cell.cost > (worst.cells[peak]?.cost ?? 0)) peak = at;
  });
  return `${map.parts.length} parts on ${map.legs.length} legs. Most is at stake with ${worst.name}, ${showNumber(worst.cost, 0)} ${map.money} over the trip ${map.calls === 'left' ? 'if it is left' : 'as it is called'}, likeliest on ${map.legs[peak]?.name ?? 'no leg'}.`;
}
