import { mendLetters } from '../../import/letter-figure.ts';
import type { AsideReason } from '../../import/price-row.ts';

/** What can be done in one step for a row that is set aside. */
export interface MendOffer {
  /** Prices to choose from, as the file writes them. */
  readonly prices: readonly string[];
  /** What may be typed instead: its price, its name, or nothing. */
  readonly types: 'price' | 'name' | null;
}

/** Rows that are none: headings, totals and the like. They are kept and can be saved, but need no mending. */
const NO_ROW: ReadonlySet<AsideReason> = new Set<AsideReason>([
  'follows-on',
  'heading',
  'empty',
  'section',
  'total',
  'note',
  'setting',
  'head-again',
  'other-quantity',
]);

/** Is the record no row of the table at all, rather than one that could not be taken? */
export function isNoRow(reason: AsideReason): boolean {
  return NO_ROW.has(reason);
}

/** Records that were told from the rows by their looks alone, so that the rider may know better. */
const BY_LOOKS: ReadonlySet<string> = new Set<AsideReason>([
  'section',
  'total',
  'note',
  'setting',
  'head-again',
]);

/** Can a record be taken as a row all the same? */
export function mayBeRow(reason: string): boolean {
  return BY_LOOKS.has(reason);
}

/**
 * What mends a row that was set aside, from its reason and its price field.
 *
 * @example mendOffer('two-prices', '24,80/46,00') // { prices: ['24,80', '46,00'], types: 'price' }
 * @example mendOffer('letter-in-figure', '31,5O') // { prices: ['31,50'], types: 'price' }
 */
export function mendOffer(reason: AsideReason, field: string): MendOffer {
  if (isNoRow(reason) || reason === 'either-mark' || reason === 'quantity-scale')
    return { prices: [], types: null };
  if (reason === 'no-name') return { prices: [], types: 'name' };
  if (reason === 'two-prices' || reason === 'price-range') {
    return { prices: [...new Set(field.match(/\d[\d.,'’]*\d|\d/g) ?? [])].slice(0, 3), types: 'price' };
  }
  const mended = reason === 'letter-in-figure' ? mendLetters(field.trim()) : null;
  return { prices: mended === null ? [] : [mended], types: 'price' };
}
