import { wholeGroups } from '../evaluate/changed-rows.ts';
import { type KernelPart, runGroups, runRows } from '../evaluate/kernels.ts';
import type { Env } from '../evaluate/vector.ts';
import { type FormulaFunction, FUNCTIONS } from '../functions/registry.ts';
import type { GroupFunction, Parameter, RowFunction } from '../functions/spec.ts';
import { nearest } from '../nearest.ts';
import type { Span } from '../term.ts';
import type { Unit } from '../unit.ts';
import { bindUnits } from './bind-units.ts';
import { type Context, sharedTable } from './context.ts';
import { figuresOf, type Typed } from './typed.ts';

/** Checks a function call: the name, the number of arguments, then what the function itself asks. */
export function checkCall(
  context: Context,
  name: string,
  parts: readonly Typed[],
  nameSpan: Span,
  span: Span,
): Typed {
  const found = FUNCTIONS.get(name);
  if (found === undefined) throw unknownFunction(context, name, nameSpan);
  checkArity(context, found, parts.length, span);
  if (found.shape === 'column') return { ...found.check(context, parts, span), literal: undefined };
  return found.shape === 'row'
    ? checkRow(context, found, parts, span)
    : checkGroup(context, found, parts, span);
}

function unknownFunction(context: Context, name: string, nameSpan: Span): Error {
  const near = nearest(name, FUNCTIONS.keys());
  const fix =
    near[0] === undefined
      ? undefined
      : {
          label: `Use ${near[0]}()`,
          formula: context.formula.slice(0, nameSpan.from) + near[0] + context.formula.slice(nameSpan.to),
        };
  return context.fault(
    'unknown-name',
    `There is no function ${name}().`,
    near.length > 0
      ? `Did you mean ${near.map((word) => `${word}()`).join(' or ')}?`
      : 'Use a function of the reference.',
    nameSpan,
    fix,
  );
}

/** Parameters as they are written in a formula: a group function's key comes second. */
export function writtenParameters(found: FormulaFunction): readonly {
  readonly name: string;
  readonly about: string;
  readonly optional?: boolean;
  readonly repeats?: boolean;
}[] {
  if (found.shape !== 'group') return found.parameters;
  const [first, ...rest] = found.parameters;
  return [
    first as Parameter,
    { name: 'group', about: 'a column of the same table; each of its values is worked on its own' },
    ...rest,
  ];
}

function checkArity(context: Context, found: FormulaFunction, given: number, span: Span): void {
  const written = writtenParameters(found);
  const least = written.filter((parameter) => !parameter.optional).length;
  const most = written.some((parameter) => parameter.repeats) ? Number.POSITIVE_INFINITY : written.length;
  if (given >= least && given <= most) return;
  const takes =
    least === most
      ? String(least)
      : most === Number.POSITIVE_INFINITY
        ? `${least} or more`
        : `${least} to ${most}`;
  throw context.fault(
    'arguments',
    `${found.name}() takes ${takes} ${takes === '1' ? 'argument' : 'arguments'}; ${given === 0 ? 'none is' : `${given} ${given === 1 ? 'is' : 'are'}`} given.`,
    `Write ${found.name}(${written.map((parameter) => parameter.name).join(', ')}).`,
    span,
  );
}

function padded(parts: readonly Typed[], parameters: readonly Parameter[]): (Typed | null)[] {
  return parameters.map((_, i) => parts[i] ?? null);
}

function checkRow(context: Context, found: RowFunction, parts: readonly Typed[], span: Span): Typed {
  const table = sharedTable(context, parts, span);
  const bound = bindUnits(
    context,
    found.name,
    found.parameters,
    padded(parts, found.parameters),
    found.result,
    span,
  );
  const rowFault = context.rowFaults(table, span);
  const evaluate = (env: Env): ReturnType<typeof runRows> => {
    const columns = kernelParts(bound.parts, found.parameters, env);
    const rows = columns.reduce((most, part) => Math.max(most, part.column?.values.length ?? 0), 1);
    return runRows(
      found.name,
      found.compute,
      columns,
      rows,
      rows === env.wanted?.length ? env.wanted : null,
      rowFault,
    );
  };
  return worked(table, bound.result, span, evaluate);
}

function checkGroup(context: Context, found: GroupFunction, parts: readonly Typed[], span: Span): Typed {
  const [first, by, ...rest] = parts as readonly [Typed, Typed, ...Typed[]];
  const table = sharedTable(context, parts, span);
  if (table === null || by.table === null) {
    throw context.fault(
      'whole-column',
      `${found.name}() works down the rows of a table; these are single figures.`,
      'Write it as a worked column, with the key of its groups second.',
      span,
    );
  }
  const figures = [first, ...rest];
  const bound = bindUnits(
    context,
    found.name,
    found.parameters,
    padded(figures, found.parameters),
    found.result,
    span,
  );
  const rowFault = context.rowFaults(table, span);
  context.needsGroup(by);
  return worked(table, bound.result, span, (env) => {
    const keys = by.evaluate(env.wanted === null ? env : { ...env, wanted: null });
    const wanted = env.wanted === null ? null : wholeGroups(keys, env.wanted);
    return runGroups(
      found.name,
      found.computeGroup,
      keys,
      kernelParts(bound.parts, found.parameters, { ...env, wanted }),
      wanted,
      rowFault,
    );
  });
}

function kernelParts(
  parts: readonly (Typed | null)[],
  parameters: readonly Parameter[],
  env: Env,
): KernelPart[] {
  return parts.map((part, i) => ({
    column: part === null ? null : figuresOf(part, env),
    mayBeMissing: parameters[i]?.mayBeMissing === true,
  }));
}

function worked(table: string | null, unit: Unit, span: Span, evaluate: Typed['evaluate']): Typed {
  return { kind: 'number', unit, table, span, evaluate };
}
