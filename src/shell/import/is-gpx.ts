/** Text of a GPX file? */
export function isGpx(text: string): boolean {
  return /^\uFEFF?\s*(?:<\?xml[^>]*\?>\s*)?(?:<!--[\s\S]*?-->\s*)?<(?:\w+:)?gpx[\s>]/.test(
    text.slice(0, 2000),
  );
}
