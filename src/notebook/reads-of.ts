import type { PictureCell, PrepCell } from './document.ts';

/**
 * Everything that a picture or a prep sheet reads, by name.
 *
 * @example readsOf({ kind: 'prep', calls: 'decision', reads: { cash: 'calls.cash' }, ... })
 * // ['decision.part', 'decision.call', 'calls.cash']
 */
export function readsOf(cell: PictureCell | PrepCell): readonly string[] {
  const named = Object.entries(cell.reads)
    .filter(([, name]) => name !== '')
    // A plan is read as a whole; its cash stands for it, being there when the plan is.
    .map(([role, name]) => (role === 'plan' ? `${name}.cash` : name));
  if (cell.kind === 'picture') return [...named, ...cell.figures];
  return cell.calls === '' ? named : [`${cell.calls}.part`, `${cell.calls}.call`, ...named];
}
