import type { ColumnType } from './column.ts';

/** A figure whose own formula has a fault: names that read it wait. `root` is where the fault is. */
export interface Faulty {
  readonly faulty: true;
  readonly root: string;
}

export type Known = ColumnType | Faulty;

/** One thing a name can mean. */
export interface Meaning {
  /** Graph node that holds the figures. */
  readonly node: string;
  /** Table whose rows the figures follow; null for a single figure. */
  readonly table: string | null;
  readonly known: Known;
  /** In words, for faults: 'column rate of wear', 'value budget'. */
  readonly words: string;
}

/** What the names in a formula can mean. */
export interface Scope {
  /** Name of the table whose worked column is being written; null for a formula that stands alone. */
  readonly here: string | null;
  /** The notebook's own currency, ISO 4217. */
  readonly money: string;
  /** Everything a plain name means here: columns of this table, of a pairing's parents, single figures. */
  plain(name: string): readonly Meaning[];
  /** What table.column means, or null. Inside a pairing, a parent's column follows the pairing's rows. */
  member(table: string, column: string): Meaning | null;
  isTable(name: string): boolean;
  /** Names that could be written here, for near misses and completion. */
  plainNames(): Iterable<string>;
  columnNames(table: string): Iterable<string>;
  tableNames(): Iterable<string>;
}

/** Names of graph nodes. A column is `table.column`; the rows of a table are `table.#rows`. */
export const columnNode = (table: string, column: string): string => `${table}.${column}`;
export const rowsNode = (table: string): string => `${table}.#rows`;

export function isFaulty(known: ColumnType | Faulty): known is Faulty {
  return 'faulty' in known;
}
