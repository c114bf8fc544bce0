import type { PriceRow } from './price-row.ts';
import { rowKey } from './quantity-scale.ts';

/** What is compared of an offer; a PriceRow has it all. */
export type ListedOffer = Pick<PriceRow, 'partNumber' | 'description' | 'price' | 'currency' | 'priceFor'>;

export interface OfferChange<Offer> {
  readonly before: Offer;
  readonly after: Offer;
  /** After less before, in their currency, for as many as the price is for. */
  readonly difference: number;
  /** Difference as a share of the price before: 0.1 is 10% dearer. */
  readonly share: number;
}

export interface ListComparison<Offer> {
  readonly added: readonly Offer[];
  readonly gone: readonly Offer[];
  /** From the largest rise, as a share. */
  readonly dearer: readonly OfferChange<Offer>[];
  /** From the largest fall, as a share. */
  readonly cheaper: readonly OfferChange<Offer>[];
  readonly unchanged: readonly OfferChange<Offer>[];
  /** Cannot be compared: another currency or another number of pieces, or a part that stands in a list twice. */
  readonly unclear: readonly { readonly before: Offer; readonly after: Offer; readonly sentence: string }[];
}

/**
 * A supplier's newer list against the older one, offer by offer, by part number or else by description.
 *
 * @example compareLists(old, now).dearer[0]
 * // { before: {..., price: 100}, after: {..., price: 110}, difference: 10, share: 0.1 }
 */
export function compareLists<Offer extends ListedOffer>(
  before: readonly Offer[],
  after: readonly Offer[],
): ListComparison<Offer> {
  const older = groups(before);
  const newer = groups(after);
  const comparison = {
    added: [] as Offer[],
    gone: [] as Offer[],
    dearer: [] as OfferChange<Offer>[],
    cheaper: [] as OfferChange<Offer>[],
    unchanged: [] as OfferChange<Offer>[],
    unclear: [] as { before: Offer; after: Offer; sentence: string }[],
  };
  for (const [key, offers] of newer) {
    const olds = older.get(key) ?? [];
    const isSingle = offers.length === 1 && olds.length === 1;
    for (let at = 0; at < Math.max(offers.length, olds.length); at += 1) {
      const offer = offers[at];
      const old = olds[at];
      if (offer === undefined) comparison.gone.push(old!);
      else if (old === undefined) comparison.added.push(offer);
      else sortChange(old, offer, isSingle || samePrices(olds, offers), comparison);
    }
  }
  for (const [key, offers] of older) if (!newer.has(key)) comparison.gone.push(...offers);
  comparison.dearer.sort((a, b) => b.share - a.share);
  comparison.cheaper.sort((a, b) => a.share - b.share);
  return comparison;
}

function groups<Offer extends ListedOffer>(offers: readonly Offer[]): ReadonlyMap<string, Offer[]> {
  const grouped = new Map<string, Offer[]>();
  for (const offer of offers) {
    const key = rowKey(offer);
    const held = grouped.get(key);
    if (held === undefined) grouped.set(key, [offer]);
    else held.push(offer);
  }
  return grouped;
}

function samePrices(before: readonly ListedOffer[], after: readonly ListedOffer[]): boolean {
  return (
    before.length === after.length &&
    before.every((offer, at) => offer.price === after[at]!.price && offer.currency === after[at]!.currency)
  );
}

function sortChange<Offer extends ListedOffer>(
  before: Offer,
  after: Offer,
  isSingle: boolean,
  into: {
    dearer: OfferChange<Offer>[];
    cheaper: OfferChange<Offer>[];
    unchanged: OfferChange<Offer>[];
    unclear: { before: Offer; after: Offer; sentence: string }[];
  },
): void {
  const unclear = unclearWords(before, after, isSingle);
  if (unclear !== null) {
    into.unclear.push({ before, after, sentence: unclear });
    return;
  }
  // Prices have few decimals: what binary fractions add is none of the difference.
  const difference = Number((after.price - before.price).toPrecision(12));
  const change = { before, after, difference, share: difference / before.price };
  if (difference > 0) into.dearer.push(change);
  else if (difference < 0) into.cheaper.push(change);
  else into.unchanged.push(change);
}

function unclearWords(before: ListedOffer, after: ListedOffer, isSingle: boolean): string | null {
  const name = after.partNumber ?? after.description ?? 'The offer';
  if (before.currency !== after.currency) {
    return `${name} was in ${before.currency ?? 'no known currency'} and is in ${after.currency ?? 'no known currency'}: the prices are not compared.`;
  }
  if (before.priceFor !== after.priceFor) {
    return `${name} was priced for ${before.priceFor} and is priced for ${after.priceFor}: the prices are not compared.`;
  }
  return isSingle ? null : `${name} stands in a list more than once: which price follows which is not clear.`;
}
