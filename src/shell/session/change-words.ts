import { firstTally, mainFigure } from './effect-log.ts';
import type { Session } from './session.ts';

/**
 * What the last edit did to the main figure of the tally, to be read out: `Expected total down 42
 * EUR`. '' when there is nothing to say.
 */
export function changeWords(session: Session): string {
  const [entry] = session.log.entries;
  const main = mainFigure(firstTally(session.notebook.document));
  const effect = entry?.effects.find((one) => one.figure.figure === main?.figure);
  if (!main || !effect) return '';
  if (Number.isNaN(effect.difference)) return `${main.label} has ${effect.words}`;
  const size = effect.words.replace(/^[−+]/, '');
  const way = effect.words === 'no change' ? 'unchanged' : `${effect.difference < 0 ? 'down' : 'up'} ${size}`;
  return `${main.label} ${way}`;
}
