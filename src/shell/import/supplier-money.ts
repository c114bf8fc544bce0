import type { EnteredColumn, NotebookDocument, TableCell } from '../../notebook/document.ts';
import { isEntered } from '../../notebook/lookup.ts';

/** Where a notebook says which money a supplier's prices are in. */
export interface MoneyTable {
  readonly cell: TableCell;
  readonly supplier: EnteredColumn;
  readonly currency: EnteredColumn;
}

const columnNamed = (cell: TableCell, name: string): EnteredColumn | undefined =>
  cell.columns.filter(isEntered).find((column) => column.name === name);

/** The table of suppliers with their money; null where the notebook has none beside the offers. */
export function moneyTable(document: NotebookDocument, offersId: string): MoneyTable | null {
  for (const cell of document.cells) {
    if (cell.kind !== 'table' || cell.id === offersId) continue;
    const [supplier, currency] = [columnNamed(cell, 'supplier'), columnNamed(cell, 'currency')];
    if (supplier && currency) return { cell, supplier, currency };
  }
  return null;
}

/** The money of a supplier's prices, an ISO 4217 code; null where the notebook does not say. */
export function moneyOfSupplier(table: MoneyTable | null, supplier: string): string | null {
  const row = table?.supplier.entries.indexOf(supplier) ?? -1;
  const code = row === -1 ? null : table?.currency.entries[row];
  return typeof code === 'string' && code !== '' ? code : null;
}

/**
 * What one of a money is worth in the notebook's own; null where no table with the columns `currency` and
 * `worth` says so.
 *
 * @example worthOf(document, 'USD') // 0.92 in a notebook in EUR
 */
export function worthOf(document: NotebookDocument, code: string): number | null {
  if (code === document.money) return 1;
  for (const cell of document.cells) {
    if (cell.kind !== 'table') continue;
    const [currency, worth] = [columnNamed(cell, 'currency'), columnNamed(cell, 'worth')];
    const figure = worth?.entries[currency?.entries.indexOf(code) ?? -1];
    if (typeof figure === 'number' && figure > 0) return figure;
  }
  return null;
}

/**
 * A price in the money that the notebook keeps a supplier's prices in.
 *
 * @param from money of the price; null: not known, so it is taken as the supplier's
 * @param into money of the supplier; null: not known, so the price stays as it is
 * @returns null where the notebook has no rate between the two
 */
export function priceIn(
  document: NotebookDocument,
  price: number,
  from: string | null,
  into: string | null,
): number | null {
  if (from === null || into === null || from === into) return price;
  const [a, b] = [worthOf(document, from), worthOf(document, into)];
  return a === null || b === null ? null : Math.round((price * a * 1e4) / b) / 1e4;
}
