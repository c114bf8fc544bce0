import type { MathNode } from 'mathjs';
import { FormulaFault } from './fault.ts';
import { CHAINED, REFUSED, SIGNS } from './grammar.ts';
import { mathParse } from './mathjs.ts';
import type { BinarySign, Term } from './term.ts';
import { TokenCursor } from './token-cursor.ts';
import { MOST_NESTING, type Token, tokenise, tooDeep } from './tokens.ts';
import { divideUnits, multiplyUnits, PLAIN, raiseUnit, type Unit } from './unit.ts';
import { belowUnit, endsInUnit, isQuantity, unitTerm } from './unit-term.ts';
import { lookUpUnit } from './unit-text.ts';

/** The mathjs nodes this module reads; whatever else comes is refused. */
interface Node {
  readonly type: string;
  readonly name?: string;
  readonly value?: unknown;
  readonly op?: string;
  readonly fn?: Node | string;
  readonly implicit?: boolean;
  readonly isPercentage?: boolean;
  readonly args?: readonly Node[];
  readonly content?: Node;
  readonly condition?: Node;
  readonly trueExpr?: Node;
  readonly falseExpr?: Node;
  readonly object?: Node;
  readonly index?: { readonly dotNotation?: boolean; readonly dimensions: readonly Node[] };
  readonly conditionals?: readonly string[];
  readonly params?: readonly Node[];
}

/** Deepest tree that is checked and compiled (chains of signs make trees deep without brackets). */
const MOST_TREE_DEPTH = 400;

/**
 * Reads a formula into a tree of the language's own terms. mathjs parses; every node type not named here is
 * refused with its own sentence.
 *
 * Throws FormulaFault with the place in the text.
 *
 * Example: parseFormula('3000 km + reach') is a sum of a quantity and a name.
 */
export function parseFormula(formula: string): Term {
  const known = read.get(formula);
  if (known !== undefined) return known;
  const term = readFormula(formula);
  if (read.size >= MOST_KNOWN) read.clear();
  read.set(formula, term);
  return term;
}

/** Formulas read before: the order of the figures, the check and the typeset form all ask for the same ones. */
const read = new Map<string, Term>();
const MOST_KNOWN = 5000;

function readFormula(formula: string): Term {
  const tokens = tokenise(formula);
  if (tokens.length === 0) {
    throw new FormulaFault({
      kind: 'grammar',
      message: 'The formula is empty.',
      mend: 'Write what the figure is worked out from.',
      place: {},
    });
  }
  let root: MathNode;
  try {
    root = mathParse(forMathjs(formula, tokens));
  } catch (error) {
    throw unreadable(error, formula);
  }
  try {
    return new Reader(tokens).read(root as unknown as Node, 0);
  } catch (error) {
    if (error instanceof RangeError) throw tooDeep();
    throw error;
  }
}

/**
 * `in` is a sign of conversion to mathjs and the inch to a rider: we convert with `to` alone, so every
 * `in` is written `inch` before parsing. Places stay right because they come from our own tokens.
 */
function forMathjs(formula: string, tokens: readonly Token[]): string {
  let text = '';
  let at = 0;
  for (const token of tokens) {
    text +=
      formula.slice(at, token.from) + (token.sort === 'name' && token.text === 'in' ? 'inch' : token.text);
    at = token.to;
  }
  return text.replace(/[\r\n]+/g, ' ');
}

function unreadable(error: unknown, formula: string): FormulaFault {
  if (error instanceof RangeError) return tooDeep();
  const text = error instanceof Error ? error.message : String(error);
  const at = (error as { char?: number })?.char;
  const where = typeof at === 'number' && at > 0 ? Math.min(at - 1, formula.length) : formula.length;
  const cause = /Unexpected end/.test(text)
    ? 'it ends too early'
    : /Parenthesis \)/.test(text)
      ? 'a closing bracket is missing'
      : /Value expected/.test(text)
        ? 'a figure or name is missing'
        : 'something stands there that does not fit';
  return new FormulaFault({
    kind: 'grammar',
    message: `This cannot be read: ${cause}${where < formula.length ? ` at place ${where + 1}` : ''}.`,
    mend:
      cause === 'a closing bracket is missing'
        ? 'Close every bracket that is opened.'
        : 'Look at what stands before that place.',
    place: {
      from: Math.max(0, Math.min(where, formula.length - 1)),
      to: Math.max(1, Math.min(where + 1, formula.length)),
    },
  });
}

class Reader extends TokenCursor {
  read(node: Node, depth: number): Term {
    if (depth > MOST_TREE_DEPTH) throw tooDeep();
    switch (node.type) {
      case 'ParenthesisNode':
        return this.inBrackets(node, depth);
      case 'ConstantNode':
        return this.constant(node);
      case 'SymbolNode':
        return this.name(node);
      case 'OperatorNode':
        return this.operator(node, depth);
      case 'RelationalNode':
        return this.chain(node, depth);
      case 'ConditionalNode':
        return this.conditional(node, depth);
      case 'FunctionNode':
        return this.call(node, depth);
      case 'AccessorNode':
        return this.member(node);
      default:
        throw this.refusal(node.type);
    }
  }

  private refusal(type: string): FormulaFault {
    const known = REFUSED[type] ?? [
      'This is not part of the language',
      'Use figures, names, signs and functions of the reference.',
    ];
    return this.fault('not-in-language', `${known[0]}.`, known[1], this.here());
  }

  private inBrackets(node: Node, depth: number): Term {
    return this.read(node.content as Node, depth + 1);
  }

  private constant(node: Node): Term {
    const { value } = node;
    if (typeof value === 'number') {
      const token = this.takeSort('number');
      const span = { from: token.from, to: token.to };
      if (!Number.isFinite(value)) {
        throw this.fault(
          'not-in-language',
          `${token.text} is too large or no number.`,
          'Write a figure below 1e308.',
          span,
        );
      }
      return { type: 'number', value, span };
    }
    if (typeof value === 'string') {
      const token = this.takeSort('text');
      return { type: 'text', value, span: { from: token.from, to: token.to } };
    }
    const token = this.takeSort('name');
    const span = { from: token.from, to: token.to };
    if (typeof value === 'boolean') return { type: 'truth', value, span };
    throw this.fault(
      'not-in-language',
      `${token.text} is not part of this language.`,
      'Write missing for a figure that is not there.',
      span,
    );
  }

  private name(node: Node): Term {
    const token = this.takeSort('name');
    const name = token.text === 'in' ? 'in' : (node.name as string);
    const span = { from: token.from, to: token.to };
    return { type: 'name', name, span };
  }

  private operator(node: Node, depth: number): Term {
    const args = node.args as readonly Node[];
    const op = node.op as string;
    if (node.isPercentage) return this.percent(args, depth);
    if (op === 'to') return this.convert(args, depth);
    if (args.length === 1) return this.unary(op, args[0] as Node, depth);
    if (node.implicit) return this.quantity(args, depth);
    const sign = SIGNS[op];
    if (sign === undefined || args.length !== 2) {
      throw this.fault(
        'not-in-language',
        `The sign ${op} is not part of this language.`,
        'Use + - * / ^ %, comparisons, and, or, not.',
        this.here(),
      );
    }
    const left = this.read(args[0] as Node, depth + 1);
    const signSpan = this.take(op);
    const term = this.read(args[1] as Node, depth + 1);
    // In brackets a name is a figure's: `600 km / (days)`.
    const inBrackets = (args[1] as Node).type === 'ParenthesisNode';
    const right = sign === '/' && !inBrackets && endsInUnit(left) ? belowUnit(term) : term;
    return { type: 'binary', sign, left, right, signSpan, span: { from: left.span.from, to: right.span.to } };
  }

  private unary(op: string, operand: Node, depth: number): Term {
    if (op !== '-' && op !== '+' && op !== 'not') {
      throw this.fault(
        'not-in-language',
        `The sign ${op} is not part of this language.`,
        'Use + - * / ^ %, comparisons, and, or, not.',
        this.here(),
      );
    }
    const start = this.take(op);
    const term = this.read(operand, depth + 1);
    if (op === '+') return term;
    return { type: 'unary', sign: op, term, span: { from: start.from, to: term.span.to } };
  }

  /** mathjs reads `10%` as 10 divided by 100; the 100 has no token. */
  private percent(args: readonly Node[], depth: number): Term {
    const left = this.read(args[0] as Node, depth + 1);
    const signSpan = this.take('%');
    const right: Term = { type: 'number', value: 100, span: signSpan };
    return {
      type: 'binary',
      sign: '/',
      left,
      right,
      signSpan,
      span: { from: left.span.from, to: signSpan.to },
    };
  }

  /** A product without a sign: a number and its unit. Anything else asks for the sign. */
  private quantity(args: readonly Node[], depth: number): Term {
    const left = this.read(args[0] as Node, depth + 1);
    const right = args[1] as Node;
    const unitNode =
      right.type === 'OperatorNode' && right.op === '^' ? (right.args as readonly Node[])[0] : right;
    const before = this.at;
    const name = unitNode?.type === 'SymbolNode' ? (unitNode.name as string) : null;
    const unit = name === null ? null : lookUpUnit(name === 'inch' ? 'inch' : name);
    const onNumber = isQuantity(left);
    if (unit !== null && onNumber) {
      const term = this.read(right, depth + 1);
      const asUnit = unitTerm(term);
      if (asUnit !== null) {
        const span = { from: left.span.from, to: term.span.to };
        return { type: 'binary', sign: '*', left, right: asUnit, signSpan: span, span };
      }
    }
    this.at = before;
    const next = this.here();
    const written = name ?? 'what follows';
    throw this.fault(
      name !== null && onNumber ? 'unknown-name' : 'grammar',
      name !== null && onNumber
        ? `${written} stands after a number but is no unit.`
        : `A sign is missing before ${written}.`,
      'Write * between the two to multiply them.',
      next,
    );
  }

  private convert(args: readonly Node[], depth: number): Term {
    const term = this.read(args[0] as Node, depth + 1);
    this.take('to');
    const start = this.here();
    const unit = this.unitOf(args[1] as Node, depth + 1);
    const last = this.tokens[Math.max(0, this.at - 1)] as Token;
    return {
      type: 'convert',
      term,
      unit: { ...unit, text: this.textBetween(start.from, last.to) },
      span: { from: term.span.from, to: last.to },
    };
  }

  /** The right-hand side of `to`: a unit written with names, numbers, * / ^ and brackets. */
  private unitOf(node: Node, depth: number): Unit {
    if (depth > MOST_NESTING) throw tooDeep();
    if (node.type === 'ParenthesisNode') return this.unitOf(node.content as Node, depth + 1);
    if (node.type === 'SymbolNode') {
      const token = this.takeSort('name');
      const unit = lookUpUnit(token.text);
      if (unit === null)
        throw this.fault(
          'units',
          `${token.text} after to is no unit.`,
          'Write a unit such as km, mi, mm or EUR/kg.',
          token,
        );
      return unit;
    }
    if (node.type === 'ConstantNode' && typeof node.value === 'number' && node.value > 0) {
      this.takeSort('number');
      return { ...PLAIN, factor: node.value };
    }
    const args = node.args;
    if (node.type === 'OperatorNode' && args?.length === 2) {
      const left = this.unitOf(args[0] as Node, depth + 1);
      if (node.op === '^' && args[1]?.type === 'ConstantNode') {
        this.takeSort('number');
        return raiseUnit(left, Number(args[1].value));
      }
      if (node.op === '*') return multiplyUnits(left, this.unitOf(args[1] as Node, depth + 1));
      if (node.op === '/') return divideUnits(left, this.unitOf(args[1] as Node, depth + 1));
    }
    throw this.fault(
      'units',
      'After to stands a unit, nothing else.',
      'Write a unit such as km, mi, mm or EUR/kg.',
      this.here(),
    );
  }

  private chain(node: Node, depth: number): Term {
    const terms = (node.params as readonly Node[]).map((param) => this.read(param, depth + 1));
    const links = (node.conditionals as readonly string[]).map((relation, i): Term => {
      const left = terms[i] as Term;
      const right = terms[i + 1] as Term;
      const signSpan = { from: left.span.to, to: right.span.from };
      return {
        type: 'binary',
        sign: CHAINED[relation] as BinarySign,
        left,
        right,
        signSpan,
        span: { from: left.span.from, to: right.span.to },
      };
    });
    return links.reduce((left, right) => ({
      type: 'binary',
      sign: 'and',
      left,
      right,
      signSpan: { from: left.span.to, to: right.span.from },
      span: { from: left.span.from, to: right.span.to },
    }));
  }

  private conditional(node: Node, depth: number): Term {
    const condition = this.read(node.condition as Node, depth + 1);
    this.take('?');
    const yes = this.read(node.trueExpr as Node, depth + 1);
    this.take(':');
    const no = this.read(node.falseExpr as Node, depth + 1);
    return { type: 'choose', condition, yes, no, span: { from: condition.span.from, to: no.span.to } };
  }

  private call(node: Node, depth: number): Term {
    const fn = node.fn as Node;
    if (typeof fn === 'string' || fn.type !== 'SymbolNode') {
      throw this.fault(
        'not-in-language',
        'Only the functions of the reference can be called.',
        'Write the function name, then its arguments in brackets.',
        this.here(),
      );
    }
    const token = this.takeSort('name');
    const nameSpan = { from: token.from, to: token.to };
    const parts = (node.args ?? []).map((part) => this.read(part, depth + 1));
    const last = parts[parts.length - 1];
    let to = last === undefined ? token.to : last.span.to;
    const closing = this.tokens.find((next) => next.from >= to && next.text === ')');
    if (closing !== undefined) to = closing.to;
    return { type: 'call', name: fn.name as string, nameSpan, parts, span: { from: token.from, to } };
  }

  private member(node: Node): Term {
    const object = node.object as Node;
    const key = node.index?.dimensions[0];
    if (object.type !== 'SymbolNode' || node.index?.dotNotation !== true || typeof key?.value !== 'string') {
      throw this.fault(
        'not-in-language',
        'Only table.column can be read with a point.',
        'Write the table, a point and the column.',
        this.here(),
      );
    }
    const first = this.takeSort('name');
    const second = this.takeSort('name');
    return {
      type: 'member',
      table: object.name as string,
      column: key.value,
      span: { from: first.from, to: second.to },
    };
  }
}
