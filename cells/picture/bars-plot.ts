import type * as PlotLibrary from '@observablehq/plot';
import type { Bar, BarsMeasure } from './bars-reading.ts';
import { DRAWN, textScale, withoutSheet } from './plot-drawing.ts';

const ROW_PX = 30;
const MARGIN = { top: 6, bottom: 6, right: 76 } as const;

/** Height of the drawing of so many bars, in px; known before the library is there. */
export const barsHeight = (bars: number): number => bars * ROW_PX * textScale() + MARGIN.top + MARGIN.bottom;

/** Size of the drawn text, in px at the usual text size: --t-2. */
const TEXT_PX = 13;

/** Draws figures of one unit as bars from nought; what is taken off again goes to the left, hatched. */
export function barsPlot(Plot: typeof PlotLibrary, measure: BarsMeasure, widthPx: number): Element {
  const bars = measure.bars.filter((bar) => !Number.isNaN(bar.value));
  const scale = textScale();
  const labels = Math.min(170 * scale, widthPx * 0.42);
  const [above, below] = [bars.filter((bar) => bar.value >= 0), bars.filter((bar) => bar.value < 0)];
  const drawing = Plot.plot({
    className: DRAWN,
    width: widthPx,
    height: barsHeight(bars.length),
    marginLeft: labels,
    marginRight: MARGIN.right * scale,
    marginTop: MARGIN.top,
    marginBottom: MARGIN.bottom,
    x: {
      axis: null,
      domain: [Math.min(0, ...bars.map((bar) => bar.value)), Math.max(0, ...bars.map((bar) => bar.value))],
    },
    y: { domain: bars.map((bar) => bar.node), padding: 0.34 },
    marks: [
      Plot.axisY({
        label: null,
        tickSize: 0,
        tickPadding: below.length > 0 ? 10 : 8,
        tickFormat: nameOf(bars),
        lineWidth: (labels - 12) / (TEXT_PX * scale),
      }),
      Plot.barX(above, { x: 'value', y: 'node', fill: 'var(--ink-2)' }),
      Plot.barX(below, {
        x: 'value',
        y: 'node',
        fill: 'none',
        stroke: 'var(--ink-2)',
        strokeWidth: 1.5,
        strokeDasharray: '3 2',
        inset: 1,
      }),
      Plot.ruleX([0], { stroke: 'var(--ink)', strokeWidth: 2 }),
      Plot.text(bars, {
        x: (bar: Bar) => Math.max(0, bar.value),
        y: 'node',
        text: 'shown',
        textAnchor: 'start',
        dx: 7,
        fill: 'var(--ink)',
        fontWeight: 600,
      }),
    ],
  });
  return withoutSheet(drawing);
}

const nameOf = (bars: readonly Bar[]) => {
  const names = new Map(bars.map((bar) => [bar.node, bar.name]));
  return (node: string): string => names.get(node) ?? node;
};
