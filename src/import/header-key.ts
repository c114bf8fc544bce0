import type { FileHead } from './file-heads.ts';
import { foldWords } from './fold-words.ts';

/**
 * A key under which choices for files of one shape are remembered: the words of the header, in order. A file
 * without header has a key by its width alone. 53 bits of a hash (cyrb53, public domain), with the width.
 *
 * @example headerKey(fileHeads([['Art. no.', 'Price']], 2)) === headerKey(fileHeads([['art no', 'PRICE']], 2)) // true
 */
export function headerKey(heads: readonly FileHead[]): string {
  const words = heads.map((head) => foldWords(head.title));
  if (words.every((word) => word === '')) return `no-head-${heads.length}`;
  return `${heads.length}-${hashText(words.join('\u001f')).toString(36)}`;
}

function hashText(text: string): number {
  let high = 0xdeadbeef;
  let low = 0x41c6ce57;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    high = Math.imul(high ^ code, 2654435761);
    low = Math.imul(low ^ code, 1597334677);
  }
  high = Math.imul(high ^ (high >>> 16), 2246822507) ^ Math.imul(low ^ (low >>> 13), 3266489909);
  low = Math.imul(low ^ (low >>> 16), 2246822507) ^ Math.imul(high ^ (high >>> 13), 3266489909);
  return 4294967296 * (2097151 & low) + (high >>> 0);
}
