/** Ways in which bytes stand for letters, by the names of the WHATWG Encoding Standard. */
export type Letters =
  | 'utf-8'
  | 'utf-16le'
  | 'utf-16be'
  | 'windows-1252'
  | 'windows-1250'
  | 'windows-1251'
  | 'shift_jis';

/**
 * The text of a file's bytes: UTF-8, or UTF-16 when it begins with that mark; bytes that are no UTF-8 are read
 * as windows-1252, which older exports are written in. A mark at the beginning is left out.
 */
export function decodeText(bytes: Uint8Array): { readonly text: string; readonly letters: Letters } {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return decoded(bytes, 'utf-16le');
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return decoded(bytes, 'utf-16be');
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), letters: 'utf-8' };
  } catch {
    return { text: fromWindows1252(bytes), letters: 'windows-1252' };
  }
}

/** Signs of the bytes 0x80 to 0x9f (WHATWG Encoding Standard, index windows-1252); the others are as in Latin-1. */
const SIGNS = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/**
 * Bytes as windows-1252. Not by TextDecoder: some versions of Node read the bytes 0x80 to 0x9f as Latin-1.
 *
 * @example fromWindows1252(new Uint8Array([0x80, 0x31])) // '€1'
 */
export function fromWindows1252(bytes: Uint8Array): string {
  const pieces: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) {
    pieces.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  }
  return pieces.join('').replace(/[\u0080-\u009f]/g, (sign) => SIGNS[sign.charCodeAt(0) - 0x80]!);
}

function decoded(bytes: Uint8Array, letters: Letters): { text: string; letters: Letters } {
  return { text: new TextDecoder(letters).decode(bytes), letters };
}
