import type { PlanModel } from './plan-model.ts';
import type { Plan } from './plan-result.ts';

/**
 * The plan that a solver's columns mean. Solvers give whole numbers as floats, such as 0.9999999: each is
 * rounded, and nothing else of the solver's arithmetic is believed; `verifyPlan` then checks what is left.
 */
export function readPlan(model: PlanModel, columns: readonly number[]): Plan {
  const whole = (column: number): number => Math.round(columns[column] ?? 0);
  return {
    chosen: model.calls
      .filter(({ column }) => whole(column) === 1)
      .map((one) => ({
        part: one.part.name,
        call: one.call.name,
        bag: model.bags.find(({ call, column }) => call === one && whole(column) === 1)?.bag ?? null,
      })),
    bought: model.packs
      .map(({ offer, column }) => ({ offer, packs: whole(column) }))
      .filter(({ packs }) => packs > 0),
  };
}
