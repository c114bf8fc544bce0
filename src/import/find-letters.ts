import { fromWindows1252, type Letters } from '../tables/decode-text.ts';
import type { Steps } from './in-steps.ts';

/** What the reader may choose when the letters come out wrong, with words for each. */
export const LETTER_CHOICES: readonly { readonly letters: Letters; readonly words: string }[] = [
  { letters: 'utf-8', words: 'UTF-8 (most new files)' },
  { letters: 'utf-16le', words: 'UTF-16, small end first' },
  { letters: 'utf-16be', words: 'UTF-16, big end first' },
  { letters: 'windows-1252', words: 'Windows-1252 (western Europe)' },
  { letters: 'windows-1250', words: 'Windows-1250 (central Europe)' },
  { letters: 'windows-1251', words: 'Windows-1251 (Cyrillic)' },
  { letters: 'shift_jis', words: 'Shift_JIS (Japanese)' },
];

export interface FoundLetters {
  readonly letters: Letters;
  /** Why, in a few words that end a sentence: 'the file begins with the mark of UTF-8'. */
  readonly reason: string;
}

/** Bytes that are looked at for a pattern. */
const SAMPLE = 65_536;
const PIECE = 1 << 20;

/**
 * How the bytes of a file stand for letters: by its mark, the pattern of UTF-16, valid UTF-8, else the older
 * code that its bytes look like, Windows-1252 where nothing speaks for another.
 *
 * @example findLetters(new Uint8Array([0xef, 0xbb, 0xbf, 0x61])).letters // 'utf-8'
 */
export function findLetters(bytes: Uint8Array): FoundLetters {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) {
    return { letters: 'utf-8', reason: 'the file begins with the mark of UTF-8' };
  }
  if (bytes[0] === 0xff && bytes[1] === 0xfe) {
    return { letters: 'utf-16le', reason: 'the file begins with the mark of UTF-16' };
  }
  if (bytes[0] === 0xfe && bytes[1] === 0xff) {
    return { letters: 'utf-16be', reason: 'the file begins with the mark of UTF-16' };
  }
  const wide = wideLetters(bytes);
  if (wide !== null) return { letters: wide, reason: 'every other byte is empty, as in UTF-16' };
  if (isUtf8(bytes)) return { letters: 'utf-8', reason: 'all its bytes are valid UTF-8' };
  return olderLetters(bytes);
}

/** UTF-16 without a mark: in Latin text every other byte is 0. */
function wideLetters(bytes: Uint8Array): Letters | null {
  const length = Math.min(bytes.length, SAMPLE) & ~1;
  if (length < 4) return null;
  let even = 0;
  let odd = 0;
  for (let at = 0; at < length; at += 2) {
    if (bytes[at] === 0) even += 1;
    if (bytes[at + 1] === 0) odd += 1;
  }
  const pairs = length / 2;
  if (odd > pairs * 0.4 && even < pairs * 0.05) return 'utf-16le';
  if (even > pairs * 0.4 && odd < pairs * 0.05) return 'utf-16be';
  return null;
}

function isUtf8(bytes: Uint8Array): boolean {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  // Plain letters need no decoding to be known as such.
  let from = 0;
  while (from < bytes.length && bytes[from]! < 0x80) from += 1;
  try {
    for (let at = from; at < bytes.length; at += PIECE) {
      decoder.decode(bytes.subarray(at, at + PIECE), { stream: true });
    }
    decoder.decode();
    return true;
  } catch {
    return false;
  }
}

function olderLetters(bytes: Uint8Array): FoundLetters {
  const counts = countHighBytes(bytes.subarray(0, SAMPLE * 4));
  if (counts.kana >= 3 && isShiftJis(bytes)) {
    return { letters: 'shift_jis', reason: 'its bytes come in the pairs of Japanese writing' };
  }
  // Cyrillic words are high bytes throughout; in western words they stand alone between plain letters.
  if (counts.inRuns > counts.high * 0.6 && counts.high >= 6) {
    return { letters: 'windows-1251', reason: 'whole words of it are high bytes, as in Cyrillic writing' };
  }
  return {
    letters: 'windows-1252',
    reason: 'its bytes are no UTF-8, and western files are mostly written so',
  };
}

/** High bytes that may be letters, those in runs of three or more, and lead bytes of kana. */
function countHighBytes(bytes: Uint8Array): { high: number; inRuns: number; kana: number } {
  let high = 0;
  let inRuns = 0;
  let kana = 0;
  let run = 0;
  for (let at = 0; at <= bytes.length; at += 1) {
    const byte = at < bytes.length ? bytes[at]! : 0;
    if ((byte === 0x82 || byte === 0x83) && (bytes[at + 1] ?? 0) >= 0x40) kana += 1;
    // In windows-1251 the letters are 0xc0 to 0xff, and 0xa8, 0xb8 for one more.
    if (byte >= 0xc0 || byte === 0xa8 || byte === 0xb8) {
      run += 1;
      continue;
    }
    high += run;
    if (run >= 3) inRuns += run;
    run = 0;
  }
  return { high, inRuns, kana };
}

function isShiftJis(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('shift_jis', { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

/** The text of the bytes, a mark at the beginning left out. Bytes that stand for no letter become �. */
export function* decodeSteps(bytes: Uint8Array, letters: Letters): Steps<string> {
  const pieces: string[] = [];
  const decode = pieceDecoder(letters);
  let at = 0;
  while (at < bytes.length) {
    const end = letters === 'utf-8' ? letterEnd(bytes, at + PIECE) : Math.min(at + PIECE, bytes.length);
    pieces.push(decode(bytes.subarray(at, end), end === bytes.length));
    at = end;
    yield { stage: 'letters', done: at, of: bytes.length };
  }
  return pieces.join('');
}

/** Decodes pieces one after another. UTF-8 is cut between letters, for whole pieces decode in half the memory. */
function pieceDecoder(letters: Letters): (piece: Uint8Array, isLast: boolean) => string {
  if (letters === 'windows-1252') return fromWindows1252;
  if (letters !== 'utf-8') {
    const decoder = new TextDecoder(letters);
    return (piece, isLast) => decoder.decode(piece, { stream: !isLast });
  }
  // Only at the very beginning is the mark of the letters no part of the text.
  const [first, later] = [new TextDecoder(), new TextDecoder('utf-8', { ignoreBOM: true })];
  let isFirst = true;
  return (piece) => {
    const text = (isFirst ? first : later).decode(piece);
    isFirst = false;
    return text;
  };
}

/** The last place up to `to` where a letter of UTF-8 begins, or the end. */
function letterEnd(bytes: Uint8Array, to: number): number {
  if (to >= bytes.length) return bytes.length;
  let end = to;
  // A letter has at most three bytes after its first.
  while (end > to - 4 && (bytes[end]! & 0xc0) === 0x80) end -= 1;
  return end;
}
