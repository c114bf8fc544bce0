import type { PlanInstance, PlanOffer } from '../../src/plan/plan-instance.ts';
import type { SolvedPlan } from '../../src/plan/plan-result.ts';

/** One line of an order: so many packs of one offer. */
export interface OrderLine {
  readonly partNumber: string;
  /** `Battery`, or `Fork seals, 2` where a pack holds several. */
  readonly covers: readonly string[];
  /** A pack for several parts. */
  readonly isKit: boolean;
  readonly packs: number;
  /** Money. */
  readonly each: number;
  readonly sum: number;
  /** Whole days; null when it can be had at once. */
  readonly arrivesInDays: number | null;
}

/** All that is bought from one supplier. */
export interface Order {
  readonly supplier: string;
  readonly lines: readonly OrderLine[];
  readonly goods: number;
  readonly freight: number;
  readonly free: boolean;
  /** Sum from which freight is free; null: never. */
  readonly freeFrom: number | null;
  /** The slowest of its lines; null when all can be had at once. */
  readonly arrivesInDays: number | null;
  /** Days from today on which it must be ordered at the latest; null without a cut-off. */
  readonly orderWithinDays: number | null;
}

/** An offer that comes too late to be bought. */
export interface LateOffer {
  readonly supplier: string;
  readonly partNumber: string;
  readonly covers: readonly string[];
  readonly arrivesInDays: number;
  /** By how many days it is late. */
  readonly lateByDays: number;
}

/**
 * The plan's purchases, supplier by supplier, the one to be ordered first in front. Order by: the cut-off less
 * the margin less the slowest line's days.
 *
 * Example: cut-off in 19 days, margin 3, the slowest line 6 days: to be ordered within 10 days.
 */
export function ordersOf(instance: PlanInstance, solved: SolvedPlan): readonly Order[] {
  const offers = new Map(instance.offers.map((offer) => [offer.id, offer]));
  const orders = solved.totals.suppliers.map(({ supplier, goods, freight, free }): Order => {
    const lines = solved.plan.bought.flatMap(({ offer: id, packs }) => {
      const offer = offers.get(id);
      return offer?.supplier === supplier ? [lineOf(offer, packs)] : [];
    });
    const days = lines.flatMap((line) => line.arrivesInDays ?? []);
    const slowest = days.length === 0 ? null : Math.max(...days);
    return {
      supplier,
      lines,
      goods,
      freight,
      free,
      freeFrom: instance.suppliers.find(({ name }) => name === supplier)?.free_from ?? null,
      arrivesInDays: slowest,
      orderWithinDays:
        instance.days_to_cut_off === null
          ? null
          : instance.days_to_cut_off - instance.margin_days - (slowest ?? 0),
    };
  });
  return orders.sort((a, b) => (a.orderWithinDays ?? 0) - (b.orderWithinDays ?? 0));
}

function lineOf(offer: PlanOffer, packs: number): OrderLine {
  return {
    partNumber: offer.part_number,
    covers: coversWords(offer),
    isKit: offer.covers.length > 1,
    packs,
    each: offer.price,
    sum: packs * offer.price,
    arrivesInDays: offer.arrives_in_days,
  };
}

const coversWords = (offer: PlanOffer): readonly string[] =>
  offer.covers.map(([part, pieces]) => (pieces === 1 ? part : `${part}, ${pieces}`));

/** What was left off the table because it comes too late, the latest last. */
export function lateOffers(instance: PlanInstance, solved: SolvedPlan): readonly LateOffer[] {
  const late = new Set(solved.late_offers);
  const inTime = (instance.days_to_cut_off ?? 0) - instance.margin_days;
  return instance.offers
    .filter((offer) => late.has(offer.id))
    .map((offer) => ({
      supplier: offer.supplier,
      partNumber: offer.part_number,
      covers: coversWords(offer),
      arrivesInDays: offer.arrives_in_days ?? 0,
      lateByDays: (offer.arrives_in_days ?? 0) - inTime,
    }))
    .sort((a, b) => a.lateByDays - b.lateByDays);
}
