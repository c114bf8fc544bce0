import type { TextColumn } from '../column.ts';
import { type FigureVector, figures, joinFaults, release, room } from './vector.ts';

export type CompareSign = '==' | '!=' | '<' | '<=' | '>' | '>=';

/** 1 or 0 row by row; a missing figure on either side makes the answer missing. Comparison is exact. */
export function compareFigures(sign: CompareSign, a: FigureVector, b: FigureVector): FigureVector {
  const rows = Math.max(a.values.length, b.values.length);
  const out = room(rows);
  const faults = joinFaults(a.faults, b.faults);
  const skipped = (a.skipped ?? 0) + (b.skipped ?? 0);
  // x < y is y > x: two orders and equality cover all six signs.
  const [x, y] = sign === '<' || sign === '<=' ? [b.values, a.values] : [a.values, b.values];
  const stepX = x.length === rows ? 1 : 0;
  const stepY = y.length === rows ? 1 : 0;
  if (sign === '>' || sign === '<') above(x, y, out, stepX, stepY);
  else if (sign === '>=' || sign === '<=') notBelow(x, y, out, stepX, stepY);
  else if (sign === '==') equal(x, y, out, stepX, stepY);
  else unequal(x, y, out, stepX, stepY);
  release(a);
  release(b);
  return figures('yes_no', out, faults, skipped);
}

// Without a branch, which costs four times the comparison where the answers take turns: Number() of a comparison is
// none, and taking a figure from itself gives 0 or, for a missing one, NaN.
function above(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): void {
  const rows = out.length;
  for (let i = 0; i < rows; i++) {
    const left = x[i * stepX] as number;
    const right = y[i * stepY] as number;
    out[i] = Number(left > right) + (left - left) + (right - right);
  }
}

function notBelow(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): void {
  const rows = out.length;
  for (let i = 0; i < rows; i++) {
    const left = x[i * stepX] as number;
    const right = y[i * stepY] as number;
    out[i] = Number(left >= right) + (left - left) + (right - right);
  }
}

function equal(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): void {
  const rows = out.length;
  for (let i = 0; i < rows; i++) {
    const left = x[i * stepX] as number;
    const right = y[i * stepY] as number;
    out[i] = Number(left === right) + (left - left) + (right - right);
  }
}

function unequal(x: Float64Array, y: Float64Array, out: Float64Array, stepX: number, stepY: number): void {
  const rows = out.length;
  for (let i = 0; i < rows; i++) {
    const left = x[i * stepX] as number;
    const right = y[i * stepY] as number;
    out[i] = Number(left !== right) + (left - left) + (right - right);
  }
}

export function compareTexts(sign: '==' | '!=', a: TextColumn, b: TextColumn): FigureVector {
  const rows = Math.max(a.values.length, b.values.length);
  const out = new Float64Array(rows);
  const stepA = a.values.length === rows ? 1 : 0;
  const stepB = b.values.length === rows ? 1 : 0;
  const equal = sign === '==' ? 1 : 0;
  for (let i = 0; i < rows; i++) {
    const x = a.values[i * stepA];
    const y = b.values[i * stepB];
    out[i] = x === null || y === null ? Number.NaN : x === y ? equal : 1 - equal;
  }
  return figures('yes_no', out, joinFaults(a.faults, b.faults));
}

/** `and` and `or` with missing as "not known": false and missing is false, true or missing is true. */
export function combine(sign: 'and' | 'or', a: FigureVector, b: FigureVector): FigureVector {
  const rows = Math.max(a.values.length, b.values.length);
  const out = new Float64Array(rows);
  const stepA = a.values.length === rows ? 1 : 0;
  const stepB = b.values.length === rows ? 1 : 0;
  const settles = sign === 'and' ? 0 : 1;
  for (let i = 0; i < rows; i++) {
    const x = a.values[i * stepA] as number;
    const y = b.values[i * stepB] as number;
    out[i] =
      x === settles || y === settles
        ? settles
        : Number.isNaN(x) || Number.isNaN(y)
          ? Number.NaN
          : 1 - settles;
  }
  return figures('yes_no', out, joinFaults(a.faults, b.faults));
}

export function not(a: FigureVector): FigureVector {
  const out = new Float64Array(a.values.length);
  for (let i = 0; i < out.length; i++) out[i] = 1 - (a.values[i] as number);
  return figures('yes_no', out, a.faults);
}
