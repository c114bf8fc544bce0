import type { KeeperState } from '../../notebook/storage/keeper.ts';

/** Hours and minutes of a time of day: `14:02`. */
export function clock(at: Date): string {
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}

/**
 * The state of keeping, in words.
 *
 * @example keptWords({ kind: 'kept', at: new Date(2026, 2, 14, 14, 2) }) // 'Kept on this device, 14:02'
 */
export function keptWords(kept: KeeperState): string {
  switch (kept.kind) {
    case 'kept':
      return `Kept on this device, ${clock(kept.at)}`;
    case 'keeping':
      return 'Keeping…';
    case 'failed':
      return 'Not kept';
  }
}
