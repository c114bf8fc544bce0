import { showCount, showNumber } from '../../src/formula/show.ts';
import { callInWords, kindInWords } from './call-kind.ts';
import { openCalls, overBest, type PartCall, type PartCalls, type PartState } from './calls-reading.ts';

/** Two calls whose costs differ by less than this, in the notebook's money, are level. */
export const LEVEL_WITHIN = 2;

/**
 * An amount of money as it stands in the table: whole, grouped, with a true minus.
 *
 * @example wholeMoney(-1240.4) // '−1,240'
 */
export function wholeMoney(amount: number): string {
  if (!Number.isFinite(amount)) return '–';
  const size = Math.round(Math.abs(amount));
  return `${amount < 0 && size > 0 ? '−' : ''}${showCount(size)}`;
}

/** With one decimal, as in the panel. */
export function fineMoney(amount: number): string {
  if (!Number.isFinite(amount)) return '–';
  const size = Math.round(Math.abs(amount) * 10) / 10;
  return `${amount < 0 && size > 0 ? '−' : ''}${showNumber(size, 1)}`;
}

/** What stands at the end of a part's row. */
export type Margin =
  | { readonly kind: 'best'; readonly by: string }
  | { readonly kind: 'level' }
  /** No other call may be made. */
  | { readonly kind: 'only' }
  | { readonly kind: 'over'; readonly by: string }
  /** Dearer than the part's own cheapest: a limit that all share, or buying together, makes it the plan's. */
  | { readonly kind: 'limits'; readonly by: string }
  | { readonly kind: 'none' };

/**
 * By how much the call in force is best, or over the best when it was set by hand.
 *
 * @example marginOf(part) // { kind: 'best', by: '29' }
 */
export function marginOf(part: PartCalls): Margin {
  if (part.chosen === null) return { kind: 'none' };
  if (part.byHand) {
    const over = overBest(part);
    if (!Number.isFinite(over)) return { kind: 'none' };
    return { kind: 'over', by: `+${wholeMoney(Math.max(0, over))}` };
  }
  if (!Number.isFinite(part.bestBy)) return { kind: openCalls(part).length === 1 ? 'only' : 'none' };
  if (part.bestBy <= -LEVEL_WITHIN) return { kind: 'limits', by: wholeMoney(-part.bestBy) };
  return part.bestBy < LEVEL_WITHIN ? { kind: 'level' } : { kind: 'best', by: wholeMoney(part.bestBy) };
}

export interface CallsCount {
  readonly proposed: number;
  readonly byHand: number;
  readonly needPrice: number;
  readonly noneMeets: number;
  readonly noneLeft: number;
  /** Set by hand to a call that is not allowed: the proposed one stands instead. */
  readonly refused: number;
  readonly waiting: number;
  /** Calls, not parts, that are ruled out by hand. */
  readonly forbidden: number;
}

const COUNTED: Readonly<Record<PartState, Exclude<keyof CallsCount, 'forbidden'>>> = {
  proposed: 'proposed',
  'by hand': 'byHand',
  'needs a price': 'needPrice',
  'no call meets the limit': 'noneMeets',
  'forbidden by hand': 'noneLeft',
  'not allowed by hand': 'refused',
  waits: 'waiting',
};

export function countCalls(parts: readonly PartCalls[]): CallsCount {
  const count = { proposed: 0, byHand: 0, needPrice: 0, noneMeets: 0, noneLeft: 0, refused: 0, waiting: 0 };
  for (const part of parts) count[COUNTED[part.state]]++;
  const forbidden = parts.flatMap((part) => part.calls.filter((call) => call.forbidden)).length;
  return { ...count, forbidden };
}

/**
 * What the parts that are not shown have in common, in a sentence.
 *
 * @example hiddenInWords(six, 'EUR') // '6 more parts; Leave is best for each, by 14 EUR or more.'
 */
export function hiddenInWords(hidden: readonly PartCalls[], money: string): string {
  const [first] = hidden;
  if (first === undefined) return '';
  const many = `${hidden.length} more ${hidden.length === 1 ? 'part' : 'parts'}`;
  const kind = first.chosen?.kind;
  if (kind === undefined || hidden.some((part) => part.chosen?.kind !== kind))
    return `${many}, with less at stake.`;
  const least = Math.min(...hidden.map((part) => part.bestBy).filter(Number.isFinite));
  const words = kindInWords(kind);
  if (!Number.isFinite(least) || least <= -LEVEL_WITHIN) return `${many}, all ${words}.`;
  return least < LEVEL_WITHIN
    ? `${many}; ${words} is best for each.`
    : `${many}; ${words} is best for each, by ${wholeMoney(Math.floor(least))} ${money} or more.`;
}

/** What ruling a call out, or allowing it again, does: 'Leave forbidden', 'Leave allowed again'. */
export const forbiddingInWords = (call: PartCall): string =>
  `${callInWords(call)} ${call.forbidden ? 'allowed again' : 'forbidden'}`;

/** The call in force in one line for a screen reader: 'Chain: Replace now, 114 EUR, best by 4'. */
export function partInWords(part: PartCalls, money: string): string {
  if (part.chosen === null) {
    return `${part.part}: ${part.state === 'waits' ? `waits for ${part.waitsFor}` : part.state}`;
  }
  const margin = marginOf(part);
  const ends: Readonly<Record<Margin['kind'], string>> = {
    best: `, best by ${'by' in margin ? margin.by : ''}`,
    level: ', level with another call',
    only: ', the only call allowed',
    limits: `, ${'by' in margin ? margin.by : ''} over its own cheapest, for the plan as a whole`,
    over: `, by hand, ${'by' in margin ? margin.by : ''} over the best`,
    none: '',
  };
  return `${part.part}: ${callInWords(part.chosen)}, ${wholeMoney(part.chosen.cost)} ${money}${ends[margin.kind]}`;
}
