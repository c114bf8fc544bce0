import type { Column, ColumnType, FigureColumn, Rows, TextColumn } from '../../formula/column.ts';
import { waitsFor } from '../../formula/evaluate/vector.ts';
import { type Fault, isFault } from '../../formula/fault.ts';
import { columnNode, isFaulty, rowsNode } from '../../formula/scope.ts';
import { isSolved, type SolvedPlan } from '../../plan/plan-result.ts';
import { type CallRows, isOpen, type PartCall, proposeCalls } from '../../trade/propose-calls.ts';
import type { CallsCell } from '../document.ts';
import { byHandStamp, forbiddenOf } from '../lookup.ts';
import { CALLS_COLUMNS } from '../references.ts';
import type { CallsWorking, NodeSpec, NodeValue } from './node-spec.ts';
import { planSolutionNode } from './plan-node.ts';
import type { Structure } from './structure.ts';
import { internType } from './types.ts';

type Output = (typeof CALLS_COLUMNS)[number];
const TEXT = internType('text', null);
const YES_NO = internType('yes_no', null);

export const callsWorkingNode = (name: string): string => `${name}.#calls`;

/** Nodes of a calls cell: its rows, its working, and a column for each output. `typeOf` gives known types. */
export function callsSpecs(
  cell: CallsCell,
  structure: Structure,
  typeOf: (node: string) => NodeSpec['known'],
): NodeSpec[] {
  const sources = sourcesOf(cell, structure);
  const blocked = isFault(sources) ? sources : waitingSource(Object.values(sources), typeOf);
  if (blocked !== null || isFault(sources)) return faultySpecs(cell, (blocked ?? sources) as Fault);
  const costType = typeOf(sources.cost) as ColumnType;
  const working = callsWorkingNode(cell.name);
  const pairing = structure.tables.get(cell.pairing);
  const left = pairing?.kind === 'pairing' ? pairing.left : cell.pairing;
  const planned = cell.plan !== undefined && structure.tables.get(cell.plan)?.kind === 'plan';
  const specs: NodeSpec[] = [
    {
      node: rowsNode(cell.name),
      reads: [rowsNode(left)],
      stamp: left,
      compute: ([rows]) => (isFault(rows) ? rows : { length: (rows as Rows).length }),
    },
    {
      node: working,
      reads: [
        rowsNode(left),
        rowsNode(cell.pairing),
        sources.part,
        sources.call,
        sources.cost,
        sources.allowed,
        ...(planned ? [planSolutionNode(cell.plan as string)] : []),
      ],
      stamp: byHandStamp(cell),
      compute: (inputs) => workCalls(cell, inputs),
    },
  ];
  for (const output of CALLS_COLUMNS) {
    const known = output === 'cost' || output === 'best_by' ? costType : output === 'by_hand' ? YES_NO : TEXT;
    specs.push({
      node: columnNode(cell.name, output),
      reads: [working, sources.call, sources.cost],
      known,
      stamp: known,
      compute: ([held, call, cost]) =>
        outputColumn(output, held as CallsWorking | Fault, call as Column | Fault, cost as Column | Fault),
    });
  }
  return specs;
}

interface Sources {
  readonly part: string;
  readonly call: string;
  readonly cost: string;
  readonly allowed: string;
}

function sourcesOf(cell: CallsCell, structure: Structure): Sources | Fault {
  const pairing = structure.tables.get(cell.pairing);
  if (pairing?.kind !== 'pairing') {
    return {
      kind: 'unknown-name',
      message: `${cell.name} reads the pairing ${cell.pairing}, which is not in the notebook.`,
      mend: 'Name a pairing of parts and calls.',
      place: { node: cell.name },
    };
  }
  const found: Record<string, string> = {};
  for (const field of ['part', 'call', 'cost', 'allowed'] as const) {
    const placed = structure.columns(cell.pairing).get(cell[field])?.[0];
    if (placed === undefined) {
      return {
        kind: 'unknown-name',
        message: `${cell.name} reads the column ${cell[field]} of ${cell.pairing}, which is not there.`,
        mend: `Add the column, or name another for the ${field}.`,
        place: { node: cell.name },
      };
    }
    found[field] = placed.node;
  }
  return found as unknown as Sources;
}

function waitingSource(nodes: readonly string[], typeOf: (node: string) => NodeSpec['known']): Fault | null {
  for (const node of nodes) {
    const known = typeOf(node);
    if (known === undefined) return waitsFor(node);
    if (isFaulty(known)) return waitsFor(known.root);
  }
  return null;
}

function faultySpecs(cell: CallsCell, fault: Fault): NodeSpec[] {
  const root = fault.root ?? cell.name;
  const own = { ...fault, place: { ...fault.place, node: cell.name } };
  const stamp = JSON.stringify(own);
  return [
    { node: rowsNode(cell.name), reads: [], stamp, compute: () => own },
    ...CALLS_COLUMNS.map(
      (output): NodeSpec => ({
        node: columnNode(cell.name, output),
        reads: [],
        known: { faulty: true, root },
        stamp,
        compute: () => own,
      }),
    ),
  ];
}

function workCalls(cell: CallsCell, inputs: readonly NodeValue[]): CallsWorking | Fault {
  for (const input of inputs.slice(0, 6)) if (isFault(input)) return waitsFor(input.root ?? cell.pairing);
  const [leftRows, pairRows, part, call, cost, allowed] = inputs as readonly [
    Rows,
    Rows,
    TextColumn,
    TextColumn,
    FigureColumn,
    FigureColumn,
  ];
  const rows = pairRows.length;
  const parts = leftRows.length;
  const partOf = pairRows.left ?? new Int32Array(rows);
  const names = new Array<string | null>(parts).fill(null);
  const pinned = new Int32Array(parts).fill(-1);
  const forbidden = new Uint8Array(rows);
  const faults = new Map<number, Fault>();
  for (let row = 0; row < rows; row++) {
    const p = partOf[row] as number;
    names[p] = part.values[row] ?? null;
    const fault = cost.faults?.get(row) ?? allowed.faults?.get(row);
    if (fault !== undefined && !faults.has(p))
      faults.set(p, waitsFor(fault.root ?? columnNode(cell.pairing, cell.cost), p));
    const name = names[p];
    if (name != null && Object.hasOwn(cell.pins, name) && cell.pins[name] === call.values[row])
      pinned[p] = pairRows.right?.[row] ?? -1;
    if (name != null && forbiddenOf(cell, name).includes(call.values[row] ?? '')) forbidden[row] = 1;
  }
  const rowsOfCalls = {
    parts,
    partOf,
    callOf: pairRows.right ?? new Int32Array(rows),
    cost: cost.values,
    allowed: allowed.values,
    pinned,
    forbidden,
  };
  const alone = proposeCalls(rowsOfCalls);
  const calls = plannedCalls(alone, names, call, rowsOfCalls, inputs[6]);
  return {
    calls,
    parts: names,
    bags: plannedBags(names, inputs[6]),
    faults: faults.size === 0 ? null : faults,
  };
}

/** Bags of the plan's calls; none for a part whose call is not the plan's. */
function plannedBags(names: readonly (string | null)[], solution: NodeValue | undefined): (string | null)[] {
  const solved = solvedPlan(solution);
  const bags = new Map(solved?.plan.chosen.map((one) => [one.part, one.bag]));
  return names.map((name) => bags.get(name ?? '') ?? null);
}

/** The plan that the calls follow; null while there is none, or none to be followed. */
function solvedPlan(solution: NodeValue | undefined): SolvedPlan | null {
  if (solution === undefined || isFault(solution) || !('result' in solution) || solution.result === null)
    return null;
  return isSolved(solution.result) && solution.result.status !== 'unverified' ? solution.result : null;
}

/** The plan's calls in place of each part's own; a part that the plan leaves out keeps its own. */
function plannedCalls(
  alone: readonly PartCall[],
  names: readonly (string | null)[],
  call: TextColumn,
  rows: CallRows,
  solution: NodeValue | undefined,
): readonly PartCall[] {
  const solved = solvedPlan(solution);
  if (solved === null) return alone;
  const chosen = new Map(solved.plan.chosen.map((one) => [one.part, one.call]));
  return alone.map((held, part): PartCall => {
    const wanted = chosen.get(names[part] ?? '');
    const row = wanted === undefined ? -1 : rowOf(rows, part, call, wanted);
    if (row < 0) return held;
    const others = ownRows(rows, part).filter((other) => other !== row && isOpen(rows, other));
    const next = others.reduce(
      (least, other) => Math.min(least, rows.cost[other] as number),
      Number.POSITIVE_INFINITY,
    );
    const bestBy = Number.isFinite(next) ? next - (rows.cost[row] as number) : Number.NaN;
    const state = held.state === 'needs a price' ? 'proposed' : held.state;
    return { row, proposedRow: state === 'by hand' ? held.proposedRow : row, bestBy, state };
  });
}

function ownRows(rows: CallRows, part: number): number[] {
  const own: number[] = [];
  rows.partOf.forEach((of, row) => {
    if (of === part) own.push(row);
  });
  return own;
}

const rowOf = (rows: CallRows, part: number, call: TextColumn, name: string): number =>
  ownRows(rows, part).find((row) => call.values[row] === name) ?? -1;

function outputColumn(
  output: Output,
  held: CallsWorking | Fault,
  call: Column | Fault,
  cost: Column | Fault,
): Column | Fault {
  if (isFault(held)) return held;
  if (isFault(call)) return call;
  if (isFault(cost)) return cost;
  const { calls, faults } = held;
  const blocked = (part: number): boolean => faults?.has(part) ?? false;
  const nameAt = (row: number): string | null =>
    row < 0 ? null : ((call as TextColumn).values[row] ?? null);
  const costAt = (row: number): number =>
    row < 0 ? Number.NaN : ((cost as FigureColumn).values[row] as number);
  const text = (of: (part: number) => string | null): Column => ({
    kind: 'text',
    faults,
    values: calls.map((_, part) => (blocked(part) ? null : of(part))),
  });
  const figure = (kind: 'number' | 'yes_no', of: (part: number) => number): Column => ({
    kind,
    faults,
    values: Float64Array.from(calls, (_, part) => (blocked(part) ? Number.NaN : of(part))),
  });
  const at = (part: number) => calls[part] as (typeof calls)[number];
  switch (output) {
    case 'part':
      return { kind: 'text', values: held.parts, faults: null };
    case 'call':
      return text((part) => nameAt(at(part).row));
    case 'proposed':
      return text((part) => nameAt(at(part).proposedRow));
    case 'state':
      return text((part) => at(part).state);
    case 'bag':
      return text((part) => held.bags[part] ?? null);
    case 'cost':
      return figure('number', (part) => costAt(at(part).row));
    case 'best_by':
      return figure('number', (part) => at(part).bestBy);
    case 'by_hand':
      return figure('yes_no', (part) => (at(part).state === 'by hand' ? 1 : 0));
  }
}
