import type { Fault } from './fault.ts';
import type { Unit } from './unit.ts';

/** What sort of thing a figure is. A choice is text with a list of what is allowed. */
export type Kind = 'number' | 'text' | 'yes_no' | 'date';

/**
 * Faults of single rows, by row. A row with a fault has no figure (NaN or null), and whatever reads it
 * carries the fault on as `waits`, so that a wrong row never looks like an empty one.
 */
export type RowFaults = ReadonlyMap<number, Fault>;

/**
 * A column of figures; a single figure is a column of length 1.
 * number: in the unit of the column's type, NaN = missing.
 * yes_no: 1 or 0, NaN = missing.  date: whole days since 1970-01-01 (UTC), NaN = missing.
 */
export interface FigureColumn {
  readonly kind: 'number' | 'yes_no' | 'date';
  readonly values: Float64Array;
  readonly faults: RowFaults | null;
  /** How many missing entries sum(), total() and the like left out on the way here. */
  readonly skipped?: number;
}

export interface TextColumn {
  readonly kind: 'text';
  /** null = missing. */
  readonly values: readonly (string | null)[];
  readonly faults: RowFaults | null;
  readonly skipped?: number;
}

export type Column = FigureColumn | TextColumn;

/** What is known of a figure before it is computed. */
export interface ColumnType {
  readonly kind: Kind;
  /** Numbers only; a plain number has the unit PLAIN. */
  readonly unit: Unit | null;
  /** For a choice: the texts that are allowed. */
  readonly options?: readonly string[];
}

/** Rows of a table. A pairing also tells, for each row, the row of its left and its right parent. */
export interface Rows {
  readonly length: number;
  readonly left?: Int32Array;
  readonly right?: Int32Array;
}
