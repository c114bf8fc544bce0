import type { ColumnFunction } from '../check/column-function.ts';
import { COLUMN_FUNCTIONS } from './columns.ts';
import { FAILURE_FUNCTIONS } from './failure.ts';
import { HIT_FUNCTIONS } from './hits.ts';
import { LATER_FUNCTIONS } from './later.ts';
import { MISSING_FUNCTIONS } from './missing.ts';
import { PLAIN_FUNCTIONS } from './plain.ts';
import { SHARED_FUNCTIONS } from './shared.ts';
import type { GroupFunction, RowFunction } from './spec.ts';
import { WEAR_FUNCTIONS } from './wear.ts';

export type FormulaFunction = ColumnFunction | RowFunction | GroupFunction;

/** Every function of the language, by name. What is not here cannot be called. */
export const FUNCTIONS: ReadonlyMap<string, FormulaFunction> = new Map(
  [
    ...PLAIN_FUNCTIONS,
    ...COLUMN_FUNCTIONS,
    ...MISSING_FUNCTIONS,
    ...WEAR_FUNCTIONS,
    ...FAILURE_FUNCTIONS,
    ...HIT_FUNCTIONS,
    ...LATER_FUNCTIONS,
    ...SHARED_FUNCTIONS,
  ].map((held): [string, FormulaFunction] => [held.name, held]),
);
