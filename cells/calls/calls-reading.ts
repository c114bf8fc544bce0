import type { Column, ColumnType } from '../../src/formula/column.ts';
import type { Fault } from '../../src/formula/fault.ts';
import type { CallsCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { forbiddenOf } from '../../src/notebook/lookup.ts';
import { readShown } from '../../src/notebook/shown-units.ts';
import { shownOf } from '../shared/table-model.ts';
import { type CallKind, type CallName, callKindOf } from './call-kind.ts';

/** One call that could be made for one part. */
export interface PartCall extends CallName {
  /** Row of the pairing. */
  readonly row: number;
  /** Expected cost in the notebook's money; NaN when it cannot be worked out. */
  readonly cost: number;
  readonly allowed: boolean;
  /** Why it is not allowed; '' when it is. */
  readonly reason: string;
  /** The same in a word or two, where the notebook has it; '' otherwise. */
  readonly inBrief: string;
  /** Ruled out by hand. */
  readonly forbidden: boolean;
  /** Name of the figure with a fault that its cost, or whether it is allowed, waits for; '' for none. */
  readonly waitsFor: string;
}

/** What became of a part: as the calls cell says it; 'waits' while a cost reads a figure with a fault. */
export type PartState =
  | 'proposed'
  | 'by hand'
  | 'needs a price'
  | 'no call meets the limit'
  | 'forbidden by hand'
  | 'not allowed by hand'
  | 'waits';

export interface PartCalls {
  readonly part: string;
  /** Row of the calls cell's own table. */
  readonly row: number;
  readonly critical: boolean;
  /** Chance of 0 to 1 that the part gives up on the trip if it is left; NaN when the notebook does not say. */
  readonly chance: number;
  readonly calls: readonly PartCall[];
  /** The call in force and the one proposed; null when there is none. */
  readonly chosen: PartCall | null;
  readonly proposed: PartCall | null;
  /** By how much the proposed call beats the next; NaN when there is no next. */
  readonly bestBy: number;
  readonly byHand: boolean;
  /** The call set by hand, in force or not; null when none was. */
  readonly pinned: PartCall | null;
  readonly state: PartState;
  /** Name of the figure that it waits for; '' when it does not. */
  readonly waitsFor: string;
}

export interface CallsReading {
  readonly parts: readonly PartCalls[];
  /** Unit of the costs, as written: 'EUR'. */
  readonly money: string;
  /** Whether these are last figures, with new ones being worked out. */
  readonly working: boolean;
}

export type CallsNotebook = Pick<LiveNotebook, 'document' | 'read'>;

/**
 * Columns that the pairing or its parents may have; the calls cell shows more where they are there. They are
 * known by these names, while those it cannot do without are named by the cell.
 */
const OPTIONAL = { kind: 'kind', spares: 'spares', chance: 'gives_up', inBrief: 'bar' } as const;

interface Figures {
  text(column: string, row: number): string;
  figure(column: string, row: number): number;
  fault(column: string, row: number): Fault | null;
  rows(column: string): number;
  type(column: string): ColumnType | null;
}

/** The columns of one table, read as they are shown now. */
function figuresOf(notebook: CallsNotebook, table: string): Figures {
  const known = new Map<string, { column: Column; type: ColumnType } | null>();
  const shown = (column: string): { column: Column; type: ColumnType } | null => {
    let read = known.get(column);
    if (read === undefined) {
      read = column === '' ? null : shownOf(readShown(notebook, `${table}.${column}`));
      known.set(column, read);
    }
    return read;
  };
  return {
    text: (column, row) => {
      const figures = shown(column)?.column;
      return figures?.kind === 'text' ? (figures.values[row] ?? '') : '';
    },
    figure: (column, row) => {
      const figures = shown(column)?.column;
      return figures === undefined || figures.kind === 'text'
        ? Number.NaN
        : (figures.values[row] ?? Number.NaN);
    },
    fault: (column, row) => shown(column)?.column.faults?.get(row) ?? null,
    rows: (column) => shown(column)?.column.values.length ?? 0,
    type: (column) => shown(column)?.type ?? null,
  };
}

/** Name of the figure that has the fault itself; '' without a fault. */
function rootOf(fault: Fault | null): string {
  return fault === null ? '' : (fault.root ?? fault.place.node ?? 'a figure with a fault');
}

/** The calls of every part, gathered from the rows of the pairing. */
function callsByPart(pairing: Figures, cell: CallsCell): Map<string, PartCall[]> {
  const byPart = new Map<string, PartCall[]>();
  for (let row = 0; row < pairing.rows(cell.part); row++) {
    const part = pairing.text(cell.part, row);
    const call = pairing.text(cell.call, row);
    const calls = byPart.get(part) ?? [];
    const ruledOut = forbiddenOf(cell, part);
    if (calls.length === 0) byPart.set(part, calls);
    const spares = pairing.figure(OPTIONAL.spares, row);
    calls.push({
      row,
      call,
      kind: callKindOf(call, pairing.text(OPTIONAL.kind, row) || null),
      spares: Number.isFinite(spares) ? spares : 0,
      cost: pairing.figure(cell.cost, row),
      allowed: pairing.figure(cell.allowed, row) === 1,
      reason: pairing.text(cell.reason, row),
      inBrief: pairing.text(OPTIONAL.inBrief, row),
      forbidden: ruledOut.includes(call),
      waitsFor: rootOf(pairing.fault(cell.cost, row) ?? pairing.fault(cell.allowed, row)),
    });
  }
  return byPart;
}

const STATES: readonly PartState[] = [
  'proposed',
  'by hand',
  'needs a price',
  'no call meets the limit',
  'forbidden by hand',
  'not allowed by hand',
];

/**
 * What the calls cell shows: for each part its possible calls with their costs, the one proposed and the one
 * in force. Costs come from the pairing, the choice from the cell's own table.
 */
export function readCalls(notebook: CallsNotebook, cell: CallsCell): CallsReading {
  const pairing = figuresOf(notebook, cell.pairing);
  const own = figuresOf(notebook, cell.name);
  const byPart = callsByPart(pairing, cell);
  const parts = Array.from({ length: own.rows('part') }, (_, row): PartCalls => {
    const part = own.text('part', row);
    const calls = byPart.get(part) ?? [];
    const called = (name: string): PartCall | null => calls.find((call) => call.call === name) ?? null;
    const fault = own.fault('state', row);
    const first = calls[0]?.row ?? -1;
    return {
      part,
      row,
      critical: pairing.figure(cell.critical, first) === 1,
      chance: pairing.figure(OPTIONAL.chance, first),
      calls,
      chosen: called(own.text('call', row)),
      proposed: called(own.text('proposed', row)),
      bestBy: own.figure('best_by', row),
      byHand: own.figure('by_hand', row) === 1,
      pinned: Object.hasOwn(cell.pins, part) ? called(cell.pins[part] ?? '') : null,
      state:
        fault === null
          ? (STATES.find((each) => each === own.text('state', row)) ?? 'needs a price')
          : 'waits',
      waitsFor: rootOf(fault),
    };
  });
  const working = ['part', 'call', 'cost'].some(
    (each) => notebook.read(`${cell.name}.${each}`).state === 'working',
  );
  return { parts, money: pairing.type(cell.cost)?.unit?.text ?? '', working };
}

const mayBeMade = (call: PartCall): boolean => call.allowed && Number.isFinite(call.cost);

/** The calls that may be made, are not ruled out by hand, and have a cost. */
export function openCalls(part: PartCalls): readonly PartCall[] {
  return part.calls.filter((call) => mayBeMade(call) && !call.forbidden);
}

function cheapest(calls: readonly PartCall[]): PartCall | null {
  let best: PartCall | null = null;
  for (const call of calls) if (best === null || call.cost < best.cost) best = call;
  return best;
}

/** The cheapest call that may be made; null when there is none. */
export function cheapestOpen(part: PartCalls): PartCall | null {
  return cheapest(openCalls(part));
}

/**
 * The call that stands in the column of a kind: the one in force, else the cheapest that is open, else the
 * cheapest that was ruled out by hand, else the cheapest that has a cost, else the first. Carrying one, two or three spares share a column.
 */
export function callOfKind(part: PartCalls, kind: CallKind): PartCall | null {
  if (part.chosen?.kind === kind) return part.chosen;
  const ofKind = part.calls.filter((call) => call.kind === kind);
  return (
    cheapest(openCalls(part).filter((call) => call.kind === kind)) ??
    cheapest(ofKind.filter(mayBeMade)) ??
    cheapest(ofKind.filter((call) => Number.isFinite(call.cost))) ??
    ofKind[0] ??
    null
  );
}

/** Leaving it would cost least, but a limit forbids it. */
export function isHeldBack(part: PartCalls): boolean {
  const leave = part.calls.find((call) => call.kind === 'leave');
  const best = cheapestOpen(part);
  return leave !== undefined && !leave.allowed && best !== null && leave.cost < best.cost;
}

/** What the call in force costs over the cheapest that may be made; 0 when it is that one. */
export function overBest(part: PartCalls): number {
  const best = cheapestOpen(part);
  return part.chosen === null || best === null ? Number.NaN : part.chosen.cost - best.cost;
}
