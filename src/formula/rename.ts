import { FormulaFault } from './fault.ts';
import { parseFormula } from './parse.ts';
import { type Term, walkTerms } from './term.ts';
import { tokenise } from './tokens.ts';

/** New names by old ones; give a name back unchanged to leave it. */
export interface Renames {
  readonly name: (plain: string) => string;
  readonly member: (table: string, column: string) => readonly [string, string];
}

interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * Writes new names into a formula, everything else left as it stands, blanks included. A formula that cannot
 * be read is changed token by token, so that a fault does not lose a rename.
 *
 * Example: renameInFormula('km * wear.rate', { name: (n) => n, member: () => ['fitted', 'rate'] }) is
 * 'km * fitted.rate'.
 */
export function renameInFormula(formula: string, renames: Renames): string {
  const changes = changesOf(formula, renames).sort((a, b) => b.from - a.from);
  return changes.reduce(
    (text, change) => text.slice(0, change.from) + change.text + text.slice(change.to),
    formula,
  );
}

function changesOf(formula: string, renames: Renames): Change[] {
  try {
    return fromTree(formula, renames);
  } catch (error) {
    if (!(error instanceof FormulaFault)) throw error;
    return fromTokens(formula, renames);
  }
}

function fromTree(formula: string, renames: Renames): Change[] {
  const changes: Change[] = [];
  walkTerms(parseFormula(formula), (term: Term) => {
    if (term.type === 'name') {
      const text = renames.name(term.name);
      if (text !== term.name) changes.push({ from: term.span.from, to: term.span.to, text });
    } else if (term.type === 'member') {
      const [table, column] = renames.member(term.table, term.column);
      if (table !== term.table || column !== term.column)
        changes.push({ ...term.span, text: `${table}.${column}` });
    }
  });
  return changes;
}

function fromTokens(formula: string, renames: Renames): Change[] {
  let tokens: ReturnType<typeof tokenise>;
  try {
    tokens = tokenise(formula);
  } catch {
    return [];
  }
  const changes: Change[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    if (token?.sort !== 'name') continue;
    const [point, column] = [tokens[i + 1], tokens[i + 2]];
    if (point?.text === '.' && column?.sort === 'name') {
      const [table, name] = renames.member(token.text, column.text);
      if (table !== token.text || name !== column.text)
        changes.push({ from: token.from, to: column.to, text: `${table}.${name}` });
      i += 2;
    } else if (tokens[i + 1]?.text !== '(') {
      const text = renames.name(token.text);
      if (text !== token.text) changes.push({ from: token.from, to: token.to, text });
    }
  }
  return changes;
}
