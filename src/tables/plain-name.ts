/** Longest name of a cell or a column, in characters. */
export const NAME_LENGTH = 60;

/**
 * Words that every JavaScript object answers to. As names or keys they could reach what is not ours, so they
 * are refused wherever a notebook or a file may choose a word.
 */
export function isHostileWord(word: string): boolean {
  return word === 'prototype' || word in Object.prototype;
}

/**
 * A plain name (a letter, then letters, digits, underscores) made from any heading, unlike all that are taken.
 *
 * @example freeName('Front pads (mm)', new Set(['front_pads_mm'])) // 'front_pads_mm_2'
 */
export function freeName(heading: string, taken: ReadonlySet<string>): string {
  const words = heading
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/[^A-Za-z0-9]+/g, '_')
    .replace(/^_+|_+$/g, '')
    .toLowerCase();
  const worded = /^[a-z]/.test(words) && !isHostileWord(words) ? words : `column_${words}`;
  // Room for a count of five digits behind it.
  const base = worded.slice(0, NAME_LENGTH - 6).replace(/_$/, '');
  if (!taken.has(base)) return base;
  let count = 2;
  while (taken.has(`${base}_${count}`)) count += 1;
  return `${base}_${count}`;
}
