const asFloat = new Float64Array(1);
const asWords = new Uint32Array(asFloat.buffer);

/** Starting value of a hash (offset basis of FNV-1a, 32 bits). */
export const HASH_START = 0x811c9dc5;

/**
 * Takes one figure into a running 32-bit hash, bit for bit (so that NaN, missing, is a value like any other).
 * @param hash the hash so far, HASH_START at first.
 * @param figure any number.
 * Source: FNV-1a's multiply and exclusive-or, on words, with a shift to spread the high bits.
 * @example hashFigure(0, 0) = 0
 * (By hand: 0 multiplied and shifted stays 0.)
 */
export function hashFigure(hash: number, figure: number): number {
  asFloat[0] = figure;
  const mixed = Math.imul(hash ^ (asWords[0] as number), 0x01000193);
  const next = Math.imul(mixed ^ (mixed >>> 15) ^ (asWords[1] as number), 0x01000193);
  return (next ^ (next >>> 13)) >>> 0;
}
