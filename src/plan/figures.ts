import { type PlanInstance, stockOf } from './plan-instance.ts';
import type { Plan } from './plan-result.ts';

/** A figure that a call may turn on, and the instance as it would be at another value of it. */
export interface Figure {
  readonly kind: 'price' | 'stranding' | 'rate';
  readonly now: number;
  readonly least: number;
  readonly most: number;
  readonly straight: boolean;
  /** Smallest step that is told apart. */
  readonly step: number;
  readonly instanceAt: (value: number) => PlanInstance;
}

/** What each call of one part costs without cash at a wear rate; calls that are absent keep their cost. */
export type CostsAtRate = (rate: number) => ReadonlyMap<string, number>;

const MOST_TIMES = 100;

const CENT = 0.01;

/**
 * The price of one piece of the part. All offers of this part alone move with it, whoever sells them, and
 * the calls' costs by their `per_price`; kits stay as they are.
 * @returns null where the part is in no offer of its own, or is given away
 */
export function priceFigure(instance: PlanInstance, part: string, plans: readonly Plan[]): Figure | null {
  const known = instance.parts.find(({ name }) => name === part);
  const stock = known === undefined ? part : stockOf(known);
  const isOwn = ({ covers, kind }: PlanInstance['offers'][number]): boolean =>
    kind === 'goods' && covers.length === 1 && covers[0]?.[0] === stock;
  const own = instance.offers.filter(isOwn);
  const bought = new Set(plans.flatMap(({ bought: offers }) => offers.map(({ offer }) => offer)));
  const perPiece = (offer: PlanInstance['offers'][number]): number =>
    offer.price / (offer.covers[0]?.[1] ?? 1);
  const usual = own.filter(({ id }) => bought.has(id));
  const now = Math.min(...(usual.length > 0 ? usual : own).map(perPiece));
  if (!Number.isFinite(now) || now <= 0) return null;
  return {
    kind: 'price',
    now,
    least: 0,
    most: MOST_TIMES * now,
    straight: true,
    step: CENT / 2,
    instanceAt: (price) => ({
      ...instance,
      offers: instance.offers.map((offer) =>
        isOwn(offer) ? { ...offer, price: (offer.price * price) / now } : offer,
      ),
      calls: shifted(instance, part, (call) => call.per_price * (price - now)),
    }),
  };
}

/** What one stranding by the part costs. Null where the part has no such figure, or no call feels it. */
export function strandingFigure(instance: PlanInstance, part: string): Figure | null {
  const now = instance.parts.find(({ name }) => name === part)?.stranding_cost ?? null;
  if (now === null) return null;
  if (instance.calls.every((call) => call.part !== part || call.per_stranding === 0)) return null;
  return {
    kind: 'stranding',
    now,
    least: 0,
    most: MOST_TIMES * Math.max(now, 1),
    straight: true,
    step: CENT / 2,
    instanceAt: (cost) => ({
      ...instance,
      calls: shifted(instance, part, (call) => call.per_stranding * (cost - now)),
    }),
  };
}

/** How fast the part wears, from a fifth to five times the rate now. */
export function rateFigure(
  instance: PlanInstance,
  part: string,
  now: number,
  costsAt: CostsAtRate,
): Figure | null {
  if (!(now > 0)) return null;
  return {
    kind: 'rate',
    now,
    least: now / 5,
    most: 5 * now,
    straight: false,
    step: now * 1e-9,
    instanceAt: (rate) => {
      const costs = costsAt(rate);
      return {
        ...instance,
        calls: shifted(
          instance,
          part,
          (call) => (costs.get(call.name) ?? call.cost_without_cash) - call.cost_without_cash,
        ),
      };
    },
  };
}

function shifted(
  { calls }: PlanInstance,
  part: string,
  by: (call: PlanInstance['calls'][number]) => number,
): PlanInstance['calls'] {
  return calls.map((call) =>
    call.part === part ? { ...call, cost_without_cash: call.cost_without_cash + by(call) } : call,
  );
}

/** The instance with every other part's call held as the plan has it; the part's own set is left free. */
export function othersHeld(instance: PlanInstance, part: string, plan: Plan): PlanInstance {
  const setOf = new Map(instance.parts.map(({ name, set }) => [name, set]));
  const set = setOf.get(part) ?? null;
  const isFree = (name: string): boolean => name === part || (set !== null && setOf.get(name) === set);
  const held = plan.chosen.filter((chosen) => !isFree(chosen.part));
  const own = instance.pins.filter((pin) => isFree(pin.part));
  return { ...instance, pins: [...held.map(({ part: name, call }) => ({ part: name, call })), ...own] };
}

/** The instance with the part's call set, and no call of the part forbidden that was not. */
export function withCall(instance: PlanInstance, part: string, call: string): PlanInstance {
  return { ...instance, pins: [...instance.pins.filter((pin) => pin.part !== part), { part, call }] };
}

/** The instance with that call of the part forbidden, and the part not set by hand. */
export function withoutCall(instance: PlanInstance, part: string, call: string): PlanInstance {
  return {
    ...instance,
    pins: instance.pins.filter((pin) => pin.part !== part),
    forbidden: [...instance.forbidden, { part, call }],
  };
}
