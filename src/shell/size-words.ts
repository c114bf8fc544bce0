import { showCount, showNumber } from '../formula/show.ts';

/**
 * A size in words.
 *
 * @example sizeWords(168_850) // '169 kB'
 */
export function sizeWords(bytes: number): string {
  if (bytes < 1_000) return `${showCount(bytes)} bytes`;
  const [figure, unit] = bytes < 999_500 ? [bytes / 1_000, 'kB'] : [bytes / 1_000_000, 'MB'];
  return `${showNumber(figure, figure < 10 ? 1 : 0)} ${unit}`;
}
