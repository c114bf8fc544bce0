import type { Cell, ValueCell } from '../../src/notebook/document.ts';

/**
 * The values that stand on one card with the given one: those that follow one another under the same form.
 * A value without a form stands alone.
 *
 * @example formRun([note, budget, days], 'budget') // [budget, days] when both are of the form 'Limits'
 */
export function formRun(cells: readonly Cell[], cellId: string): readonly ValueCell[] {
  const at = cells.findIndex((cell) => cell.id === cellId);
  const here = cells[at];
  if (here?.kind !== 'value') return [];
  if (here.form === undefined) return [here];
  const belongs = (cell: Cell | undefined): cell is ValueCell =>
    cell?.kind === 'value' && cell.form === here.form;
  let first = at;
  while (belongs(cells[first - 1])) first--;
  const run: ValueCell[] = [];
  for (let next = first; belongs(cells[next]); next++) run.push(cells[next] as ValueCell);
  return run;
}
