/**
 * Whether a unit only says what something is counted per, such as `1/(1000 km)`: what is counted may then have a
 * unit of its own in every row, as the gauge of a wear rate has.
 */
export function isCountedPer(unit: string | undefined): boolean {
  return /^1\s*\//.test(unit ?? '');
}

/**
 * The unit of a gauge over what it is counted per.
 *
 * @param unit one that `isCountedPer`
 * @example gaugeOver('mm', '1/(1000 km)') // 'mm/(1000 km)'
 */
export function gaugeOver(gauge: string, unit: string): string {
  // A function, because signs such as $& in a text typed by hand mean something in a replacement.
  return unit.replace(/^1\s*/, () => gauge);
}
