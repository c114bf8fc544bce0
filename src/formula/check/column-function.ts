import type { SpecBase } from '../functions/spec.ts';
import type { Span } from '../term.ts';
import type { Context } from './context.ts';
import type { Typed } from './typed.ts';

export interface Argument {
  readonly name: string;
  readonly about: string;
  readonly optional?: boolean;
  /** This argument and the ones after it may come again. */
  readonly repeats?: boolean;
}

/** A function that works on columns, or whose result's unit follows from its arguments: it checks them itself. */
export interface ColumnFunction extends SpecBase {
  readonly shape: 'column';
  readonly parameters: readonly Argument[];
  readonly check: (context: Context, parts: readonly Typed[], span: Span) => Typed;
}
