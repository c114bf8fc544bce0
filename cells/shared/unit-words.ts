import { parseFormula } from '../../src/formula/parse.ts';
import type { Span, Term } from '../../src/formula/term.ts';

/** Functions whose result has the unit of their first parameter. */
const KEEP_UNIT = [
  'sum',
  'total',
  'mean',
  'least',
  'most',
  'running',
  'before',
  'pick',
  'abs',
  'round',
  'floor',
  'ceil',
  'or_else',
  'min',
  'max',
];
/** Most names in a formula whose units are still worth reading side by side. */
const MOST_NAMES = 4;

const SIGNS: Readonly<Record<string, string>> = { '+': ' + ', '-': ' − ', '*': ' × ', '/': ' / ' };

/**
 * The units of a short formula, written in the formula's own shape, so that a reader can check them; null
 * where the formula is not a short run of sums and products.
 *
 * @param unitOf the unit of the name that stands at a place of the text; '' is a plain number
 * @example unitShape('reach * harshness', unitOf) // 'km × plain number'
 */
export function unitShape(formula: string, unitOf: (span: Span) => string | undefined): string | null {
  let names = 0;
  const shape = (term: Term): string | null => {
    switch (term.type) {
      case 'number':
        return 'plain number';
      case 'unit':
        return term.unit.text;
      case 'name':
      case 'member': {
        names++;
        const unit = unitOf(term.span);
        return unit === undefined ? null : unit || 'plain number';
      }
      case 'call':
        return KEEP_UNIT.includes(term.name) && term.parts[0] ? shape(term.parts[0]) : null;
      case 'binary':
        return binary(term);
      default:
        return null;
    }
  };
  const binary = (term: Extract<Term, { type: 'binary' }>): string | null => {
    const sign = SIGNS[term.sign];
    if (sign === undefined) return null;
    const [left, right] = [shape(term.left), shape(term.right)];
    if (left === null || right === null) return null;
    if (term.right.type === 'unit') return right;
    const product = term.sign === '*' || term.sign === '/';
    const held = (words: string, side: Term): string =>
      product && side.type === 'binary' && (side.sign === '+' || side.sign === '-') ? `(${words})` : words;
    return `${held(left, term.left)}${sign}${held(right, term.right)}`;
  };
  try {
    const words = shape(parseFormula(formula));
    return names > 0 && names <= MOST_NAMES ? words : null;
  } catch {
    return null;
  }
}
