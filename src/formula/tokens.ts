import { FormulaFault } from './fault.ts';
import type { Span } from './term.ts';

export interface Token extends Span {
  readonly sort: 'number' | 'name' | 'text' | 'sign';
  readonly text: string;
}

/** Longest formula that is read, in characters. */
export const MOST_CHARACTERS = 4000;
/** Deepest nesting of brackets: the parser's own stack gives out at about 110 in a worker. */
export const MOST_NESTING = 64;
const MOST_TOKENS = 1500;

const PATTERN =
  /(?<number>(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)|(?<name>[\p{L}_$][\p{L}\p{N}_$]*)|(?<text>"(?:[^"\\]|\\.)*")|(?<sign>==|!=|<=|>=|[-+*/^%<>()?:,.])|(?<blank>[ \t\r\n]+)|(?<other>[\s\S])/gu;

/**
 * Splits a formula into tokens with their places. The parser of the language does not say where its nodes
 * stand, so faults get their places from here. Bounds length and nesting before anything recursive sees it.
 *
 * Throws FormulaFault ('size' past the bounds, 'not-in-language' or 'grammar' for stray characters).
 */
export function tokenise(formula: string): Token[] {
  if (formula.length > MOST_CHARACTERS) {
    throw new FormulaFault({
      kind: 'size',
      message: `This formula has ${formula.length.toLocaleString('en')} characters; at most ${MOST_CHARACTERS.toLocaleString('en')} are read.`,
      mend: 'Put parts of it into formulas of their own and name them.',
      place: {},
    });
  }
  const tokens: Token[] = [];
  let depth = 0;
  for (const match of formula.matchAll(PATTERN)) {
    const groups = match.groups as Record<string, string | undefined>;
    const from = match.index;
    const to = from + match[0].length;
    if (groups.blank !== undefined) continue;
    if (groups.other !== undefined) throw strayCharacter(formula, groups.other, from, to);
    const sort =
      groups.number !== undefined
        ? 'number'
        : groups.name !== undefined
          ? 'name'
          : groups.text !== undefined
            ? 'text'
            : 'sign';
    if (match[0] === '(') depth++;
    if (match[0] === ')') depth--;
    if (depth > MOST_NESTING) throw tooDeep(from, to);
    tokens.push({ sort, text: match[0], from, to });
  }
  if (tokens.length > MOST_TOKENS) {
    throw new FormulaFault({
      kind: 'size',
      message: `This formula has ${tokens.length.toLocaleString('en')} words and signs; at most ${MOST_TOKENS.toLocaleString('en')} are read.`,
      mend: 'Put parts of it into formulas of their own and name them.',
      place: {},
    });
  }
  return tokens;
}

export function tooDeep(from?: number, to?: number): FormulaFault {
  return new FormulaFault({
    kind: 'size',
    message: `This formula is nested more than ${MOST_NESTING} levels deep.`,
    mend: 'Put parts of it into formulas of their own and name them.',
    place: { from, to },
  });
}

const OUTSIDE: Readonly<Record<string, readonly [string, string]>> = {
  '=': [
    'A formula gives a figure its value; it does not assign with =',
    'Write == to compare, or give the formula its name on its card.',
  ],
  '[': [
    'Square brackets (lists and places in lists) are not part of this language',
    'Read a column as table.column, or one value with pick().',
  ],
  ']': [
    'Square brackets (lists and places in lists) are not part of this language',
    'Read a column as table.column, or one value with pick().',
  ],
  ';': ['One formula holds one expression; several parted by ; are not read', 'Give each its own formula.'],
  '{': ['Curly brackets are not part of this language', 'Use round brackets.'],
  '}': ['Curly brackets are not part of this language', 'Use round brackets.'],
  '!': ['The sign ! is not part of this language', 'Write not, or != for unequal.'],
  "'": ['Text stands between double quotes, not single ones', 'Write "gravel".'],
  '&': ['The sign & is not part of this language', 'Write and.'],
  '|': ['The sign | is not part of this language', 'Write or.'],
  '~': ['The sign ~ is not part of this language', 'Write not.'],
};

function strayCharacter(formula: string, character: string, from: number, to: number): FormulaFault {
  if (character === '"') {
    return new FormulaFault({
      kind: 'grammar',
      message: 'A text is opened with " and not closed.',
      mend: 'Close it with another ".',
      place: { from, to: formula.length },
    });
  }
  const known = OUTSIDE[character];
  if (known !== undefined) {
    return new FormulaFault({
      kind: 'not-in-language',
      message: `${known[0]}.`,
      mend: known[1],
      place: { from, to },
    });
  }
  return new FormulaFault({
    kind: 'grammar',
    message: `The character ${character} at place ${from + 1} has no meaning in a formula.`,
    mend: 'Take it out.',
    place: { from, to },
  });
}
