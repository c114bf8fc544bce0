import type { Column, ColumnType, Rows } from '../../formula/column.ts';
import type { Fault } from '../../formula/fault.ts';
import type { Faulty } from '../../formula/scope.ts';
import type { PartCall } from '../../trade/propose-calls.ts';

/** What a calls cell works out once; its columns are read from it. */
export interface CallsWorking {
  readonly calls: readonly PartCall[];
  readonly parts: readonly (string | null)[];
  /** Faults of single parts: a cost or its permission that waits. */
  readonly faults: ReadonlyMap<number, Fault> | null;
}

/** What a graph node holds once it is worked out. */
export type NodeValue = Column | Rows | Fault | CallsWorking;

/** One node of the graph: what it reads and how it is worked out. */
export interface NodeSpec {
  readonly node: string;
  readonly reads: readonly string[];
  /** Type of the figures; absent for rows and workings. */
  readonly known?: ColumnType | Faulty;
  readonly compute: (inputs: readonly NodeValue[]) => NodeValue;
  /** While this is equal, the node need not be defined anew. */
  readonly stamp: unknown;
}
