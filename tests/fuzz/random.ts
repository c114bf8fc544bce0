/** A sequence of chances that is the same for the same seed. */
export class Chance {
  #state: number;

  /** @param seed a whole number from 1 to 2147483646 */
  constructor(seed: number) {
    this.#state = seed % 2147483647 || 1;
  }

  /** From 0 up to 1, 1 left out (Park and Miller 1988, with the multiplier 48271). */
  next(): number {
    this.#state = (this.#state * 48271) % 2147483647;
    return (this.#state - 1) / 2147483646;
  }

  /** A whole number from 0 up to `count`, which is left out. */
  below(count: number): number {
    return Math.floor(this.next() * count);
  }

  of<T>(choices: readonly T[]): T {
    return choices[this.below(choices.length)]!;
  }

  /** True once in so many times. */
  once(times: number): boolean {
    return this.below(times) === 0;
  }
}

/** Names and texts that have hurt programs before. */
export const HOSTILE: readonly string[] = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'valueOf',
  '__defineGetter__',
  'constructor.constructor("return globalThis")()',
  'globalThis.canary = 1',
  'import("x")',
  'fetch("http://192.0.2.1/")',
  '<img src=x onerror="canary()">',
  '"><script>canary()</script>',
  '[x](javascript:canary())',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: this very text is to be read
  '${canary()}',
  '=HYPERLINK("http://192.0.2.1")',
  '\u0000',
  '\u202e',
  '\ud800',
  '\ufeff',
  '1e999',
  '-0',
  '0x10',
  '٣',
  '１２',
  '𝒳',
  'é'.normalize('NFD'),
  'zeros(1e9)',
  'combinations(1e9,5e8)',
  '('.repeat(300),
  '['.repeat(300),
  '-'.repeat(300),
  'a.'.repeat(200),
  '"'.repeat(51),
  '1'.repeat(400),
];

/** A text changed in one to four places: cut, doubled, put in, exchanged, turned into another. */
export function mutate(chance: Chance, text: string, others: readonly string[]): string {
  let changed = text;
  for (let left = 1 + chance.below(4); left > 0; left--) {
    const from = chance.below(changed.length + 1);
    const to = from + chance.below(Math.min(12, changed.length - from + 1));
    const [before, piece, after] = [changed.slice(0, from), changed.slice(from, to), changed.slice(to)];
    const way = chance.below(6);
    if (way === 0) changed = before + after;
    else if (way === 1) changed = before + piece + piece + after;
    else if (way === 2) changed = before + chance.of(others) + after;
    else if (way === 3) changed = before + chance.of(HOSTILE) + after;
    else if (way === 4) changed = before + String.fromCharCode(chance.below(0x250)) + after;
    else changed = before + after.slice(chance.below(8)) + piece;
  }
  return changed;
}
