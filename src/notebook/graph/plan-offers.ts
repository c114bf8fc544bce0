import type { PlanOffer, PlanSupplier } from '../../plan/plan-instance.ts';
import type { PlanRole } from '../document.ts';
import { orNone, orNought, type RoleReader } from './role-reader.ts';

type Covers = readonly (readonly [part: string, pieces: number])[];

/** Parts and pieces under each name of a kit, or of a work that a workshop does. */
function namedCovers(
  read: RoleReader,
  name: PlanRole,
  part: PlanRole,
  pieces: (row: number) => number,
): ReadonlyMap<string, Covers> {
  const found = new Map<string, Covers>();
  for (let row = 0; row < read.rows(name); row++) {
    const [called, covered] = [read.text(name, row), read.text(part, row)];
    const count = Math.round(pieces(row));
    if (called === null || covered === null || !(count > 0)) continue;
    found.set(called, [...(found.get(called) ?? []), [covered, count]]);
  }
  return found;
}

/**
 * The offers, each with what one pack covers: a part, the parts of a kit, or the parts that a work puts in new,
 * which makes it work sent out.
 *
 * @param stocks names that the parts are sold by
 * @param rowOfOffer is filled with the row of the table behind each offer
 */
export function offersOf(
  read: RoleReader,
  stocks: ReadonlySet<string>,
  rowOfOffer: Map<string, number>,
): PlanOffer[] {
  const kits = namedCovers(read, 'kit', 'kit_part', (row) => read.figure('kit_pieces', row));
  const works = namedCovers(read, 'work', 'work_part', () => 1);
  const offers: PlanOffer[] = [];
  for (let row = 0; row < read.rows('offer'); row++) {
    const [fits, supplier] = [read.text('offer_fits', row), read.text('offer_supplier', row)];
    const [price, pieces, days] = [
      read.figure('offer_price', row),
      read.figure('offer_pieces', row),
      read.figure('offer_days', row),
    ];
    if (fits === null || supplier === null || !(price >= 0)) continue;
    const work = works.get(fits);
    const covers = (work ?? kits.get(fits) ?? [[fits, 1] as const])
      .map(([part, each]) => [part, each * Math.max(1, Math.round(orNought(pieces)))] as const)
      .filter(([part]) => stocks.has(part));
    if (covers.length === 0) continue;
    const number = read.text('offer', row) ?? '';
    const id = rowOfOffer.has(`${supplier} ${number}`)
      ? `${supplier} ${number} (${row + 1})`
      : `${supplier} ${number}`;
    rowOfOffer.set(id, row);
    offers.push({
      id,
      supplier,
      part_number: number,
      price,
      covers,
      kind: work === undefined ? 'goods' : 'workshop',
      arrives_in_days: Number.isNaN(days) ? null : Math.round(days),
    });
  }
  return offers;
}

/** The suppliers; one whose offers are there and who is not in the table sends without freight. */
export function suppliersOf(read: RoleReader): PlanSupplier[] {
  const suppliers = new Map<string, PlanSupplier>();
  for (let row = 0; row < read.rows('supplier'); row++) {
    const name = read.text('supplier', row);
    if (name === null) continue;
    const free = read.figure('free_from', row);
    suppliers.set(name, {
      name,
      freight: Math.max(0, orNought(read.figure('freight', row))),
      free_from: orNone(free),
    });
  }
  for (let row = 0; row < read.rows('offer'); row++) {
    const name = read.text('offer_supplier', row);
    if (name !== null && !suppliers.has(name)) suppliers.set(name, { name, freight: 0, free_from: null });
  }
  return [...suppliers.values()];
}
