import type { Unit } from './unit.ts';

/** A stretch of the formula's text; `to` exclusive. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export type BinarySign =
  | '+'
  | '-'
  | '*'
  | '/'
  | '^'
  | '%'
  | '=='
  | '!='
  | '<'
  | '<='
  | '>'
  | '>='
  | 'and'
  | 'or';

/** A formula as a tree: the only node types the language has. */
export type Term = { readonly span: Span } & (
  | { readonly type: 'number'; readonly value: number }
  | { readonly type: 'text'; readonly value: string }
  | { readonly type: 'truth'; readonly value: boolean }
  /** `perUnit`: right after the slash of a figure with its unit, where a unit is read as one: `500 km/day`. */
  | { readonly type: 'name'; readonly name: string; readonly perUnit?: true }
  /** A unit right after a number: `3000 km`. */
  | { readonly type: 'unit'; readonly unit: Unit }
  | { readonly type: 'member'; readonly table: string; readonly column: string }
  | { readonly type: 'unary'; readonly sign: '-' | 'not'; readonly term: Term }
  | {
      readonly type: 'binary';
      readonly sign: BinarySign;
      readonly left: Term;
      readonly right: Term;
      /** Where the sign stands. */
      readonly signSpan: Span;
    }
  | { readonly type: 'convert'; readonly term: Term; readonly unit: Unit }
  | { readonly type: 'choose'; readonly condition: Term; readonly yes: Term; readonly no: Term }
  | { readonly type: 'call'; readonly name: string; readonly nameSpan: Span; readonly parts: readonly Term[] }
);

/** Calls `visit` on every term of the tree, parents first. */
export function walkTerms(term: Term, visit: (term: Term) => void): void {
  visit(term);
  switch (term.type) {
    case 'unary':
    case 'convert':
      walkTerms(term.term, visit);
      break;
    case 'binary':
      walkTerms(term.left, visit);
      walkTerms(term.right, visit);
      break;
    case 'choose':
      walkTerms(term.condition, visit);
      walkTerms(term.yes, visit);
      walkTerms(term.no, visit);
      break;
    case 'call':
      for (const part of term.parts) walkTerms(part, visit);
      break;
    default:
      break;
  }
}
