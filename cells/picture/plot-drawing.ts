/**
 * The drawing library, fetched when the first picture needs it. A fetch that failed is tried again the next
 * time, not remembered.
 */
let loading: Promise<typeof import('@observablehq/plot')> | null = null;

export function loadPlot(): Promise<typeof import('@observablehq/plot')> {
  loading ??= import('@observablehq/plot').catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

/** Class of our drawings: the few rules that the library needs stand in picture-cell.styles.ts under it. */
export const DRAWN = 'drawn';

/**
 * A drawing without the style sheet that the library puts into it: the page's policy would refuse it, and the
 * card has its rules already. Nor does a screen reader read it mark by mark: the words above it and the table
 * below it say the same.
 */
export function withoutSheet<T extends Element>(drawing: T): T {
  for (const sheet of drawing.querySelectorAll('style')) sheet.remove();
  drawing.setAttribute('aria-hidden', 'true');
  return drawing;
}

let scale: number | null = null;
/** A page whose text is set larger is another height. */
const page =
  typeof ResizeObserver === 'undefined'
    ? null
    : new ResizeObserver(() => {
        scale = null;
      });

/**
 * How much larger than usual the reader has text set: 1, or 2 at 200%. Remembered, because to ask for it between
 * two changes has the browser style the page each time.
 */
export function textScale(): number {
  if (scale === null) {
    page?.observe(document.documentElement);
    const px = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    scale = px > 0 ? px / 16 : 1;
  }
  return scale;
}
