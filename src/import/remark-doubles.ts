import { partKey } from './part-key.ts';
import type { PriceRow } from './price-row.ts';

/**
 * Remarks on rows whose part number stands on another line too: both stay, and the rider sees which.
 *
 * @returns the rows, those in doubt with a remark more
 */
export function remarkDoubles(rows: readonly PriceRow[]): readonly PriceRow[] {
  const others = findDoubles(rows);
  if (others.size === 0) return rows;
  return rows.map((row, at) => {
    const other = others.get(at);
    if (other === undefined) return row;
    const { line, price } = rows[other]!;
    const prices = price === row.price ? 'with the same price' : `with the price ${price}`;
    return { ...row, remarks: [...row.remarks, `Its part number stands on line ${line} too, ${prices}.`] };
  });
}

/** For each row whose part number another has, the place of the first such other. */
function findDoubles(rows: readonly PriceRow[]): ReadonlyMap<number, number> {
  const others = new Map<number, number>();
  let size = 16;
  while (size < rows.length * 2) size *= 2;
  // Places by the hash of the number: a map of a hundred thousand strings would take longer than reading them.
  const slots = new Int32Array(size).fill(-1);
  rows.forEach(({ partNumber }, at) => {
    if (partNumber === null) return;
    const hash = hashNumber(partNumber);
    if (hash === 0) return;
    for (let slot = hash & (size - 1); ; slot = (slot + 1) & (size - 1)) {
      const held = slots[slot]!;
      if (held === -1) {
        slots[slot] = at;
        return;
      }
      const other = rows[held]!.partNumber!;
      if (hashNumber(other) !== hash || partKey(other) !== partKey(partNumber)) continue;
      others.set(at, held);
      if (!others.has(held)) others.set(held, at);
      return;
    }
  });
  return others;
}

/** A hash of the letters and digits of a number, whatever its capitals and dashes; 0 when it has none. */
function hashNumber(text: string): number {
  let hash = 0;
  for (let at = 0; at < text.length; at += 1) {
    let code = text.charCodeAt(at);
    if (code >= 97 && code <= 122) code -= 32;
    // Letters beyond these may be written in several ways: they are left to the comparison.
    if ((code >= 48 && code <= 57) || (code >= 65 && code <= 90)) hash = (Math.imul(hash, 33) + code) | 0;
  }
  if (hash !== 0) return hash ^ (hash >>> 15);
  return partKey(text) === '' ? 0 : 1;
}
