import { type ConfirmedFit, confirmFit, type WantedPart } from '../../import/fit-parts.ts';
import type { PriceRow } from '../../import/price-row.ts';
import type { Entry, NotebookDocument } from '../../notebook/document.ts';
import { isEntered, rowCount } from '../../notebook/lookup.ts';
import type { PriceField, PriceTarget } from './price-target.ts';

/** An offer that stands in the notebook's table. */
export interface OfferThere {
  /** Row of the table, from 0. */
  readonly row: number;
  readonly supplier: string;
  /** Part that it fits; '' for none. */
  readonly fits: string;
  readonly partNumber: string | null;
  readonly description: string | null;
  /** Price of a pack in the supplier's money; null where none can be read. */
  readonly price: number | null;
}

/** The offers of a table. */
export function offersThere({ cell, columns }: PriceTarget): readonly OfferThere[] {
  const entries = (field: PriceField): readonly Entry[] => {
    const column = cell.columns.filter(isEntered).find(({ id }) => id === columns[field]);
    return column?.entries ?? [];
  };
  const [supplier, fits, offer] = [entries('supplier'), entries('fits'), entries('offer')];
  const [description, price] = [entries('description'), entries('price')];
  return Array.from({ length: rowCount(cell) }, (_, row) => {
    const amount = price[row];
    return {
      row,
      supplier: text(supplier[row]),
      fits: text(fits[row]),
      partNumber: text(offer[row]) || null,
      description: text(description[row]) || null,
      price: typeof amount === 'number' ? amount : null,
    };
  });
}

const text = (entry: Entry | undefined): string => (typeof entry === 'string' ? entry : '');

/** The suppliers that have offers, or may have by the choices of their column. */
export function suppliersThere(target: PriceTarget): readonly string[] {
  const column = target.cell.columns.filter(isEntered).find(({ id }) => id === target.columns.supplier);
  const names = [...(column?.options ?? []), ...(column?.entries ?? []).map(text)];
  return [...new Set(names.filter((name) => name !== ''))];
}

/** Names of columns that list the parts of a notebook, and its kits. */
const LISTS: readonly string[] = ['part', 'kit'];

/**
 * The parts that offers can fit, in the notebook's order: what its columns `part` and `kit` list, then what
 * offers fit already.
 */
export function partsThere(document: NotebookDocument, target: PriceTarget): readonly string[] {
  const names: string[] = [];
  for (const list of LISTS) {
    for (const cell of document.cells) {
      if (cell.kind !== 'table' || cell.id === target.cell.id) continue;
      const column = cell.columns
        .filter(isEntered)
        .find(({ name, kind }) => name === list && kind === 'text');
      names.push(...(column?.entries ?? []).map(text));
    }
  }
  names.push(...offersThere(target).map(({ fits }) => fits));
  return [...new Set(names.filter((name) => name.trim() !== ''))];
}

/** The parts as a price list is searched for them: with every part number that an offer has for them. */
export function wantedParts(document: NotebookDocument, target: PriceTarget): readonly WantedPart[] {
  const offers = offersThere(target);
  return partsThere(document, target).map((name) => ({
    name,
    partNumbers: offers.flatMap(({ fits, partNumber }) =>
      fits === name && partNumber !== null ? [partNumber] : [],
    ),
  }));
}

/** What the rider has confirmed before: the supplier's offers that stand in the table with their part. */
export function fitsThere(target: PriceTarget, supplier: string): readonly ConfirmedFit[] {
  return offersThere(target)
    .filter((offer) => offer.supplier === supplier && offer.fits !== '')
    .map((offer) => confirmFit(supplier, offer.fits, offer as unknown as PriceRow));
}
