import type { Column } from '../column.ts';
import { scale, shiftScale } from '../evaluate/arithmetic.ts';
import { type Env, RunFault } from '../evaluate/vector.ts';
import type { FormulaFault } from '../fault.ts';
import type { Span } from '../term.ts';
import {
  divideUnits,
  isDimensionless,
  isPlain,
  PLAIN,
  sameCurrencies,
  sameDimensions,
  sameMeasure,
  type Unit,
} from '../unit.ts';
import { type Context, constantVector } from './context.ts';
import { tidyUnit } from './tidy-unit.ts';
import { figuresOf, isNought, type Typed } from './typed.ts';

/** Name of the table that says what one unit of each currency is worth, and of its columns. */
export const EXCHANGE_TABLE = 'rates_of_exchange';
const EXCHANGE_CURRENCY = 'currency';
const EXCHANGE_WORTH = 'worth';

export const unitWords = (unit: Unit): string => (unit.text === '' ? 'a plain number' : unit.text);

/**
 * The same figures in another unit of the same dimensions. The caller has checked dimensions; a change of
 * currency reads `rates_of_exchange` when the formula runs.
 */
export function inUnit(context: Context, typed: Typed, unit: Unit): Typed {
  if (typed.anything) return { ...typed, unit };
  if (isNought(typed) || sameMeasure(typed.unit, unit)) return { ...typed, unit };
  if (typed.unit.offset !== 0 || unit.offset !== 0) return shifted(typed, unit);
  const factor = typed.unit.factor / unit.factor;
  const worth = currencyFactor(context, typed.unit, unit, typed.span);
  if (worth === null && typeof typed.literal === 'number') {
    const value = typed.literal * factor;
    return { ...typed, unit, literal: value, evaluate: constantVector('number', value) };
  }
  return {
    ...typed,
    unit,
    literal: undefined,
    evaluate: (env) => scale(figuresOf(typed, env), worth === null ? factor : factor * worth(env)),
  };
}

function shifted(typed: Typed, unit: Unit): Typed {
  const factor = typed.unit.factor / unit.factor;
  const plus = typed.unit.offset * factor - unit.offset;
  return {
    ...typed,
    unit,
    literal: undefined,
    evaluate: (env) => shiftScale(figuresOf(typed, env), factor, plus),
  };
}

/** Worth of the currencies of `from` against those of `to`, or null where they are the same. */
function currencyFactor(context: Context, from: Unit, to: Unit, span: Span): ((env: Env) => number) | null {
  if (sameCurrencies(from.currencies, to.currencies)) return null;
  const change = divideUnits(from, to).currencies;
  const own = context.scope.money;
  const others = Object.entries(change).filter(([code]) => code !== own);
  if (others.length === 0) return null;
  const codes = context.scope.member(EXCHANGE_TABLE, EXCHANGE_CURRENCY);
  const worths = context.scope.member(EXCHANGE_TABLE, EXCHANGE_WORTH);
  if (codes === null || worths === null) {
    throw context.fault(
      'units',
      `${others.map(([code]) => code).join(' and ')} cannot be turned into ${own}: the notebook has no table ${EXCHANGE_TABLE} with the columns ${EXCHANGE_CURRENCY} and ${EXCHANGE_WORTH}.`,
      `Add a table ${EXCHANGE_TABLE} that says what one unit of each currency is worth in ${own}.`,
      span,
    );
  }
  context.typeOf(codes);
  context.typeOf(worths);
  const codesAt = context.inputOf(codes.node);
  const worthsAt = context.inputOf(worths.node);
  return (env) =>
    others.reduce(
      (factor, [code, power]) => factor * worthOf(env, codesAt, worthsAt, code, span) ** power,
      1,
    );
}

function worthOf(env: Env, codesAt: number, worthsAt: number, code: string, span: Span): number {
  const codes = (env.inputs[codesAt] as Column).values;
  const row = Array.prototype.indexOf.call(codes, code);
  const worth = row < 0 ? Number.NaN : ((env.inputs[worthsAt] as Column).values[row] as number);
  if (worth > 0) return worth;
  throw new RunFault({
    kind: 'domain',
    message: `${EXCHANGE_TABLE} does not say what one ${code} is worth.`,
    mend: `Put ${code} and its worth into ${EXCHANGE_TABLE}.`,
    place: { from: span.from, to: span.to },
  });
}

/** A number without dimension as a plain one (percent becomes a share). */
export function asPlain(context: Context, typed: Typed): Typed {
  return inUnit(context, typed, PLAIN);
}

/** True where the unit says nothing: a figure that may be taken as it stands. */
export function isBare(typed: Typed): boolean {
  return typed.anything === true || isDimensionless(typed.unit);
}

/** Fault of two sides whose dimensions differ. */
export function clash(context: Context, left: Typed, right: Typed, what: string, span: Span): FormulaFault {
  const a = context.text(left.span);
  const b = context.text(right.span);
  const message = `${what}: ${a} is ${inWords(context, left)}, ${b} is ${inWords(context, right)}.`;
  return context.fault('units', message, mendFor(left, right), span);
}

function inWords(context: Context, typed: Typed): string {
  // A product of units is told by its usual name: h*(EUR/h) is EUR.
  const unit = typed.unit.text.includes('*')
    ? tidyUnit(typed.unit, context.unitsMet, context.scope.money)
    : typed.unit;
  return isPlain(unit) ? 'a plain number' : `in ${unitWords(unit)}`;
}

function mendFor(left: Typed, right: Typed): string {
  const plainSide = isPlain(left.unit) ? left : isPlain(right.unit) ? right : null;
  const other = plainSide === left ? right : left;
  if (plainSide !== null && typeof plainSide.literal === 'number')
    return `Give the number its unit: ${plainSide.literal} ${other.unit.text}.`;
  return 'Multiply or divide by the figure that turns one into the other, such as a rate, or take the right column.';
}

/** Both sides in the unit of the first that has one; throws where dimensions differ. */
export function sameUnit(
  context: Context,
  left: Typed,
  right: Typed,
  what: string,
  span: Span,
): readonly [Typed, Typed, Unit] {
  const unit = left.anything || isNought(left) ? right.unit : left.unit;
  const fits = (side: Typed): boolean =>
    side.anything === true || isNought(side) || sameDimensions(side.unit, unit);
  if (!fits(left) || !fits(right)) throw clash(context, left, right, what, span);
  return [inUnit(context, left, unit), inUnit(context, right, unit), unit];
}
