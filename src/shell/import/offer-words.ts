import { showAmount, showCount, showNumber } from '../../formula/show.ts';
import type { PriceRow } from '../../import/price-row.ts';

/** An offer in words: `Rear tyre 150/70-17, NG-1104`. */
export function offerWords({
  description,
  partNumber,
}: Pick<PriceRow, 'description' | 'partNumber'>): string {
  return (
    [description, partNumber].filter((text) => text !== null && text !== '').join(', ') || 'without a name'
  );
}

/** Its price with the money: `109.50 USD`, `40.00 USD for 100`. */
export function priceWords({
  price,
  currency,
  priceFor,
}: Pick<PriceRow, 'price' | 'currency' | 'priceFor'>): string {
  const many = priceFor === 1 ? '' : ` for ${showNumber(priceFor)}`;
  return `${showAmount(price)}${currency === null ? '' : ` ${currency}`}${many}`;
}

/** A share as a percentage with its sign: `+5.3 %`. */
export function shareWords(share: number): string {
  const size = Math.abs(share * 100);
  return `${share < 0 ? '−' : '+'}${showNumber(size, size < 0.05 ? 2 : 1)} %`;
}

/** `1 row`, `19 rows`. */
export function countWords(count: number, one: string, many: string): string {
  return `${showCount(count)} ${count === 1 ? one : many}`;
}
