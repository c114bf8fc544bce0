/** The faces of the first screen, as CSS font shorthands. */
const FIRST_FACES = [
  '400 1em "Inter Variable"',
  '500 1em "Barlow Semi Condensed"',
  '600 1em "Barlow Semi Condensed"',
  '400 1em Alegreya',
  'italic 400 1em Alegreya',
] as const;

/** Longest wait, in ms: after that the page is drawn with the stand-ins, and the faces come when they come. */
const LONGEST_WAIT_MS = 1200;

/**
 * Resolves when the faces of the first screen are there, or when waiting for them has taken long enough. On a
 * second visit they are at hand at once.
 */
export async function facesReady(): Promise<void> {
  const loads = FIRST_FACES.map((face) => document.fonts.load(face).catch(() => []));
  const enough = new Promise<void>((resolve) => setTimeout(resolve, LONGEST_WAIT_MS));
  await Promise.race([Promise.all(loads), enough]);
}
