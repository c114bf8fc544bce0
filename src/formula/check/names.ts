import { asWaiting, type Env, type Vector } from '../evaluate/vector.ts';
import type { FormulaFault } from '../fault.ts';
import { nearest } from '../nearest.ts';
import type { Meaning } from '../scope.ts';
import type { Span } from '../term.ts';
import { PLAIN } from '../unit.ts';
import { lookUpUnit } from '../unit-text.ts';
import { type Context, constantVector } from './context.ts';
import type { Typed } from './typed.ts';

/** Checks a plain name: a column of this table or of a pairing's parents, a single figure, a constant. */
export function checkName(context: Context, name: string, span: Span): Typed {
  const meanings = context.scope.plain(name);
  if (meanings.length > 1) {
    throw context.fault(
      'two-meanings',
      `${name} means two things here: ${meanings.map((meaning) => meaning.words).join(' and ')}.`,
      `Rename one of them, or write ${meanings.map((meaning) => dotted(meaning.node)).find((text) => text.includes('.')) ?? 'table.column'}.`,
      span,
    );
  }
  const meaning = meanings[0];
  if (meaning !== undefined) return checkMeaning(context, meaning, span);
  const constant = checkConstant(name, span);
  if (constant !== null) return constant;
  throw lookUpUnit(name) === null ? unknownName(context, name, span) : bareUnit(context, name, span);
}

/** Checks a unit's name right after the slash of a figure with its unit; a figure may be called so too. */
export function checkPerUnit(context: Context, name: string, span: Span): Typed {
  const meaning = context.scope.plain(name)[0];
  const unit = lookUpUnit(name) ?? PLAIN;
  if (meaning === undefined)
    return { kind: 'number', unit, table: null, literal: 1, span, evaluate: constantVector('number', 1) };
  throw context.fault(
    'two-meanings',
    `${name} means two things here: ${meaning.words} and the unit ${name}.`,
    `Write (${name}) for the figure, or (1 ${name}) for the unit.`,
    span,
    fixFor(context, span, [`(${name})`]),
  );
}

const dotted = (node: string): string => node.split('.').slice(-2).join('.');

function checkConstant(name: string, span: Span): Typed | null {
  const base = { table: null, span };
  if (name === 'missing')
    return {
      ...base,
      kind: 'number',
      unit: PLAIN,
      anything: true,
      evaluate: constantVector('number', Number.NaN),
    };
  if (name === 'pi')
    return {
      ...base,
      kind: 'number',
      unit: PLAIN,
      literal: Math.PI,
      evaluate: constantVector('number', Math.PI),
    };
  return null;
}

/** Checks `table.column`. */
export function checkMember(context: Context, table: string, column: string, span: Span): Typed {
  const meaning = context.scope.member(table, column);
  if (meaning !== null) return checkMeaning(context, meaning, span);
  if (!context.scope.isTable(table)) {
    const near = nearest(table, context.scope.tableNames());
    throw context.fault(
      'unknown-name',
      `There is no table ${table}.`,
      near.length > 0 ? `Did you mean ${near.join(' or ')}?` : 'Write the name of a table of this notebook.',
      span,
      fixFor(
        context,
        span,
        near.map((word) => `${word}.${column}`),
      ),
    );
  }
  const near = nearest(column, context.scope.columnNames(table));
  throw context.fault(
    'unknown-name',
    `Table ${table} has no column ${column}.`,
    near.length > 0
      ? `Did you mean ${near.map((word) => `${table}.${word}`).join(' or ')}?`
      : `Its columns are ${[...context.scope.columnNames(table)].slice(0, 12).join(', ')}.`,
    span,
    fixFor(
      context,
      span,
      near.map((word) => `${table}.${word}`),
    ),
  );
}

function fixFor(
  context: Context,
  span: Span,
  words: readonly string[],
): { label: string; formula: string } | undefined {
  const word = words[0];
  if (word === undefined) return undefined;
  return {
    label: `Use ${word}`,
    formula: context.formula.slice(0, span.from) + word + context.formula.slice(span.to),
  };
}

/**
 * A unit's name without a number. It is never taken for one of the unit: a column `km` that was removed would
 * leave formulas that read it with a kilometre in its place, and nobody would know.
 */
function bareUnit(context: Context, name: string, span: Span): FormulaFault {
  return context.fault(
    'unknown-name',
    `There is no figure or column called ${name}; ${name} alone is no figure, but a unit.`,
    `Write 1 ${name} where the unit is meant, or add a cell or column with this name.`,
    span,
    fixFor(context, span, [`1 ${name}`]),
  );
}

function unknownName(context: Context, name: string, span: Span): FormulaFault {
  if (context.scope.isTable(name)) {
    const column = [...context.scope.columnNames(name)][0] ?? 'column';
    return context.fault(
      'whole-column',
      `${name} is a whole table; a formula reads one of its columns.`,
      `Write ${name}.${column} or another of its columns.`,
      span,
    );
  }
  const near = nearest(name, context.scope.plainNames());
  return context.fault(
    'unknown-name',
    `There is no figure, column or unit called ${name}.`,
    near.length > 0
      ? `Did you mean ${near.join(' or ')}?`
      : 'Write a name of this notebook, or add a cell with this name.',
    span,
    fixFor(context, span, near),
  );
}

function checkMeaning(context: Context, meaning: Meaning, span: Span): Typed {
  const type = context.typeOf(meaning);
  const at = context.inputOf(meaning.node);
  const unit = type.unit ?? PLAIN;
  if (type.kind === 'number') context.unitsMet.push(unit);
  return {
    kind: type.kind,
    unit,
    table: meaning.table,
    options: type.options,
    light: type.kind !== 'text',
    span,
    evaluate: (env) => readInput(env, at, meaning.node),
  };
}

function readInput(env: Env, at: number, node: string): Vector {
  const column = env.inputs[at] as Vector;
  const own = column.kind !== 'text' && column.own === true;
  if (column.faults === null && !own) return column;
  // Inputs are shared with every other reader: never this run's own to write over.
  return { ...column, own: false, faults: asWaiting(node, column.faults) } as Vector;
}
