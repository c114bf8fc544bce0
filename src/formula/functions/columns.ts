import { alike, takenFor } from '../check/choose.ts';
import type { ColumnFunction } from '../check/column-function.ts';
import { type Context, sharedTable } from '../check/context.ts';

import { figuresOf, kindWords, type Typed } from '../check/typed.ts';
import { wholeGroups } from '../evaluate/changed-rows.ts';
import { before, running } from '../evaluate/down-rows.ts';
import { foldColumn, type WholeFold } from '../evaluate/fold.ts';
import { type Fold, foldMatches, pickMatches } from '../evaluate/look-up.ts';
import { type Env, figures, RunFault, type Vector, waitsFor } from '../evaluate/vector.ts';
import type { Fault } from '../fault.ts';
import type { Span } from '../term.ts';
import { PLAIN, sameDimensions } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';

const OWN = 'defined here';
const whole = (env: Env): Env => (env.wanted === null ? env : { ...env, wanted: null });

/** The rows wanted and the others of their groups; all without groups. */
const withGroups = (env: Env, by: Typed | undefined): Env =>
  env.wanted === null || by === undefined
    ? whole(env)
    : { ...env, wanted: wholeGroups(by.evaluate(whole(env)), env.wanted) };

function needColumn(context: Context, name: string, part: Typed): string {
  if (part.table !== null) return part.table;
  throw context.fault(
    'whole-column',
    `${name}() takes a whole column; ${context.text(part.span)} is a single figure.`,
    'Write table.column.',
    part.span,
  );
}

function needFigures(context: Context, name: string, part: Typed): void {
  if (part.kind === 'number' || part.kind === 'date') return;
  throw context.fault(
    'kind',
    `${name}() takes numbers; ${context.text(part.span)} is ${kindWords(part.kind)}.`,
    'Take a column of numbers.',
    part.span,
  );
}

/** sum, mean, least, most, product, count: one figure from a column. */
function wholeFold(name: WholeFold, about: string, example: ColumnFunction['example']): ColumnFunction {
  return {
    shape: 'column',
    name,
    about,
    domain:
      'A whole column. Missing entries are left out and counted; if every entry is missing so is the result.',
    source: OWN,
    example,
    parameters: [{ name: 'x', about: 'a column, or an expression of columns of one table' }],
    check: (context, parts, span) => {
      const [x] = parts as readonly [Typed];
      needColumn(context, name, x);
      context.needsWhole([x]);
      if (name !== 'count') needFigures(context, name, x);
      if (name === 'product' && !sameDimensions(x.unit, PLAIN)) {
        throw context.fault(
          'units',
          `product() takes plain numbers; ${context.text(x.span)} is in ${x.unit.text}.`,
          'Divide it by its unit first.',
          x.span,
        );
      }
      const kind = name === 'count' ? 'number' : x.kind;
      return {
        kind,
        unit: name === 'count' ? PLAIN : x.unit,
        table: null,
        span,
        evaluate: (env) => foldWhole(name, x, env),
      };
    },
  };
}

function foldWhole(name: WholeFold, x: Typed, env: Env): ReturnType<typeof figures> {
  const column = x.evaluate(whole(env));
  const faulty = column.faults === null ? undefined : [...column.faults.values()][0];
  if (faulty !== undefined)
    throw new RunFault(faulty.kind === 'waits' ? waitsFor(faulty.root ?? 'a figure') : faulty);
  const { value, skipped } = foldColumn(name, column);
  const kind = x.kind === 'date' && name !== 'count' ? 'date' : 'number';
  return figures(kind, Float64Array.of(value), null, skipped + (column.skipped ?? 0));
}

/** Key pairs after the first argument: columns on the asked side, figures on the asking side. */
function keyPairs(
  context: Context,
  name: string,
  parts: readonly Typed[],
  span: Span,
): { keys: Typed[]; asked: Typed[] } {
  if (parts.length % 2 !== 1) {
    throw context.fault(
      'arguments',
      `${name}() takes the keys in pairs: the column of keys, then the key to look for.`,
      `Write ${name}(table.x, table.key, key).`,
      span,
    );
  }
  const [x, ...rest] = parts as readonly [Typed, ...Typed[]];
  const keys: Typed[] = [];
  const asked: Typed[] = [];
  for (let i = 0; i < rest.length; i += 2) {
    const key = rest[i] as Typed;
    needColumn(context, name, key);
    const [a, b] = alike(
      context,
      key,
      takenFor(rest[i + 1] as Typed, key),
      `The key of ${name}() must be of the same kind as the keys`,
      span,
    );
    keys.push(a);
    asked.push(b);
  }
  needColumn(context, name, x);
  sharedTable(context, [x, ...keys], span);
  context.needsWhole([x, ...keys]);
  return { keys, asked };
}

/** A single figure with a fault stops the run: it has no rows to keep the fault in. */
function oneFigure<V extends Vector>(table: string | null, vector: V): V {
  const fault = table === null ? vector.faults?.get(0) : undefined;
  if (fault !== undefined) throw new RunFault({ ...fault, place: {} });
  return vector;
}

const KEY_ARGUMENTS = [
  { name: 'keys', about: 'the column of keys in the same table' },
  { name: 'key', about: 'what to look for; further pairs may follow', repeats: true },
] as const;

function keyedFold(
  name: Fold,
  about: string,
  domain: string,
  example: ColumnFunction['example'],
): ColumnFunction {
  return {
    shape: 'column',
    name,
    about,
    domain,
    source: OWN,
    example,
    parameters: [{ name: 'x', about: 'the column taken from' }, ...KEY_ARGUMENTS],
    check: (context, parts, span) => {
      const x = parts[0] as Typed;
      const { keys, asked } = keyPairs(context, name, parts, span);
      if (name !== 'count_of') needFigures(context, name, x);
      const kind = name === 'count_of' ? 'number' : x.kind;
      const table = sharedTable(context, asked, span);
      return {
        kind,
        unit: name === 'count_of' ? PLAIN : x.unit,
        table,
        span,
        evaluate: (env) =>
          oneFigure(
            table,
            foldMatches(
              name,
              x.evaluate(whole(env)),
              keys.map((key) => key.evaluate(whole(env))),
              asked.map((key) => key.evaluate(env)),
            ),
          ),
      };
    },
  };
}

const pick: ColumnFunction = {
  shape: 'column',
  name: 'pick',
  about: 'The one value whose key matches; several pairs of keys may be given.',
  domain:
    'Exactly one row must match: none or several is a fault that names the key. A missing key gives missing.',
  source: OWN,
  example: { formula: 'pick(sample.kg, sample.part, "chain")', value: 1.7 },
  parameters: [{ name: 'x', about: 'the column taken from' }, ...KEY_ARGUMENTS],
  check: (context, parts, span) => {
    const x = parts[0] as Typed;
    const { keys, asked } = keyPairs(context, 'pick', parts, span);
    const table = sharedTable(context, asked, span);
    const notOne = (row: number, key: string, matches: number): Fault => {
      const where = keys.map((k) => context.text(k.span)).join(' and ');
      const fault: Fault = {
        kind: 'not-one-match',
        message:
          matches === 0
            ? `No row of ${where} is ${key}.`
            : `${matches} rows of ${where} are ${key}; pick() needs one.`,
        mend:
          matches === 0
            ? `Add a row ${key}, or mend the spelling.`
            : 'Give a further pair of keys, or keep one row.',
        place: table === null ? { from: span.from, to: span.to } : { row, from: span.from, to: span.to },
      };
      if (table === null) throw new RunFault(fault);
      return fault;
    };
    return {
      kind: x.kind,
      unit: x.unit,
      options: x.options,
      table,
      span,
      evaluate: (env) =>
        oneFigure(
          table,
          pickMatches(
            x.evaluate(whole(env)),
            keys.map((key) => key.evaluate(whole(env))),
            asked.map((key) => key.evaluate(env)),
            table === null ? null : env.wanted,
            notOne,
          ),
        ),
    };
  },
};

const GROUP_ARGUMENT = {
  name: 'group',
  about: 'a column of the same table; starts again for each of its values',
  optional: true,
} as const;

const runningTotal: ColumnFunction = {
  shape: 'column',
  name: 'running',
  about: 'The running total down the rows, starting again for each group.',
  domain: 'A column of numbers; a missing entry makes the rest of its group missing.',
  source: OWN,
  example: { formula: 'most(running(sample.kg, sample.bag))', value: 2.5 },
  parameters: [{ name: 'x', about: 'a column of numbers' }, GROUP_ARGUMENT],
  check: (context, parts, span) => {
    const [x, by] = parts as readonly [Typed, Typed | undefined];
    needFigures(context, 'running', x);
    needColumn(context, 'running', x);
    const table = sharedTable(context, parts, span);
    context.needsGroup(by);
    return {
      kind: x.kind,
      unit: x.unit,
      table,
      span,
      evaluate: (env) => running(figuresOf(x, withGroups(env, by)), by?.evaluate(whole(env)) ?? null),
    };
  },
};

const beforeRow: ColumnFunction = {
  shape: 'column',
  name: 'before',
  about: 'The value in the previous row of the group.',
  domain: 'Missing in the first row of a group.',
  source: OWN,
  example: { formula: 'most(before(sample.kg, sample.bag))', value: 1.7 },
  parameters: [{ name: 'x', about: 'a column' }, GROUP_ARGUMENT],
  check: (context, parts, span) => {
    const [x, by] = parts as readonly [Typed, Typed | undefined];
    needColumn(context, 'before', x);
    const table = sharedTable(context, parts, span);
    context.needsGroup(by);
    return {
      kind: x.kind,
      unit: x.unit,
      options: x.options,
      table,
      span,
      evaluate: (env) => before(x.evaluate(withGroups(env, by)), by?.evaluate(whole(env)) ?? null),
    };
  },
};

const daysUntil: ColumnFunction = {
  shape: 'column',
  name: 'days_until',
  about: "Days from the notebook's own today to a date.",
  domain: 'Needs a date value named today; negative for dates gone by.',
  source: OWN,
  example: { formula: 'days_until(sample_date)', value: 19 },
  parameters: [{ name: 'date', about: 'a date' }],
  check: (context, parts, span) => {
    const [date] = parts as readonly [Typed];
    if (date.kind !== 'date')
      throw context.fault(
        'kind',
        `days_until() takes a date; ${context.text(date.span)} is ${kindWords(date.kind)}.`,
        'Take a date value or a column of dates.',
        date.span,
      );
    const today = context.scope.plain('today').find((meaning) => meaning.table === null);
    if (today === undefined || context.typeOf(today).kind !== 'date') {
      throw context.fault(
        'unknown-name',
        'days_until() counts from the value today, and this notebook has no date of that name.',
        'Add a date value named today.',
        span,
      );
    }
    const at = context.inputOf(today.node);
    return {
      kind: 'number',
      unit: parseUnit('day'),
      table: date.table,
      span,
      evaluate: (env) => {
        const from = (env.inputs[at] as { values: Float64Array }).values[0] as number;
        const column = figuresOf(date, env);
        return figures(
          'number',
          column.values.map((day) => day - from),
          column.faults,
        );
      },
    };
  },
};

/** Functions of whole columns and of rows in their order. */
export const COLUMN_FUNCTIONS: readonly ColumnFunction[] = [
  wholeFold('sum', 'The sum of a column.', { formula: 'sum(sample.kg)', value: 2.7 }),
  wholeFold('mean', 'The mean of a column.', { formula: 'mean(sample.kg)', value: 0.9 }),
  wholeFold('count', 'How many rows have an entry; of a yes/no column, how many say yes.', {
    formula: 'count(sample.kg)',
    value: 3,
  }),
  wholeFold('least', 'The smallest entry of a column.', { formula: 'least(sample.kg)', value: 0.2 }),
  wholeFold('most', 'The largest entry of a column.', { formula: 'most(sample.kg)', value: 1.7 }),
  wholeFold('product', 'The product of a column.', { formula: 'product(sample.chance)', value: 0.2 }),
  keyedFold(
    'total',
    'The sum of x over the rows whose key matches.',
    'No matching row gives 0; matching rows that are all missing give missing.',
    { formula: 'total(sample.kg, sample.bag, "left")', value: 2.5 },
  ),
  keyedFold('most_of', 'The largest x over the rows whose key matches.', 'No matching row gives missing.', {
    formula: 'most_of(sample.kg, sample.bag, "left")',
    value: 1.7,
  }),
  keyedFold('least_of', 'The smallest x over the rows whose key matches.', 'No matching row gives missing.', {
    formula: 'least_of(sample.kg, sample.bag, "left")',
    value: 0.8,
  }),
  keyedFold(
    'count_of',
    'How many matching rows have an entry; of a yes/no column, how many say yes.',
    'No matching row gives 0.',
    { formula: 'count_of(sample.kg, sample.bag, "left")', value: 2 },
  ),
  pick,
  runningTotal,
  beforeRow,
  daysUntil,
];
