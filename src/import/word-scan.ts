import { isWordCode, type SearchText } from './search-text.ts';

/** Rows that have a word. */
export interface WordRows {
  readonly word: string;
  /** In rising order, each once. */
  readonly rows: Uint32Array;
}

/** Signs that a part number may have or not, as it is compared. */
const LOOSE = new Set([..." -–—−.,/\\_'’"].map((sign) => sign.charCodeAt(0)));
/** Words whose rows are kept for the next search: parts share words, and typing goes on with a word. */
const MOST_KEPT = 200;

/**
 * Finds words by looking through the text itself. That is quicker than an index until some hundred words have
 * been asked for: a hundred thousand rows take about ten milliseconds a word, an index half a second to make.
 */
export class WordScan {
  private readonly held: SearchText;
  private readonly known = new Map<string, readonly WordRows[]>();
  private readonly counts: Uint8Array;

  constructor(held: SearchText) {
    this.held = held;
    this.counts = new Uint8Array(held.rows);
  }

  /** All words that begin so, with their rows; a single letter is only found as a word of its own. */
  beginningWith(beginning: string): readonly WordRows[] {
    const known = this.known.get(beginning);
    if (known !== undefined) return known;
    const found = new Map<string, number[]>();
    this.scanWords(beginning, found);
    if (beginning.length > 1) this.scanNumbers(beginning, found);
    const words = [...found].map(([word, rows]) => ({ word, rows: inOrder(rows) }));
    if (this.known.size >= MOST_KEPT) this.known.clear();
    this.known.set(beginning, words);
    return words;
  }

  /** How many words a row has, at most 50. */
  wordsIn(row: number): number {
    const known = this.counts[row]!;
    if (known > 0) return known - 1;
    const { text, starts, ends, each } = this.held;
    let words = this.keyOf(row) === '' ? 0 : 1;
    for (let place = row * each; place < (row + 1) * each; place += 1) {
      let isInside = false;
      for (let at = starts[place]!; at < ends[place]!; at += 1) {
        const isWord = isWordCode(text.charCodeAt(at));
        if (isWord && !isInside) words += 1;
        isInside = isWord;
      }
    }
    const count = Math.min(words, 50);
    this.counts[row] = count + 1;
    return count;
  }

  private scanWords(beginning: string, found: Map<string, number[]>): void {
    const { text, each } = this.held;
    const exact: number[] = [];
    let place = 0;
    for (let at = text.indexOf(beginning); at !== -1; at = text.indexOf(beginning, at + 1)) {
      if (at > 0 && isWordCode(text.charCodeAt(at - 1))) continue;
      place = this.placeOf(at, place);
      if (place === -1) break;
      if (at < this.held.starts[place]!) continue;
      let end = at + beginning.length;
      while (end < text.length && isWordCode(text.charCodeAt(end))) end += 1;
      const row = Math.floor(place / each);
      if (end === at + beginning.length) exact.push(row);
      else if (beginning.length > 1) put(found, text.slice(at, end), row);
    }
    if (exact.length > 0) found.set(beginning, exact);
  }

  /** The first field from `from` on that ends behind a place of the text; -1 when there is none. */
  private placeOf(at: number, from: number): number {
    const { ends } = this.held;
    let low = from;
    for (let near = 0; near < 6; near += 1) {
      if (low >= ends.length) return -1;
      if (ends[low]! > at) return low;
      low += 1;
    }
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (ends[middle]! > at) high = middle;
      else low = middle + 1;
    }
    return low < ends.length ? low : -1;
  }

  /** Part numbers as one word, for who types them without their dashes. */
  private scanNumbers(beginning: string, found: Map<string, number[]>): void {
    for (let row = 0; row < this.held.rows; row += 1) {
      if (!this.mayBegin(row, beginning)) continue;
      const key = this.keyOf(row);
      if (key.startsWith(beginning)) put(found, key, row);
    }
  }

  private mayBegin(row: number, beginning: string): boolean {
    const { text, starts, ends, each, numberAt } = this.held;
    const start = starts[row * each + numberAt]!;
    const code = text.charCodeAt(start);
    return start < ends[row * each + numberAt]! && (code === beginning.charCodeAt(0) || !isWordCode(code));
  }

  /** First word of a part number without its loose signs; '' when it has none and so is a word already. */
  private keyOf(row: number): string {
    const { text, starts, ends, each, numberAt } = this.held;
    const end = ends[row * each + numberAt]!;
    let key = '';
    let isLoose = false;
    for (let at = starts[row * each + numberAt]!; at < end; at += 1) {
      const code = text.charCodeAt(at);
      if (isWordCode(code)) key += text[at]!;
      else if (LOOSE.has(code)) isLoose = true;
      else if (key !== '') break;
    }
    return isLoose ? key : '';
  }
}

function put(found: Map<string, number[]>, word: string, row: number): void {
  const held = found.get(word);
  if (held === undefined) found.set(word, [row]);
  else held.push(row);
}

/** Each row once, in rising order; they come nearly so. */
function inOrder(rows: readonly number[]): Uint32Array {
  const sorted = Uint32Array.from(rows).sort();
  let length = 0;
  for (const row of sorted) {
    if (length > 0 && sorted[length - 1] === row) continue;
    sorted[length] = row;
    length += 1;
  }
  return sorted.subarray(0, length);
}
