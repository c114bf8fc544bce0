import type { MathNode } from 'mathjs';

/*
 * The nodes that mathjs's parser makes its tree of. mathjs's own can evaluate themselves and write themselves
 * as LaTeX and HTML; these only hold what was read, which is all that the formula language wants of them.
 */

type NodeMaker = new (...parts: never[]) => MathNode;

/** Makes a class of nodes whose instances hold these fields. */
function nodeOf<Parts extends readonly unknown[]>(
  type: string,
  fields: (...parts: Parts) => Readonly<Record<string, unknown>>,
): NodeMaker {
  class ParsedNode {
    constructor(...parts: Parts) {
      Object.assign(this, fields(...parts));
    }
  }
  // The parser asks for these marks, and for the last on the prototype alone.
  Object.assign(ParsedNode.prototype, { type, [`is${type}`]: true, isNode: true });
  return ParsedNode as unknown as NodeMaker;
}

interface Named {
  readonly name?: string;
}

/** By the names under which the parser asks for them. */
export const PARSE_NODES = {
  AccessorNode: nodeOf('AccessorNode', (object: unknown, index: unknown) => ({ object, index })),
  ArrayNode: nodeOf('ArrayNode', (items: unknown = []) => ({ items })),
  AssignmentNode: nodeOf('AssignmentNode', (object: unknown) => ({ object })),
  BlockNode: nodeOf('BlockNode', (blocks: unknown) => ({ blocks })),
  ConditionalNode: nodeOf('ConditionalNode', (condition: unknown, trueExpr: unknown, falseExpr: unknown) => ({
    condition,
    trueExpr,
    falseExpr,
  })),
  ConstantNode: nodeOf('ConstantNode', (value: unknown) => ({ value })),
  FunctionAssignmentNode: nodeOf('FunctionAssignmentNode', (name: string) => ({ name })),
  FunctionNode: nodeOf('FunctionNode', (fn: Named, args: unknown) => ({ fn, args, name: fn.name ?? '' })),
  IndexNode: nodeOf('IndexNode', (dimensions: unknown, dotNotation = false) => ({ dimensions, dotNotation })),
  ObjectNode: nodeOf('ObjectNode', (properties: unknown) => ({ properties })),
  OperatorNode: nodeOf(
    'OperatorNode',
    (op: string, fn: string, args: unknown, implicit = false, isPercentage = false) => ({
      op,
      fn,
      args,
      implicit,
      isPercentage,
    }),
  ),
  ParenthesisNode: nodeOf('ParenthesisNode', (content: unknown) => ({ content })),
  RangeNode: nodeOf('RangeNode', (start: unknown, end: unknown) => ({ start, end })),
  RelationalNode: nodeOf('RelationalNode', (conditionals: unknown, params: unknown) => ({
    conditionals,
    params,
  })),
  SymbolNode: nodeOf('SymbolNode', (name: string) => ({ name })),
} as const;
