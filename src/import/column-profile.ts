import { CURRENCY_CODES } from '../formula/currencies.ts';
import { type CellShape, shapeOf } from './cell-shape.ts';
import { moneyIn } from './currency-signs.ts';
import { kindCode } from './frame.ts';
import { priceWord } from './price-words.ts';
import type { Reading } from './reading.ts';

/** What the rows of one column hold, as shares of its filled fields (0 to 1). */
export interface ColumnProfile {
  /** Filled fields among those looked at. */
  readonly filled: number;
  /** Share of the rows looked at that are filled. */
  readonly fill: number;
  readonly shares: Readonly<Record<CellShape, number>>;
  /** Figures with decimals. */
  readonly decimals: number;
  /** Whole figures that go up by one from row to row: a count of the rows. */
  readonly counting: number;
  /** Different texts. */
  readonly distinct: number;
  readonly meanLength: number;
  /** Words instead of a price: POA, n/a. */
  readonly priceWords: number;
  /** Exact currency codes. */
  readonly codes: number;
  /** Words for units: pcs, ea, m. */
  readonly units: number;
  /** Web addresses or marked-up text. */
  readonly machine: number;
  /** Currencies named in its fields, most often first; counts are for all filled fields looked at. */
  readonly money: readonly { readonly sign: string; readonly code: string | null; readonly count: number }[];
}

const SAMPLE = 250;
/** Fields that are looked through for currencies, which takes longer. */
const MONEY_SAMPLE = 80;

const UNIT_WORDS =
  /^(?:pcs?|pces?|pce|piece|ea|each|st|stk|stck|stuck|stück|set|kit|pair|pr|pk|pack|box|bx|m|mm|cm|ft|in|yd|kg|g|lb|l|ml|roll|rl|sf|sq|szt|kpl|opak|шт|компл|уп|м|кг|л|u|ud|uds|pz|paire|jeu|lot|jp|kpl|par|paar|satz|ks|un|m2|m²|hr|bg|dz|c|pe|h87|c62|mtr)\.?$/i;

/**
 * Looks at up to some hundred rows of a column, evenly spread.
 *
 * @example profileColumn(reading, 3).shares.money // 0.98
 */
export function profileColumn(reading: Reading, column: number): ColumnProfile {
  const cells = sampleCells(reading, column);
  const filled = cells.filter((cell) => cell !== '');
  const shapes: Record<CellShape, number> = {
    blank: 0,
    figure: 0,
    money: 0,
    percent: 0,
    measure: 0,
    date: 0,
    code: 0,
    words: 0,
  };
  const money = new Map<string, { sign: string; code: string | null; count: number }>();
  let looked = 0;
  const counts = { decimals: 0, priceWords: 0, codes: 0, units: 0, machine: 0, length: 0 };
  for (const cell of filled) {
    const shape = shapeOf(cell);
    shapes[shape] += 1;
    counts.length += cell.length;
    if (shape === 'figure' && /[.,]\d/.test(cell)) counts.decimals += 1;
    if (shape === 'words' && priceWord(cell) !== null) counts.priceWords += 1;
    if (CURRENCY_CODES.has(cell.toUpperCase()) && cell.length === 3) counts.codes += 1;
    if (UNIT_WORDS.test(cell)) counts.units += 1;
    if (/^https?:|^www\.|<\/?[a-z]+[ >]/i.test(cell)) counts.machine += 1;
    if (cell.length <= 24 && looked < MONEY_SAMPLE) {
      looked += 1;
      tally(money, cell);
    }
  }
  const of = Math.max(1, filled.length);
  return {
    filled: filled.length,
    fill: cells.length === 0 ? 0 : filled.length / cells.length,
    shares: mapShares(shapes, of),
    decimals: counts.decimals / of,
    counting: countingShare(reading, column),
    distinct: new Set(filled).size / of,
    meanLength: counts.length / of,
    priceWords: counts.priceWords / of,
    codes: counts.codes / of,
    units: counts.units / of,
    machine: counts.machine / of,
    money: [...money.values()]
      .map((held) => ({ ...held, count: (held.count * filled.length) / Math.max(1, looked) }))
      .sort((a, b) => b.count - a.count),
  };
}

function sampleCells(reading: Reading, column: number): string[] {
  const { records, kinds, bodyFrom } = reading;
  const rowCode = kindCode('row');
  const step = Math.max(1, Math.floor((records.length - bodyFrom) / SAMPLE));
  const cells: string[] = [];
  for (let at = bodyFrom; at < records.length; at += step) {
    if (kinds[at] === rowCode) cells.push(records.field(at, column).trim());
  }
  return cells;
}

function tally(money: Map<string, { sign: string; code: string | null; count: number }>, cell: string): void {
  for (const { sign, code } of moneyIn(cell)) {
    const key = code ?? sign;
    const held = money.get(key);
    if (held === undefined) money.set(key, { sign, code, count: 1 });
    else held.count += 1;
  }
}

function mapShares(shapes: Record<CellShape, number>, of: number): Record<CellShape, number> {
  const shares = { ...shapes };
  for (const shape of Object.keys(shares) as CellShape[]) shares[shape] = shapes[shape] / of;
  return shares;
}

/** Share of the first rows whose figure is one more than the row above. */
function countingShare(reading: Reading, column: number): number {
  let looked = 0;
  let ups = 0;
  let before: number | null = null;
  const rowCode = kindCode('row');
  for (let at = reading.bodyFrom; at < reading.records.length && looked < 50; at += 1) {
    if (reading.kinds[at] !== rowCode) continue;
    const cell = reading.records.field(at, column).trim();
    const figure: number | null = /^\d{1,7}$/.test(cell) ? Number(cell) : null;
    looked += 1;
    if (before !== null && figure === before + 1) ups += 1;
    before = figure;
  }
  return looked < 5 ? 0 : ups / (looked - 1);
}
