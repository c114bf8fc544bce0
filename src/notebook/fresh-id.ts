/**
 * An id for a new cell or column, such as `cell-9f1c03ab72de`. Drawn at random, so that two tabs that add
 * cells at the same time never mean different cells by one id.
 */
export function freshId(prefix: 'cell' | 'column' | 'notebook'): string {
  const bytes = crypto.getRandomValues(new Uint8Array(6));
  return `${prefix}-${Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('')}`;
}
