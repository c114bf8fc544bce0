import type { Entry, ValueContent } from '../../src/notebook/document.ts';

export interface Refusal {
  readonly reason: string;
  readonly mend: string;
}

/**
 * Is an entry outside what the value takes? Its low and high, in the value's own unit, are the writer's word.
 * null when it may stand. An empty field may always stand.
 *
 * @example outsideLimits({ type: 'number', unit: 'EUR', value: 1, low: 0, control: 'field' }, -3)
 *   // { reason: '−3 EUR is below 0 EUR, the lowest this value takes.', mend: 'Write 0 or more.' }
 */
export function outsideLimits(content: ValueContent, entry: Entry): Refusal | null {
  if (content.type !== 'number' || typeof entry !== 'number') return null;
  const { low, high, unit } = content;
  const words = (figure: number): string => `${String(figure).replace('-', '−')}${unit ? ` ${unit}` : ''}`;
  if (low !== undefined && entry < low) {
    return {
      reason: `${words(entry)} is below ${words(low)}, the lowest this value takes.`,
      mend: high === undefined ? `Write ${words(low)} or more.` : `Write ${low} to ${words(high)}.`,
    };
  }
  if (high !== undefined && entry > high) {
    return {
      reason: `${words(entry)} is above ${words(high)}, the highest this value takes.`,
      mend: low === undefined ? `Write ${words(high)} or less.` : `Write ${low} to ${words(high)}.`,
    };
  }
  return null;
}
