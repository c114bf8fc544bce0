import type { Column, ColumnType, Kind, Rows } from '../column.ts';
import {
  hasInfinite,
  type Input,
  RunFault,
  repeat,
  TOO_LARGE,
  type Vector,
  waitsFor,
} from '../evaluate/vector.ts';
import { type Fault, FormulaFault, isFault } from '../fault.ts';
import { parseFormula } from '../parse.ts';
import { rowsNode, type Scope } from '../scope.ts';
import { type Term, walkTerms } from '../term.ts';
import { PLAIN, sameDimensions, type Unit } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';
import { checkCall } from './calls.ts';
import { checkChoose } from './choose.ts';
import { Context, constantText, constantVector } from './context.ts';
import { checkConvert } from './convert.ts';
import { inUnit, unitWords } from './measures.ts';
import { checkMember, checkName, checkPerUnit } from './names.ts';
import { type LastRun, runChanged } from './run-changed.ts';
import { checkBinary, checkUnary } from './signs.ts';
import { tidyUnit } from './tidy-unit.ts';
import { kindWords, type Typed } from './typed.ts';

/** A formula that can be run. */
export interface CheckedFormula {
  readonly type: ColumnType;
  /** Graph nodes whose figures the run takes, in this order. */
  readonly reads: readonly string[];
  /** Works the figures out, where it can only those that differ from the last time; a fault of the whole (not of single rows) comes back as a Fault. */
  readonly run: (inputs: readonly (Input | Fault)[], last?: LastRun) => Column | Fault;
}

export interface CheckOptions {
  /** Unit in which the result is handed on; its own if absent. */
  readonly unit?: string;
}

/**
 * Reads a formula, resolves its names, checks kinds and dimensions, and makes it ready to run over columns.
 * Never throws for a bad formula: what is wrong comes back as a Fault with its place, sentence and mend.
 *
 * Example: in a scope with the figure reach in km, checkFormula('reach / (100 km)', scope) has a plain
 * number as its type and reads ['reach'].
 */
export function checkFormula(
  formula: string,
  scope: Scope,
  options: CheckOptions = {},
): CheckedFormula | Fault {
  const context = new Context(scope, formula);
  let term: Term | null = null;
  try {
    term = parseFormula(formula);
    const typed = finish(context, checkTerm(context, term), options.unit);
    return runnable(context, typed);
  } catch (error) {
    if (error instanceof FormulaFault) {
      return (term === null ? null : goneName(context, term)) ?? error.fault;
    }
    if (error instanceof RangeError) {
      return {
        kind: 'size',
        message: 'This formula is nested too deep.',
        mend: 'Put parts of it into formulas of their own.',
        place: {},
      };
    }
    throw error;
  }
}

/** A name that is gone is told before anything else: to mend what else is wrong would only bring it to light. */
function goneName(context: Context, formula: Term): Fault | null {
  let found: Fault | null = null;
  walkTerms(formula, (term) => {
    if (found !== null || (term.type !== 'member' && (term.type !== 'name' || term.perUnit))) return;
    try {
      checkTerm(context, term);
    } catch (error) {
      if (!(error instanceof FormulaFault)) throw error;
      if (error.fault.kind === 'unknown-name') found = error.fault;
    }
  });
  return found;
}

function checkTerm(context: Context, term: Term): Typed {
  const { span } = term;
  switch (term.type) {
    case 'name':
      return term.perUnit ? checkPerUnit(context, term.name, span) : checkName(context, term.name, span);
    case 'member':
      return checkMember(context, term.table, term.column, span);
    case 'unary':
      return checkUnary(context, term.sign, checkTerm(context, term.term), span);
    case 'binary': {
      const left = checkTerm(context, term.left);
      return checkBinary(context, term.sign, left, checkTerm(context, term.right), term.signSpan, span);
    }
    case 'convert':
      return checkConvert(context, checkTerm(context, term.term), term.unit, span);
    case 'choose': {
      const condition = checkTerm(context, term.condition);
      return checkChoose(context, condition, checkTerm(context, term.yes), checkTerm(context, term.no), span);
    }
    case 'call': {
      const parts = term.parts.map((part) => checkTerm(context, part));
      return checkCall(context, term.name, parts, term.nameSpan, span);
    }
    default:
      return checkLiteral(context, term);
  }
}

function checkLiteral(context: Context, term: Term & { type: 'number' | 'unit' | 'text' | 'truth' }): Typed {
  const base = { table: null, span: term.span, unit: PLAIN } as const;
  switch (term.type) {
    case 'number':
      return { ...base, kind: 'number', literal: term.value, evaluate: constantVector('number', term.value) };
    case 'unit':
      context.unitsMet.push(term.unit);
      return { ...base, kind: 'number', unit: term.unit, literal: 1, evaluate: constantVector('number', 1) };
    case 'text':
      return {
        ...base,
        kind: 'text',
        literal: term.value,
        options: [term.value],
        evaluate: constantText(term.value),
      };
    case 'truth':
      return {
        ...base,
        kind: 'yes_no',
        literal: term.value,
        evaluate: constantVector('yes_no', term.value ? 1 : 0),
      };
  }
}

/** Result in its declared or a tidy unit, following the rows it should. */
function finish(context: Context, typed: Typed, declared: string | undefined): Typed {
  const { here } = context.scope;
  if (typed.table !== null && typed.table !== here) {
    const column = context.text(typed.span);
    throw context.fault(
      'whole-column',
      here === null
        ? `This gives a whole column of ${typed.table}, one figure a row; a formula has one figure.`
        : `This gives a whole column of ${typed.table}; one row of ${here} is meant.`,
      `Take one figure of it: sum(${column}), pick(${column}, ${typed.table}.key, key) or total(${column}, ${typed.table}.key, key).`,
      typed.span,
    );
  }
  if (typed.kind !== 'number') {
    if (declared !== undefined && declared !== '' && !typed.anything) {
      throw context.fault(
        'kind',
        `The result is ${kindWords(typed.kind)} and has no unit; ${declared} is declared.`,
        'Take the unit away.',
        typed.span,
      );
    }
    return typed;
  }
  if (declared === undefined) {
    return inUnit(context, typed, tidyUnit(typed.unit, context.unitsMet, context.scope.money));
  }
  const unit: Unit = parseUnit(declared);
  if (!typed.anything && typed.literal !== 0 && !sameDimensions(typed.unit, unit)) {
    throw context.fault(
      'units',
      `The formula gives ${unitWords({ ...typed.unit, text: tidyUnit(typed.unit, context.unitsMet, context.scope.money).text })}, but ${unitWords(unit)} is declared.`,
      'Change the declared unit, or what the formula multiplies and divides by.',
      typed.span,
    );
  }
  return inUnit(context, typed, unit);
}

function runnable(context: Context, typed: Typed): CheckedFormula {
  const { here } = context.scope;
  const rowsAt = here !== null && typed.table === null ? context.inputOf(rowsNode(here)) : -1;
  const type: ColumnType = {
    kind: typed.kind,
    unit: typed.kind === 'number' ? typed.unit : null,
    options: typed.options,
  };
  const reads = [...context.reads];
  // A column of this table, or its rows: all have one length.
  const own = reads.map((node) => here !== null && node.startsWith(`${here}.`));
  const ownAt = own.indexOf(true);
  const inPart =
    typed.table === null || context.needsAllRows ? null : { typed, own, groupKeys: context.groupKeys };
  return {
    type,
    reads,
    run: (inputs, last) => {
      for (let i = 0; i < inputs.length; i++) {
        const input = inputs[i];
        if (isFault(input)) return waitsFor(input.root ?? (reads[i] as string));
      }
      try {
        const given = inputs as readonly Input[];
        // Without rows nothing is worked out: a literal beside an empty column would make one of itself.
        if (ownAt >= 0 && lengthOf(given[ownAt] as Input) === 0) return emptyColumn(type.kind);
        const inChangedRows = last && inPart ? runChanged(inPart, given, last) : null;
        if (inChangedRows !== null)
          return inChangedRows === last?.result ? inChangedRows : settle(inChangedRows, here);
        const result = typed.evaluate({ inputs: given, wanted: null });
        const rows = rowsAt < 0 ? null : (given[rowsAt] as Rows).length;
        return settle(rows === null ? result : repeat(result, rows), here);
      } catch (error) {
        if (error instanceof RunFault) return error.fault;
        throw error;
      }
    },
  };
}

function lengthOf(input: Input): number {
  return 'values' in input ? input.values.length : input.length;
}

function emptyColumn(kind: Kind): Column {
  return kind === 'text'
    ? { kind, values: [], faults: null }
    : { kind, values: new Float64Array(0), faults: null };
}

/** Last look: an infinite figure is a fault of its row; a single figure's fault is a fault of the whole. */
function settle(vector: Vector, here: string | null): Column | Fault {
  let { faults } = vector;
  let { values } = vector;
  if (vector.kind !== 'text' && vector.isBounded !== true && hasInfinite(vector.values)) {
    const marked = new Map(faults ?? []);
    const finite = vector.values.slice();
    finite.forEach((figure, row) => {
      if (Math.abs(figure) !== Number.POSITIVE_INFINITY) return;
      finite[row] = Number.NaN;
      marked.set(row, {
        kind: 'domain',
        ...TOO_LARGE,
        place: here === null ? {} : { row },
      });
    });
    faults = marked;
    values = finite;
  }
  if (here === null && faults !== null) {
    const fault = faults.get(0);
    if (fault !== undefined) return fault;
  }
  return { kind: vector.kind, values, faults, skipped: vector.skipped } as Column;
}
