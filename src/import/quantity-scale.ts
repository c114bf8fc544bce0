import { partKey } from './part-key.ts';
import type { PriceRow } from './price-row.ts';

/** The name under which rows of a list are one part: its number, else its words. */
export function rowKey(row: Pick<PriceRow, 'partNumber' | 'description'>): string {
  const number = row.partNumber === null ? '' : partKey(row.partNumber);
  return number === '' ? `w:${(row.description ?? '').toLowerCase().replace(/\s+/g, ' ')}` : `n:${number}`;
}

/**
 * Of parts that have several prices by quantity, keeps the one that holds for the pieces wanted. Without a
 * wanted number all of them are set aside: no quantity is guessed.
 *
 * @param pieces how many are wanted; null: not said
 * @param setAside called for each row that is not kept
 * @returns the rows that stay, in their order
 */
export function chooseFromScales(
  rows: readonly PriceRow[],
  pieces: number | null,
  setAside: (row: PriceRow, reason: 'quantity-scale' | 'other-quantity') => void,
): readonly PriceRow[] {
  if (!rows.some((row) => row.fromQuantity !== null && row.fromQuantity > 1)) return rows;
  const byPart = new Map<string, PriceRow[]>();
  for (const row of rows) {
    if (row.fromQuantity === null) continue;
    const key = rowKey(row);
    const held = byPart.get(key);
    if (held === undefined) byPart.set(key, [row]);
    else held.push(row);
  }
  const dropped = new Set<PriceRow>();
  for (const scale of byPart.values()) {
    if (new Set(scale.map((row) => row.fromQuantity)).size < 2) continue;
    const kept = pieces === null ? null : holding(scale, pieces);
    for (const row of scale) {
      if (row === kept) continue;
      dropped.add(row);
      setAside(row, kept === null ? 'quantity-scale' : 'other-quantity');
    }
  }
  return dropped.size === 0 ? rows : rows.filter((row) => !dropped.has(row));
}

/** The row of a scale with the largest quantity that is not above the pieces wanted. */
function holding(scale: readonly PriceRow[], pieces: number): PriceRow | null {
  let best: PriceRow | null = null;
  for (const row of scale) {
    if (row.fromQuantity! <= pieces && (best === null || row.fromQuantity! > best.fromQuantity!)) best = row;
  }
  return best;
}
