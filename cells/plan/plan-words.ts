import { showNumber } from '../../src/formula/show.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type PlanResult } from '../../src/plan/plan-result.ts';

/** How much a plan is to be trusted, as a shape and a sentence. */
export interface Verdict {
  /** `proven`: no plan is better. `found`: the best so far. `short`: some limit is not met. `none`: no plan. */
  readonly kind: 'proven' | 'found' | 'short' | 'none' | 'waits';
  readonly word: string;
  readonly sentence: string;
}

/** A sum of money with cents: `1,006.81 EUR`. */
export const money = (sum: number, unit: string): string => `${showNumber(sum, 2)} ${unit}`;

/** A chance of 0 to 1 in percent with one place: `18.2 %`. */
export const percent = (chance: number): string => `${showNumber(chance * 100, 1)} %`;

/**
 * What may be said of a plan. The word "proven" stands only where the solver proved it.
 *
 * @param result null before the first plan, and where nobody plans
 * @example verdictOf(result, instance).word // 'Proven best'
 */
export function verdictOf(result: PlanResult | null, instance: PlanInstance): Verdict {
  if (result === null)
    return {
      kind: 'waits',
      word: 'No plan yet',
      sentence: 'Each part has its own cheapest call until the first plan is there.',
    };
  if (!isSolved(result)) return { kind: 'none', word: 'No plan', sentence: noPlanSentence(result) };
  if (result.status === 'unverified')
    return {
      kind: 'none',
      word: 'Not to be followed',
      sentence: `What the solver gave does not add up, so each part keeps its own cheapest call. ${result.problems.join(' ')}`,
    };
  const best = bestWords(result.status, result.gap, instance.money);
  if (!result.meets_limits)
    return {
      kind: 'short',
      word: 'Does not meet the limits',
      sentence:
        result.shortfalls.length > 0
          ? `No plan keeps every limit. This is the one nearest to them. ${best.nearest}`
          : 'Some parts have no call that is open to them.',
    };
  return { kind: result.status === 'optimal' ? 'proven' : 'found', word: best.word, sentence: best.sentence };
}

function bestWords(
  status: 'optimal' | 'gap',
  gap: number | null,
  unit: string,
): { readonly word: string; readonly sentence: string; readonly nearest: string } {
  if (status === 'optimal')
    return {
      word: 'Proven best',
      sentence: 'No other set of calls and purchases within the limits comes to less.',
      nearest: 'That no plan is nearer is proven.',
    };
  const better =
    gap === null
      ? 'how much better another may be is not known'
      : `at most ${money(gap, unit)} better is possible`;
  return {
    word: 'Best found',
    sentence: `The time ran out before it was proven: ${better}.`,
    nearest: 'The time ran out before it was proven that none is nearer.',
  };
}

function noPlanSentence(result: Exclude<PlanResult, { readonly plan: unknown }>): string {
  const faults = result.faults.map(({ message, mend }) => `${message} ${mend}`);
  return [result.sentence, ...faults].join(' ');
}

/** `order by 2027-04-20` where the notebook says which day today is, or else `order within 8 days`. */
export function orderByWords(daysFromToday: number, today: string | null): string {
  if (daysFromToday < 0) return 'too late to order';
  if (today === null) return daysFromToday === 0 ? 'order today' : `order within ${daysWords(daysFromToday)}`;
  return `order by ${dayAfter(today, daysFromToday)}`;
}

/** The ISO date so many days after another: dayAfter('2027-04-12', 8) is '2027-04-20'. */
export function dayAfter(iso: string, days: number): string {
  return new Date(Date.parse(iso) + days * 86_400_000).toISOString().slice(0, 10);
}

/** `1 day`, `6 days`. */
export const daysWords = (days: number): string => `${days} ${days === 1 ? 'day' : 'days'}`;
