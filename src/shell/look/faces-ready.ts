import { FIRST_FACES } from './first-faces.ts';

/** Longest wait, in ms: after that the page is drawn with the stand-ins, and the faces come when they come. */
const LONGEST_WAIT_MS = 1200;

/**
 * Resolves when the faces of the first screen are there, or when waiting for them has taken long enough. On a
 * second visit they are at hand at once.
 */
export async function facesReady(): Promise<void> {
  const loads = FIRST_FACES.map(({ font }) => document.fonts.load(font).catch(() => []));
  const enough = new Promise<void>((resolve) => setTimeout(resolve, LONGEST_WAIT_MS));
  await Promise.race([Promise.all(loads), enough]);
}
