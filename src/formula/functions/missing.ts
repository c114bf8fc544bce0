import { alike } from '../check/choose.ts';
import type { ColumnFunction } from '../check/column-function.ts';
import { sharedTable } from '../check/context.ts';
import type { Typed } from '../check/typed.ts';
import { type FigureVector, figures, joinFaults, type Vector } from '../evaluate/vector.ts';
import { PLAIN } from '../unit.ts';

const isMissing: ColumnFunction = {
  shape: 'column',
  name: 'is_missing',
  about: 'Whether a figure is not there.',
  domain: 'Anything; a figure with a fault is not missing, it waits.',
  source: 'defined here',
  example: { formula: 'is_missing(missing)', value: true },
  parameters: [{ name: 'x', about: 'a figure, text, date or yes/no' }],
  check: (_context, parts, span) => {
    const [x] = parts as readonly [Typed];
    return {
      kind: 'yes_no',
      unit: PLAIN,
      table: x.table,
      span,
      evaluate: (env) => whichMissing(x.evaluate(env)),
    };
  },
};

function whichMissing(x: Vector): FigureVector {
  const out = new Float64Array(x.values.length);
  for (let i = 0; i < out.length; i++) {
    const entry = x.values[i];
    out[i] = entry === null || Number.isNaN(entry) ? 1 : 0;
  }
  return figures('yes_no', out, x.faults);
}

const orElse: ColumnFunction = {
  shape: 'column',
  name: 'or_else',
  about: 'x where it is there, y where it is missing.',
  domain: 'Two things of the same kind; a row of x with a fault keeps its fault.',
  source: 'defined here',
  example: { formula: 'or_else(missing, 3 km) / (1 km)', value: 3 },
  parameters: [
    { name: 'x', about: 'what is taken if it is there' },
    { name: 'y', about: 'what stands in for it' },
  ],
  check: (context, parts, span) => {
    const [first, second] = parts as readonly [Typed, Typed];
    const [x, y] = alike(context, first, second, 'or_else() takes two things of the same kind', span);
    const table = sharedTable(context, [x, y], span);
    const options =
      x.options !== undefined && y.options !== undefined
        ? [...new Set([...x.options, ...y.options])]
        : undefined;
    return {
      kind: x.kind,
      unit: x.unit,
      options,
      table,
      span,
      evaluate: (env) => standIn(x.evaluate(env), y.evaluate(env)),
    };
  },
};

function standIn(x: Vector, y: Vector): Vector {
  const rows = Math.max(x.values.length, y.values.length);
  const at = (column: Vector, i: number): string | number | null | undefined =>
    column.values[column.values.length === 1 ? 0 : i];
  const kept = x.faults;
  // A fault of y counts only where y is taken.
  const used =
    y.faults === null
      ? null
      : new Map([...y.faults].filter(([row]) => isAbsent(at(x, row)) && !kept?.has(row)));
  const faults = joinFaults(kept, used);
  if (x.kind === 'text') {
    const out: (string | null)[] = new Array(rows);
    for (let i = 0; i < rows; i++)
      out[i] = (isAbsent(at(x, i)) && !kept?.has(i) ? at(y, i) : at(x, i)) as string | null;
    return { kind: 'text', values: out, faults };
  }
  const out = new Float64Array(rows);
  for (let i = 0; i < rows; i++)
    out[i] = (isAbsent(at(x, i)) && !kept?.has(i) ? at(y, i) : at(x, i)) as number;
  return figures(x.kind, out, faults, (x.skipped ?? 0) + (y.skipped ?? 0));
}

const isAbsent = (entry: string | number | null | undefined): boolean =>
  entry === null || entry === undefined || Number.isNaN(entry);

/** Functions of the missing value. */
export const MISSING_FUNCTIONS: readonly ColumnFunction[] = [isMissing, orElse];
