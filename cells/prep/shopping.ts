import type { ChosenCall, PrepReader } from './chosen-calls.ts';

/** One line of the shopping list. */
export interface ShoppingLine {
  readonly part: string;
  readonly call: ChosenCall | null;
  /** The supplier's own number of the offer. */
  readonly number: string;
  readonly pieces: number;
  /** How many pieces one pack holds. */
  readonly pack: number;
  /** Landed price of one piece, and of the line, in the notebook's money; NaN when not known. */
  readonly each: number;
  readonly sum: number;
}

/** What is ordered from one supplier. */
export interface Order {
  readonly supplier: string;
  /** Days since 1970-01-01 by which it must be ordered to arrive in time; NaN when not known. */
  readonly orderBy: number;
  /** Days that the slowest of its lines takes. */
  readonly arrivesInDays: number;
  readonly lines: readonly ShoppingLine[];
  readonly sum: number;
}

export interface Shopping {
  /** In the order in which they must go out. */
  readonly orders: readonly Order[];
  /** Freight that is not in the prices of the lines; 0 where they are landed prices. */
  readonly freight: number;
  readonly sum: number;
}

interface Bought extends ShoppingLine {
  readonly supplier: string;
  readonly days: number;
}

const NO_OFFER = 'no offer in time';

/**
 * What has to be bought for the calls. Where a plan says how many packs of each offer, those; otherwise each
 * part that needs a new piece from its best offer, at what the call counts for it, freight included.
 */
export function shoppingOf(calls: readonly ChosenCall[], reader: PrepReader): Shopping {
  const planned = isPlanned(reader);
  const bought = planned ? boughtByPlan(calls, reader) : boughtPartByPart(calls, reader);
  const freight = planned ? finite(reader.number('freight')) : 0;
  const latestArrival = reader.number('cut_off') - finite(reader.number('margin_days'));
  const suppliers = [...new Set(bought.map((line) => line.supplier))];
  const orders = suppliers.map((supplier): Order => {
    const lines = bought.filter((line) => line.supplier === supplier);
    const arrivesInDays = Math.max(...lines.map((line) => line.days));
    return { supplier, arrivesInDays, orderBy: latestArrival - arrivesInDays, lines, sum: sumOf(lines) };
  });
  // A supplier that is not known, or whose days are not, comes last.
  const rank = (order: Order): number =>
    Number.isFinite(order.orderBy) ? order.orderBy : Number.POSITIVE_INFINITY;
  orders.sort((a, b) => rank(a) - rank(b));
  return { orders, freight, sum: sumOf(bought) + freight };
}

/** Whether a plan says what to buy; before it has been worked out its packs are missing. */
function isPlanned(reader: PrepReader): boolean {
  return reader.rows('packs') > 0 && !Number.isNaN(reader.number('packs'));
}

const finite = (figure: number): number => (Number.isFinite(figure) ? figure : 0);

/** NaN when any line has no price: an order whose sum is not known must not look cheap. */
const sumOf = (lines: readonly ShoppingLine[]): number => lines.reduce((sum, line) => sum + line.sum, 0);

function boughtPartByPart(calls: readonly ChosenCall[], reader: PrepReader): Bought[] {
  const best = new Map<string, number>();
  for (let row = 0; row < reader.rows('offer_fits'); row++)
    if (reader.yes('offer_best', row)) best.set(reader.text('offer_fits', row), row);
  return calls.flatMap((call): Bought[] => {
    const pieces = reader.number('pieces', call.row);
    if (!(pieces > 0)) return [];
    const sum = reader.number('cash', call.row);
    const line = { part: call.part, call, pieces, each: sum / pieces, sum };
    const offer = best.get(call.part);
    if (offer === undefined) return [{ ...line, supplier: NO_OFFER, days: Number.NaN, number: '', pack: 1 }];
    return [{ ...line, ...offerAt(offer, reader) }];
  });
}

function boughtByPlan(calls: readonly ChosenCall[], reader: PrepReader): Bought[] {
  const lines: Bought[] = [];
  const works = new Map<string, string>();
  for (let row = 0; row < reader.rows('work'); row++)
    works.set(reader.text('work', row), reader.text('work_part', row));
  for (let row = 0; row < reader.rows('packs'); row++) {
    const packs = reader.number('packs', row);
    if (!(packs > 0)) continue;
    const offer = offerAt(row, reader);
    const fits = reader.text('offer_fits', row);
    const part = works.get(fits) ?? fits;
    const each = reader.number('offer_price', row) / offer.pack;
    const pieces = packs * offer.pack;
    const call = calls.find((one) => one.part === part) ?? null;
    lines.push({ part, call, pieces, each, sum: each * pieces, ...offer });
  }
  return lines;
}

function offerAt(row: number, reader: PrepReader): Pick<Bought, 'supplier' | 'days' | 'number' | 'pack'> {
  const pack = reader.number('offer_pack', row);
  return {
    supplier: reader.text('offer_supplier', row),
    days: reader.number('offer_days', row),
    number: reader.text('offer_number', row),
    pack: pack > 0 ? pack : 1,
  };
}
