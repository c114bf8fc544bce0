/** Time that work takes at a stretch before the page gets its turn, in ms: half a frame. */
const SLICE_MS = 8;

/**
 * Does work slice by slice, so that the page stays quick, and gives its result; null when it was called off.
 *
 * @param isOff asked after each slice
 */
export async function inSlices<T>(work: Generator<void, T>, isOff: () => boolean): Promise<T | null> {
  for (;;) {
    const until = performance.now() + SLICE_MS;
    do {
      const step = work.next();
      if (step.done) return step.value;
    } while (performance.now() < until);
    await new Promise((resolve) => setTimeout(resolve));
    if (isOff()) return null;
  }
}
