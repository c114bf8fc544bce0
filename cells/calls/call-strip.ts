import type { CallsCell } from '../../src/notebook/document.ts';
import { readShown } from '../../src/notebook/shown-units.ts';
import { shownOf } from '../shared/table-model.ts';
import type { CallsNotebook, PartCall } from './calls-reading.ts';

/** What an expected cost is made of, each 0 or more, in the notebook's money. */
export interface CostParts {
  /** Money spent before the trip. */
  readonly cash: number;
  /** Shed work, freight, carrying it: whatever is neither cash nor risk. */
  readonly work: number;
  /** Expected cost on the road. */
  readonly risk: number;
  /** Life used up, counted from the call that has most left over at the end. */
  readonly used: number;
}

/** Columns of the pairing that split the expected cost; without them there is no strip. */
const COLUMNS = { cash: 'cash', risk: 'on_road', left: 'left_over' } as const;

/**
 * The parts of each call's cost, so that the lengths of their strips differ by what the costs differ by.
 * What is left over at the trip's end is a credit; it is turned round, into the life that is used up.
 * null when the pairing has no columns that split the cost.
 *
 * @example costParts([leave, replace], { cash: [0, 114], risk: [309, 6], left: [10, 60] })
 */
export function costParts(
  calls: readonly PartCall[],
  figures: { cash(row: number): number; risk(row: number): number; left(row: number): number },
): ReadonlyMap<string, CostParts> {
  const priced = calls.filter((call) => Number.isFinite(call.cost));
  const left = (call: PartCall): number => finite(figures.left(call.row));
  const mostLeft = Math.max(0, ...priced.map(left));
  const parts = new Map<string, CostParts>();
  for (const call of priced) {
    const cash = Math.max(0, finite(figures.cash(call.row)));
    const risk = Math.max(0, finite(figures.risk(call.row)));
    const work = Math.max(0, call.cost - cash - risk + left(call));
    parts.set(call.call, { cash, work, risk, used: mostLeft - left(call) });
  }
  return parts;
}

function finite(figure: number): number {
  return Number.isFinite(figure) ? figure : 0;
}

/** The parts of each call's cost, read from the columns of the pairing; null where it has none. */
export function readCostParts(
  notebook: CallsNotebook,
  cell: CallsCell,
  calls: readonly PartCall[],
): ReadonlyMap<string, CostParts> | null {
  const column = (name: string): ((row: number) => number) | null => {
    const figures = shownOf(readShown(notebook, `${cell.pairing}.${name}`))?.column;
    if (figures === undefined || figures.kind === 'text') return null;
    return (row) => figures.values[row] ?? Number.NaN;
  };
  const cash = column(COLUMNS.cash);
  const risk = column(COLUMNS.risk);
  if (cash === null || risk === null) return null;
  return costParts(calls, { cash, risk, left: column(COLUMNS.left) ?? (() => 0) });
}

/** Length of a whole strip. */
export function stripLength(parts: CostParts): number {
  return parts.cash + parts.work + parts.risk + parts.used;
}
