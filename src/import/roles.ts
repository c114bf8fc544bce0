/** What a column of a price list can be. `ignore` is a choice of the reader's own: leave it out. */
export type Role =
  | 'part_number'
  | 'description'
  | 'price'
  | 'currency'
  | 'pack_quantity'
  | 'discount'
  | 'lead_time'
  | 'supplier'
  | 'fits'
  | 'stock'
  | 'unit' // what the price is for: piece, metre, inch
  | 'price_for' // for how many of them the price stands
  | 'from_quantity' // the price holds from so many on
  | 'tax'
  | 'ignore';

export const ROLES: readonly Role[] = [
  'part_number',
  'description',
  'price',
  'currency',
  'pack_quantity',
  'discount',
  'lead_time',
  'supplier',
  'fits',
  'stock',
  'unit',
  'price_for',
  'from_quantity',
  'tax',
  'ignore',
];

/** The roles in words, for sentences and choices. */
export const ROLE_WORDS: Readonly<Record<Role, string>> = {
  part_number: 'part number',
  description: 'description',
  price: 'price',
  currency: 'currency',
  pack_quantity: 'pack quantity',
  discount: 'discount',
  lead_time: 'lead time',
  supplier: 'supplier',
  fits: 'part it fits',
  stock: 'stock',
  unit: 'unit of the price',
  price_for: 'pieces the price is for',
  from_quantity: 'quantity it holds from',
  tax: 'tax',
  ignore: 'leave out',
};
