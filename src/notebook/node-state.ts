import type { Column, ColumnType } from '../formula/column.ts';
import type { Fault } from '../formula/fault.ts';

/** Where a figure stands. */
export type NodeState =
  | { readonly state: 'settled'; readonly column: Column; readonly type: ColumnType }
  | { readonly state: 'fault'; readonly fault: Fault }
  | { readonly state: 'waiting'; readonly fault: Fault }
  | {
      readonly state: 'working';
      readonly last: { readonly column: Column; readonly type: ColumnType } | null;
    };
