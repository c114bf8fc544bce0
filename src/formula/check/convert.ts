import { arithmetic } from '../evaluate/arithmetic.ts';
import type { Span } from '../term.ts';
import { divideUnits, PLAIN, raiseUnit, sameDimensions, type Unit } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';
import { type Context, constantVector } from './context.ts';
import { inUnit, unitWords } from './measures.ts';
import { figuresOf, kindWords, type Typed } from './typed.ts';

/** `x to unit`. Fuel use may be turned round, from distance per volume to volume per distance and back. */
export function checkConvert(context: Context, term: Typed, unit: Unit, span: Span): Typed {
  if (term.kind !== 'number') {
    throw context.fault(
      'kind',
      `Only numbers are converted with to; ${context.text(term.span)} is ${kindWords(term.kind)}.`,
      'Take a column or figure of numbers.',
      term.span,
    );
  }
  context.unitsMet.unshift(unit);
  if (sameDimensions(term.unit, unit) || term.anything) return { ...inUnit(context, term, unit), span };
  if (isFuelPair(term.unit, unit)) {
    const turned = raiseUnit(term.unit, -1);
    const rowFault = context.rowFaults(term.table, span);
    const one = constantVector('number', 1);
    const inverse: Typed = {
      ...term,
      unit: turned,
      literal: undefined,
      evaluate: (env) => {
        const over = one(env);
        return over.kind === 'text' ? over : arithmetic('/', over, figuresOf(term, env), 'number', rowFault);
      },
    };
    return { ...inUnit(context, inverse, unit), span };
  }
  throw context.fault(
    'units',
    `${context.text(term.span)} is in ${unitWords(term.unit)} and cannot be turned into ${unit.text}.`,
    'Convert to a unit of the same kind, km to mi for example.',
    span,
  );
}

function isFuelPair(from: Unit, to: Unit): boolean {
  const perVolume = divideUnits(parseUnit('km'), parseUnit('L'));
  const perDistance = divideUnits(parseUnit('L'), parseUnit('km'));
  return (
    ((sameDimensions(from, perVolume) && sameDimensions(to, perDistance)) ||
      (sameDimensions(from, perDistance) && sameDimensions(to, perVolume))) &&
    !sameDimensions(from, PLAIN)
  );
}
