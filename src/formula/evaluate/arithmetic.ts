import type { Fault } from '../fault.ts';
import {
  type FigureVector,
  figures,
  hasInfinite,
  joinFaults,
  release,
  room,
  TOO_LARGE,
  withFaults,
} from './vector.ts';

export type ArithmeticSign = '+' | '-' | '*' | '/' | '^' | '%';

/** Notes a fault of one row; the run turns it into a fault of the whole for a single figure. */
export type RowFault = (row: number, message: string, mend: string) => Fault;

/**
 * One arithmetic sign over columns (or a column and a single figure). Missing (NaN) passes on; division by 0,
 * powers outside the real numbers and what is too large to be written are faults of their row.
 */
export function arithmetic(
  sign: ArithmeticSign,
  a: FigureVector,
  b: FigureVector,
  kind: FigureVector['kind'],
  rowFault: RowFault,
): FigureVector {
  const rows = Math.max(a.values.length, b.values.length);
  // Signs with a second pass need their operands as they were, so their result gets room of its own.
  const guards = sign === '/' || sign === '^' || sign === '%';
  const out = guards ? room(rows) : room(rows, a, b);
  const odd = LOOPS[sign](a.values, b.values, out, stepOf(a, rows), stepOf(b, rows));
  let faults = joinFaults(a.faults, b.faults);
  // Something is missing or beyond all figures: a second pass tells which.
  if (odd !== 0) {
    const own = guards
      ? faultsOutside(sign, a.values, b.values, out, rowFault)
      : faultsTooLarge(out, rowFault);
    faults = withFaults(own, faults);
  }
  if (out !== a.values) release(a);
  if (out !== b.values) release(b);
  return { ...figures(kind, out, faults, (a.skipped ?? 0) + (b.skipped ?? 0)), isBounded: true };
}

/** How far to go in an operand for each row: a single figure stays where it is. */
const stepOf = (operand: FigureVector, rows: number): 0 | 1 => (operand.values.length === rows ? 1 : 0);

/** Works a sign out down the rows; 0 if every result is finite, NaN if not (r - r is 0 for finite r alone). */
type Loop = (x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1) => number;

/**
 * The loops are written out one by one, because a callback per element would cost several times the sum itself, and
 * four rows to a turn, which halves what a turn costs beside the sum. What is read may be what is written to.
 */
const LOOPS: Readonly<Record<ArithmeticSign, Loop>> = {
  '+': add,
  '-': subtract,
  '*': multiply,
  '/': divide,
  '^': raise,
  '%': remainder,
};

function add(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  const rows = out.length;
  const whole = rows & ~3;
  let [oddA, oddB, oddC, oddD] = [0, 0, 0, 0];
  for (let i = 0; i < whole; i += 4) {
    const atX = i * stepX;
    const atY = i * stepY;
    const a = (x[atX] as number) + (y[atY] as number);
    const b = (x[atX + stepX] as number) + (y[atY + stepY] as number);
    const c = (x[atX + 2 * stepX] as number) + (y[atY + 2 * stepY] as number);
    const d = (x[atX + 3 * stepX] as number) + (y[atY + 3 * stepY] as number);
    out[i] = a;
    out[i + 1] = b;
    out[i + 2] = c;
    out[i + 3] = d;
    oddA += a - a;
    oddB += b - b;
    oddC += c - c;
    oddD += d - d;
  }
  for (let i = whole; i < rows; i++) {
    const last = (x[i * stepX] as number) + (y[i * stepY] as number);
    out[i] = last;
    oddA += last - last;
  }
  return oddA + oddB + oddC + oddD;
}

function subtract(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  const rows = out.length;
  const whole = rows & ~3;
  let [oddA, oddB, oddC, oddD] = [0, 0, 0, 0];
  for (let i = 0; i < whole; i += 4) {
    const atX = i * stepX;
    const atY = i * stepY;
    const a = (x[atX] as number) - (y[atY] as number);
    const b = (x[atX + stepX] as number) - (y[atY + stepY] as number);
    const c = (x[atX + 2 * stepX] as number) - (y[atY + 2 * stepY] as number);
    const d = (x[atX + 3 * stepX] as number) - (y[atY + 3 * stepY] as number);
    out[i] = a;
    out[i + 1] = b;
    out[i + 2] = c;
    out[i + 3] = d;
    oddA += a - a;
    oddB += b - b;
    oddC += c - c;
    oddD += d - d;
  }
  for (let i = whole; i < rows; i++) {
    const last = (x[i * stepX] as number) - (y[i * stepY] as number);
    out[i] = last;
    oddA += last - last;
  }
  return oddA + oddB + oddC + oddD;
}

function multiply(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  const rows = out.length;
  const whole = rows & ~3;
  let [oddA, oddB, oddC, oddD] = [0, 0, 0, 0];
  for (let i = 0; i < whole; i += 4) {
    const atX = i * stepX;
    const atY = i * stepY;
    const a = (x[atX] as number) * (y[atY] as number);
    const b = (x[atX + stepX] as number) * (y[atY + stepY] as number);
    const c = (x[atX + 2 * stepX] as number) * (y[atY + 2 * stepY] as number);
    const d = (x[atX + 3 * stepX] as number) * (y[atY + 3 * stepY] as number);
    out[i] = a;
    out[i + 1] = b;
    out[i + 2] = c;
    out[i + 3] = d;
    oddA += a - a;
    oddB += b - b;
    oddC += c - c;
    oddD += d - d;
  }
  for (let i = whole; i < rows; i++) {
    const last = (x[i * stepX] as number) * (y[i * stepY] as number);
    out[i] = last;
    oddA += last - last;
  }
  return oddA + oddB + oddC + oddD;
}

function divide(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  const rows = out.length;
  const whole = rows & ~3;
  let [oddA, oddB, oddC, oddD] = [0, 0, 0, 0];
  for (let i = 0; i < whole; i += 4) {
    const atX = i * stepX;
    const atY = i * stepY;
    const a = (x[atX] as number) / (y[atY] as number);
    const b = (x[atX + stepX] as number) / (y[atY + stepY] as number);
    const c = (x[atX + 2 * stepX] as number) / (y[atY + 2 * stepY] as number);
    const d = (x[atX + 3 * stepX] as number) / (y[atY + 3 * stepY] as number);
    out[i] = a;
    out[i + 1] = b;
    out[i + 2] = c;
    out[i + 3] = d;
    oddA += a - a;
    oddB += b - b;
    oddC += c - c;
    oddD += d - d;
  }
  for (let i = whole; i < rows; i++) {
    const last = (x[i * stepX] as number) / (y[i * stepY] as number);
    out[i] = last;
    oddA += last - last;
  }
  return oddA + oddB + oddC + oddD;
}

function raise(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  let odd = 0;
  for (let i = 0; i < out.length; i++) {
    const base = x[i * stepX] as number;
    // By itself NaN to the power 0 is 1: a missing figure would look like one that is there.
    const result = Number.isNaN(base) ? base : base ** (y[i * stepY] as number);
    out[i] = result;
    odd += result - result;
  }
  return odd;
}

function remainder(x: Float64Array, y: Float64Array, out: Float64Array, stepX: 0 | 1, stepY: 0 | 1): number {
  let odd = 0;
  for (let i = 0; i < out.length; i++) {
    const [left, right] = [x[i * stepX] as number, y[i * stepY] as number];
    const result = left - right * Math.floor(left / right);
    out[i] = result;
    odd += result - result;
  }
  return odd;
}

/** Takes the figures of rows outside the real, finite numbers away again, and says what is wrong with each. */
function faultsOutside(
  sign: '/' | '^' | '%',
  x: Float64Array,
  y: Float64Array,
  out: Float64Array,
  rowFault: RowFault,
): Map<number, Fault> {
  const faults = new Map<number, Fault>();
  const stepX = x.length === out.length ? 1 : 0;
  const stepY = y.length === out.length ? 1 : 0;
  for (let i = 0; i < out.length; i++) {
    const result = out[i] as number;
    const [left, right] = [x[i * stepX] as number, y[i * stepY] as number];
    // Finite operands that give no finite result: 1/0, 0/0, (-8)^(1/3), 10^400. Missing stays missing.
    if (Number.isFinite(result) || !Number.isFinite(left) || !Number.isFinite(right)) continue;
    out[i] = Number.NaN;
    faults.set(i, outside(sign, i, left, right, rowFault));
  }
  return faults;
}

function faultsTooLarge(out: Float64Array, rowFault: RowFault): Map<number, Fault> | null {
  if (!hasInfinite(out)) return null;
  const faults = new Map<number, Fault>();
  for (let i = 0; i < out.length; i++) {
    if (Math.abs(out[i] as number) !== Number.POSITIVE_INFINITY) continue;
    out[i] = Number.NaN;
    faults.set(i, rowFault(i, TOO_LARGE.message, TOO_LARGE.mend));
  }
  return faults;
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
  const isBounded = multiply(a.values, Float64Array.of(factor), out, 1, 0) === 0;
  return { ...figures(a.kind, out, a.faults, a.skipped), isBounded };
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
