import type { TextColumn } from '../column.ts';
import { type ArithmeticSign, arithmetic, negate } from '../evaluate/arithmetic.ts';
import { type CompareSign, combine, compareFigures, compareTexts, not } from '../evaluate/compare.ts';
import { nearest } from '../nearest.ts';
import type { BinarySign, Span } from '../term.ts';
import { divideUnits, isPlain, multiplyUnits, PLAIN, raiseUnit, sameDimensions, type Unit } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';
import { type Context, sharedTable } from './context.ts';
import { asPlain, inUnit, isBare, sameUnit } from './measures.ts';
import { figuresOf, isLight, isNought, kindWords, type Typed } from './typed.ts';

const day = (): Unit => parseUnit('day');

export function checkUnary(context: Context, sign: '-' | 'not', term: Typed, span: Span): Typed {
  if (sign === 'not') {
    needKind(context, term, 'yes_no', 'not');
    return {
      ...term,
      literal: undefined,
      options: undefined,
      kind: 'yes_no',
      span,
      evaluate: (env) => not(figuresOf(term, env)),
    };
  }
  needKind(context, term, 'number', 'The minus sign');
  const literal = typeof term.literal === 'number' ? -term.literal : undefined;
  return { ...term, literal, span, evaluate: (env) => negate(figuresOf(term, env)) };
}

function needKind(context: Context, term: Typed, kind: Typed['kind'], who: string): void {
  if (term.kind === kind || term.anything) return;
  throw context.fault(
    'kind',
    `${who} takes ${kindWords(kind)}; ${context.text(term.span)} is ${kindWords(term.kind)}.`,
    kind === 'number'
      ? 'Take a column or figure of numbers.'
      : 'Compare it with something first, such as km > 0 km.',
    term.span,
  );
}

/** Checks the two sides of a sign and says how the result is worked out. */
export function checkBinary(
  context: Context,
  sign: BinarySign,
  left: Typed,
  right: Typed,
  signSpan: Span,
  span: Span,
): Typed {
  const table = sharedTable(context, [left, right], span);
  if (sign === 'and' || sign === 'or') {
    needKind(context, left, 'yes_no', sign);
    needKind(context, right, 'yes_no', sign);
    return {
      kind: 'yes_no',
      unit: PLAIN,
      table,
      span,
      evaluate: (env) => combine(sign, figuresOf(left, env), figuresOf(right, env)),
    };
  }
  if (sign === '==' || sign === '!=' || sign === '<' || sign === '<=' || sign === '>' || sign === '>=') {
    return checkComparison(context, sign, left, right, table, signSpan, span);
  }
  if (left.kind === 'date' || right.kind === 'date')
    return checkDates(context, sign, left, right, table, signSpan, span);
  needKind(context, left, 'number', `The sign ${sign}`);
  needKind(context, right, 'number', `The sign ${sign}`);
  return checkArithmetic(context, sign, left, right, table, signSpan, span);
}

function checkComparison(
  context: Context,
  sign: CompareSign,
  left: Typed,
  right: Typed,
  table: string | null,
  signSpan: Span,
  span: Span,
): Typed {
  const base = { kind: 'yes_no' as const, unit: PLAIN, table, span };
  if (left.anything || right.anything) {
    throw context.fault(
      'kind',
      'Nothing equals or exceeds missing.',
      'Write is_missing(x) to ask whether a figure is there.',
      signSpan,
    );
  }
  if (left.kind === 'text' && right.kind === 'text') {
    if (sign !== '==' && sign !== '!=')
      throw context.fault(
        'kind',
        `Texts can be equal or not; ${sign} does not order them.`,
        'Write == or !=.',
        signSpan,
      );
    checkOptions(context, left, right);
    checkOptions(context, right, left);
    return {
      ...base,
      evaluate: (env) =>
        compareTexts(sign, left.evaluate(env) as TextColumn, right.evaluate(env) as TextColumn),
    };
  }
  if (left.kind !== right.kind) {
    throw context.fault(
      'kind',
      `${context.text(left.span)} is ${kindWords(left.kind)}, ${context.text(right.span)} is ${kindWords(right.kind)}: the two cannot be compared.`,
      'Compare like with like.',
      span,
    );
  }
  const [a, b] =
    left.kind === 'number' ? sameUnit(context, left, right, 'These cannot be compared', span) : [left, right];
  return { ...base, evaluate: (env) => compareFigures(sign, figuresOf(a, env), figuresOf(b, env)) };
}

/** A text that no choice of the column allows is a slip of the pen, told before it silently never matches. */
function checkOptions(context: Context, choice: Typed, written: Typed): void {
  if (
    choice.options === undefined ||
    typeof written.literal !== 'string' ||
    choice.options.includes(written.literal)
  )
    return;
  const near = nearest(written.literal, choice.options);
  throw context.fault(
    'kind',
    `"${written.literal}" is none of the choices of ${context.text(choice.span)}: ${choice.options.join(', ')}.`,
    near.length > 0 ? `Did you mean "${near[0]}"?` : 'Write one of the choices.',
    written.span,
  );
}

function checkDates(
  context: Context,
  sign: BinarySign,
  left: Typed,
  right: Typed,
  table: string | null,
  signSpan: Span,
  span: Span,
): Typed {
  if (left.kind === 'date' && right.kind === 'date' && sign === '-') {
    const rowFault = context.rowFaults(table, span);
    return {
      kind: 'number',
      unit: day(),
      table,
      span,
      evaluate: (env) => arithmetic('-', figuresOf(left, env), figuresOf(right, env), 'number', rowFault),
    };
  }
  const [date, time] = left.kind === 'date' ? [left, right] : [right, left];
  const fits =
    time.kind === 'number' &&
    (sameDimensions(time.unit, day()) || isNought(time)) &&
    (sign === '+' || (sign === '-' && left.kind === 'date'));
  if (!fits) {
    throw context.fault(
      'kind',
      `The sign ${sign} does not fit a date here.`,
      'Dates can be taken from each other (a time), moved by a time (arrival + 3 day), and compared.',
      signSpan,
    );
  }
  const days = inUnit(context, time, day());
  const rowFault = context.rowFaults(table, span);
  return {
    kind: 'date',
    unit: PLAIN,
    table,
    span,
    evaluate: (env) =>
      arithmetic(sign as '+' | '-', figuresOf(date, env), figuresOf(days, env), 'date', rowFault),
  };
}

const NOT_ADDED: Readonly<Record<string, string>> = {
  '+': 'These cannot be added',
  '-': 'These cannot be subtracted',
  '%': 'These cannot be divided with a remainder',
};

function checkArithmetic(
  context: Context,
  sign: ArithmeticSign,
  left: Typed,
  right: Typed,
  table: string | null,
  signSpan: Span,
  span: Span,
): Typed {
  const written = sign === '*' ? writtenQuantity(left, right, span) : null;
  if (written !== null) return written;
  refuseOffset(context, left, sign);
  refuseOffset(context, right, sign);
  const rowFault = context.rowFaults(table, span);
  const worked = (a: Typed, b: Typed, unit: Typed['unit']): Typed => ({
    kind: 'number',
    unit,
    table,
    light: (sign === '+' || sign === '-' || sign === '*') && isLight(a) && isLight(b),
    span,
    evaluate: (env) => arithmetic(sign, figuresOf(a, env), figuresOf(b, env), 'number', rowFault),
  });
  if (sign === '*') return worked(left, right, multiplyUnits(left.unit, right.unit));
  if (sign === '/') return worked(left, right, divideUnits(left.unit, right.unit));
  if (sign === '^') return checkPower(context, left, right, worked);
  const [a, b, unit] = sameUnit(context, left, right, NOT_ADDED[sign] as string, signSpan);
  return worked(a, b, unit);
}

/** A number with its unit written out is one constant: 3000 km, 31 degC. */
function writtenQuantity(left: Typed, right: Typed, span: Span): Typed | null {
  if (typeof left.literal !== 'number' || right.literal !== 1 || !isPlain(left.unit)) return null;
  return { ...left, unit: right.unit, span };
}

function checkPower(
  context: Context,
  left: Typed,
  right: Typed,
  worked: (a: Typed, b: Typed, unit: Typed['unit']) => Typed,
): Typed {
  if (!isBare(right))
    throw context.fault(
      'units',
      `A power is a plain number; ${context.text(right.span)} is in ${right.unit.text}.`,
      'Divide it by its unit first.',
      right.span,
    );
  const power = asPlain(context, right);
  if (isBare(left)) return worked(asPlain(context, left), power, PLAIN);
  if (typeof power.literal !== 'number') {
    throw context.fault(
      'units',
      `${context.text(left.span)} has a unit, so its power must be written out as a number.`,
      'Write the power as a number, such as ^2, or divide by the unit first.',
      right.span,
    );
  }
  return worked(left, power, raiseUnit(left.unit, power.literal));
}

function refuseOffset(context: Context, term: Typed, sign: string): void {
  if (term.unit.offset === 0) return;
  throw context.fault(
    'units',
    `${context.text(term.span)} is a temperature on a scale whose nought is not cold itself; the sign ${sign} has no clear meaning for it.`,
    'Turn it into K first: ... to K.',
    term.span,
  );
}
