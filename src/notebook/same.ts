/**
 * Whether two plain JSON values are the same. A key that is absent and one that holds undefined are the same,
 * as they are in the saved file. Shared parts are not walked, so comparing a document with its own edit is
 * as cheap as the edit.
 */
export function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (a === 0 && b === 0) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!Array.isArray(a) || !Array.isArray(b) || a.length !== b.length) return false;
    for (let i = 0; i < a.length; i += 1) if (!same(a[i], b[i])) return false;
    return true;
  }
  return sameFields(a as Record<string, unknown>, b as Record<string, unknown>);
}

function sameFields(a: Record<string, unknown>, b: Record<string, unknown>): boolean {
  for (const key of Object.keys(a)) {
    if (!same(a[key], Object.hasOwn(b, key) ? b[key] : undefined)) return false;
  }
  for (const key of Object.keys(b)) {
    if (b[key] !== undefined && !Object.hasOwn(a, key)) return false;
  }
  return true;
}
