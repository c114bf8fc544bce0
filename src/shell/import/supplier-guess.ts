import { foldWords } from '../../import/fold-words.ts';
import { partKey } from '../../import/part-key.ts';
import type { OfferThere } from './offers-there.ts';

/** Part numbers that must be a supplier's for the file to be taken for theirs. */
const ENOUGH_NUMBERS = 2;

/**
 * Whose price list a file is: the supplier whose part numbers it has, else the one whose name stands in the
 * file's name.
 *
 * @param numbers part numbers of the file
 * @returns the supplier and why in a few words; null when nothing tells
 * @example guessSupplier('dray_daughter_march.csv', [], [], ['Dray & Daughter'])?.supplier // 'Dray & Daughter'
 */
export function guessSupplier(
  fileName: string,
  numbers: readonly string[],
  offers: readonly OfferThere[],
  suppliers: readonly string[],
): { readonly supplier: string; readonly reason: string } | null {
  const inFile = new Set(numbers.map(partKey));
  const counts = new Map<string, number>();
  for (const { supplier, partNumber } of offers) {
    if (partNumber === null || !inFile.has(partKey(partNumber))) continue;
    counts.set(supplier, (counts.get(supplier) ?? 0) + 1);
  }
  const [most] = [...counts].sort((a, b) => b[1] - a[1]);
  if (most !== undefined && most[1] >= ENOUGH_NUMBERS) {
    return { supplier: most[0], reason: `${most[1]} of its part numbers` };
  }
  const words = foldWords(fileName.replace(/\.\w+$/, '').replaceAll(/[_\-.]+/g, ' ')).split(' ');
  const named = suppliers.find((supplier) => {
    const own = foldWords(supplier)
      .split(' ')
      .filter((word) => word.length > 2);
    return own.length > 0 && own.every((word) => words.includes(word));
  });
  return named === undefined ? null : { supplier: named, reason: 'by the file’s name' };
}
