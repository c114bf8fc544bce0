import type { EnteredColumn, NotebookDocument, TableCell } from '../../notebook/document.ts';
import { columnHead, isEntered } from '../../notebook/lookup.ts';

/** What a row of a price list can give a table of offers. */
export const PRICE_FIELDS = [
  'supplier',
  'offer',
  'description',
  'fits',
  'price',
  'currency',
  'pack',
  'discount',
  'tax',
  'lead_days',
] as const;
export type PriceField = (typeof PRICE_FIELDS)[number];

/** The fields in words, for the choice of columns. */
export const FIELD_WORDS: Readonly<Record<PriceField, string>> = {
  supplier: 'Supplier',
  offer: 'Part number',
  description: 'Description',
  fits: 'Part it fits',
  price: 'Price of a pack',
  currency: 'Currency',
  pack: 'Pieces in a pack',
  discount: 'Discount, share',
  tax: 'Tax, share',
  lead_days: 'Lead time, days',
};

/** Names and heads by which a column is known, the surest first. */
const NAMES: Readonly<Record<PriceField, readonly string[]>> = {
  supplier: ['supplier', 'dealer', 'from'],
  offer: ['offer', 'number', 'part_number', 'part_no', 'order_number', 'code'],
  description: ['description', 'as_they_call_it', 'item', 'article', 'name'],
  fits: ['fits', 'part', 'for_part'],
  price: ['price', 'their_price', 'list_price'],
  currency: ['currency', 'money'],
  pack: ['pack', 'pack_of', 'per_pack', 'pieces'],
  discount: ['discount', 'rebate'],
  tax: ['tax', 'vat'],
  lead_days: ['lead_days', 'lead_time', 'delivery', 'days'],
};

const NUMBERS: ReadonlySet<PriceField> = new Set(['price', 'pack', 'discount', 'tax', 'lead_days']);

/** A table that takes offers, and the id of the column for each field; null where it has none. */
export interface PriceTarget {
  readonly cell: TableCell;
  readonly columns: Readonly<Record<PriceField, string | null>>;
}

/** Columns set by hand: id of the column, null for none. */
export type TargetChoices = Readonly<Partial<Record<PriceField, string | null>>>;

/**
 * The tables of a notebook that can take offers, the likeliest first: they have an entered price, and something
 * that names the part or the offer.
 *
 * @example priceTargets(document)[0]?.cell.name // 'prices'
 */
export function priceTargets(document: NotebookDocument): readonly PriceTarget[] {
  return document.cells
    .filter((cell): cell is TableCell => cell.kind === 'table')
    .map((cell) => priceTargetOf(cell))
    .filter(({ columns }) => columns.price !== null && (columns.fits ?? columns.offer) !== null)
    .sort((a, b) => filled(b) - filled(a));
}

const filled = ({ columns }: PriceTarget): number => PRICE_FIELDS.filter((field) => columns[field]).length;

/** Which column of a table takes which field: by its name, then by its head, unless it was set by hand. */
export function priceTargetOf(cell: TableCell, choices: TargetChoices = {}): PriceTarget {
  const taken = new Set<string>(Object.values(choices).filter((id): id is string => id !== null));
  const columns = {} as Record<PriceField, string | null>;
  for (const field of PRICE_FIELDS) {
    const chosen = choices[field];
    columns[field] = chosen === undefined ? (known(cell, field, taken)?.id ?? null) : chosen;
    if (columns[field] !== null) taken.add(columns[field]);
  }
  return { cell, columns };
}

/** The entered columns that can hold a field. */
export function columnsFor(cell: TableCell, field: PriceField): readonly EnteredColumn[] {
  return cell.columns.filter(isEntered).filter(({ kind }) => (kind === 'number') === NUMBERS.has(field));
}

function known(cell: TableCell, field: PriceField, taken: ReadonlySet<string>): EnteredColumn | undefined {
  const open = columnsFor(cell, field).filter(({ id }) => !taken.has(id));
  for (const name of NAMES[field]) {
    const found = open.find((column) => column.name === name || plain(columnHead(column)) === name);
    if (found) return found;
  }
  return undefined;
}

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '_');
