/** How far apart digits stand, in px at the usual text size. */
export const DIGIT_STEP = 7.2;

/**
 * The ten digits as lines drawn with a round pen, each about its middle, in px at the usual text size: 8.8 px high
 * and 6 wide with a pen of 1.2, as the digits of a face of 12 px are.
 */
export const DIGIT_LINES: readonly string[] = [
  'm-2.4-1.4a2.4 2.4 0 0 1 4.8 0v2.8a2.4 2.4 0 0 1-4.8 0z',
  'm-1.9-2.2l2.3-1.6v7.6',
  'm-2.3-1.7a2.25 2.15 0 1 1 4.1 1.3l-4.1 4.2h4.7',
  'm-2.1-3.8h4.2l-2.3 2.9a2.4 2.4 0 1 1-2.1 3.5',
  'm1.1 3.8v-7.6l-3.7 5.3h5.2',
  'm2-3.8h-3.7l-.4 3.6a2.5 2.5 0 1 1-.3 2.8',
  'm1.2-3.8l-3.1 3.75a2.4 2.4 0 1 0 3.8 0a2.4 2.4 0 0 0-3.8 0',
  'm-2.4-3.8h4.7l-3 7.6',
  'm-1.9-1.95a1.9 1.85 0 1 1 3.8 0a1.9 1.85 0 1 1-3.8 0m-.4 3.7a2.3 2.05 0 1 1 4.6 0a2.3 2.05 0 1 1-4.6 0',
  'm-1.2 3.8l3.1-3.75a2.4 2.4 0 1 0-3.8 0a2.4 2.4 0 0 0 3.8 0',
];

/**
 * A whole number as one path, its middle at a place. As letters, 2,400 figures that each have a place of their own
 * take the browser longer to lay out and to paint than all the rest of a map.
 *
 * @param x px at the usual text size
 * @param digits '0' to '9', one or more
 * @example figureLines('17', 20, 10) // 'M16.4 10m-1.9-2.2…M23.6 10m-2.4-3.8…'
 */
export function figureLines(digits: string, x: number, y: number): string {
  let path = '';
  for (let at = 0; at < digits.length; at += 1) {
    const middle = x + (at - (digits.length - 1) / 2) * DIGIT_STEP;
    path += `M${Math.round(middle * 10) / 10} ${y}${DIGIT_LINES[digits.charCodeAt(at) - 48] ?? ''}`;
  }
  return path;
}
