import type { Fault } from '../../src/formula/fault.ts';
import type { Cell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readsOf } from '../../src/notebook/reads-of.ts';
import { PLAN_COLUMNS, PLAN_FIGURES } from '../../src/notebook/references.ts';

export type CardState =
  | { readonly state: 'settled'; readonly words: string }
  | { readonly state: 'working'; readonly words: string }
  | { readonly state: 'fault'; readonly words: string }
  | { readonly state: 'waiting'; readonly words: string };

/**
 * Names of the figures a cell shows: its own name, or one `table.column` for each column.
 *
 * @example nodesOf({ kind: 'value', name: 'budget', ... }) // ['budget']
 */
export function nodesOf(cell: Cell): readonly string[] {
  switch (cell.kind) {
    case 'note':
    case 'tally':
      return [];
    case 'plan':
      return [...PLAN_COLUMNS, ...PLAN_FIGURES].map((column) => `${cell.name}.${column}`);
    case 'picture':
    case 'prep':
      return readsOf(cell);
    case 'value':
    case 'formula':
      return [cell.name];
    case 'table':
    case 'pairing':
      return cell.columns.map((column) => `${cell.name}.${column.name}`);
    case 'calls':
      return ['part', 'call', 'proposed', 'cost', 'best_by', 'by_hand', 'state'].map(
        (column) => `${cell.name}.${column}`,
      );
  }
}

/**
 * One word (or a few) for the state of a card that shows these cells; the worst of them counts.
 *
 * @param all every fault of the notebook, where the caller asks for many cards at once
 * @example cardState(notebook, [cell]) // { state: 'fault', words: '2 faults' }
 */
export function cardState(
  notebook: LiveNotebook,
  cells: readonly Cell[],
  all = notebook.faults(),
): CardState {
  const names = new Set(cells.flatMap((cell) => ('name' in cell ? [cell.name] : [])));
  const own = all.filter((fault) => names.has(cellNameIn(fault.place.node ?? '')));
  const faults = own.filter((fault) => !isUnfilled(fault)).length;
  if (faults > 0) return { state: 'fault', words: faults === 1 ? '1 fault' : `${faults} faults` };
  if (own.length > 0)
    return { state: 'waiting', words: own.length === 1 ? '1 to fill in' : `${own.length} to fill in` };
  let working = false;
  for (const cell of cells) {
    for (const node of nodesOf(cell)) {
      const read = notebook.read(node);
      if (read.state === 'waiting')
        return { state: 'waiting', words: `waits for ${read.fault.root ?? 'another figure'}` };
      // A picture or sheet has no figures of its own: what is wrong with one that it reads is told there.
      if (read.state === 'fault' && !('name' in cell))
        return { state: 'waiting', words: `waits for ${node}` };
      if (read.state === 'working') working = true;
    }
  }
  return working ? { state: 'working', words: 'working' } : { state: 'settled', words: 'settled' };
}

/**
 * A value that nothing is written in yet: a blank to be filled in rather than something that went wrong.
 */
export function isUnfilled(fault: Fault): boolean {
  return (
    fault.kind === 'missing-input' &&
    !(fault.place.node ?? '').includes('.') &&
    fault.place.from === undefined
  );
}

/** `wear` of `wear.rate`; a single figure is its own cell. */
function cellNameIn(node: string): string {
  const dot = node.indexOf('.');
  return dot < 0 ? node : node.slice(0, dot);
}
