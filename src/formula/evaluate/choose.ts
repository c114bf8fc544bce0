import type { RowFaults, TextColumn } from '../column.ts';
import type { Fault } from '../fault.ts';
import { type FigureVector, release, room, type Vector } from './vector.ts';

/** How a condition falls over its rows. */
export interface Split {
  readonly yes: number;
  readonly no: number;
}

export function countSplit(condition: FigureVector, wanted: Uint8Array | null): Split {
  if (wanted === null) {
    // Where every answer is known, their sum is how many are yes.
    const known = sumOf(condition.values);
    if (!Number.isNaN(known)) return { yes: known, no: condition.values.length - known };
  }
  let yes = 0;
  let no = 0;
  const { values } = condition;
  for (let i = 0; i < values.length; i++) {
    if (wanted !== null && wanted[i] === 0) continue;
    if (values[i] === 1) yes++;
    else if (values[i] === 0) no++;
  }
  return { yes, no };
}

/** Four sums side by side: a single one waits for each addition before the next. */
function sumOf(values: Float64Array): number {
  let [a, b, c, d] = [0, 0, 0, 0];
  const whole = values.length & ~3;
  for (let i = 0; i < whole; i += 4) {
    a += values[i] as number;
    b += values[i + 1] as number;
    c += values[i + 2] as number;
    d += values[i + 3] as number;
  }
  for (let i = whole; i < values.length; i++) a += values[i] as number;
  return a + b + c + d;
}

/** Rows on which the condition is `side` (1 or 0), among those wanted. */
export function rowsWhere(condition: FigureVector, side: 0 | 1, wanted: Uint8Array | null): Uint8Array {
  const { values } = condition;
  const mask = new Uint8Array(values.length);
  for (let i = 0; i < values.length; i++)
    mask[i] = values[i] === side && (wanted === null || wanted[i] === 1) ? 1 : 0;
  return mask;
}

/** Takes each row from the branch its condition names; faults of the branch not taken do not count. */
export function takeRows(condition: FigureVector, yes: Vector | null, no: Vector | null): Vector {
  const rows = condition.values.length;
  const faults = chosenFaults(condition, yes, no);
  if ((yes ?? no)?.kind === 'text') {
    const out: (string | null)[] = new Array(rows);
    for (let i = 0; i < rows; i++) {
      const side = sideOf(condition, i, yes, no) as TextColumn | null;
      out[i] = side === null ? null : (side.values[side.values.length === 1 ? 0 : i] ?? null);
    }
    return { kind: 'text', values: out, faults };
  }
  const kind = ((yes ?? no) as FigureVector | null)?.kind ?? 'number';
  const skipped = (yes?.skipped ?? 0) + (no?.skipped ?? 0);
  const values = takeFigures(condition.values, yes as FigureVector | null, no as FigureVector | null);
  release(condition);
  release(yes);
  if (no !== yes) release(no);
  const isBounded = [yes, no].every((side) => side === null || (side as FigureVector).isBounded === true);
  return { kind, values, faults, skipped, own: true, isBounded };
}

const NONE = Float64Array.of(Number.NaN);

function takeFigures(
  condition: Float64Array,
  yes: FigureVector | null,
  no: FigureVector | null,
): Float64Array {
  const rows = condition.length;
  const out = room(rows);
  const x = yes?.values ?? NONE;
  const y = no?.values ?? NONE;
  const stepX = x.length === rows ? 1 : 0;
  const stepY = y.length === rows ? 1 : 0;
  for (let i = 0; i < rows; i++) {
    const at = condition[i] as number;
    // at - at is 0, or NaN where it is not known which; taking away 0 leaves also -0 as it is.
    out[i] = (at === 1 ? (x[i * stepX] as number) : (y[i * stepY] as number)) - (at - at);
  }
  return out;
}

function sideOf(condition: FigureVector, row: number, yes: Vector | null, no: Vector | null): Vector | null {
  const at = condition.values[row];
  return at === 1 ? yes : at === 0 ? no : null;
}

function chosenFaults(condition: FigureVector, yes: Vector | null, no: Vector | null): RowFaults | null {
  if (condition.faults === null && !yes?.faults && !no?.faults) return null;
  const chosen = new Map<number, Fault>(condition.faults ?? []);
  const take = (side: Vector | null, at: number): void => {
    if (!side?.faults) return;
    for (const [row, fault] of side.faults) if (condition.values[row] === at) chosen.set(row, fault);
  };
  take(yes, 1);
  take(no, 0);
  return chosen.size === 0 ? null : chosen;
}
