import type { Vector } from './vector.ts';

export type WholeFold = 'sum' | 'mean' | 'least' | 'most' | 'product' | 'count';

/** One figure from a whole column; missing entries are left out and counted. */
export function foldColumn(fold: WholeFold, x: Vector): { value: number; skipped: number } {
  let count = 0;
  let skipped = 0;
  let held =
    fold === 'product'
      ? 1
      : fold === 'least'
        ? Number.POSITIVE_INFINITY
        : fold === 'most'
          ? Number.NEGATIVE_INFINITY
          : 0;
  // Neumaier's compensated sum (1974): totals of money stay exact to the last figure shown.
  let lost = 0;
  const { values } = x;
  for (let i = 0; i < values.length; i++) {
    const entry = values[i];
    if (entry === null || entry === undefined || Number.isNaN(entry)) {
      skipped++;
      continue;
    }
    count++;
    const figure = entry as number;
    if (fold === 'sum' || fold === 'mean') {
      const next = held + figure;
      lost += Math.abs(held) >= Math.abs(figure) ? held - next + figure : figure - next + held;
      held = next;
    } else if (fold === 'least') held = Math.min(held, figure);
    else if (fold === 'most') held = Math.max(held, figure);
    else if (fold === 'product') held *= figure;
    else held += x.kind === 'yes_no' ? figure : 1;
  }
  if (fold === 'count') return { value: held, skipped };
  // A column with rows of which none has a figure gives none; a column without rows sums to 0.
  if (count === 0)
    return {
      value: values.length > 0 ? Number.NaN : fold === 'sum' ? 0 : fold === 'product' ? 1 : Number.NaN,
      skipped,
    };
  return { value: fold === 'mean' ? (held + lost) / count : fold === 'sum' ? held + lost : held, skipped };
}
