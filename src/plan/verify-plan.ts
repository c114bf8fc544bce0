import { limitLines, takenOf } from './limit-lines.ts';
import { limitSentence } from './limit-words.ts';
import { onShelf, openTable } from './open-calls.ts';
import { type PlanInstance, packerOf, stockOf } from './plan-instance.ts';
import type { Plan, Shortfall } from './plan-result.ts';
import { brokenSets, type PlannedCall, plannedCalls, planTotals } from './plan-totals.ts';

/** Limits are held to within this share of themselves, and at least this much: rounding, no more. */
const LIMIT_TOLERANCE = 1e-6;

/** What is wrong with a plan: rules that it breaks, and limits that it passes. */
export interface PlanCheck {
  /** Sentences; empty for a plan that keeps every rule but the limits. */
  readonly problems: readonly string[];
  readonly shortfalls: readonly Shortfall[];
}

/**
 * Checks a plan against the instance in plain code, rule by rule, without the solver's programme: one open
 * call for each part that has any, pins kept, needs covered by what is bought and on hand, offers in time,
 * sets whole, spares in bags, and every limit.
 */
export function verifyPlan(instance: PlanInstance, plan: Plan): PlanCheck {
  return {
    problems: [...callProblems(instance, plan), ...needProblems(instance, plan)],
    shortfalls: shortfallsOf(instance, plan),
  };
}

/** The limits that the plan passes, and by how much. */
export function shortfallsOf(instance: PlanInstance, plan: Plan): readonly Shortfall[] {
  const totals = planTotals(instance, plan);
  return limitLines(instance).flatMap((line) => {
    const needed = takenOf(line, totals);
    const short = needed - line.allowed;
    if (short <= LIMIT_TOLERANCE * Math.max(1, line.allowed)) return [];
    const { kind: limit, rider, bag, allowed } = line;
    return [{ limit, rider, bag, allowed, needed, short, sentence: limitSentence(line, needed, instance) }];
  });
}

function callProblems(instance: PlanInstance, plan: Plan): string[] {
  const problems: string[] = [];
  for (const { part, calls, pinned } of openTable(instance).parts) {
    const chosen = plan.chosen.filter((one) => one.part === part.name);
    if (chosen.length !== 1) problems.push(`${part.name} has ${chosen.length} calls, not one.`);
    for (const { call } of chosen) {
      if (!calls.some(({ name }) => name === call))
        problems.push(`${part.name} has the call "${call}", which is not open to it.`);
      if (pinned && pinned.name !== call)
        problems.push(`${part.name} is set by hand to "${pinned.name}", and the plan has "${call}".`);
    }
  }
  for (const set of brokenSets(instance, plan)) problems.push(`The set "${set}" is changed in part only.`);
  return [...problems, ...bagProblems(instance, plan)];
}

function bagProblems(instance: PlanInstance, plan: Plan): string[] {
  return plannedCalls(instance, plan).flatMap((planned) => {
    const { call, packer, bag } = planned;
    const bags = instance.limits.packs.find(({ rider }) => rider === packer)?.bags ?? [];
    if (bags.length === 0 || (call.mass_kg === 0 && call.volume_L === 0)) return [];
    const own = ownBag(instance, planned);
    if (own !== null && own !== bag) return [`${call.part} belongs in the bag "${own}", not in "${bag}".`];
    return bags.some(({ name }) => name === bag) ? [] : [`${call.part} is packed and in no bag.`];
  });
}

/** The bag that the part must go into; null where it may go into any. */
function ownBag(instance: PlanInstance, { call, packer }: PlannedCall): string | null {
  const part = instance.parts.find(({ name }) => name === call.part);
  return part && packerOf(part, call) === part.rider && packer === part.rider ? part.bag : null;
}

function needProblems(instance: PlanInstance, plan: Plan): string[] {
  const problems: string[] = [];
  const table = openTable(instance);
  const bought = { goods: new Map<string, number>(), workshop: new Map<string, number>() };
  for (const { offer: id, packs } of plan.bought) {
    const offer = instance.offers.find((one) => one.id === id);
    const most = table.offers.find(({ offer: one }) => one.id === id)?.most_packs ?? 0;
    if (!offer || table.lateOffers.includes(id)) {
      problems.push(`The offer "${id}" is bought and does not come in time.`);
      continue;
    }
    if (!Number.isSafeInteger(packs) || packs < 0 || packs > most)
      problems.push(`The offer "${id}" is bought ${packs} times; 0 to ${most} can serve.`);
    for (const [part, pieces] of offer.covers)
      bought[offer.kind].set(part, (bought[offer.kind].get(part) ?? 0) + packs * pieces);
  }
  const wanted = new Map<string, { need: number; sentOut: number }>();
  const stocks = new Map(instance.parts.map((part) => [part.name, stockOf(part)]));
  for (const { call } of plannedCalls(instance, plan)) {
    const stock = stocks.get(call.part) ?? call.part;
    const { need, sentOut } = wanted.get(stock) ?? { need: 0, sentOut: 0 };
    wanted.set(stock, { need: need + call.need, sentOut: sentOut + call.sent_out });
  }
  const shelf = onShelf(instance.parts);
  for (const [stock, { need, sentOut }] of wanted) {
    const pieces = (shelf.get(stock) ?? 0) + (bought.goods.get(stock) ?? 0);
    if (pieces < need) problems.push(`${stock} needs ${need} pieces and gets ${pieces}.`);
    const paid = bought.workshop.get(stock) ?? 0;
    if (paid < sentOut) problems.push(`${stock} is sent out ${sentOut} times, and ${paid} are paid for.`);
  }
  return problems;
}
