import type { Column } from '../../formula/column.ts';
import type { PlanCell } from '../document.ts';
import type { LiveNotebook } from '../live-notebook.ts';

/** The figures that a part's call may turn on, as they are now. */
export interface FiguresNow {
  /** Wear rate of the part in its own unit; null where it has none. */
  readonly rate: { readonly now: number; readonly unit: string } | null;
  /** Recovery and waiting for the part, the mean over the legs, in the notebook's money; null where not known. */
  readonly stranding: number | null;
}

/**
 * Reads the figures of a part from the columns that the plan names.
 *
 * Example: figuresNow(live, plan, 'Drive chain') // { rate: { now: 0.304, unit: '1/(1000 km)' }, stranding: 412 }
 */
export function figuresNow(live: LiveNotebook, plan: PlanCell, part: string): FiguresNow {
  return { rate: rateNow(live, plan, part), stranding: strandingNow(live, plan, part) };
}

function rateNow(live: LiveNotebook, plan: PlanCell, part: string): FiguresNow['rate'] {
  const { cells } = live.document;
  const calls = cells.find((cell) => cell.kind === 'calls' && cell.name === plan.calls);
  if (calls?.kind !== 'calls' || plan.reads.rate === '') return null;
  const pairing = cells.find((cell) => cell.kind === 'pairing' && cell.name === calls.pairing);
  if (pairing?.kind !== 'pairing') return null;
  const row = textsAt(live, `${pairing.left}.${calls.part}`).indexOf(part);
  const now = figuresAt(live, plan.reads.rate)[row];
  if (now === undefined || !(now > 0)) return null;
  return { now, unit: live.typeOf(plan.reads.rate)?.unit?.text ?? '' };
}

function strandingNow(live: LiveNotebook, plan: PlanCell, part: string): number | null {
  const { recovery, waiting } = plan.reads;
  if (recovery === '' && waiting === '') return null;
  const mean =
    (recovery === '' ? 0 : meanFor(live, plan, recovery, part)) +
    (waiting === '' ? 0 : meanFor(live, plan, waiting, part));
  return mean > 0 ? mean : null;
}

/** The mean of a column over the rows that are about the part, or over all where its table names no parts. */
function meanFor(live: LiveNotebook, plan: PlanCell, written: string, part: string): number {
  const calls = live.document.cells.find((cell) => cell.kind === 'calls' && cell.name === plan.calls);
  const table = written.slice(0, written.indexOf('.'));
  const parts = calls?.kind === 'calls' ? textsAt(live, `${table}.${calls.part}`) : [];
  const figures = [...figuresAt(live, written)].filter(
    (figure, row) => !Number.isNaN(figure) && (parts.length === 0 || parts[row] === part),
  );
  return figures.length === 0 ? 0 : figures.reduce((sum, figure) => sum + figure, 0) / figures.length;
}

function columnAt(live: LiveNotebook, written: string): Column | null {
  const read = live.read(written);
  if (read.state === 'settled') return read.column;
  return read.state === 'working' ? (read.last?.column ?? null) : null;
}

function textsAt(live: LiveNotebook, written: string): readonly (string | null)[] {
  const column = columnAt(live, written);
  return column?.kind === 'text' ? column.values : [];
}

function figuresAt(live: LiveNotebook, written: string): ArrayLike<number> & Iterable<number> {
  const column = columnAt(live, written);
  return column === null || column.kind === 'text' ? [] : column.values;
}
