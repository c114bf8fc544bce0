import type { Effect } from '../session/effect-log.ts';

/** Most figures named in one line. */
const MOST_NAMED = 3;

/**
 * What an edit did, in one line: the figures that changed, those of the whole trip first, then those
 * with a limit.
 *
 * @param isWorking some are still being worked out: that none changed cannot be said yet
 *
 * @example effectWords(effects) // '−42 EUR expected trip cost, −3.0 h shed hours'
 */
export function effectWords(effects: readonly Effect[], isWorking = false): string {
  const changed = effects.filter((effect) => effect.words !== 'no change');
  if (changed.length === 0 && effects.length > 0)
    return isWorking ? 'being worked out' : 'no figure of the tally changed';
  const named = changed.toSorted(
    (a, b) => Number(a.figure.limit !== undefined) - Number(b.figure.limit !== undefined),
  );
  const words = named.slice(0, MOST_NAMED).map(oneEffect);
  return changed.length > MOST_NAMED
    ? `${words.join(', ')}, ${changed.length - MOST_NAMED} more`
    : words.join(', ');
}

function oneEffect(effect: Effect): string {
  const label = plainLabel(effect.figure.label);
  return Number.isNaN(effect.difference) ? `${label} has ${effect.words}` : `${effect.words} ${label}`;
}

/** `Pack, kg` beside a figure in kg is said as `pack`. */
function plainLabel(label: string): string {
  const short = label.replace(/,.*$/, '');
  return `${short.charAt(0).toLowerCase()}${short.slice(1)}`;
}
