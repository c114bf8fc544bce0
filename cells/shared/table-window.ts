/** Rows `from` to `to` (exclusive) that are drawn, or that many rows of which only the height is kept. */
export type Segment =
  | { readonly kind: 'rows'; readonly from: number; readonly to: number }
  | { readonly kind: 'gap'; readonly rows: number };

export interface Viewport {
  /** How far the body is scrolled, and how high the window on it is, both in px. */
  readonly scrollTopPx: number;
  readonly heightPx: number;
  /** Height of one row in px; all rows are equally high. */
  readonly rowPx: number;
}

/** Rows drawn beyond each edge of the window, so that a quick scroll does not show blank paper. */
const MARGIN_ROWS = 6;

/**
 * First row and row after the last that are drawn for a window on `rowCount` rows. Where there are rows enough it
 * is always as many, so that the elements of those that go serve those that come.
 *
 * @example rowsInView(1000, { scrollTopPx: 3100, heightPx: 620, rowPx: 31 }) // [94, 127]
 */
export function rowsInView(rowCount: number, { scrollTopPx, heightPx, rowPx }: Viewport): [number, number] {
  const eachPx = Math.max(1, rowPx);
  // A window shows one row more than fit into it when it cuts the first and the last.
  const count = Math.ceil(heightPx / eachPx) + 1 + 2 * MARGIN_ROWS;
  const first = Math.floor(scrollTopPx / eachPx) - MARGIN_ROWS;
  const from = Math.min(Math.max(0, first), Math.max(0, rowCount - count));
  return [from, Math.min(rowCount, from + count)];
}

/**
 * What to draw of `rowCount` rows when rows `from` to `to` are in view and row `keep` (the focused one, or
 * null) must stay in the page wherever it is.
 *
 * @example windowSegments(100, 10, 20, 50)
 * // gap 10, rows 10-20, gap 30, rows 50-51, gap 49
 */
export function windowSegments(rowCount: number, from: number, to: number, keep: number | null): Segment[] {
  const ranges: [number, number][] = [[from, to]];
  if (keep !== null && keep >= 0 && keep < rowCount && (keep < from || keep >= to)) {
    if (keep < from) ranges.unshift([keep, keep + 1]);
    else ranges.push([keep, keep + 1]);
  }
  const segments: Segment[] = [];
  let next = 0;
  for (const [start, end] of ranges) {
    if (end <= start) continue;
    if (start > next) segments.push({ kind: 'gap', rows: start - next });
    segments.push({ kind: 'rows', from: start, to: end });
    next = end;
  }
  if (next < rowCount) segments.push({ kind: 'gap', rows: rowCount - next });
  return segments;
}
