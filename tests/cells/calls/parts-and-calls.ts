import { type CallsReading, type PartCalls, readCalls } from '../../../cells/calls/calls-reading.ts';
import type { CallsCell, Cell, NotebookDocument } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { entered, notebook, pairing, table, worked } from '../../notebook/small-notebook.ts';

const CALLS = ['leave', 'replace', 'carry 1', 'carry 2', 'replace and keep old', 'change on the way'];

/** Costs of one part in EUR, in the order of CALLS; null: no price. A text: why the call is not allowed. */
export interface PartCosts {
  readonly part: string;
  readonly costs: readonly (number | null)[];
  readonly bars?: readonly string[];
  readonly critical?: boolean;
}

export const decision: CallsCell = {
  id: 'decision',
  kind: 'calls',
  name: 'decision',
  title: 'Calls',
  pairing: 'calls',
  part: 'part',
  call: 'call',
  cost: 'expected',
  allowed: 'allowed',
  reason: 'why_not',
  critical: 'critical',
  pins: {},
};

/** A notebook whose costs are entered outright: one row for each part and call in a table of its own. */
export function withCosts(parts: readonly PartCosts[], pins: CallsCell['pins'] = {}): NotebookDocument {
  const rows = parts.flatMap(({ part, costs, bars = [] }) =>
    CALLS.map((call, i) => ({ key: `${part} ${call}`, cost: costs[i] ?? null, bar: bars[i] ?? '' })),
  );
  const cells: Cell[] = [
    table(
      'costs',
      entered(
        'cost_part',
        'text',
        parts.flatMap(({ part }) => CALLS.map(() => part)),
      ),
      entered(
        'cost_call',
        'text',
        parts.flatMap(() => CALLS),
      ),
      entered(
        'cost_here',
        'number',
        rows.map(({ cost }) => cost),
        { unit: 'EUR' },
      ),
      entered(
        'bar_here',
        'text',
        rows.map(({ bar }) => (bar === '' ? null : bar)),
      ),
    ),
    table(
      'wear',
      entered(
        'part',
        'text',
        parts.map(({ part }) => part),
      ),
      entered(
        'critical',
        'yes_no',
        parts.map(({ critical = false }) => critical),
      ),
      entered(
        'gives_up',
        'number',
        parts.map(() => 0.45),
      ),
    ),
    table('choices', entered('call', 'text', CALLS), entered('spares', 'number', [0, 0, 1, 2, 0, 0])),
    pairing(
      'calls',
      'wear',
      'choices',
      worked('expected', 'pick(costs.cost_here, costs.cost_part, part, costs.cost_call, call)', 'EUR'),
      worked('why_not', 'or_else(pick(costs.bar_here, costs.cost_part, part, costs.cost_call, call), "")'),
      worked('allowed', 'why_not == ""'),
    ),
    { ...decision, pins },
  ];
  return notebook(...cells);
}

export async function readingOf(document: NotebookDocument): Promise<CallsReading> {
  const live = LiveNotebook.open(document);
  await live.settled();
  const reading = readCalls(live, document.cells.find((cell) => cell.id === 'decision') as CallsCell);
  live.dispose();
  return reading;
}

/** The first part of a notebook with these costs. */
export async function partWith(costs: PartCosts, pins: CallsCell['pins'] = {}): Promise<PartCalls> {
  const { parts } = await readingOf(withCosts([costs], pins));
  return parts[0]!;
}
