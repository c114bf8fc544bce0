import { type PlanCall, type PlanInstance, type PlanOffer, type PlanPart, stockOf } from './plan-instance.ts';
import type { RefusedPin, UndecidedPart } from './plan-result.ts';

/** A part with the calls that are open to it, in their order. */
export interface OpenPart {
  readonly part: PlanPart;
  readonly calls: readonly PlanCall[];
  /** The call that is set by hand, and allowed. */
  readonly pinned: PlanCall | null;
}

/** An offer on the table, with the most packs of it that can serve any use. */
export interface OpenOffer {
  readonly offer: PlanOffer;
  readonly most_packs: number;
}

/** What there is to choose from, once what cannot be chosen is taken out, with the reasons. */
export interface OpenTable {
  readonly parts: readonly OpenPart[];
  readonly offers: readonly OpenOffer[];
  readonly refusedPins: readonly RefusedPin[];
  readonly undecided: readonly UndecidedPart[];
  readonly lateOffers: readonly string[];
}

/**
 * The calls and offers that a plan may choose from: no call that is held back, forbidden, or needs what
 * nobody can deliver in time; no offer that comes after the cut-off less its margin.
 *
 * `most_packs` is enough for the largest need of every part that the offer covers, after what is on hand:
 * two tubes needed at most, none on hand, packs of two: 1.
 *
 * Takes an instance that `checkInstance` finds nothing wrong with; throws nothing.
 */
export function openTable(instance: PlanInstance): OpenTable {
  const inTime = instance.offers.filter((offer) => arrivesInTime(instance, offer));
  const supplied = suppliedParts(inTime);
  const forbidden = new Set(instance.forbidden.map(({ part, call }) => pairKey(part, call)));
  const callsByPart = callsOfParts(instance.calls);
  const shelf = onShelf(instance.parts);
  const pins = new Map(instance.pins.map(({ part, call }) => [part, call]));
  const parts: OpenPart[] = [];
  const refusedPins: RefusedPin[] = [];
  const undecided: UndecidedPart[] = [];
  for (const part of instance.parts) {
    const all = callsByPart.get(part.name) ?? [];
    const onHand = shelf.get(stockOf(part)) ?? 0;
    const closed = new Map(
      all.map((call) => [call.name, whyClosed(part, call, onHand, forbidden, supplied)]),
    );
    const calls = all.filter(({ name }) => closed.get(name) === null);
    const pin = pins.get(part.name);
    const pinned = calls.find(({ name }) => name === pin) ?? null;
    if (pin !== undefined && pinned === null)
      refusedPins.push({
        part: part.name,
        call: pin,
        sentence: `${part.name} cannot be set to "${pin}": ${closed.get(pin)}`,
      });
    if (calls.length > 0) parts.push({ part, calls, pinned });
    else undecided.push({ part: part.name, sentence: noCallSentence(part, all, closed) });
  }
  const offers = inTime
    .map((offer) => ({ offer, most_packs: mostPacks(offer, parts, shelf) }))
    .filter(({ most_packs }) => most_packs > 0);
  const lateOffers = instance.offers.filter((offer) => !inTime.includes(offer)).map(({ id }) => id);
  return { parts, offers, refusedPins, undecided, lateOffers };
}

/** Whether the offer is here by the cut-off less the margin; on that very day is in time. */
export function arrivesInTime(instance: PlanInstance, offer: PlanOffer): boolean {
  if (instance.days_to_cut_off === null || offer.arrives_in_days === null) return true;
  return offer.arrives_in_days <= instance.days_to_cut_off - instance.margin_days;
}

/** The calls of each part, in their order. */
export function callsOfParts(calls: readonly PlanCall[]): ReadonlyMap<string, readonly PlanCall[]> {
  const byPart = new Map<string, PlanCall[]>();
  for (const call of calls) {
    const known = byPart.get(call.part);
    if (known) known.push(call);
    else byPart.set(call.part, [call]);
  }
  return byPart;
}

/** Pieces on the shelf by stock: like parts share what each has. */
export function onShelf(parts: readonly PlanPart[]): ReadonlyMap<string, number> {
  const shelf = new Map<string, number>();
  for (const part of parts) shelf.set(stockOf(part), (shelf.get(stockOf(part)) ?? 0) + part.on_hand);
  return shelf;
}

/** Names may hold any sign, so the two are told apart by their lengths. */
const pairKey = (part: string, call: string): string => `${part.length} ${part}${call}`;

interface Supplied {
  readonly goods: ReadonlySet<string>;
  readonly workshop: ReadonlySet<string>;
}

function suppliedParts(offers: readonly PlanOffer[]): Supplied {
  const of = (kind: PlanOffer['kind']): Set<string> =>
    new Set(
      offers.filter((offer) => offer.kind === kind).flatMap(({ covers }) => covers.map(([part]) => part)),
    );
  return { goods: of('goods'), workshop: of('workshop') };
}

function whyClosed(
  part: PlanPart,
  call: PlanCall,
  onHand: number,
  forbidden: ReadonlySet<string>,
  supplied: Supplied,
): string | null {
  if (call.held_back !== null) return call.held_back;
  if (forbidden.has(pairKey(part.name, call.name))) return 'It is forbidden by hand.';
  if (call.need > onHand && !supplied.goods.has(stockOf(part)))
    return 'No offer brings it in time, and too few are on hand.';
  if (call.sent_out > 0 && !supplied.workshop.has(stockOf(part))) return 'No workshop has it back in time.';
  return null;
}

function noCallSentence(
  part: PlanPart,
  calls: readonly PlanCall[],
  closed: ReadonlyMap<string, string | null>,
): string {
  if (calls.length === 0) return `${part.name} has no call to choose from.`;
  const reasons = calls.map(({ name }) => `${name}: ${closed.get(name)}`);
  return `No call is open to ${part.name}, so the plan leaves it out. ${reasons.join(' ')}`;
}

/** Enough for the largest need of every part that takes the piece, after what is on the shelf. */
function mostPacks(offer: PlanOffer, parts: readonly OpenPart[], shelf: ReadonlyMap<string, number>): number {
  let most = 0;
  for (const [stock, pieces] of offer.covers) {
    const takers = parts.filter(({ part }) => stockOf(part) === stock);
    const wanted = takers.reduce(
      (sum, { calls }) =>
        sum + Math.max(...calls.map((call) => (offer.kind === 'goods' ? call.need : call.sent_out))),
      0,
    );
    const held = offer.kind === 'goods' ? (shelf.get(stock) ?? 0) : 0;
    most = Math.max(most, Math.ceil(Math.max(0, wanted - held) / pieces));
  }
  return most;
}
