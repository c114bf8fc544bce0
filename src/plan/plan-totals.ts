import { fitsNew, type PlanCall, type PlanInstance, type PlanPack, packerOf } from './plan-instance.ts';
import type { PackTotal, Plan, PlanTotals, SupplierTotal } from './plan-result.ts';

/** Sums of money are told apart above this: a ten-thousandth of a cent, far over rounding error. */
export const MONEY_TOLERANCE = 1e-6;

/** A call of the plan with what stands behind it. */
export interface PlannedCall {
  readonly call: PlanCall;
  readonly packer: string;
  readonly bag: string | null;
}

/** The plan's calls with their figures. Throws RangeError for a part or call that the instance has not. */
export function plannedCalls(instance: PlanInstance, plan: Plan): readonly PlannedCall[] {
  const parts = new Map(instance.parts.map((part) => [part.name, part]));
  return plan.chosen.map((chosen) => {
    const part = parts.get(chosen.part);
    const call = instance.calls.find(({ part: of, name }) => of === chosen.part && name === chosen.call);
    if (!part || !call)
      throw new RangeError(`The plan has "${chosen.call}" for ${chosen.part}, unknown here.`);
    return { call, packer: packerOf(part, call), bag: chosen.bag };
  });
}

/**
 * What a plan comes to, reckoned in plain code from its whole figures and the instance alone.
 *
 * Freight is charged once for each supplier that anything is bought from, and is free where the goods
 * bought there come to `free_from` or more (a sum short by under 1e-6 counts as reached: rounding).
 * Example: goods of 131 at a supplier with freight 12, free from 100: cash 131; goods of 99: cash 111.
 */
export function planTotals(instance: PlanInstance, plan: Plan): PlanTotals {
  const planned = plannedCalls(instance, plan);
  const suppliers = supplierTotals(instance, plan);
  const goods = sum(suppliers.map((supplier) => supplier.goods));
  const freight = sum(suppliers.map((supplier) => supplier.freight));
  const openJobs = new Set(planned.flatMap(({ call }) => call.jobs));
  const setUp = instance.jobs.filter(({ name }) => openJobs.has(name));
  return {
    cash: goods + freight,
    goods,
    freight,
    suppliers,
    packs: instance.limits.packs.map((pack) => packTotal(pack, planned)),
    shed_hours:
      sum(setUp.map(({ setup_hours }) => setup_hours)) + sum(planned.map(({ call }) => call.shed_hours)),
    open_jobs: [...openJobs],
    expected_cost:
      goods +
      freight +
      sum(setUp.map(({ setup_cost }) => setup_cost)) +
      sum(planned.map(({ call }) => call.cost_without_cash)),
    trip_risk: 1 - planned.reduce((noneStrands, { call }) => noneStrands * (1 - call.strand_chance), 1),
  };
}

/** Names of the sets that are changed in part only: some of their parts get a new piece and some do not. */
export function brokenSets(instance: PlanInstance, plan: Plan): readonly string[] {
  const fitted = new Map<string, boolean>();
  const broken = new Set<string>();
  const setOf = new Map(instance.parts.map(({ name, set }) => [name, set]));
  for (const { call } of plannedCalls(instance, plan)) {
    const set = setOf.get(call.part) ?? null;
    if (set === null) continue;
    const before = fitted.get(set);
    if (before !== undefined && before !== fitsNew(call)) broken.add(set);
    fitted.set(set, fitsNew(call));
  }
  return [...broken];
}

function supplierTotals(instance: PlanInstance, plan: Plan): SupplierTotal[] {
  const offers = new Map(instance.offers.map((offer) => [offer.id, offer]));
  const goodsAt = new Map<string, number>();
  for (const { offer: id, packs } of plan.bought) {
    const offer = offers.get(id);
    if (!offer) throw new RangeError(`The plan buys the offer "${id}", unknown here.`);
    goodsAt.set(offer.supplier, (goodsAt.get(offer.supplier) ?? 0) + packs * offer.price);
  }
  return instance.suppliers.flatMap(({ name, freight, free_from }) => {
    const goods = goodsAt.get(name);
    if (goods === undefined) return [];
    const free = free_from !== null && goods >= free_from - MONEY_TOLERANCE;
    return [{ supplier: name, goods, freight: free ? 0 : freight, free }];
  });
}

function packTotal(pack: PlanPack, planned: readonly PlannedCall[]): PackTotal {
  const inPack = planned
    .filter(({ packer }) => packer === pack.rider)
    .map(({ call, bag }) => ({ ...call, bag }));
  const bags = pack.bags.map(({ name, packed_kg, packed_L }) => {
    const inBag = inPack.filter(({ bag }) => bag === name);
    return {
      name,
      mass_kg: packed_kg + sum(inBag.map(({ mass_kg }) => mass_kg)),
      volume_L: packed_L + sum(inBag.map(({ volume_L }) => volume_L)),
    };
  });
  return {
    rider: pack.rider,
    mass_kg: pack.packed_kg + sum(inPack.map(({ mass_kg }) => mass_kg)),
    volume_L: pack.packed_L + sum(inPack.map(({ volume_L }) => volume_L)),
    bags,
  };
}

const sum = (figures: readonly number[]): number => figures.reduce((total, figure) => total + figure, 0);
