import { compareLists, type ListComparison, type ListedOffer } from '../../import/compare-lists.ts';
import { rowKey } from '../../import/quantity-scale.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import { offersThere } from './offers-there.ts';
import { fieldsOf } from './price-edit.ts';
import type { PriceList } from './price-list.ts';
import { moneyOfSupplier, moneyTable } from './supplier-money.ts';

/** An offer with what it fits and where it stands in the notebook's table. */
export interface ComparedOffer extends ListedOffer {
  readonly fits: string;
  readonly supplier: string;
  /** Row of the table, from 0; null for one that is new. */
  readonly row: number | null;
}

export interface ListChanges extends Omit<ListComparison<ComparedOffer>, 'gone'> {
  /** Money of the supplier's prices; null where the notebook does not say. */
  readonly money: string | null;
  /** No longer in the file. */
  readonly gone: readonly ComparedOffer[];
  /** Still in the file, but not taken. */
  readonly left: readonly ComparedOffer[];
  /** In the file, but turned away. */
  readonly turnedAway: readonly ComparedOffer[];
}

/**
 * What a newer file of a supplier changes: the rows about to come in against those that stand in the table,
 * both as the table keeps them. null when the table has none of theirs.
 */
export function listChanges(document: NotebookDocument, list: PriceList): ListChanges | null {
  const suppliers = new Set(list.suppliers);
  const table = moneyTable(document, list.target.cell.id);
  const moneyOf = (supplier: string): string | null => moneyOfSupplier(table, supplier);
  const before = offersThere(list.target)
    .filter(({ supplier, price }) => suppliers.has(supplier) && price !== null)
    .map(
      (offer): ComparedOffer => ({
        ...offer,
        price: offer.price!,
        currency: moneyOf(offer.supplier),
        priceFor: 1,
      }),
    );
  if (before.length === 0) return null;
  const after = list.chosen.flatMap((chosen): ComparedOffer[] => {
    const { price } = fieldsOf(document, list.target, chosen);
    const { partNumber, description } = chosen.row;
    const { supplier, part } = chosen;
    return typeof price === 'number'
      ? [
          {
            partNumber,
            description,
            price,
            currency: moneyOf(supplier),
            priceFor: 1,
            fits: part,
            supplier,
            row: null,
          },
        ]
      : [];
  });
  const { gone, ...rest } = compareLists(before, after);
  const found = list.foundKeys;
  const isAside = ({ partNumber, description }: ComparedOffer): boolean =>
    list.isSetAside(partNumber ?? description ?? '');
  return {
    ...rest,
    money: list.suppliers.length === 1 ? moneyOf(list.suppliers[0]!) : null,
    gone: gone.filter((offer) => !found.has(rowKey(offer)) && !isAside(offer)),
    left: gone.filter((offer) => found.has(rowKey(offer))),
    turnedAway: gone.filter((offer) => !found.has(rowKey(offer)) && isAside(offer)),
  };
}
