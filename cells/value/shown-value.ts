import { showFigure } from '../../src/formula/show.ts';
import type { ValueCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';

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
  const read = notebook.read(cell.name);
  if (read.state === 'settled') return showFigure(read.column, 0, read.type, content.decimals);
  return String(content.value);
}
