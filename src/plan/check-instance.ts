import { type PlanInstance, type PlanPack, stockOf } from './plan-instance.ts';
import type { PlanFault } from './plan-result.ts';

/** Figures beyond this are slips of the pen, and would spoil the solver's arithmetic. */
const MOST = 1e9;

/** Above this a limit on the chance of a stranding is no limit: leave it empty. */
export const MOST_TRIP_RISK = 0.999_999;

/** Gathers faults; each question is one line where it is asked. */
class Faults {
  readonly found: PlanFault[] = [];

  /** A figure between `least` and `most`. */
  figure(what: string, value: number, least = 0, most = MOST): void {
    if (Number.isFinite(value) && value >= least && value <= most) return;
    this.found.push({
      kind: 'figure',
      message: `${what} is ${value}.`,
      mend: `It must be a number from ${least} to ${most}.`,
    });
  }

  limit(what: string, value: number | null, most = MOST): void {
    if (value !== null) this.figure(what, value, 0, most);
  }

  whole(what: string, value: number, least: number): void {
    if (Number.isSafeInteger(value) && value >= least && value <= 1000) return;
    this.found.push({
      kind: 'figure',
      message: `${what} is ${value}.`,
      mend: `It must be a whole number from ${least} to 1000.`,
    });
  }

  known(what: string, name: string, names: ReadonlySet<string>, kind: string): void {
    if (names.has(name)) return;
    this.found.push({
      kind: 'name',
      message: `${what} names the ${kind} "${name}", which is not there.`,
      mend: `Add the ${kind}, or correct the name.`,
    });
  }

  /** Returns the names as a set, after a fault for each that stands twice or is empty. */
  unique(kind: string, names: readonly string[], mayBeEmpty = false): ReadonlySet<string> {
    const seen = new Set<string>();
    for (const name of names) {
      if (name === '' && !mayBeEmpty)
        this.found.push({
          kind: 'text',
          message: `There is a ${kind} without a name.`,
          mend: 'Give it a name.',
        });
      else if (seen.has(name))
        this.found.push({
          kind: 'name',
          message: `The ${kind} "${name}" is there twice.`,
          mend: 'Rename one of the two, or take it out.',
        });
      seen.add(name);
    }
    return seen;
  }
}

/**
 * What is wrong with the data of a plan, before anything is solved; empty when nothing is. A pin that is not
 * allowed and a part without any open call are no faults: the plan goes on without them and says so.
 *
 * Example: an offer of a supplier that is not in `suppliers` gives
 * 'The offer "NG-1104" names the supplier "Northgat", which is not there.'
 */
export function checkInstance(instance: PlanInstance): readonly PlanFault[] {
  const faults = new Faults();
  const parts = faults.unique(
    'part',
    instance.parts.map(({ name }) => name),
  );
  const packs = faults.unique(
    'pack',
    instance.limits.packs.map(({ rider }) => rider),
    // Who rides alone needs no name.
    true,
  );
  checkLimits(instance, faults);
  checkParts(instance, faults, packs);
  checkCalls(instance, faults, parts, packs);
  checkOffers(instance, faults, new Set(instance.parts.map(stockOf)));
  for (const [list, word] of [
    [instance.pins, 'pin'],
    [instance.forbidden, 'forbidden call'],
  ] as const) {
    for (const { part, call } of list) {
      const calls = new Set(instance.calls.filter((one) => one.part === part).map(({ name }) => name));
      faults.known(`The ${word} of ${part}`, call, calls, 'call');
    }
  }
  faults.unique(
    'part with a pin',
    instance.pins.map(({ part }) => part),
  );
  return faults.found;
}

function checkLimits({ limits, margin_days, days_to_cut_off }: PlanInstance, faults: Faults): void {
  faults.limit('The limit of cash', limits.cash);
  faults.limit('The limit of shed hours', limits.shed_hours);
  faults.limit('The limit of the chance of a stranding', limits.trip_risk, MOST_TRIP_RISK);
  faults.figure('The margin of days before the cut-off', margin_days);
  if (days_to_cut_off !== null) faults.figure('The time to the cut-off, days', days_to_cut_off, -MOST);
  for (const pack of limits.packs) checkPack(pack, faults);
}

function checkPack(pack: PlanPack, faults: Faults): void {
  faults.unique(
    `bag of ${pack.rider}`,
    pack.bags.map(({ name }) => name),
  );
  for (const [whose, holder] of [
    [`the pack of ${pack.rider}`, pack],
    ...pack.bags.map((bag) => [`the bag ${bag.name}`, bag] as const),
  ] as const) {
    faults.limit(`The limit of kg in ${whose}`, holder.mass_kg);
    faults.limit(`The limit of L in ${whose}`, holder.volume_L);
    faults.figure(`The kg already in ${whose}`, holder.packed_kg);
    faults.figure(`The L already in ${whose}`, holder.packed_L);
  }
}

function checkParts(instance: PlanInstance, faults: Faults, packs: ReadonlySet<string>): void {
  for (const part of instance.parts) {
    faults.whole(`The number of ${part.name} on hand`, part.on_hand, 0);
    faults.limit(`The cost of a stranding by ${part.name}`, part.stranding_cost);
    faults.known(part.name, part.rider, packs, 'pack of the rider');
    if (part.bag === null) continue;
    // A bag that it would rather go into may be one that is not taken along: only one it must go into has to be.
    const pack = instance.limits.packs.find(({ rider }) => rider === part.rider);
    faults.known(part.name, part.bag, new Set(pack?.bags.map(({ name }) => name)), 'bag');
  }
}

function checkCalls(
  instance: PlanInstance,
  faults: Faults,
  parts: ReadonlySet<string>,
  packs: ReadonlySet<string>,
): void {
  const jobs = faults.unique(
    'job',
    instance.jobs.map(({ name }) => name),
  );
  for (const job of instance.jobs) {
    faults.figure(`The setting up of ${job.name}, h`, job.setup_hours);
    faults.figure(`The cost of setting up ${job.name}`, job.setup_cost);
  }
  const callsByPart = new Map<string, string[]>();
  for (const call of instance.calls) {
    const what = `${call.part}, ${call.name}`;
    faults.known(`The call ${call.name}`, call.part, parts, 'part');
    callsByPart.set(call.part, [...(callsByPart.get(call.part) ?? []), call.name]);
    faults.figure(`The expected cost without cash of ${what}`, call.cost_without_cash, -MOST);
    faults.figure(`The change of cost with the price of ${what}`, call.per_price, -MOST);
    faults.figure(`The change of cost with the cost of a stranding of ${what}`, call.per_stranding, -MOST);
    faults.whole(`The pieces needed for ${what}`, call.need, 0);
    faults.whole(`The pieces sent out for ${what}`, call.sent_out, 0);
    faults.figure(`The kg packed for ${what}`, call.mass_kg);
    faults.figure(`The L packed for ${what}`, call.volume_L);
    faults.figure(`The shed hours of ${what}`, call.shed_hours);
    faults.figure(`The chance of a stranding of ${what}`, call.strand_chance, 0, 1);
    if (call.carried_by !== null) faults.known(what, call.carried_by, packs, 'pack of the rider');
    for (const job of call.jobs) faults.known(what, job, jobs, 'job');
  }
  for (const [part, names] of callsByPart) faults.unique(`call of ${part}`, names);
}

function checkOffers(instance: PlanInstance, faults: Faults, parts: ReadonlySet<string>): void {
  const suppliers = faults.unique(
    'supplier',
    instance.suppliers.map(({ name }) => name),
  );
  for (const { name, freight, free_from } of instance.suppliers) {
    faults.figure(`The freight of ${name}`, freight);
    faults.limit(`The sum from which ${name} sends freight free`, free_from);
  }
  faults.unique(
    'offer',
    instance.offers.map(({ id }) => id),
  );
  for (const offer of instance.offers) {
    const what = `The offer "${offer.id}"`;
    faults.known(what, offer.supplier, suppliers, 'supplier');
    faults.figure(`The price of the offer "${offer.id}"`, offer.price);
    if (offer.arrives_in_days !== null) faults.figure(`${what}: its days`, offer.arrives_in_days);
    for (const [part, pieces] of offer.covers) {
      faults.known(what, part, parts, 'part');
      faults.whole(`The number of ${part} in the offer "${offer.id}"`, pieces, 1);
    }
    faults.unique(
      `part covered by the offer "${offer.id}"`,
      offer.covers.map(([part]) => part),
    );
  }
}
