import type { TableCell } from '../notebook/document.ts';
import { entered, folded, from, worked } from './columns.ts';
import { readTripFile, type TripFiles, textsOf } from './trip-file.ts';

/** Which columns of a supplier's own file hold what; empty where the file has no such column. */
interface Layout {
  readonly supplier: string;
  readonly file: string;
  readonly offer: string;
  readonly description: string;
  readonly pack: string;
  readonly price: string;
  /** Percent off the price. */
  readonly discount: string;
  /** Percent on top of the price. */
  readonly tax: string;
  readonly days: string;
}

const LAYOUTS: readonly Layout[] = [
  {
    supplier: 'Northgate Spares',
    file: 'prices-northgate-spares.csv',
    offer: 'Art. no.',
    description: 'Article',
    pack: 'Per pack',
    price: 'Price',
    discount: 'Rebate',
    tax: '',
    days: 'Ships in',
  },
  {
    supplier: 'Quayside Moto',
    file: 'prices-quayside-moto.csv',
    offer: 'Code',
    description: 'Item',
    pack: 'Qty in pack',
    price: 'Net price',
    discount: '',
    tax: 'VAT',
    days: 'Delivery',
  },
  {
    supplier: 'Dray & Daughter',
    file: 'prices-dray-and-daughter.csv',
    offer: 'Part no',
    description: 'Description',
    pack: 'Pack',
    price: 'List',
    discount: 'Trade discount',
    tax: '',
    days: 'Lead time',
  },
  {
    supplier: 'Anvil Lane Workshop',
    file: 'prices-anvil-lane.csv',
    offer: 'Job no.',
    description: 'Work',
    pack: '',
    price: 'Price',
    discount: '',
    tax: '',
    days: 'Back in',
  },
];

/** One offer as the notebook keeps it, texts as they stand in the supplier's file. */
interface Offer {
  readonly supplier: string;
  readonly offer: string;
  readonly fits: string;
  readonly description: string;
  readonly pack: string;
  readonly price: string;
  readonly discount: string;
  readonly tax: string;
  readonly days: string;
}

const percent = (text: string): string => (text === '' ? '' : String(Number(text) / 100));

function offersOf(files: TripFiles, layout: Layout, fits: ReadonlyMap<string, string>): Offer[] {
  const file = readTripFile(files, layout.file);
  const column = (name: string): readonly string[] => (name === '' ? [] : textsOf(file, name));
  const [description, pack, price] = [column(layout.description), column(layout.pack), column(layout.price)];
  const [discount, tax, days] = [column(layout.discount), column(layout.tax), column(layout.days)];
  return column(layout.offer).map((offer, at) => ({
    supplier: layout.supplier,
    offer,
    fits: fits.get(`${layout.supplier} ${offer}`) ?? '',
    description: description[at] ?? '',
    pack: pack[at] ?? '1',
    price: price[at] ?? '',
    discount: percent(discount[at] ?? ''),
    tax: percent(tax[at] ?? ''),
    days: days[at] ?? '',
  }));
}

/** All offers, supplier by supplier, matched to the part or kit that they fit. */
function allOffers(files: TripFiles): Offer[] {
  const matches = readTripFile(files, 'matches.csv');
  const [suppliers, offers] = [textsOf(matches, 'supplier'), textsOf(matches, 'offer')];
  const fits = new Map(textsOf(matches, 'fits').map((part, at) => [`${suppliers[at]} ${offers[at]}`, part]));
  return LAYOUTS.flatMap((layout) => offersOf(files, layout, fits));
}

const EUR_2 = { unit: 'EUR', decimals: 2 } as const;

function pricesTable(files: TripFiles): TableCell {
  const offers = allOffers(files);
  const texts = (field: keyof Offer): string[] => offers.map((offer) => offer[field]);
  const supplier = 'suppliers.supplier, supplier';
  return {
    id: 'prices',
    kind: 'table',
    name: 'prices',
    title: 'Prices',
    gist: 'every offer, from three suppliers’ and a workshop’s own files',
    source: 'Invented for the demo: no such suppliers, numbers or prices.',
    columns: [
      entered('supplier', 'choice', texts('supplier'), {
        title: 'Supplier',
        options: LAYOUTS.map((layout) => layout.supplier),
      }),
      entered('fits', 'text', texts('fits'), { title: 'Fits' }),
      entered('description', 'text', texts('description'), { title: 'As they call it' }),
      entered('price', 'number', texts('price'), { title: 'Their price', decimals: 2 }),
      entered('pack', 'number', texts('pack'), { title: 'Pack of', decimals: 0 }),
      worked('landed_each', 'net_each * (1 + pick(suppliers.freight_rate, suppliers.supplier, supplier))', {
        title: 'Landed, each',
        ...EUR_2,
      }),
      worked('in_time', 'lead + arrival_margin <= days_until(cut_off)', { title: 'In time' }),
      entered('lead_days', 'number', texts('days'), { title: 'Lead time', unit: 'days', decimals: 0 }),
      entered('discount', 'number', texts('discount'), { title: 'Discount', decimals: 2 }),
      entered('tax', 'number', texts('tax'), { title: 'Tax', decimals: 2 }),
      entered('offer', 'text', texts('offer'), { title: 'Number' }),
      ...folded([
        worked('currency', `pick(suppliers.currency, ${supplier})`, { title: 'Money' }),
        worked('worth', `pick(suppliers.money_worth, ${supplier})`, {
          title: 'Worth of one',
          unit: 'EUR',
          decimals: 4,
        }),
        worked('tax_used', `or_else(tax, pick(suppliers.usual_tax, ${supplier}))`, {
          title: 'Tax used',
          decimals: 2,
        }),
        worked('lead', `or_else(lead_days, pick(suppliers.lead_time, ${supplier}))`, {
          title: 'Lead used',
          unit: 'days',
          decimals: 0,
        }),
        worked('pack_price', 'price * worth * (1 - or_else(discount, 0)) * (1 + tax_used)', {
          title: 'A pack, no freight',
          ...EUR_2,
        }),
        worked('net_each', 'pack_price / pack', {
          title: 'Each, no freight',
          ...EUR_2,
        }),
        worked('landed_in_time', 'in_time ? landed_each : missing', {
          title: 'Landed, if in time',
          ...EUR_2,
        }),
        worked('is_best', 'or_else(landed_in_time == least_of(landed_in_time, fits, fits), false)', {
          title: 'Cheapest',
        }),
        worked('best_so_far', 'running(is_best ? 1 : 0, fits)', { title: 'Cheapest so far', decimals: 0 }),
        worked('best_here', 'is_best and best_so_far == 1', { title: 'Best offer' }),
      ]),
    ],
  };
}

function suppliersTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'suppliers.csv');
  return {
    id: 'suppliers',
    kind: 'table',
    name: 'suppliers',
    title: 'Suppliers',
    gist: 'money, freight and lead time',
    source: 'Invented for the demo.',
    columns: [
      from(file, 'supplier', 'text', { title: 'Supplier' }),
      from(file, 'currency', 'text', { title: 'Money' }),
      from(file, 'freight', 'number', { title: 'Freight, their money', decimals: 2 }),
      from(file, 'free_freight_from', 'number', { title: 'Free from', decimals: 0 }),
      from(file, 'usual_order', 'number', { title: 'Usual order', decimals: 0 }),
      from(file, 'lead_time', 'number', { title: 'Lead time', decimals: 0 }),
      from(file, 'usual_tax', 'number', { title: 'Tax if not given', decimals: 2 }),
      worked('freight_free', 'or_else(usual_order >= free_freight_from, false)', { title: 'Freight free' }),
      worked('freight_rate', 'freight_free ? 0 : freight / usual_order', {
        title: 'Freight, share',
        decimals: 3,
      }),
      worked('money_worth', 'pick(rates_of_exchange.worth, rates_of_exchange.currency, currency)', {
        title: 'Worth of one',
        unit: 'EUR',
        decimals: 4,
      }),
      worked('freight_here', 'freight * money_worth', { title: 'Freight', ...EUR_2 }),
      worked('free_from_here', 'free_freight_from * money_worth', { title: 'Free from', ...EUR_2 }),
    ],
  };
}

function exchangeTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'rates_of_exchange.csv');
  return {
    id: 'rates_of_exchange',
    kind: 'table',
    name: 'rates_of_exchange',
    title: 'Rates of exchange',
    gist: 'what one of each money is worth',
    source: 'Invented for the demo.',
    columns: [
      from(file, 'currency', 'text', { title: 'Money' }),
      from(file, 'worth', 'number', { title: 'Worth of one', decimals: 4 }),
    ],
  };
}

function kitsTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'kits.csv');
  return {
    id: 'kits',
    kind: 'table',
    name: 'kits',
    title: 'Kits',
    gist: 'one price for several parts, against buying them singly',
    source: 'Invented for the demo.',
    columns: [
      from(file, 'kit', 'text', { title: 'Kit' }),
      from(file, 'part', 'text', { title: 'Covers' }),
      from(file, 'pieces', 'number', { title: 'Pieces', decimals: 0 }),
      worked('kit_price', 'least_of(prices.landed_in_time, prices.fits, kit)', {
        title: 'Kit, landed',
        ...EUR_2,
      }),
      worked('singly', 'total(piece_price, kit, kit)', { title: 'Its parts singly', ...EUR_2 }),
      worked('saves', 'singly - kit_price', { title: 'Saves', ...EUR_2 }),
      worked('all_wanted', 'least_of(pieces_wanted / pieces, kit, kit) >= 1', {
        title: 'All of it called for',
      }),
      ...folded([
        worked('piece_price', 'pieces * pick(wear.landed_price, wear.part, part)', {
          title: 'This part singly',
          ...EUR_2,
        }),
        worked('pieces_wanted', 'total(calls.bought, calls.part, part, calls.chosen, true)', {
          title: 'Called for',
          decimals: 0,
        }),
        worked('kit_rows', 'count_of(part, kit, kit)', { title: 'Parts in the kit', decimals: 0 }),
      ]),
    ],
  };
}

function worksTable(files: TripFiles): TableCell {
  const file = readTripFile(files, 'works.csv');
  return {
    id: 'works',
    kind: 'table',
    name: 'works',
    title: 'Sent out',
    gist: 'work that a workshop does, parts included, against shed hours',
    source: 'Invented for the demo.',
    columns: [
      from(file, 'work', 'text', { title: 'Work' }),
      from(file, 'part', 'text', { title: 'New in it' }),
      worked('work_price', 'least_of(prices.landed_in_time, prices.fits, work)', {
        title: 'Done in time for',
        ...EUR_2,
      }),
      worked('done_here', 'pick(wear.landed_price, wear.part, part) + pick(wear.labour, wear.part, part)', {
        title: 'Done in the shed for',
        ...EUR_2,
      }),
    ],
  };
}

/** Suppliers, money, offers, kits and work sent out of the invented trip. */
export function priceCells(files: TripFiles): TableCell[] {
  return [
    suppliersTable(files),
    exchangeTable(files),
    pricesTable(files),
    kitsTable(files),
    worksTable(files),
  ];
}
