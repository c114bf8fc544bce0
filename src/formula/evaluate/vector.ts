import type { Column, FigureColumn, RowFaults, Rows, TextColumn } from '../column.ts';
import type { Fault } from '../fault.ts';

/** Figures on their way through a formula. `own`: made inside this run, so the next step may write over it. */
export interface FigureVector extends FigureColumn {
  readonly own?: boolean;
  /** Known to hold no infinite figure; not looked at where absent. */
  readonly isBounded?: boolean;
}
export type Vector = FigureVector | TextColumn;

/** What the graph hands to a formula for each figure it reads. */
export type Input = Column | Rows;

export interface Env {
  readonly inputs: readonly Input[];
  /** Inside a branch of a condition: the rows that will be taken from it; others need not be worked out. */
  readonly wanted: Uint8Array | null;
}

/** A fault of the whole figure while it is computed. */
export class RunFault extends Error {
  readonly fault: Fault;
  constructor(fault: Fault) {
    super(fault.message);
    this.name = 'RunFault';
    this.fault = fault;
  }
}

export function figures(
  kind: FigureColumn['kind'],
  values: Float64Array,
  faults: RowFaults | null,
  skipped = 0,
): FigureVector {
  return { kind, values, faults, skipped, own: true };
}

export function texts(values: readonly (string | null)[], faults: RowFaults | null): TextColumn {
  return { kind: 'text', values, faults };
}

/** Arrays that earlier steps are done with, by length: fresh memory costs more than the sums done in it. */
const spare = new Map<number, Float64Array[]>();
const MOST_SPARE = 6;

/** An array to write a result into, every place of it: an operand made in this run, a spare one, or a new one. */
export function room(length: number, a?: FigureVector, b?: FigureVector): Float64Array {
  if (a?.own && a.values.length === length) return a.values;
  if (b?.own && b.values.length === length) return b.values;
  return spare.get(length)?.pop() ?? new Float64Array(length);
}

/** Gives back an operand that was made in this run and has been read for the last time. */
export function release(vector: Vector | null): void {
  if (vector === null || vector.kind === 'text' || vector.own !== true || vector.values.length < 64) return;
  const held = spare.get(vector.values.length);
  if (held !== undefined) {
    if (held.length < MOST_SPARE) held.push(vector.values);
    return;
  }
  // A few lengths are in use at a time; what is older is let go.
  if (spare.size >= 8) spare.clear();
  spare.set(vector.values.length, [vector.values]);
}

/** Faults of either operand; row by row the first one stands. */
export function joinFaults(a: RowFaults | null, b: RowFaults | null): RowFaults | null {
  if (a === null) return b;
  if (b === null) return a;
  const joined = new Map(b);
  for (const [row, fault] of a) joined.set(row, fault);
  return joined;
}

export function withFaults(own: Map<number, Fault> | null, inherited: RowFaults | null): RowFaults | null {
  return own === null || own.size === 0 ? inherited : joinFaults(own, inherited);
}

export function waitsFor(node: string, row?: number): Fault {
  const root = node.replace('.#rows', '');
  return {
    kind: 'waits',
    message: `Waits for ${root}${row === undefined ? '' : `, row ${row + 1}`}.`,
    mend: `Mend ${root} first.`,
    root,
    place: row === undefined ? {} : { row },
  };
}

/** The faults of a column as whoever reads it sees them: it waits for the figure at the root. */
export function asWaiting(node: string, faults: RowFaults | null): RowFaults | null {
  if (faults === null || faults.size === 0) return null;
  const waiting = new Map<number, Fault>();
  for (const [row, fault] of faults) {
    waiting.set(row, fault.kind === 'waits' ? fault : waitsFor(node, row));
  }
  return waiting;
}

/** What is said of a figure beyond the largest that can be written (1.8e308). */
export const TOO_LARGE = {
  message: 'The result is too large to be written.',
  mend: 'Look for a division by nearly 0 or a power that grows without end.',
} as const;

/** Whether one of the figures is infinite. */
export function hasInfinite(values: Float64Array): boolean {
  // Most columns are finite throughout, which four sums tell faster than a question at each figure: v - v is 0 for
  // finite v alone.
  let [a, b, c, d] = [0, 0, 0, 0];
  const whole = values.length & ~3;
  for (let i = 0; i < whole; i += 4) {
    a += (values[i] as number) - (values[i] as number);
    b += (values[i + 1] as number) - (values[i + 1] as number);
    c += (values[i + 2] as number) - (values[i + 2] as number);
    d += (values[i + 3] as number) - (values[i + 3] as number);
  }
  for (let i = whole; i < values.length; i++) a += (values[i] as number) - (values[i] as number);
  if (a + b + c + d === 0) return false;
  return values.includes(Number.POSITIVE_INFINITY) || values.includes(Number.NEGATIVE_INFINITY);
}

/** One figure for all rows of a table. */
export function repeat(vector: Vector, rows: number): Vector {
  if (vector.kind === 'text')
    return { ...vector, values: new Array<string | null>(rows).fill(vector.values[0] ?? null) };
  return { ...vector, values: new Float64Array(rows).fill(vector.values[0] as number) };
}
