import type { Parameter, UnitPattern } from '../functions/spec.ts';
import type { Span } from '../term.ts';
import { divideUnits, isPlain, PLAIN, sameDimensions, type Unit } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';
import type { Context } from './context.ts';
import { asPlain, inUnit, isBare, unitWords } from './measures.ts';
import { isNought, kindWords, type Typed } from './typed.ts';

const km = (): Unit => parseUnit('km');
const day = (): Unit => parseUnit('day');

/** Arguments in the units the kernel takes them in, and the unit of what it gives. */
export interface Bound {
  readonly parts: readonly (Typed | null)[];
  readonly result: Unit;
}

/**
 * Gives every argument its unit by the patterns of the function (src/formula/functions/spec.ts). Throws where
 * an argument is no number or its dimensions do not fit the others.
 */
export function bindUnits(
  context: Context,
  name: string,
  parameters: readonly Parameter[],
  parts: readonly (Typed | null)[],
  result: UnitPattern,
  span: Span,
): Bound {
  for (const [i, parameter] of parameters.entries()) checkKind(context, name, parameter, parts[i] ?? null);
  const patterned = parameters.map((parameter, i) => [parameter, parts[i] ?? null] as const);
  const measured = patterned.filter(([parameter, part]) => part !== null && parameter.unit !== 'plain');
  if (measured.every(([, part]) => isBare(part as Typed))) {
    return {
      parts: parts.map((part) => (part === null || part.kind !== 'number' ? part : asPlain(context, part))),
      result: PLAIN,
    };
  }
  const variables = bindVariables(patterned);
  const bound = patterned.map(([parameter, part]) =>
    part === null ? null : bindOne(context, name, parameter, part, variables, span),
  );
  return { parts: bound, result: resolve(result, variables) ?? PLAIN };
}

function checkKind(context: Context, name: string, parameter: Parameter, part: Typed | null): void {
  if (part === null || part.anything) return;
  const wanted = parameter.yesNo ? 'yes_no' : 'number';
  if (part.kind === wanted) return;
  throw context.fault(
    'kind',
    `${name}() takes ${kindWords(wanted)} as its ${words(parameter)}; ${context.text(part.span)} is ${kindWords(part.kind)}.`,
    `${words(parameter)}: ${parameter.about}`,
    part.span,
  );
}

const words = (parameter: Parameter): string => parameter.name.replaceAll('_', ' ');

type Variables = ReadonlyMap<string, Unit>;

/** The unit behind each letter: of the first argument that has one; a distance is taken in km. */
function bindVariables(patterned: readonly (readonly [Parameter, Typed | null])[]): Variables {
  const variables = new Map<string, Unit>();
  const direct = patterned.filter(
    ([parameter, part]) =>
      part !== null &&
      !part.anything &&
      !isNought(part) &&
      typeof parameter.unit === 'object' &&
      parameter.unit.per === undefined,
  );
  for (const [parameter, part] of direct) {
    const letter = (parameter.unit as { variable: string }).variable;
    if (variables.has(letter)) continue;
    const unit = (part as Typed).unit;
    variables.set(letter, letter === 'X' && sameDimensions(unit, km()) ? km() : unit);
  }
  // A letter met only in a ratio (a rate without its allowance) follows from the ratio.
  for (const [parameter, part] of patterned) {
    const pattern = parameter.unit;
    if (part === null || part.anything || typeof pattern !== 'object' || pattern.per === undefined) continue;
    const below = variables.get(pattern.per);
    if (variables.has(pattern.variable) || below === undefined) continue;
    const over = { ...PLAIN, factor: pattern.by ?? 1 };
    const held = divideUnits(part.unit, divideUnits(PLAIN, { ...below, factor: below.factor * over.factor }));
    variables.set(pattern.variable, held.dimensions.every((power) => power === 0) ? PLAIN : held);
  }
  return variables;
}

function resolve(pattern: UnitPattern, variables: Variables): Unit | null {
  if (pattern === 'plain') return PLAIN;
  if (pattern === 'days') return day();
  const unit = variables.get(pattern.variable);
  if (pattern.per === undefined) return unit ?? null;
  const below = variables.get(pattern.per);
  if (unit === undefined || below === undefined) return null;
  const by = pattern.by ?? 1;
  const ratio = divideUnits(unit, { ...below, factor: below.factor * by });
  const text = `${unit.text === '' ? '1' : unit.text}/(${by === 1 ? '' : `${by} `}${below.text})`;
  return { ...ratio, text };
}

function bindOne(
  context: Context,
  name: string,
  parameter: Parameter,
  part: Typed,
  variables: Variables,
  span: Span,
): Typed {
  if (part.kind !== 'number' || part.anything) return part;
  const unit = resolve(parameter.unit, variables);
  if (unit === null) return part;
  // A ratio of two lengths has no dimension: a bare number there is a forgotten unit, not a ratio.
  const forgotten =
    isPlain(part.unit) &&
    !isNought(part) &&
    typeof parameter.unit === 'object' &&
    parameter.unit.per !== undefined &&
    !isPlain(unit);
  if (isNought(part) || (sameDimensions(part.unit, unit) && !forgotten)) return inUnit(context, part, unit);
  const meant = isPlain(unit) ? 'a plain number' : `a figure in ${unitWords(unit)} or the like`;
  throw context.fault(
    'units',
    `${name}() takes ${meant} as its ${words(parameter)} here; ${context.text(part.span)} is ${isPlain(part.unit) ? 'a plain number' : `in ${unitWords(part.unit)}`}.`,
    `${words(parameter)}: ${parameter.about}`,
    part.span.from === part.span.to ? span : part.span,
  );
}
