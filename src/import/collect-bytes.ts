import { MOST_BYTES } from './refuse-file.ts';
import type { Refusal } from './split-records.ts';

/**
 * The bytes of a stream (a file's, a response's), gathered piece by piece.
 *
 * @param of bytes to come, where known, for `onProgress`
 * @throws the signal's reason when it is aborted
 * @example await collectBytes(file.stream(), { signal })
 */
export async function collectBytes(
  stream: AsyncIterable<Uint8Array>,
  options: { readonly signal?: AbortSignal; readonly onProgress?: (bytes: number) => void } = {},
): Promise<Uint8Array | Refusal> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of stream) {
    options.signal?.throwIfAborted();
    length += piece.length;
    if (length > MOST_BYTES) {
      return {
        refusal: `The file has more than ${MOST_BYTES / 1e6} MB, which is the most that can be brought in. Split it.`,
      };
    }
    pieces.push(piece);
    options.onProgress?.(length);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}
