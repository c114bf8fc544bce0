import type { Cell, CellKind, NotebookDocument, PairingCell } from '../../notebook/document.ts';
import { freshId } from '../../notebook/fresh-id.ts';
import { cellNames } from '../../notebook/names.ts';
import { freeName } from '../../tables/plain-name.ts';
import { newPlan } from './new-plan.ts';

/** A new cell, or the sentence that says what the notebook needs first. */
export type NewCell = { readonly cell: Cell } | { readonly needs: string };

const entered = (id: string, name: string, kind: 'text' | 'number') => ({
  id,
  name,
  kind,
  entries: [null, null, null],
});

/**
 * A new cell of a kind, empty but whole, with a name no other cell has.
 *
 * @example newCell(document, 'formula') // { cell: { kind: 'formula', name: 'new_figure', formula: '0', ... } }
 */
export function newCell(document: NotebookDocument, kind: CellKind): NewCell {
  const id = freshId('cell');
  const name = (wanted: string): string => freeName(wanted, cellNames(document));
  switch (kind) {
    case 'note':
      return { cell: { kind, id, title: 'Note', text: '' } };
    case 'value':
      return {
        cell: {
          kind,
          id,
          title: 'New value',
          name: name('new_value'),
          content: { type: 'number', unit: '', value: null, control: 'field' },
        },
      };
    case 'formula':
      return { cell: { kind, id, title: 'New figure', name: name('new_figure'), formula: '0' } };
    case 'tally':
      return { cell: { kind, id, title: 'Tally', gist: 'kept in sight', figures: [] } };
    case 'table':
      return {
        cell: {
          kind,
          id,
          title: 'New table',
          name: name('new_table'),
          columns: [
            entered(freshId('column'), 'name', 'text'),
            entered(freshId('column'), 'figure', 'number'),
          ],
        },
      };
    case 'plan':
      return newPlan(document, id, name('new_plan'));
    case 'picture':
      return { cell: { kind, id, title: 'New picture', shape: 'bars', reads: {}, figures: [] } };
    case 'prep':
      return newPrep(document, id);
    case 'pairing':
      return newPairing(document, id, name('new_pairing'));
    case 'calls':
      return newCalls(document, id, name('new_calls'));
  }
}

function newPairing(document: NotebookDocument, id: string, name: string): NewCell {
  const tables = document.cells.filter((cell) => cell.kind === 'table');
  const [left, right] = tables;
  if (!left || !right) return { needs: 'A pairing needs two tables; add them first.' };
  return {
    cell: {
      kind: 'pairing',
      id,
      title: 'New pairing',
      name,
      left: left.name,
      right: right.name,
      columns: [],
    },
  };
}

/** A prep sheet of the first calls cell; what else it reads is set on its card. */
function newPrep(document: NotebookDocument, id: string): NewCell {
  const calls = document.cells.find((cell) => cell.kind === 'calls');
  if (!calls) return { needs: 'A prep sheet carries out calls; add a calls card first.' };
  return { cell: { kind: 'prep', id, title: 'Prep sheet', calls: calls.name, reads: {} } };
}

/** The pairing whose columns look most like costs of calls: it has a cost and says what is allowed. */
function newCalls(document: NotebookDocument, id: string, name: string): NewCell {
  const pairings = document.cells.filter((cell) => cell.kind === 'pairing');
  const pairing =
    pairings.find((one) => one.columns.some((column) => column.name === 'allowed')) ?? pairings.at(-1);
  if (!pairing) return { needs: 'Calls need a pairing of parts with calls; add it first.' };
  const has = (wanted: readonly string[], otherwise: string): string =>
    wanted.find((one) => columnNames(document, pairing).has(one)) ?? otherwise;
  return {
    cell: {
      kind: 'calls',
      id,
      title: 'Calls',
      name,
      pairing: pairing.name,
      part: has(['part'], 'part'),
      call: has(['call'], 'call'),
      cost: has(['expected', 'cost', 'expected_cost'], 'cost'),
      allowed: has(['allowed'], 'allowed'),
      reason: has(['why_not', 'reason'], 'reason'),
      critical: has(['critical'], 'critical'),
      pins: {},
    },
  };
}

/** Names that can be read through a pairing: its own columns and those of both parents. */
function columnNames(document: NotebookDocument, pairing: PairingCell): ReadonlySet<string> {
  const names = new Set(pairing.columns.map((column) => column.name));
  for (const cell of document.cells) {
    if (cell.kind === 'table' && (cell.name === pairing.left || cell.name === pairing.right)) {
      for (const column of cell.columns) names.add(column.name);
    }
  }
  return names;
}
