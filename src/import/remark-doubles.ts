import { partKey } from './part-key.ts';

/**
 * For each row whose part number another has, whatever its capitals and dashes, the place of the first such
 * other.
 *
 * @param hashes `hashNumber` of each row's part number; 0: it has none
 * @param numberOf the part number of a row, asked for only where two hashes are the same
 */
export function findDoubles(
  hashes: Int32Array,
  numberOf: (row: number) => string,
): ReadonlyMap<number, number> {
  const others = new Map<number, number>();
  let size = 16;
  while (size < hashes.length * 2) size *= 2;
  // Places by the hash of the number: a map of a hundred thousand strings would take longer than reading them.
  const slots = new Int32Array(size).fill(-1);
  for (let at = 0; at < hashes.length; at += 1) {
    const hash = hashes[at]!;
    if (hash === 0) continue;
    for (let slot = hash & (size - 1); ; slot = (slot + 1) & (size - 1)) {
      const held = slots[slot]!;
      if (held === -1) {
        slots[slot] = at;
        break;
      }
      if (hashes[held] !== hash || partKey(numberOf(held)) !== partKey(numberOf(at))) continue;
      others.set(at, held);
      if (!others.has(held)) others.set(held, at);
      break;
    }
  }
  return others;
}

/** A hash of the letters and digits of a number, whatever its capitals and dashes; 0 when it has none. */
export function hashNumber(text: string): number {
  let hash = 0;
  for (let at = 0; at < text.length; at += 1) {
    let code = text.charCodeAt(at);
    if (code >= 97 && code <= 122) code -= 32;
    // Letters beyond these may be written in several ways: they are left to the comparison.
    if ((code >= 48 && code <= 57) || (code >= 65 && code <= 90)) hash = (Math.imul(hash, 33) + code) | 0;
  }
  if (hash !== 0) return hash ^ (hash >>> 15) || 1;
  return partKey(text) === '' ? 0 : 1;
}
