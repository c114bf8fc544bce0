import type { Kind } from '../column.ts';
import type { Env, FigureVector, Vector } from '../evaluate/vector.ts';
import type { Span } from '../term.ts';
import { isPlain, type Unit } from '../unit.ts';

/** A term that has been checked: what it is, whose rows it follows, and how it is worked out. */
export interface Typed {
  readonly kind: Kind;
  /** Numbers only; PLAIN for the other kinds. */
  readonly unit: Unit;
  /** Table whose rows it follows; null for a single figure. */
  readonly table: string | null;
  readonly options?: readonly string[];
  /** Written out in the formula: its value. */
  readonly literal?: number | string | boolean;
  /**
   * Figures as they are read, and their sums and products: these make no faults of their own, and to work
   * them out for all rows takes less time than to find out for which rows they are wanted.
   */
  readonly light?: boolean;
  /** The constant `missing`: fits any kind and unit. */
  readonly anything?: boolean;
  readonly span: Span;
  readonly evaluate: (env: Env) => Vector;
}

/** Evaluates a term that the checker knows to be a number, date or yes/no. */
export function figuresOf(typed: Typed, env: Env): FigureVector {
  const vector = typed.evaluate(env);
  if (vector.kind === 'text') throw new TypeError('a text where the checker promised a figure');
  return vector;
}

/** A nought without unit stands for nought in any unit. */
export function isNought(typed: Typed): boolean {
  return typed.literal === 0 && isPlain(typed.unit);
}

export const isLight = (typed: Typed): boolean => typed.light === true || typed.literal !== undefined;

const KIND_WORDS: Readonly<Record<Kind, string>> = {
  number: 'a number',
  text: 'text',
  yes_no: 'a yes/no',
  date: 'a date',
};

export const kindWords = (kind: Kind): string => KIND_WORDS[kind];
