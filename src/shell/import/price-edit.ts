import type { PriceRow } from '../../import/price-row.ts';
import { rowKey } from '../../import/quantity-scale.ts';
import { applyEdit } from '../../notebook/apply-edit.ts';
import type { EnteredColumn, Entry, NotebookDocument, TableCell } from '../../notebook/document.ts';
import type { Edit, RowEntries } from '../../notebook/edit.ts';
import { addRows, group, removeRows, replaceCell, replaceColumn, replaceRows } from '../../notebook/edits.ts';
import { findCell, isEntered, rowCount } from '../../notebook/lookup.ts';
import { countWords } from './offer-words.ts';
import { type OfferThere, offersThere } from './offers-there.ts';
import { type PriceField, type PriceTarget, priceTargetOf } from './price-target.ts';
import { withNote } from './source-note.ts';
import { moneyOfSupplier, moneyTable, priceIn } from './supplier-money.ts';

/** A row that comes in, for a part or for none (''). */
export interface ChosenRow {
  readonly row: PriceRow;
  readonly part: string;
  readonly supplier: string;
}

/** What is to be written down of an import. */
export interface PriceImport {
  readonly fileName: string;
  readonly date: string;
  /** Suppliers whose earlier rows give way, those without a chosen row included. */
  readonly suppliers: readonly string[];
  readonly chosen: readonly ChosenRow[];
  /** What was typed of a supplier who is new to the table of suppliers, by the id of its column. */
  readonly terms?: RowEntries;
}

/** Each edit of a group is made for the notebook as the ones before leave it. */
class Steps {
  readonly edits: Edit[] = [];
  document: NotebookDocument;

  constructor(document: NotebookDocument) {
    this.document = document;
  }

  take(make: (document: NotebookDocument) => Edit): void {
    const edit = make(this.document);
    this.document = applyEdit(this.document, edit);
    this.edits.push(edit);
  }
}

/**
 * One edit that puts a supplier's rows in the place of their earlier ones: rows of other suppliers stay, and so
 * does what the rider has written into columns that the file does not fill. A new supplier is added to the
 * choices and to the table of suppliers. File, date and count are noted with the table.
 *
 * @throws EditError when the rows do not fit the table
 */
export function priceEdit(document: NotebookDocument, target: PriceTarget, wanted: PriceImport): Edit {
  const steps = new Steps(document);
  addSuppliers(steps, target, wanted);
  const there = offersThere(target).filter(({ supplier }) => wanted.suppliers.includes(supplier));
  const rows = wanted.chosen.map((chosen) => entriesOf(document, target, chosen, there));
  replaceOffers(steps, target, there, rows);
  steps.take((now) => {
    const cell = findCell(now, target.cell.id) as TableCell;
    const source = wanted.suppliers.reduce((text, of) => {
      const count = wanted.chosen.filter(({ supplier }) => supplier === of).length;
      return withNote(text, { of, fileName: wanted.fileName, date: wanted.date, rows: count });
    }, cell.source ?? '');
    return replaceCell(now, cell.id, { ...cell, source });
  });
  return group(
    `${wanted.suppliers.join(', ')}: ${countWords(wanted.chosen.length, 'price', 'prices')} brought in`,
    steps.edits,
  );
}

function addSuppliers(steps: Steps, target: PriceTarget, wanted: PriceImport): void {
  const { suppliers, chosen, terms = {} } = wanted;
  const column = target.cell.columns.filter(isEntered).find(({ id }) => id === target.columns.supplier);
  const options = column?.options;
  const fresh = suppliers.filter((supplier) => options && !options.includes(supplier));
  if (column && options && fresh.length > 0) {
    const after: EnteredColumn = { ...column, options: [...options, ...fresh] };
    steps.take((now) => replaceColumn(now, target.cell.id, column.id, after));
  }
  const money = moneyTable(steps.document, target.cell.id);
  if (money === null) return;
  const missing = suppliers.filter((supplier) => !money.supplier.entries.includes(supplier));
  if (missing.length === 0) return;
  const rows = missing.map((supplier) => ({
    // Typed for one: where each row names its own supplier, nothing is.
    ...(suppliers.length === 1 ? terms : {}),
    [money.supplier.id]: supplier,
    [money.currency.id]: chosen.find((one) => one.supplier === supplier)?.row.currency ?? null,
  }));
  steps.take((now) => addRows(now, money.cell.id, rowCount(money.cell), rows));
}

function replaceOffers(
  steps: Steps,
  { cell }: PriceTarget,
  there: readonly OfferThere[],
  rows: readonly RowEntries[],
): void {
  const at = there[0]?.row ?? rowCount(cell);
  const last = there.at(-1)?.row ?? at - 1;
  if (last - at + 1 === there.length) {
    steps.take((now) => replaceRows(now, cell.id, at, there.length, rows));
    return;
  }
  for (const { row } of [...there].reverse()) steps.take((now) => removeRows(now, cell.id, row, 1));
  steps.take((now) => addRows(now, cell.id, at, rows));
}

/** The entries of one row; columns that the file says nothing for keep what the offer had before. */
function entriesOf(
  document: NotebookDocument,
  target: PriceTarget,
  chosen: ChosenRow,
  there: readonly OfferThere[],
): RowEntries {
  const { cell, columns } = target;
  const key = rowKey(chosen.row);
  const same = there.filter((offer) => offer.supplier === chosen.supplier && rowKey(offer) === key);
  const before = same.find(({ fits }) => fits === chosen.part) ?? same[0];
  const entries: Record<string, Entry> = {};
  if (before !== undefined)
    for (const column of cell.columns.filter(isEntered))
      entries[column.id] = column.entries[before.row] ?? null;
  for (const [field, entry] of Object.entries(fieldsOf(document, target, chosen)) as [PriceField, Entry][]) {
    const id = columns[field];
    if (id !== null && (entry !== null || before === undefined)) entries[id] = entry;
  }
  return entries;
}

/** What a row writes, field by field; null where the file says nothing. */
export function fieldsOf(
  document: NotebookDocument,
  target: PriceTarget,
  { row, part, supplier }: ChosenRow,
): Readonly<Record<PriceField, Entry>> {
  const percent = (share: number | null, field: 'discount' | 'tax'): number | null => {
    const column = target.cell.columns.find(({ id }) => id === target.columns[field]);
    return share === null ? null : column?.unit === '%' ? share * 100 : share;
  };
  const money = moneyOfSupplier(moneyTable(document, target.cell.id), supplier);
  const pack = packOf(row);
  const price =
    target.columns.currency === null ? priceIn(document, pack.price, row.currency, money) : pack.price;
  return {
    supplier,
    offer: row.partNumber,
    description: row.description,
    fits: part,
    price,
    currency: row.currency,
    pack: pack.pieces,
    discount: percent(row.discountShare, 'discount'),
    tax: percent(row.taxShare, 'tax'),
    lead_days: row.leadDays,
  };
}

/**
 * Price and pieces of one pack. A price for a hundred is the price of a pack of a hundred, unless the list
 * names the pack: then it is that pack's share.
 *
 * @example packOf({ price: 40, priceFor: 100, packQuantity: 10 }) // { price: 4, pieces: 10 }
 */
export function packOf(row: Pick<PriceRow, 'price' | 'priceFor' | 'packQuantity'>): {
  readonly price: number;
  readonly pieces: number;
} {
  const { price, priceFor, packQuantity } = row;
  if (priceFor === 1) return { price, pieces: packQuantity ?? 1 };
  if (packQuantity === null) return { price, pieces: priceFor };
  return { price: Math.round((price * packQuantity * 1e6) / priceFor) / 1e6, pieces: packQuantity };
}

/** The target as it stands in a notebook that was edited meanwhile; null when its table is gone. */
export function targetIn(document: NotebookDocument, target: PriceTarget): PriceTarget | null {
  const cell = findCell(document, target.cell.id);
  return cell?.kind === 'table' ? priceTargetOf(cell, target.columns) : null;
}
