import { alike } from '../check/choose.ts';
import type { ColumnFunction } from '../check/column-function.ts';
import { type Context, sharedTable } from '../check/context.ts';
import { asPlain, isBare } from '../check/measures.ts';
import { figuresOf, kindWords, type Typed } from '../check/typed.ts';
import type { RowFault } from '../evaluate/arithmetic.ts';
import { type FigureVector, figures, joinFaults, room, withFaults } from '../evaluate/vector.ts';
import type { Fault } from '../fault.ts';
import type { Span } from '../term.ts';
import { PLAIN, raiseUnit } from '../unit.ts';

const SOURCE = 'usual arithmetic';

function needNumber(context: Context, name: string, part: Typed): void {
  if (part.kind === 'number') return;
  throw context.fault(
    'kind',
    `${name}() takes a number; ${context.text(part.span)} is ${kindWords(part.kind)}.`,
    'Take a column or figure of numbers.',
    part.span,
  );
}

function map(x: FigureVector, step: (figure: number) => number): FigureVector {
  const out = room(x.values.length, x);
  for (let i = 0; i < out.length; i++) out[i] = step(x.values[i] as number);
  return figures('number', out, x.faults, x.skipped);
}

/** A step whose result may be outside the real, finite numbers: a fault of that row. */
function guardedMap(
  name: string,
  x: FigureVector,
  step: (figure: number) => number,
  mend: string,
  rowFault: RowFault,
): FigureVector {
  const own = new Map<number, Fault>();
  const out = new Float64Array(x.values.length);
  for (let i = 0; i < out.length; i++) {
    const figure = x.values[i] as number;
    const result = step(figure);
    if (result - result !== 0 && figure - figure === 0) {
      own.set(i, rowFault(i, `${name}(${figure}) has no real, finite value`, mend));
      out[i] = Number.NaN;
    } else out[i] = result;
  }
  return figures('number', out, withFaults(own, x.faults), x.skipped);
}

/** Half away from nought, as on paper: 2.5 to 3, -2.5 to -3. */
export function roundHalfAway(figure: number, places = 0): number {
  if (!Number.isFinite(figure)) return figure;
  const shifted = Number(`${Math.abs(figure)}e${places}`);
  // Figures too large or small for the decimal shift have no places to round.
  if (!Number.isFinite(shifted)) return figure;
  return Math.sign(figure) * Number(`${Math.round(shifted)}e${-places}`);
}

/** A function of one number whose result keeps the unit. */
function keepingUnit(
  name: string,
  about: string,
  step: (figure: number) => number,
  example: ColumnFunction['example'],
): ColumnFunction {
  return {
    shape: 'column',
    name,
    about,
    domain: 'Any number; the result has its unit.',
    source: SOURCE,
    example,
    parameters: [{ name: 'x', about: 'a number' }],
    check: (context, parts, span) => {
      const [x] = parts as readonly [Typed];
      needNumber(context, name, x);
      return { ...x, literal: undefined, span, evaluate: (env) => map(figuresOf(x, env), step) };
    },
  };
}

/** A function of one plain number. */
function ofPlain(
  name: string,
  about: string,
  domain: string,
  step: (figure: number) => number,
  mend: string,
  example: ColumnFunction['example'],
): ColumnFunction {
  return {
    shape: 'column',
    name,
    about,
    domain,
    source: SOURCE,
    example,
    parameters: [{ name: 'x', about: 'a plain number' }],
    check: (context, parts, span) => {
      const [given] = parts as readonly [Typed];
      needNumber(context, name, given);
      if (!isBare(given)) {
        throw context.fault(
          'units',
          `${name}() takes a plain number; ${context.text(given.span)} is in ${given.unit.text}.`,
          'Divide it by its unit first.',
          given.span,
        );
      }
      const x = asPlain(context, given);
      const rowFault = context.rowFaults(x.table, span);
      return {
        kind: 'number',
        unit: PLAIN,
        table: x.table,
        span,
        evaluate: (env) => guardedMap(name, figuresOf(x, env), step, mend, rowFault),
      };
    },
  };
}

function extreme(name: 'min' | 'max', about: string, example: ColumnFunction['example']): ColumnFunction {
  const larger = name === 'max';
  const merge = (a: FigureVector, b: FigureVector): FigureVector => {
    const rows = Math.max(a.values.length, b.values.length);
    const out = new Float64Array(rows);
    const stepA = a.values.length === rows ? 1 : 0;
    const stepB = b.values.length === rows ? 1 : 0;
    for (let i = 0; i < rows; i++) {
      const x = a.values[i * stepA] as number;
      const y = b.values[i * stepB] as number;
      out[i] = larger ? Math.max(x, y) : Math.min(x, y);
    }
    return figures(a.kind, out, joinFaults(a.faults, b.faults), (a.skipped ?? 0) + (b.skipped ?? 0));
  };
  return {
    shape: 'column',
    name,
    about,
    domain:
      'Numbers of the same kind of unit, or dates; missing if any is missing. For a whole column: least() and most().',
    source: SOURCE,
    example,
    parameters: [
      { name: 'x', about: 'a number or date' },
      { name: 'y', about: 'another', repeats: true },
    ],
    check: (context, parts, span) =>
      parts.reduce((left, right): Typed => {
        if (left.kind === 'text' || left.kind === 'yes_no') needNumber(context, name, left);
        const [a, b] = alike(context, left, right, `${name}() compares like with like`, span);
        const table = sharedTable(context, [a, b], span);
        return {
          kind: a.kind,
          unit: a.unit,
          table,
          span,
          evaluate: (env) => merge(figuresOf(a, env), figuresOf(b, env)),
        };
      }),
  };
}

const round: ColumnFunction = {
  shape: 'column',
  name: 'round',
  about: 'Rounds to whole numbers, or to so many places; halves away from nought.',
  domain: 'Any number, in its own unit; places 0 to 15, a written number.',
  source: SOURCE,
  example: { formula: 'round(2.345, 2)', value: 2.35 },
  parameters: [
    { name: 'x', about: 'a number' },
    { name: 'places', about: 'how many decimal places, 0 if left out', optional: true },
  ],
  check: (context, parts, span) => {
    const [x, places] = parts as readonly [Typed, Typed | undefined];
    needNumber(context, 'round', x);
    const digits = places === undefined ? 0 : places.literal;
    if (typeof digits !== 'number' || !Number.isInteger(digits) || digits < 0 || digits > 15) {
      throw context.fault(
        'kind',
        'The places of round() are a written whole number from 0 to 15.',
        'Write round(x, 2) for two places.',
        (places ?? x).span,
      );
    }
    return {
      ...x,
      literal: undefined,
      span,
      evaluate: (env) => map(figuresOf(x, env), (figure) => roundHalfAway(figure, digits)),
    };
  },
};

function checkSqrt(context: Context, parts: readonly Typed[], span: Span): Typed {
  const [x] = parts as readonly [Typed];
  needNumber(context, 'sqrt', x);
  const rowFault = context.rowFaults(x.table, span);
  return {
    kind: 'number',
    unit: raiseUnit(x.unit, 0.5),
    table: x.table,
    span,
    evaluate: (env) =>
      guardedMap(
        'sqrt',
        figuresOf(x, env),
        Math.sqrt,
        'Keep what stands under the root at 0 or above.',
        rowFault,
      ),
  };
}

const sqrt: ColumnFunction = {
  shape: 'column',
  name: 'sqrt',
  about: 'The square root; its unit is the root of the unit.',
  domain: 'Figures of 0 or above; a fault of its row otherwise.',
  source: SOURCE,
  example: { formula: 'sqrt(2.25)', value: 1.5 },
  parameters: [{ name: 'x', about: 'a number, 0 or above' }],
  check: checkSqrt,
};

const sign: ColumnFunction = {
  ...keepingUnit('sign', 'Which way a figure points: 1, 0 or -1, without unit.', Math.sign, {
    formula: 'sign(-3 mm)',
    value: -1,
  }),
  domain: 'Any number; the result is a plain number.',
  check: (context, parts, span) => {
    const [x] = parts as readonly [Typed];
    needNumber(context, 'sign', x);
    return {
      kind: 'number',
      unit: PLAIN,
      table: x.table,
      span,
      evaluate: (env) => map(figuresOf(x, env), Math.sign),
    };
  },
};

const ABOVE_NOUGHT = 'Keep the argument above 0.';

/** The usual arithmetic functions. */
export const PLAIN_FUNCTIONS: readonly ColumnFunction[] = [
  keepingUnit('abs', 'The size of a figure without its sign.', Math.abs, {
    formula: 'abs(-2.5)',
    value: 2.5,
  }),
  extreme('min', 'The smallest of the arguments, row by row.', { formula: 'min(3, 2, 5)', value: 2 }),
  extreme('max', 'The largest of the arguments, row by row.', { formula: 'max(3, 2, 5)', value: 5 }),
  round,
  keepingUnit('floor', 'The next whole number below.', Math.floor, { formula: 'floor(-2.1)', value: -3 }),
  keepingUnit('ceil', 'The next whole number above.', Math.ceil, { formula: 'ceil(2.1)', value: 3 }),
  sign,
  sqrt,
  ofPlain(
    'exp',
    'e to the power x.',
    'Plain numbers up to 709.',
    Math.exp,
    'Keep the argument at 709 or below.',
    { formula: 'exp(0)', value: 1 },
  ),
  ofPlain('log', 'The natural logarithm.', 'Plain numbers above 0.', Math.log, ABOVE_NOUGHT, {
    formula: 'log(exp(2))',
    value: 2,
  }),
  ofPlain('log10', 'The logarithm to base 10.', 'Plain numbers above 0.', Math.log10, ABOVE_NOUGHT, {
    formula: 'log10(1000)',
    value: 3,
  }),
];
