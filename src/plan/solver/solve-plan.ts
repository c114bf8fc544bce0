import { findPlan, type PlanOptions } from '../find-plan.ts';
import type { PlanInstance } from '../plan-instance.ts';
import type { PlanResult } from '../plan-result.ts';
import { highsSolver } from './solve-programme.ts';

/**
 * The best plan, by HiGHS in this thread. `findPlan` says what is made least and what comes back.
 *
 * Example: const result = await solvePlan(instance, { timeLimitS: 10 });
 */
export const solvePlan = (instance: PlanInstance, options: PlanOptions = {}): Promise<PlanResult> =>
  findPlan(instance, highsSolver(), options);
