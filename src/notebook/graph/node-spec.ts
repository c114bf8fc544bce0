import type { Column, ColumnType, Rows } from '../../formula/column.ts';
import type { Fault } from '../../formula/fault.ts';
import type { Faulty } from '../../formula/scope.ts';
import type { PlanInstance } from '../../plan/plan-instance.ts';
import type { PlanResult } from '../../plan/plan-result.ts';
import type { PartCall } from '../../trade/propose-calls.ts';

/** What a calls cell works out once; its columns are read from it. */
export interface CallsWorking {
  readonly calls: readonly PartCall[];
  readonly parts: readonly (string | null)[];
  /** The bag that the plan puts each part's spares into; null where none are packed or nobody plans. */
  readonly bags: readonly (string | null)[];
  /** Faults of single parts: a cost or its permission that waits. */
  readonly faults: ReadonlyMap<number, Fault> | null;
}

/** What a plan is asked, and the row of the offers behind each offer in it. */
export interface PlanQuestion {
  readonly instance: PlanInstance;
  readonly rowOfOffer: ReadonlyMap<string, number>;
}

/** A plan's answer; null result where nobody plans (no solver was given). */
export interface PlanSolution extends PlanQuestion {
  readonly result: PlanResult | null;
}

/** What a graph node holds once it is worked out. */
export type NodeValue = Column | Rows | Fault | CallsWorking | PlanQuestion | PlanSolution;

/** What a node was worked out from the last time, and what came of it. */
export interface LastWorking {
  readonly inputs: readonly NodeValue[];
  readonly result: NodeValue;
}

/** One node of the graph: what it reads and how it is worked out; a promise is awaited. */
export interface NodeSpec {
  readonly node: string;
  readonly reads: readonly string[];
  /** Type of the figures; absent for rows and workings. */
  readonly known?: ColumnType | Faulty;
  readonly compute: (inputs: readonly NodeValue[], last?: LastWorking) => NodeValue | Promise<NodeValue>;
  /** While this is equal, the node need not be defined anew. */
  readonly stamp: unknown;
  /** It takes longer than a frame, by a promise: nobody waits for it, nor for what hangs on it. */
  readonly isSlow?: true;
  /**
   * Newer figures are on their way: ends what it is waiting for, so that those need not wait for it too. True if
   * it was waiting; it is then worked out anew even if its figures come out as they were.
   */
  readonly overtake?: () => boolean;
}
