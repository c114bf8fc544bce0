import type { RecordKind } from './frame.ts';
import type { NoPrice } from './read-price.ts';

/** A row of a price list as taken in. */
export interface PriceRow {
  /** Record of the file, from 0. */
  readonly record: number;
  /** Line of the file, from 1. */
  readonly line: number;
  readonly partNumber: string | null;
  readonly description: string | null;
  /** Amount of money, in `currency`, for `priceFor` of `unit`. As the file has it: no discount is taken off. */
  readonly price: number;
  /** ISO 4217; null: not known, and the match has a question for it. */
  readonly currency: string | null;
  /** How many the price stands for; 1 where the file does not say otherwise. */
  readonly priceFor: number;
  /** What the price is for, in the file's words; null where it says nothing. */
  readonly unit: string | null;
  /** Pieces from which on the price holds; null where the file says nothing. */
  readonly fromQuantity: number | null;
  /** Pieces in a pack. */
  readonly packQuantity: number | null;
  /** Discount in the file, as a share of 1; not taken off the price. */
  readonly discountShare: number | null;
  /** Tax rate in the file, as a share of 1. */
  readonly taxShare: number | null;
  readonly leadDays: number | null;
  readonly supplier: string | null;
  readonly fits: string | null;
  /** Pieces in stock, or the file's words for it. */
  readonly stock: number | string | null;
  /** The heading above the row; null where there is none. */
  readonly section: string | null;
  /** Sentences; empty for a row that is taken as it stands. */
  readonly remarks: readonly string[];
}

/** Why a row is set aside. */
export type AsideReason =
  | NoPrice
  | 'quantity-scale' // several prices of one part by quantity: needs a choice
  | 'other-quantity' // of a scale of which another quantity is chosen
  | 'cut-off' // the row ends before its price
  | 'no-name' // neither part number nor description
  | 'follows-on' // goes on with the row above
  | 'heading'
  | Exclude<RecordKind, 'before' | 'head' | 'row'>;

/** A row that is not taken: kept whole, with its reason, to be mended or saved. */
export interface AsideRow {
  readonly record: number;
  readonly line: number;
  readonly reason: AsideReason;
  /** One sentence: why, and what mends it. */
  readonly sentence: string;
  /** The row as the file has it. */
  readonly raw: string;
}

/** Every row of a file: their counts add up to the records below its header. */
export interface SortedRows {
  readonly taken: readonly PriceRow[];
  readonly remarked: readonly PriceRow[];
  readonly aside: readonly AsideRow[];
}
