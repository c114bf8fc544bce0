import type { Rows } from '../column.ts';
import { countSplit, rowsWhere, takeRows } from '../evaluate/choose.ts';
import { type Env, figures, repeat, type Vector } from '../evaluate/vector.ts';
import { rowsNode } from '../scope.ts';
import type { Span } from '../term.ts';
import { type Context, constantText, constantVector, sharedTable } from './context.ts';
import { sameUnit } from './measures.ts';
import { figuresOf, isLight, kindWords, type Typed } from './typed.ts';

/** The constant `missing` as a thing of the other's kind and unit. */
export function takenFor(term: Typed, other: Typed): Typed {
  if (!term.anything) return term;
  const evaluate = other.kind === 'text' ? constantText(null) : constantVector(other.kind, Number.NaN);
  return { ...term, kind: other.kind, unit: other.unit, evaluate };
}

/** Two terms of which one or the other will be taken: same kind, one unit. */
export function alike(
  context: Context,
  left: Typed,
  right: Typed,
  what: string,
  span: Span,
): readonly [Typed, Typed] {
  const a = takenFor(left, right);
  const b = takenFor(right, left);
  if (a.kind !== b.kind) {
    throw context.fault(
      'kind',
      `${what}: ${context.text(left.span)} is ${kindWords(a.kind)}, ${context.text(right.span)} is ${kindWords(b.kind)}.`,
      'Let both give the same kind of thing.',
      span,
    );
  }
  if (a.kind !== 'number') return [a, b];
  const [x, y] = sameUnit(context, a, b, what, span);
  return [x, y];
}

/**
 * `condition ? yes : no`. A branch that no row takes is not worked out; in a branch that some rows take,
 * faults of the other rows do not count.
 */
export function checkChoose(context: Context, condition: Typed, yes: Typed, no: Typed, span: Span): Typed {
  if (condition.kind !== 'yes_no') {
    throw context.fault(
      'kind',
      `Before ? stands a yes/no; ${context.text(condition.span)} is ${kindWords(condition.kind)}.`,
      'Compare it with something, such as km > 0 km.',
      condition.span,
    );
  }
  const table = sharedTable(context, [condition, yes, no], span);
  const [a, b] = alike(context, yes, no, 'Both sides of : must be the same kind of thing', span);
  const options =
    a.options !== undefined && b.options !== undefined
      ? [...new Set([...a.options, ...b.options])]
      : undefined;
  const chosen =
    condition.table === null
      ? chooseOne(condition, overRows(context, a, table), overRows(context, b, table))
      : chooseRows(condition, a, b);
  return { kind: a.kind, unit: a.unit, table, options, span, evaluate: chosen };
}

/** A single figure on the rows of the table that the other side follows. */
function overRows(context: Context, side: Typed, table: string | null): Typed {
  if (table === null || side.table === table) return side;
  const rowsAt = context.inputOf(rowsNode(table));
  return {
    ...side,
    table,
    evaluate: (env) => repeat(side.evaluate(env), (env.inputs[rowsAt] as Rows).length),
  };
}

/** One answer for all rows: only the side taken is worked out. */
function chooseOne(condition: Typed, yes: Typed, no: Typed): (env: Env) => Vector {
  return (env) => {
    const answer = figuresOf(condition, env).values[0];
    if (answer === 1) return yes.evaluate(env);
    if (answer === 0) return no.evaluate(env);
    // Not known which: as many missing figures as either side would have had.
    const rows = yes.evaluate(env).values.length;
    if (yes.kind === 'text')
      return { kind: 'text', values: new Array<string | null>(rows).fill(null), faults: null };
    return figures(yes.kind, new Float64Array(rows).fill(Number.NaN), null);
  };
}

function chooseRows(condition: Typed, yes: Typed, no: Typed): (env: Env) => Vector {
  const branch = (
    side: Typed,
    at: 0 | 1,
    count: number,
    held: ReturnType<typeof figuresOf>,
    env: Env,
  ): Vector | null => {
    if (count === 0) return null;
    if (side.table === null) return side.evaluate(env);
    if (isLight(side)) return side.evaluate({ ...env, wanted: null });
    const all = count === held.values.length;
    return side.evaluate({ ...env, wanted: all ? env.wanted : rowsWhere(held, at, env.wanted) });
  };
  return (env) => {
    const held = figuresOf(condition, env);
    const split = countSplit(held, env.wanted);
    const taken = branch(yes, 1, split.yes, held, env);
    const other = branch(no, 0, split.no, held, env);
    // No row takes either side (all missing): an empty column of the right kind.
    if (taken === null && other === null && yes.kind === 'text') {
      return {
        kind: 'text',
        values: new Array<string | null>(held.values.length).fill(null),
        faults: held.faults,
      };
    }
    return takeRows(held, taken, other);
  };
}
