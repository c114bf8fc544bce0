import { showNumber } from '../../src/formula/show.ts';
import type { RiskLeg } from './risk-reading.ts';

/** Measures of the map, in px at the usual text size. A leg has room for two digits at least. */
export const MAP = {
  row: 29,
  gap: 2,
  /** Names of the legs, and the steps that show how far help is. */
  head: 108,
  help: 36,
  helpStep: 26,
  leastLeg: 21.6,
  total: 60,
  totalEnd: 10,
  /** Least size of text, --t-1. */
  text: 12,
} as const;

/** Where everything of a map stands, in px: what rows have in common whatever their figures. */
export interface RiskFrame {
  readonly scale: number;
  /** Left edge of each leg; and the right edge of the last. */
  readonly edges: readonly number[];
  readonly top: number;
  readonly row: number;
  readonly box: number;
  /** Path of each leg's cell within its row. */
  readonly boxes: readonly string[];
  /** Where the figure of each leg has its middle, in px at the usual text size. */
  readonly middles: readonly number[];
  /** Right edges of the two totals, and the width of it all. */
  readonly totals: readonly [number, number];
  readonly width: number;
}

/**
 * Left edges of legs drawn to length, in whole px, and the right edge of the last. No leg is narrower than the
 * least: the others share what is left, and a long route is wider than the room there is.
 *
 * @param lengths in one unit; what is unknown or nought counts as one
 * @example legEdges([100, 300], 400, 20) // [0, 100, 400]
 */
export function legEdges(lengths: readonly number[], roomPx: number, leastPx: number): number[] {
  const known = lengths.map((length) => (length > 0 ? length : 1));
  const widths = known.map(() => 0);
  let room = Math.max(roomPx, leastPx * known.length);
  let rest = known.map((_, at) => at);
  for (;;) {
    const whole = rest.reduce((sum, at) => sum + known[at]!, 0);
    const perUnit = whole > 0 ? room / whole : 0;
    const short = rest.filter((at) => known[at]! * perUnit < leastPx);
    if (short.length === 0) {
      for (const at of rest) widths[at] = known[at]! * perUnit;
      break;
    }
    for (const at of short) widths[at] = leastPx;
    room -= short.length * leastPx;
    rest = rest.filter((at) => !short.includes(at));
  }
  const edges = [0];
  let edge = 0;
  for (const width of widths) {
    edge += width;
    edges.push(Math.round(edge));
  }
  return edges;
}

/** @param roomPx room for the legs and the totals, beside the names of the parts */
export function riskFrame(legs: readonly RiskLeg[], roomPx: number, scale: number): RiskFrame {
  const total = Math.round(MAP.total * scale);
  const edges = legEdges(
    legs.map((leg) => leg.length),
    roomPx - 2 * total,
    MAP.leastLeg * scale,
  );
  const [row, gap] = [Math.round(MAP.row * scale), MAP.gap];
  const box = row - gap;
  const end = edges.at(-1) ?? 0;
  const hasHelp = legs.some((leg) => !Number.isNaN(leg.far));
  return {
    scale,
    edges,
    top: Math.round((MAP.head + (hasHelp ? MAP.help : 0)) * scale),
    row,
    box,
    boxes: legs.map((_, at) => {
      const width = edges[at + 1]! - edges[at]! - gap;
      return `M${edges[at]},0h${width}v${box}h-${width}z`;
    }),
    middles: legs.map((_, at) => (edges[at]! + edges[at + 1]! - gap) / 2 / scale),
    totals: [end + total - MAP.totalEnd * scale, end + 2 * total - MAP.totalEnd * scale],
    width: end + 2 * total,
  };
}

/** The leg and the row, from 0, at a place of the drawing; null beside them. */
export function placeIn(frame: RiskFrame, x: number, y: number): { leg: number; row: number } | null {
  const row = Math.floor((y - frame.top) / frame.row);
  const leg = frame.edges.findLastIndex((edge) => edge <= x);
  return row >= 0 && leg >= 0 && leg < frame.edges.length - 1 ? { leg, row } : null;
}

/** Longest name of a place that its column's head has room for, in characters. */
const MOST_LETTERS = 19;

/** A place's name as it stands over its leg. */
export const headWords = (place: string): string =>
  place.length > MOST_LETTERS ? `${place.slice(0, MOST_LETTERS - 1).trimEnd()}…` : place;

/** Distance to help as steps over the legs: the outline of each, closed at the foot. */
export function helpSteps(legs: readonly RiskLeg[], frame: RiskFrame): string {
  const farthest = Math.max(1, ...legs.map((leg) => (Number.isNaN(leg.far) ? 0 : leg.far)));
  const foot = frame.top - MAP.gap;
  return legs
    .map((leg, at) => {
      const height = Math.round(
        (MAP.helpStep * frame.scale * (Number.isNaN(leg.far) ? 0 : leg.far)) / farthest,
      );
      return `M${frame.edges[at]},${foot}v-${height}h${frame.edges[at + 1]! - frame.edges[at]! - MAP.gap}v${height}z`;
    })
    .join('');
}

/** Over all legs: the chance in percent and what is at stake, as they stand at a row's end. */
export const totalWords = (chance: number, cost: number): readonly [string, string] => [
  showNumber(Math.min(1, chance) * 100, 1),
  showNumber(cost, 0),
];
