import { writtenParameters } from '../../src/formula/check/calls.ts';
import { type FormulaFunction, FUNCTIONS } from '../../src/formula/functions/registry.ts';
import type { UnitPattern } from '../../src/formula/functions/spec.ts';
import { showCount } from '../../src/formula/show.ts';

/** A parameter of a function, as it is written in a formula. */
export interface WrittenParameter {
  readonly name: string;
  readonly about: string;
  /** What it is measured in: `a distance`, `days`, '' where the function itself says so. */
  readonly unit: string;
  readonly optional: boolean;
  readonly repeats: boolean;
}

/** The call that the cursor is in. */
export interface CallAt {
  readonly called: FormulaFunction;
  /** Which of its parameters is being written, counted from 0. */
  readonly argument: number;
}

/**
 * A unit pattern in words.
 *
 * @example patternWords({ variable: 'A', per: 'X', by: 1000 }) // 'A per 1,000 X'
 */
export function patternWords(pattern: UnitPattern): string {
  if (pattern === 'plain') return 'a plain number';
  if (pattern === 'days') return 'time';
  const variable = pattern.variable === 'X' ? 'a distance' : `unit ${pattern.variable}`;
  if (pattern.per === undefined) return variable;
  const per = pattern.per === 'X' ? 'km' : `unit ${pattern.per}`;
  return `${variable} per ${pattern.by === undefined ? '' : `${showCount(pattern.by)} `}${per}`;
}

/** The parameters of a function in the order in which they are written. */
export function parametersOf(called: FormulaFunction): readonly WrittenParameter[] {
  return writtenParameters(called).map((parameter) => ({
    name: parameter.name,
    about: parameter.about,
    unit: 'unit' in parameter ? patternWords(parameter.unit as UnitPattern) : '',
    optional: parameter.optional === true,
    repeats: parameter.repeats === true,
  }));
}

/**
 * The parameters in one line.
 *
 * @example signatureOf(FUNCTIONS.get('or_else')!) // 'x, y'
 */
export function signatureOf(called: FormulaFunction): string {
  return parametersOf(called)
    .map((parameter) => `${parameter.name}${parameter.repeats ? '…' : ''}${parameter.optional ? '?' : ''}`)
    .join(', ');
}

/**
 * The innermost function call that a place of a formula is in, and which of its parameters stands there; null
 * outside of calls and in calls of functions that are not known.
 *
 * @example callAt('max(route.distance, ', 20) // { called: max, argument: 1 }
 */
export function callAt(formula: string, place: number): CallAt | null {
  const open: { name: string; argument: number }[] = [];
  const pieces = formula.slice(0, place).matchAll(/"[^"]*"?|([A-Za-z]\w*)?\(|[),]/g);
  for (const [piece, name = ''] of pieces) {
    if (piece.startsWith('"')) continue;
    if (piece === ')') open.pop();
    else if (piece === ',') {
      const last = open.at(-1);
      if (last !== undefined) last.argument += 1;
    } else open.push({ name, argument: 0 });
  }
  // A bracket that only groups belongs to the call around it.
  const call = open.findLast(({ name }) => FUNCTIONS.has(name));
  const called = call === undefined ? undefined : FUNCTIONS.get(call.name);
  if (call === undefined || called === undefined) return null;
  const parameters = writtenParameters(called);
  const lastPlace = parameters.length - 1;
  const isOver = call.argument > lastPlace && parameters[lastPlace]?.repeats === true;
  return { called, argument: isOver ? lastPlace : call.argument };
}
