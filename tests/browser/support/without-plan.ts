import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { distFolder } from '../../../src/commands/project.mjs';

/** The worked example beside the page. */
export const EXAMPLE = 'worked-example.sparewell.json';

interface Written {
  readonly cells: readonly Record<string, unknown>[];
}

/** The worked example as it was built. */
export const builtExample = (): Promise<string> => readFile(join(distFolder, EXAMPLE), 'utf8');

/** The values of the worked example alone: a notebook that is there at once, for what concerns any notebook. */
export function valuesAlone(text: string): string {
  const notebook = JSON.parse(text) as Written;
  return JSON.stringify({ ...notebook, cells: notebook.cells.filter(({ kind }) => kind === 'value') });
}

/**
 * The worked example without its plan: each part has its own cheapest call. To work a plan out keeps both cores
 * busy for seconds, which a test of something else need not wait for.
 */
export function withoutPlan(text: string): string {
  const notebook = JSON.parse(text) as Written;
  const cells = notebook.cells
    .filter(({ kind, shape }) => kind !== 'plan' && shape !== 'spending')
    .map((cell) => {
      if (cell.kind === 'calls') return { ...cell, plan: undefined };
      if (cell.kind === 'prep')
        return { ...cell, reads: { ...(cell.reads as object), packs: '', freight: '' } };
      if (cell.name === 'parts_spending')
        return { ...cell, formula: String(cell.formula).replace('or_else(plan.cash, ', '').slice(0, -1) };
      return cell;
    });
  return JSON.stringify({ ...notebook, cells });
}
