import { showNumber } from '../../src/formula/show.ts';
import type { ValueCell, ValueContent } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { shownAs } from '../../src/notebook/shown-units.ts';

/**
 * How a value reads at rest: grouped and with its decimals; an entry that cannot be read stands as it was
 * typed.
 *
 * @example shownValue(notebook, budget) // '1,200'
 */
export function shownValue(notebook: LiveNotebook, cell: ValueCell): string {
  const { content } = cell;
  if (content.value === null) return '';
  if (content.type !== 'number' || typeof content.value !== 'number') return String(content.value);
  return shownAmount(notebook, content, content.value);
}

/** A figure that a value holds, held or might hold, in the unit in which the notebook shows it. */
export function shownAmount(
  { document }: Pick<LiveNotebook, 'document'>,
  { unit, decimals }: Extract<ValueContent, { type: 'number' }>,
  figure: number,
): string {
  const as = shownAs(document, unit);
  if (as === null) return showNumber(figure, decimals);
  const places = decimals === undefined ? undefined : Math.max(0, decimals + as.extraDecimals);
  return showNumber(as.toShown(figure), places);
}
