import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';

/**
 * Names of all single figures that are numbers: what a tally can keep in sight, in the order of the notebook.
 *
 * @example singleFigures(notebook) // ['cash_limit', 'spending', ...]
 */
export function singleFigures(notebook: LiveNotebook): readonly string[] {
  const names: string[] = [];
  for (const cell of notebook.document.cells) {
    if (cell.kind === 'formula' || (cell.kind === 'value' && cell.content.type === 'number'))
      names.push(cell.name);
  }
  return names;
}
