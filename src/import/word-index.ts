import { foldText } from './fold-words.ts';
import type { Steps } from './in-steps.ts';

/**
 * The words of many short texts and, for each word, the texts that have it. Kept in typed arrays and built by
 * hashing the letters where they stand: a hundred thousand texts take less than a tenth of a second.
 */
export interface WordIndex {
  readonly words: number;
  /** Words by the letters they begin with; see `beginningWith`. */
  readonly beginningWith: (
    beginning: string,
  ) => Iterable<{ readonly word: string; readonly rows: Uint32Array }>;
  /** Words in each text. */
  readonly lengths: Uint16Array;
}

const LETTERS_A_STEP = 400_000;
const BUCKETS = 4096;

/** Letters, digits, and everything beyond plain signs: other alphabets are words throughout. */
function isWordCode(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 48 && code <= 57) || code >= 0xaa;
}

const bucketOf = (first: number, second: number): number => (first * 61 + second) & (BUCKETS - 1);

/**
 * Builds the index of texts, one a line.
 *
 * @param lines texts joined by \n, as `foldLines` gives them
 * @param count how many texts there are
 */
export function* wordIndexSteps(lines: string, count: number): Steps<WordIndex> {
  const reader = new WordReader(lines, count);
  for (let at = 0; at <= lines.length; at += LETTERS_A_STEP) {
    reader.read(at, Math.min(at + LETTERS_A_STEP, lines.length + 1));
    yield { stage: 'index', done: at, of: lines.length };
  }
  return arrange(lines, reader);
}

/** Texts folded and joined for the index: small letters without accents, one text a line. */
export function foldLines(texts: readonly string[]): string {
  const joined = texts.join('\n').toLowerCase();
  if (!/[^\x20-\x7e\n]/.test(joined)) return joined;
  // Only what is no plain letter is folded, run by run: most lists have little of it.
  return joined.replace(/[^\x20-\x7e\n]+/g, (run) => foldText(run).padEnd(1, ' '));
}

class Uint32Growing {
  private held = new Uint32Array(1 << 16);
  length = 0;

  push(value: number): void {
    if (this.length === this.held.length) {
      const larger = new Uint32Array(this.held.length * 2);
      larger.set(this.held);
      this.held = larger;
    }
    this.held[this.length] = value;
    this.length += 1;
  }

  at(place: number): number {
    return this.held[place]!;
  }
}

/** Reads words off the lines, in pieces; kept apart from the steps, for a plain loop runs faster. */
class WordReader {
  readonly table: WordTable;
  readonly lengths: Uint16Array;
  /** Word and row of each place where a word stands. */
  readonly wordAt = new Uint32Growing();
  readonly rowAt = new Uint32Growing();
  private readonly lines: string;
  private row = 0;
  private start = -1;
  private hash = 0;

  constructor(lines: string, count: number) {
    this.lines = lines;
    this.table = new WordTable(lines);
    this.lengths = new Uint16Array(count);
  }

  /** Goes on from `from`, where the last call ended, to `to`; the text's end counts as a break. */
  read(from: number, to: number): void {
    const { lines, table, lengths } = this;
    let { row, start, hash } = this;
    for (let at = from; at < to; at += 1) {
      const code = at < lines.length ? lines.charCodeAt(at) : 10;
      if (isWordCode(code)) {
        if (start === -1) {
          start = at;
          hash = 0;
        }
        hash = (Math.imul(hash, 31) + code) | 0;
        continue;
      }
      if (start !== -1) {
        this.wordAt.push(table.add(start, at, hash));
        this.rowAt.push(row);
        if (lengths[row]! < 65_535) lengths[row]! += 1;
        start = -1;
      }
      if (code === 10) row += 1;
    }
    this.row = row;
    this.start = start;
    this.hash = hash;
  }
}

/** Different words, found by a hash of their letters and compared where they stand in the text. */
class WordTable {
  readonly starts = new Uint32Growing();
  readonly ends = new Uint32Growing();
  private slots = new Int32Array(1 << 17).fill(-1);
  private readonly hashes = new Uint32Growing();
  private readonly text: string;

  constructor(text: string) {
    this.text = text;
  }

  add(start: number, end: number, hash: number): number {
    let mask = this.slots.length - 1;
    let slot = spread(hash) & mask;
    for (;;) {
      const word = this.slots[slot]!;
      if (word === -1) break;
      if (this.hashes.at(word) === hash >>> 0 && this.isSame(word, start, end)) return word;
      slot = (slot + 1) & mask;
    }
    const word = this.starts.length;
    this.starts.push(start);
    this.ends.push(end);
    this.hashes.push(hash >>> 0);
    this.slots[slot] = word;
    if (word * 2 > mask) {
      this.grow();
      mask = this.slots.length - 1;
    }
    return word;
  }

  private isSame(word: number, start: number, end: number): boolean {
    const other = this.starts.at(word);
    const length = end - start;
    if (this.ends.at(word) - other !== length) return false;
    for (let i = 0; i < length; i += 1) {
      if (this.text.charCodeAt(other + i) !== this.text.charCodeAt(start + i)) return false;
    }
    return true;
  }

  private grow(): void {
    const slots = new Int32Array(this.slots.length * 4).fill(-1);
    const mask = slots.length - 1;
    for (let word = 0; word < this.starts.length; word += 1) {
      let slot = spread(this.hashes.at(word)) & mask;
      while (slots[slot] !== -1) slot = (slot + 1) & mask;
      slots[slot] = word;
    }
    this.slots = slots;
  }
}

function spread(hash: number): number {
  const mixed = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return mixed ^ (mixed >>> 12);
}

/** Rows word by word in one array, and words by their first two letters. */
function arrange(lines: string, { table, wordAt, rowAt, lengths }: WordReader): WordIndex {
  const words = table.starts.length;
  const from = new Uint32Array(words + 1);
  for (let at = 0; at < wordAt.length; at += 1) from[wordAt.at(at) + 1]! += 1;
  for (let word = 0; word < words; word += 1) from[word + 1]! += from[word]!;
  const rows = new Uint32Array(wordAt.length);
  const fill = from.slice(0, words);
  for (let at = 0; at < wordAt.length; at += 1) {
    const word = wordAt.at(at);
    const row = rowAt.at(at);
    const place = fill[word]!;
    // A word that a text has twice stands there once.
    if (place > from[word]! && rows[place - 1] === row) continue;
    rows[place] = row;
    fill[word] = place + 1;
  }
  const buckets = bucketWords(lines, table);
  function* beginningWith(beginning: string): Generator<{ word: string; rows: Uint32Array }> {
    const only = beginning.length < 2 ? null : bucketOf(beginning.charCodeAt(0), beginning.charCodeAt(1));
    for (const word of only === null ? buckets.single(beginning) : buckets.of(only)) {
      const start = table.starts.at(word);
      const end = table.ends.at(word);
      if (!lines.startsWith(beginning, start) || start + beginning.length > end) continue;
      yield { word: lines.slice(start, end), rows: rows.subarray(from[word]!, fill[word]!) };
    }
  }
  return { words, beginningWith, lengths };
}

/** Words by their first two letters, counted into one array. A word of one letter has a nought after it. */
function bucketWords(
  lines: string,
  table: WordTable,
): { of: (bucket: number) => Uint32Array; single: (letter: string) => Uint32Array } {
  const words = table.starts.length;
  const starts = new Uint32Array(BUCKETS + 1);
  const bucketAt = new Uint16Array(words);
  for (let word = 0; word < words; word += 1) {
    const start = table.starts.at(word);
    const second = table.ends.at(word) - start > 1 ? lines.charCodeAt(start + 1) : 0;
    const bucket = bucketOf(lines.charCodeAt(start), second);
    bucketAt[word] = bucket;
    starts[bucket + 1]! += 1;
  }
  for (let bucket = 0; bucket < BUCKETS; bucket += 1) starts[bucket + 1]! += starts[bucket]!;
  const fill = starts.slice(0, BUCKETS);
  const ordered = new Uint32Array(words);
  for (let word = 0; word < words; word += 1) {
    const bucket = bucketAt[word]!;
    ordered[fill[bucket]!] = word;
    fill[bucket]! += 1;
  }
  const of = (bucket: number): Uint32Array => ordered.subarray(starts[bucket]!, starts[bucket + 1]!);
  return { of, single: (letter) => of(bucketOf(letter.charCodeAt(0), 0)) };
}
