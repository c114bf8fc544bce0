import { dateWords } from '../../src/formula/day-words.ts';
import { showNumber } from '../../src/formula/show.ts';
import type { TallyReading } from '../tally/tally-reading.ts';

/** Money with two places; 'no price' when it is not known. */
export function moneyWords(amount: number): string {
  return Number.isNaN(amount) ? 'no price' : showNumber(amount, 2);
}

/**
 * What stands on a sheet that is printed too early; '' when its figures are settled.
 *
 * @example unfinishedWords([{ state: 'working' }]) // 'Some figures were still being worked out when this ...'
 */
export function unfinishedWords(figures: readonly Pick<TallyReading, 'state'>[]): string {
  return figures.some(({ state }) => state === 'working')
    ? 'Some figures were still being worked out when this was printed. Print it again once the tally no longer says working.'
    : '';
}

/**
 * How an order stands: by when it goes out, and how long it takes.
 *
 * @example orderWords({ orderBy: 20932, arrivesInDays: 4 }) // 'order by Sat 24 April 2027, 4 days to arrive'
 */
export function orderWords(order: { readonly orderBy: number; readonly arrivesInDays: number }): string {
  const by = dateWords(order.orderBy);
  if (by === '') return 'no day to order by is known';
  return `order by ${by}, ${days(order.arrivesInDays)} to arrive`;
}

const days = (count: number): string => (count === 1 ? '1 day' : `${showNumber(count, 0)} days`);

/** `Rear wheel out, once for 3 jobs`; `Other jobs` when nothing comes off for them. */
export function opensWords(opens: string, jobs: number): string {
  if (opens === '') return 'Nothing else comes off';
  return jobs === 1 ? opens : `${opens}, once for ${jobs} jobs`;
}

/** `Rear inner tube, 3 new, for 2 bikes`; `Clutch cable, 2 old ones, for 2 bikes`. */
export function spareWords(line: {
  readonly part: string;
  readonly pieces: number;
  readonly old: boolean;
  readonly bikes: number;
}): string {
  const count = showNumber(line.pieces);
  const one = line.old ? 'the old one' : 'new';
  const what = line.pieces === 1 ? one : `${count} ${line.old ? 'old ones' : 'new'}`;
  const shared = line.bikes > 1 ? `, for ${showNumber(line.bikes)} bikes` : '';
  return `${line.part}, ${what}${shared}`;
}

/** Said on every sheet: the sums are about money and days. */
export const CAUTION =
  'The sums here are about money and days. Whether the bike may be ridden is for the maker’s manual, local rules and, where in doubt, a licensed mechanic. Take torques, limits and procedures from the manual, not from this sheet.';
