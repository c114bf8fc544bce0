import type { CallsCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import { tightLimits } from '../plan/plan-limits.ts';

/**
 * Why the plan has a call for a part that is dearer than the part's own cheapest: it comes in a kit with others,
 * or the limits that all parts share leave no room for it, or freight makes it so.
 *
 * @example whyDearer(notebook, cell, 'Rear sprocket') // { word: 'kit', title: 'it is bought in a kit with ...' }
 */
export function whyDearer(
  notebook: Pick<LiveNotebook, 'planOf'>,
  cell: CallsCell,
  part: string,
): { readonly word: string; readonly title: string } {
  const solution = cell.plan === undefined ? null : notebook.planOf(cell.plan).solution;
  const none = { word: 'plan', title: 'with its freight the plan is the cheapest as a whole' };
  if (solution?.result == null || !isSolved(solution.result)) return none;
  const { instance, result } = solution;
  const bought = new Set(result.plan.bought.map((one) => one.offer));
  const kit = instance.offers.find(
    (offer) =>
      bought.has(offer.id) && offer.covers.length > 1 && offer.covers.some(([name]) => name === part),
  );
  if (kit !== undefined) {
    const others = kit.covers.map(([name]) => name).filter((name) => name !== part);
    return { word: 'kit', title: `it is bought in a kit with ${others.join(', ')}` };
  }
  const tight = tightLimits(instance, result.totals);
  return tight.length === 0
    ? none
    : { word: 'limits', title: `the plan keeps its limits (${tight.join('; ')})` };
}
