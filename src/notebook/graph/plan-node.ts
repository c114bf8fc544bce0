import type { Column, ColumnType, Rows } from '../../formula/column.ts';
import { waitsFor } from '../../formula/evaluate/vector.ts';
import { type Fault, isFault } from '../../formula/fault.ts';
import { columnNode, isFaulty, rowsNode } from '../../formula/scope.ts';
import { parseUnit } from '../../formula/unit-text.ts';
import { isSolved, type PlanTotals } from '../../plan/plan-result.ts';
import {
  type CallsCell,
  OPTIONAL_PLAN_ROLES,
  PLAN_ROLES,
  type PlanCell,
  type PlanRole,
  TRIAL_PLAN_ROLES,
} from '../document.ts';
import { byHandStamp } from '../lookup.ts';
import { PLAN_COLUMNS, PLAN_FIGURES } from '../references.ts';
import type { NodeSpec, NodeValue, PlanQuestion, PlanSolution } from './node-spec.ts';
import { planQuestion } from './plan-question.ts';
import type { Planner } from './planner.ts';
import type { CallField, RoleColumn } from './role-reader.ts';
import type { Structure } from './structure.ts';
import { internType } from './types.ts';

export const planQuestionNode = (name: string): string => `${name}.#question`;
export const planSolutionNode = (name: string): string => `${name}.#solution`;

const CALL_FIELDS: readonly CallField[] = ['part', 'call', 'allowed', 'reason', 'critical'];
const TEXT = internType('text', null);
const COUNT = internType('number', parseUnit(''));

interface Source {
  readonly role: PlanRole | CallField;
  readonly node: string;
  readonly type: ColumnType;
}

/** What a plan cell needs to know of the notebook around it. */
export interface PlanSurroundings {
  readonly structure: Structure;
  readonly typeOf: (node: string) => NodeSpec['known'];
  readonly money: string;
  readonly planner: Planner | null;
}

/** Nodes of a plan cell: its question, its solution, its columns by offer and its single figures. */
export function planSpecs(cell: PlanCell, around: PlanSurroundings): NodeSpec[] {
  const calls = around.structure.tables.get(cell.calls);
  const sources =
    calls?.kind === 'calls'
      ? sourcesOf(cell, calls, around)
      : missing(cell, `the calls ${cell.calls}`, 'Name a calls cell of this notebook.');
  if (isFault(sources) || calls?.kind !== 'calls') return faulty(cell, sources as Fault);
  const pairing = around.structure.tables.get(calls.pairing);
  if (pairing?.kind !== 'pairing')
    return faulty(cell, missing(cell, `the pairing ${calls.pairing}`, 'Name a pairing of parts and calls.'));
  const question = planQuestionNode(cell.name);
  const solution = planSolutionNode(cell.name);
  const offers = cell.reads.offer.slice(0, cell.reads.offer.indexOf('.'));
  return [
    {
      node: rowsNode(cell.name),
      reads: [rowsNode(offers)],
      stamp: offers,
      compute: ([rows]) => rows as NodeValue,
    },
    {
      node: question,
      reads: [rowsNode(pairing.left), rowsNode(calls.pairing), ...sources.map((source) => source.node)],
      stamp: byHandStamp(calls),
      isSlow: true,
      ...asking((inputs) => ask(cell, calls, sources, around, inputs), around.planner),
    },
    {
      node: solution,
      reads: [question],
      stamp: around.planner,
      isSlow: true,
      compute: ([asked]) => solve(cell.name, asked as PlanQuestion | Fault, around.planner),
    },
    ...outputs(cell, solution, around.money),
  ];
}

function missing(cell: PlanCell, what: string, mend: string): Fault {
  return {
    kind: 'unknown-name',
    message: `${cell.name} reads ${what}, which is not in the notebook.`,
    mend,
    place: { node: cell.name },
  };
}

/** Nodes behind the roles; a fault where one is not there, is faulty, or is no column of a table. */
function sourcesOf(cell: PlanCell, calls: CallsCell, around: PlanSurroundings): Source[] | Fault {
  const sources: Source[] = [];
  const wanted: (readonly [PlanRole | CallField, string])[] = [
    ...CALL_FIELDS.map((field) => [field, `${calls.pairing}.${calls[field]}`] as const),
    ...PLAN_ROLES.filter((role) => !TRIAL_PLAN_ROLES.includes(role))
      .filter((role) => cell.reads[role] !== '' || !OPTIONAL_PLAN_ROLES.includes(role))
      .map((role) => [role, cell.reads[role]] as const),
  ];
  for (const [role, written] of wanted) {
    const node = around.structure.nodeOf(written);
    const known = around.typeOf(node);
    if (known === undefined)
      return missing(
        cell,
        written === '' ? `nothing for its ${role.replaceAll('_', ' ')}` : written,
        `Name a column or figure for the ${role.replaceAll('_', ' ')}.`,
      );
    if (isFaulty(known)) return waitsFor(known.root);
    sources.push({ role, node, type: known });
  }
  return sources;
}

/**
 * The plan under way is given up at once; the new question is put together when the edit is on the screen, and
 * not at all when a newer one overtakes it before that.
 */
function asking(
  ask: (inputs: readonly NodeValue[]) => PlanQuestion | Fault,
  planner: Planner | null,
): Pick<NodeSpec, 'compute' | 'overtake'> {
  let waiting: (() => void) | null = null;
  const overtake = (): boolean => {
    const end = waiting;
    waiting = null;
    end?.();
    return end !== null;
  };
  return {
    compute: (inputs) => {
      planner?.cancel();
      if (!planner?.painted) return ask(inputs);
      overtake();
      const painted = planner.painted();
      return new Promise((resolve, reject) => {
        const end = (): void => resolve(waitsFor('a newer plan'));
        waiting = end;
        painted
          .then(() => {
            if (waiting !== end) return;
            waiting = null;
            resolve(ask(inputs));
          })
          .catch(reject);
      });
    },
    overtake,
  };
}

function ask(
  cell: PlanCell,
  calls: CallsCell,
  sources: readonly Source[],
  around: PlanSurroundings,
  inputs: readonly NodeValue[],
): PlanQuestion | Fault {
  for (const input of inputs)
    if (isFault(input)) return waitsFor(input.root ?? input.place.node ?? cell.name);
  const [parts, rows, ...columns] = inputs as readonly [Rows, Rows, ...Column[]];
  const held = new Map<string, RoleColumn>(
    sources.map((source, i) => [source.role, { column: columns[i] as Column, type: source.type }]),
  );
  return planQuestion({
    money: around.money,
    rows,
    parts: parts.length,
    of: (role) => held.get(role) ?? null,
    pins: calls.pins,
    forbidden: calls.forbidden ?? {},
  });
}

function solve(
  name: string,
  asked: PlanQuestion | Fault,
  planner: Planner | null,
): NodeValue | Promise<NodeValue> {
  if (isFault(asked)) return asked;
  if (planner === null) return { ...asked, result: null };
  return planner.plan(asked.instance).then(
    (result): PlanSolution => ({ ...asked, result }),
    (error: unknown): NodeValue => failed(name, error),
  );
}

/** A plan that a newer one pushed aside is read by nobody: given up and still the newest, it was stopped by hand. */
function failed(name: string, error: unknown): Fault {
  if (error instanceof Error && error.name === 'PlanSuperseded')
    return {
      kind: 'domain',
      message: 'The plan was stopped before it was ready.',
      mend: 'Have it worked out again, or change any figure that it reads; each part keeps its own cheapest call until then.',
      place: { node: name },
    };
  return {
    kind: 'domain',
    message: `The plan could not be worked out: ${error instanceof Error ? error.message : 'the solver did not say why'}`,
    mend: 'Have it worked out again, undo the last edit, or reload the page; each part keeps its own cheapest call until then.',
    place: { node: name },
  };
}

function outputs(cell: PlanCell, solution: string, money: string): NodeSpec[] {
  const inMoney = internType('number', parseUnit(money));
  const types: Readonly<Record<string, ColumnType>> = {
    offer: TEXT,
    supplier: TEXT,
    packs: COUNT,
    cash: inMoney,
    freight: inMoney,
    cost: inMoney,
    mass: internType('number', parseUnit('kg')),
    volume: internType('number', parseUnit('L')),
    hours: internType('number', parseUnit('h')),
    risk: COUNT,
  };
  return [...PLAN_COLUMNS, ...PLAN_FIGURES].map((output): NodeSpec => {
    const known = types[output] as ColumnType;
    const isColumn = (PLAN_COLUMNS as readonly string[]).includes(output);
    return {
      node: columnNode(cell.name, output),
      reads: isColumn ? [solution, rowsNode(cell.name)] : [solution],
      known,
      stamp: known,
      compute: ([held, rows]) => {
        if (isFault(held)) return held;
        if (isFault(rows)) return rows;
        return isColumn
          ? offerColumn(output, held as PlanSolution, (rows as Rows).length)
          : figureOf(output, held as PlanSolution);
      },
    };
  });
}

/** What stands in a plan's column for each row of the offers; offers that are not bought have 0 packs. */
function offerColumn(output: string, { instance, rowOfOffer, result }: PlanSolution, rows: number): Column {
  const bought = new Map(
    result !== null && isSolved(result) ? result.plan.bought.map((one) => [one.offer, one.packs]) : [],
  );
  if (output === 'packs') {
    const values = new Float64Array(rows).fill(result === null ? Number.NaN : 0);
    for (const [offer, packs] of bought) values[rowOfOffer.get(offer) as number] = packs;
    return { kind: 'number', values, faults: null };
  }
  const values = new Array<string | null>(rows).fill(null);
  for (const offer of instance.offers)
    values[rowOfOffer.get(offer.id) as number] = output === 'offer' ? offer.part_number : offer.supplier;
  return { kind: 'text', values, faults: null };
}

function figureOf(output: string, { result }: PlanSolution): Column {
  const totals = result !== null && isSolved(result) && result.status !== 'unverified' ? result.totals : null;
  const value = totals === null ? Number.NaN : totalOf(output, totals);
  return { kind: 'number', values: Float64Array.of(value), faults: null };
}

function totalOf(output: string, totals: PlanTotals): number {
  switch (output) {
    case 'cash':
      return totals.cash;
    case 'freight':
      return totals.freight;
    case 'cost':
      return totals.expected_cost;
    case 'hours':
      return totals.shed_hours;
    case 'risk':
      return totals.trip_risk;
    case 'mass':
      return totals.packs.reduce((sum, pack) => sum + pack.mass_kg, 0);
    default:
      return totals.packs.reduce((sum, pack) => sum + pack.volume_L, 0);
  }
}

function faulty(cell: PlanCell, fault: Fault): NodeSpec[] {
  const own: Fault = { ...fault, place: { ...fault.place, node: cell.name } };
  const known = { faulty: true, root: fault.root ?? cell.name } as const;
  const stamp = JSON.stringify(own);
  const spec = (node: string): NodeSpec => ({ node, reads: [], stamp, compute: () => own });
  return [
    spec(rowsNode(cell.name)),
    spec(planSolutionNode(cell.name)),
    ...[...PLAN_COLUMNS, ...PLAN_FIGURES].map(
      (output): NodeSpec => ({ ...spec(columnNode(cell.name, output)), known }),
    ),
  ];
}
