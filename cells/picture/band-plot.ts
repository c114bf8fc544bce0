import type * as PlotLibrary from '@observablehq/plot';
import { showNumber } from '../../src/formula/show.ts';
import { type Band, type BandPoint, bandDecimals } from './band-reading.ts';
import { DRAWN, textScale, withoutSheet } from './plot-drawing.ts';

/** Height of the drawing, in px, the same whatever is drawn so that nothing below it moves. */
export const bandHeight = (): number => 222 + (MARGIN.top + MARGIN.bottom) * textScale();

/** Room for words round the drawing, in px at the usual text size. */
const MARGIN = { left: 52, right: 28, top: 18, bottom: 46 } as const;

/** Least distance between two written places, in px. */
const PLACE_EVERY = 88;

export type BandSvg = (SVGSVGElement | HTMLElement) & PlotLibrary.Plot;

/** Draws a reading along the road: the band, the likely line, the limit, and posts for the places. */
export function bandPlot(Plot: typeof PlotLibrary, band: Band, widthPx: number): BandSvg {
  const { points } = band;
  const scale = textScale();
  const margin = {
    left: MARGIN.left * scale,
    right: MARGIN.right * scale,
    top: MARGIN.top * scale,
    bottom: MARGIN.bottom * scale,
  };
  const longest = Math.max(1, ...points.map((point) => point.along));
  const posts = writtenPlaces(points, longest, widthPx - margin.left - margin.right, PLACE_EVERY * scale);
  const decimals = bandDecimals(band);
  const drawing = Plot.plot({
    className: DRAWN,
    width: widthPx,
    height: bandHeight(),
    marginLeft: margin.left,
    marginRight: margin.right,
    marginTop: margin.top,
    marginBottom: margin.bottom,
    x: { domain: [0, longest], label: null },
    y: {
      label: null,
      tickFormat: (tick: number) => showNumber(tick, tickDecimals(decimals)),
      nice: true,
      ticks: 5,
    },
    marks: [
      Plot.gridY({ stroke: 'var(--rule-2)', strokeOpacity: 1, ticks: 5 }),
      Plot.areaY(points, { x: 'along', y1: 'low', y2: 'high', fill: 'var(--sheet-3)', fillOpacity: 1 }),
      ...(['low', 'high'] as const).map((edge) =>
        Plot.lineY(points, {
          x: 'along',
          y: edge,
          stroke: 'var(--ink-2)',
          strokeWidth: 1,
          strokeDasharray: '2 3',
        }),
      ),
      Plot.tickX(points, {
        x: 'along',
        y: null,
        stroke: 'var(--rule-3)',
        insetTop: 216,
      }),
      ...limitMarks(Plot, band),
      Plot.lineY(points, { x: 'along', y: 'middle', stroke: 'var(--ink)', strokeWidth: 2.5 }),
      Plot.dot(points, { x: 'along', y: 'middle', r: 2.5, fill: 'var(--ink)' }),
      Plot.axisX(
        posts.map((point) => point.along),
        {
          tickSize: 10,
          tickFormat: (along: number) => placeWords(posts, along, band.alongUnit),
          lineWidth: 8,
          textAnchor: 'middle',
        },
      ),
    ],
  });
  return withoutSheet(drawing as BandSvg);
}

/** The limit as a dashed line with its words on it. */
function limitMarks(Plot: typeof PlotLibrary, band: Band): PlotLibrary.Markish[] {
  if (Number.isNaN(band.limit)) return [];
  const words = `limit ${showNumber(band.limit)}${band.unit ? ` ${band.unit}` : ''}`;
  return [
    Plot.ruleY([band.limit], { stroke: 'var(--fault)', strokeWidth: 2, strokeDasharray: '8 4' }),
    Plot.text([words], {
      x: 0,
      y: band.limit,
      textAnchor: 'start',
      dx: 4,
      dy: -9,
      fill: 'var(--fault)',
      stroke: 'var(--sheet)',
      strokeWidth: 4,
      fontWeight: 600,
    }),
  ];
}

/** Axis figures need no more places than tell them apart. */
const tickDecimals = (decimals: number): number => Math.max(0, decimals - 1);

function placeWords(posts: readonly BandPoint[], along: number, unit: string): string {
  const at = posts.find((point) => point.along === along);
  return `${at?.place ?? ''}\n${showNumber(along, 0)} ${unit}`;
}

/** The places that can be written without running into one another; the last always is. */
function writtenPlaces(
  points: readonly BandPoint[],
  longest: number,
  widthPx: number,
  everyPx: number,
): readonly BandPoint[] {
  const kept: BandPoint[] = [];
  let before = Number.POSITIVE_INFINITY;
  for (const point of [...points].reverse()) {
    const px = (point.along / longest) * widthPx;
    if (before - px < everyPx || px < everyPx / 2) continue;
    kept.unshift(point);
    before = px;
  }
  return kept;
}
