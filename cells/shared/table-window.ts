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
const MARGIN_ROWS = 12;
/** Rows beyond each edge that are drawn at once after a leap; the others follow once the page has time. */
export const LEAP_MARGIN_ROWS = 2;
/** Rows new to the page in one frame, beyond which the scroll is a leap. */
const MOST_NEW_ROWS = 16;

/**
 * First row and row after the last that must be drawn for a window on `rowCount` rows.
 *
 * @example rowsInView(1000, { scrollTopPx: 3100, heightPx: 620, rowPx: 31 }) // [88, 132]
 */
export function rowsInView(rowCount: number, view: Viewport, marginRows = MARGIN_ROWS): [number, number] {
  const rowPx = Math.max(1, view.rowPx);
  const first = Math.floor(view.scrollTopPx / rowPx) - marginRows;
  const last = Math.ceil((view.scrollTopPx + view.heightPx) / rowPx) + marginRows;
  const from = Math.min(Math.max(0, first), Math.max(0, rowCount - 1));
  return [from, Math.min(rowCount, Math.max(from, last))];
}

/**
 * What to draw in this frame when rows `drawn` are in the page: all that is in view and around it, or, after a
 * leap, little more than what is in view. Then `isWhole` is false, and the rest is drawn in a later frame.
 *
 * @example
 * rowsForFrame(1000, { scrollTopPx: 15500, heightPx: 620, rowPx: 31 }, [0, 32]) // { rows: [498, 522], isWhole: false }
 */
export function rowsForFrame(
  rowCount: number,
  view: Viewport,
  drawn: readonly [number, number],
): { readonly rows: [number, number]; readonly isWhole: boolean } {
  const [from, to] = rowsInView(rowCount, view);
  const shared = Math.max(0, Math.min(to, drawn[1]) - Math.max(from, drawn[0]));
  if (to - from - shared <= MOST_NEW_ROWS) return { rows: [from, to], isWhole: true };
  const near = rowsInView(rowCount, view, LEAP_MARGIN_ROWS);
  const isDrawn = near[0] >= drawn[0] && near[1] <= drawn[1];
  return isDrawn ? { rows: [from, to], isWhole: true } : { rows: near, isWhole: false };
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
