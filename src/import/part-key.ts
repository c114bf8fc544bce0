const IS_KEY = /^[A-Z0-9]*$/;

/**
 * A part number as it is compared: capitals, without spaces, dashes, points, slashes and underscores. Noughts at
 * the front stay: 0123 and 123 may be two parts.
 *
 * @example partKey('ng 11-04.a') // 'NG1104A'
 */
export function partKey(partNumber: string): string {
  const capitals = partNumber.toUpperCase();
  if (IS_KEY.test(capitals)) return capitals;
  return capitals.normalize('NFKC').replace(/[\s\-–—−.,/\\_'’]+/g, '');
}
