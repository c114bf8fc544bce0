import { type Term, walkTerms } from '../../src/formula/term.ts';

/** Terms that stand taller than a line. */
export function hasTall(term: Term): boolean {
  switch (term.type) {
    case 'choose':
      return true;
    case 'call':
      return ['sum', 'total', 'product', 'running', 'pick'].includes(term.name) || term.parts.some(hasTall);
    case 'binary':
      return term.sign === '/' || hasTall(term.left) || hasTall(term.right);
    case 'unary':
    case 'convert':
      return hasTall(term.term);
    default:
      return false;
  }
}

/** Names of the tables whose columns a term reads, each once, in order. */
export function tablesIn(term: Term): readonly string[] {
  const names = new Set<string>();
  walkTerms(term, (one) => {
    if (one.type === 'member') names.add(one.table);
  });
  return [...names];
}

/** The one table whose columns a term reads; null when it reads none or several. */
export function onlyTable(term: Term): string | null {
  const [first, second] = tablesIn(term);
  return first !== undefined && second === undefined ? first : null;
}

/** Is the term this very figure, with or without a unit? `0 EUR` is 0. */
export function isFigure(term: Term, figure: number): boolean {
  if (term.type === 'number') return term.value === figure;
  return term.type === 'binary' && term.right.type === 'unit' && isFigure(term.left, figure);
}
