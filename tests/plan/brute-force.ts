import type { PlanBag, PlanCall, PlanInstance, PlanOffer, PlanPart } from '../../src/plan/plan-instance.ts';

/** What trying everything finds: the least cost, and how equal plans are told apart. */
export interface BruteAnswer {
  readonly cost: number;
  /** Sum over the limits of what is short, in shares of the limit; 0 where a plan fits. */
  readonly shortfall: number;
  /** Fewest packs bought among the plans of that cost, then the least sum of the calls' places. */
  readonly packs: number;
  readonly places: number;
}

/** One way to shop: how many packs of each offer, and what that costs with freight. */
interface Basket {
  readonly paid: number;
  readonly packs: number;
  readonly goods: ReadonlyMap<string, number>;
  readonly workshop: ReadonlyMap<string, number>;
}

interface Choice {
  readonly part: PlanPart;
  readonly call: PlanCall;
  readonly place: number;
  readonly bag: PlanBag | null;
}

const SAME_MONEY = 1e-5;
const SAME_SHARE = 1e-6;

/**
 * The best plan by trying every combination of calls (and bags) with every basket. Written from section 7 of
 * the model alone: it shares no code with src/plan, which it is there to check. Only for a few parts.
 * @returns null where no combination keeps the rules, whatever the limits
 */
export function bruteForce(instance: PlanInstance): BruteAnswer | null {
  const offers = instance.offers.filter(
    ({ arrives_in_days: days }) =>
      days === null ||
      instance.days_to_cut_off === null ||
      days + instance.margin_days <= instance.days_to_cut_off,
  );
  const choices = instance.parts
    .map((part) => choicesOf(instance, offers, part))
    .filter((own) => own.length > 0);
  // A call set by hand that is not open is refused, and the plan goes on without it.
  const pins = instance.pins.filter(({ part, call }) =>
    choices.flat().some((one) => one.part.name === part && one.call.name === call),
  );
  const baskets = allBaskets(instance, offers, choices);
  let best: BruteAnswer | null = null;
  for (const chosen of combinations(choices)) {
    if (!setsHold(chosen)) continue;
    const pinsHold = pins.every(
      ({ part, call }) => !chosen.some((one) => one.part.name === part && one.call.name !== call),
    );
    if (!pinsHold) continue;
    // Baskets come from the cheapest: what is dearer costs more, and is short of no less cash.
    let cheapest: number | null = null;
    for (const basket of baskets) {
      if (cheapest !== null && basket.paid > cheapest + SAME_MONEY) break;
      if (!covers(basket, chosen, instance.parts)) continue;
      cheapest ??= basket.paid;
      const found = {
        cost:
          basket.paid +
          add(chosen.map(({ call }) => call.cost_without_cash)) +
          add(openJobs(instance, chosen).map(({ setup_cost }) => setup_cost)),
        shortfall: shortfallOf(instance, chosen, basket.paid),
        packs: basket.packs,
        places: add(chosen.map(({ place }) => place)),
      };
      if (best === null || isBetter(found, best)) best = found;
    }
  }
  return best;
}

function isBetter(one: BruteAnswer, other: BruteAnswer): boolean {
  if (Math.abs(one.shortfall - other.shortfall) > SAME_SHARE) return one.shortfall < other.shortfall;
  if (Math.abs(one.cost - other.cost) > SAME_MONEY) return one.cost < other.cost;
  return one.packs === other.packs ? one.places < other.places : one.packs < other.packs;
}

const add = (figures: readonly number[]): number => figures.reduce((total, figure) => total + figure, 0);

function choicesOf(instance: PlanInstance, offers: readonly PlanOffer[], part: PlanPart): Choice[] {
  const stock = part.stock ?? part.name;
  const sold = (kind: PlanOffer['kind']): boolean =>
    offers.some((offer) => offer.kind === kind && offer.covers.some(([name]) => name === stock));
  const onHand = add(
    instance.parts.filter((one) => (one.stock ?? one.name) === stock).map((one) => one.on_hand),
  );
  return instance.calls
    .filter((call) => call.part === part.name && call.held_back === null)
    .filter((call) => !instance.forbidden.some((no) => no.part === part.name && no.call === call.name))
    .filter((call) => call.need <= onHand || sold('goods'))
    .filter((call) => call.sent_out === 0 || sold('workshop'))
    .flatMap((call, place): Choice[] => {
      const bags =
        instance.limits.packs.find(({ rider }) => rider === (call.carried_by ?? part.rider))?.bags ?? [];
      const packs = call.mass_kg > 0 || call.volume_L > 0;
      if (bags.length === 0 || !packs) return [{ part, call, place, bag: null }];
      const own = call.carried_by === null || call.carried_by === part.rider ? part.bag : null;
      return bags
        .filter(({ name }) => own === null || name === own)
        .map((bag) => ({ part, call, place, bag }));
    });
}

function* combinations(choices: readonly (readonly Choice[])[]): Generator<Choice[]> {
  const [first, ...rest] = choices;
  if (!first) {
    yield [];
    return;
  }
  for (const others of combinations(rest)) for (const one of first) yield [one, ...others];
}

function allBaskets(
  instance: PlanInstance,
  offers: readonly PlanOffer[],
  choices: readonly (readonly Choice[])[],
): Basket[] {
  const counts = offers.map((offer) => {
    let most = 0;
    for (const [name, pieces] of offer.covers) {
      // The most that all parts of that name can want together.
      const wanted = add(
        choices
          .filter((own) => own[0] !== undefined && (own[0].part.stock ?? own[0].part.name) === name)
          .map((own) =>
            Math.max(...own.map(({ call }) => (offer.kind === 'goods' ? call.need : call.sent_out))),
          ),
      );
      most = Math.max(most, Math.ceil(wanted / pieces));
    }
    return most;
  });
  let vectors: number[][] = [[]];
  for (const most of counts)
    vectors = vectors.flatMap((vector) => Array.from({ length: most + 1 }, (_, packs) => [...vector, packs]));
  return vectors.map((vector) => basketOf(instance, offers, vector)).sort((a, b) => a.paid - b.paid);
}

function basketOf(instance: PlanInstance, offers: readonly PlanOffer[], vector: readonly number[]): Basket {
  let paid = 0;
  for (const { name, freight, free_from } of instance.suppliers) {
    const goods = add(offers.map((offer, o) => (offer.supplier === name ? offer.price * vector[o]! : 0)));
    const buys = offers.some((offer, o) => offer.supplier === name && vector[o]! > 0);
    paid += goods;
    if (buys && (free_from === null || goods < free_from - 1e-9)) paid += freight;
  }
  const got = { goods: new Map<string, number>(), workshop: new Map<string, number>() };
  offers.forEach((offer, o) => {
    for (const [name, pieces] of offer.covers)
      got[offer.kind].set(name, (got[offer.kind].get(name) ?? 0) + pieces * vector[o]!);
  });
  return { paid, packs: add(vector), ...got };
}

/** Like parts take from one shelf: what all of them want together is on it or bought. */
const covers = (basket: Basket, chosen: readonly Choice[], parts: readonly PlanPart[]): boolean =>
  [...new Set(parts.map((part) => part.stock ?? part.name))].every((stock) => {
    const takers = chosen.filter(({ part }) => (part.stock ?? part.name) === stock);
    const held = add(
      parts.filter((part) => (part.stock ?? part.name) === stock).map(({ on_hand }) => on_hand),
    );
    return (
      held + (basket.goods.get(stock) ?? 0) >= add(takers.map(({ call }) => call.need)) &&
      (basket.workshop.get(stock) ?? 0) >= add(takers.map(({ call }) => call.sent_out))
    );
  });

function setsHold(chosen: readonly Choice[]): boolean {
  const changed = ({ call }: Choice): boolean => call.kind === 'replace' || call.kind === 'keep';
  return chosen.every((one) =>
    chosen.every(
      (other) => one.part.set === null || one.part.set !== other.part.set || changed(one) === changed(other),
    ),
  );
}

const openJobs = (instance: PlanInstance, chosen: readonly Choice[]): PlanInstance['jobs'] =>
  instance.jobs.filter(({ name }) => chosen.some(({ call }) => call.jobs.includes(name)));

function shortfallOf(instance: PlanInstance, chosen: readonly Choice[], paid: number): number {
  const { limits } = instance;
  const short = (taken: number, limit: number | null): number => {
    if (limit === null || taken <= limit + 1e-9) return 0;
    return (taken - limit) / (limit > 0 ? limit : 1);
  };
  const jobs = openJobs(instance, chosen);
  const hours =
    add(chosen.map(({ call }) => call.shed_hours)) + add(jobs.map(({ setup_hours }) => setup_hours));
  let total = short(paid, limits.cash) + short(hours, limits.shed_hours);
  if (limits.trip_risk !== null) {
    const hazard = -add(chosen.map(({ call }) => Math.log(1 - call.strand_chance)));
    const allowed = -Math.log(1 - limits.trip_risk);
    if (hazard > allowed + 1e-9) total += (hazard - allowed) / (allowed > 0 ? allowed : -Math.log(0.99));
  }
  for (const pack of limits.packs) {
    const inPack = chosen.filter(({ part, call }) => (call.carried_by ?? part.rider) === pack.rider);
    total += short(pack.packed_kg + add(inPack.map(({ call }) => call.mass_kg)), pack.mass_kg);
    total += short(pack.packed_L + add(inPack.map(({ call }) => call.volume_L)), pack.volume_L);
    for (const bag of pack.bags) {
      const inBag = inPack.filter((one) => one.bag === bag);
      total += short(bag.packed_kg + add(inBag.map(({ call }) => call.mass_kg)), bag.mass_kg);
      total += short(bag.packed_L + add(inBag.map(({ call }) => call.volume_L)), bag.volume_L);
    }
  }
  return total;
}
