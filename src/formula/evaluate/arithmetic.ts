import type { Fault } from '../fault.ts';
import { type FigureVector, figures, joinFaults, release, room, withFaults } from './vector.ts';

export type ArithmeticSign = '+' | '-' | '*' | '/' | '^' | '%';

/** Notes a fault of one row; the run turns it into a fault of the whole for a single figure. */
export type RowFault = (row: number, message: string, mend: string) => Fault;

/**
 * One arithmetic sign over columns (or a column and a single figure). Missing (NaN) passes on; division by 0
 * and powers outside the real numbers are faults of their row. The loops are written out one by one: a
 * callback per element would cost several times the sum itself.
 */
export function arithmetic(
  sign: ArithmeticSign,
  a: FigureVector,
  b: FigureVector,
  kind: FigureVector['kind'],
  rowFault: RowFault,
): FigureVector {
  const rows = Math.max(a.values.length, b.values.length);
  const singleA = a.values.length === 1 && rows > 1;
  const singleB = b.values.length === 1 && rows > 1;
  // Signs with a second pass need their operands as they were, so their result gets room of its own.
  const guards = sign === '/' || sign === '^' || sign === '%';
  const out = guards ? room(rows) : room(rows, a, b);
  const faults = joinFaults(a.faults, b.faults);
  const skipped = (a.skipped ?? 0) + (b.skipped ?? 0);
  if (guards) {
    const own = new Map<number, Fault>();
    guarded(sign, a.values, b.values, out, singleA, singleB, (row, x, y) =>
      own.set(row, outside(sign, row, x, y, rowFault)),
    );
    release(a);
    release(b);
    return figures(kind, out, withFaults(own, faults), skipped);
  }
  if (singleA) withFigureLeft(sign, a.values[0] as number, b.values, out);
  else if (singleB) withFigureRight(sign, a.values, b.values[0] as number, out);
  else pairwise(sign, a.values, b.values, out);
  if (out !== b.values) release(b);
  return figures(kind, out, faults, skipped);
}

function pairwise(sign: '+' | '-' | '*', a: Float64Array, b: Float64Array, out: Float64Array): void {
  const rows = out.length;
  if (sign === '+') for (let i = 0; i < rows; i++) out[i] = (a[i] as number) + (b[i] as number);
  else if (sign === '-') for (let i = 0; i < rows; i++) out[i] = (a[i] as number) - (b[i] as number);
  else for (let i = 0; i < rows; i++) out[i] = (a[i] as number) * (b[i] as number);
}

function withFigureRight(sign: '+' | '-' | '*', a: Float64Array, y: number, out: Float64Array): void {
  const rows = out.length;
  if (sign === '+') for (let i = 0; i < rows; i++) out[i] = (a[i] as number) + y;
  else if (sign === '-') for (let i = 0; i < rows; i++) out[i] = (a[i] as number) - y;
  else for (let i = 0; i < rows; i++) out[i] = (a[i] as number) * y;
}

function withFigureLeft(sign: '+' | '-' | '*', x: number, b: Float64Array, out: Float64Array): void {
  const rows = out.length;
  if (sign === '+') for (let i = 0; i < rows; i++) out[i] = x + (b[i] as number);
  else if (sign === '-') for (let i = 0; i < rows; i++) out[i] = x - (b[i] as number);
  else for (let i = 0; i < rows; i++) out[i] = x * (b[i] as number);
}

type Outside = (row: number, x: number, y: number) => void;

/**
 * Signs that can leave the real, finite numbers. The figures are worked out in a bare loop first; only if
 * something in the column came out not finite does a second pass ask which rows are missing and which are
 * faults.
 */
function guarded(
  sign: '/' | '^' | '%',
  x: Float64Array,
  y: Float64Array,
  out: Float64Array,
  singleA: boolean,
  singleB: boolean,
  outsideRow: Outside,
): void {
  const stepA = singleA ? 0 : 1;
  const stepB = singleB ? 0 : 1;
  let odd = 0;
  if (sign === '/') odd = divide(x, y, out, stepA, stepB);
  else if (sign === '^') odd = raise(x, y, out, stepA, stepB);
  else odd = remainder(x, y, out, stepA, stepB);
  if (odd === 0) return;
  for (let i = 0; i < out.length; i++) {
    const result = out[i] as number;
    const [left, right] = [x[i * stepA] as number, y[i * stepB] as number];
    // Finite operands that give no finite result: 1/0, 0/0, (-8)^(1/3), 10^400. Missing stays missing.
    if (Number.isFinite(result) || !Number.isFinite(left) || !Number.isFinite(right)) continue;
    out[i] = Number.NaN;
    outsideRow(i, left, right);
  }
}

/** x / y down the rows; 0 if every result is finite, NaN if not (r - r is 0 for finite r alone). */
function divide(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): number {
  let odd = 0;
  for (let i = 0; i < out.length; i++) {
    const result = (x[i * stepX] as number) / (y[i * stepY] as number);
    out[i] = result;
    odd += result - result;
  }
  return odd;
}

function raise(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): number {
  let odd = 0;
  for (let i = 0; i < out.length; i++) {
    const result = (x[i * stepX] as number) ** (y[i * stepY] as number);
    out[i] = result;
    odd += result - result;
  }
  return odd;
}

function remainder(
  x: Float64Array,
  y: Float64Array,
  out: Float64Array,
  stepX: number,
  stepY: number,
): number {
  let odd = 0;
  for (let i = 0; i < out.length; i++) {
    const [left, right] = [x[i * stepX] as number, y[i * stepY] as number];
    const result = left - right * Math.floor(left / right);
    out[i] = result;
    odd += result - result;
  }
  return odd;
}

function outside(sign: '/' | '^' | '%', row: number, x: number, y: number, rowFault: RowFault): Fault {
  if (sign === '^')
    return rowFault(
      row,
      `${x} to the power ${y} is no real, finite number.`,
      'Keep what is raised to a broken power at 0 or above.',
    );
  return rowFault(
    row,
    `${x} is divided by ${y}.`,
    'Divide by something that is not 0, or ask first: x == 0 ? missing : ... / x.',
  );
}

/** Every figure times a factor, for conversions of units. */
export function scale(a: FigureVector, factor: number): FigureVector {
  if (factor === 1) return a;
  const out = room(a.values.length, a);
  const { values } = a;
  for (let i = 0; i < out.length; i++) out[i] = (values[i] as number) * factor;
  return figures(a.kind, out, a.faults, a.skipped);
}

/** Every figure times a factor plus a constant, for temperatures. */
export function shiftScale(a: FigureVector, factor: number, plus: number): FigureVector {
  const out = room(a.values.length, a);
  const { values } = a;
  for (let i = 0; i < out.length; i++) out[i] = (values[i] as number) * factor + plus;
  return figures(a.kind, out, a.faults, a.skipped);
}

export function negate(a: FigureVector): FigureVector {
  const out = room(a.values.length, a);
  const { values } = a;
  for (let i = 0; i < out.length; i++) out[i] = -(values[i] as number);
  return figures(a.kind, out, a.faults, a.skipped);
}
