// Written out here: the browser's own words for a date take 30 ms at their first use, in which a page opens.
const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

const DAY_MS = 86_400_000;

/**
 * The day of the week in three letters; '' when the day is not known.
 *
 * @param days whole days since 1970-01-01
 * @example weekdayWord(20939) // 'Sat'
 */
export function weekdayWord(days: number): string {
  return WEEKDAYS[new Date(days * DAY_MS).getUTCDay()] ?? '';
}

/**
 * A day as a person reads it; '' when it is not known.
 *
 * @param days whole days since 1970-01-01
 * @example dateWords(20939) // 'Sat 1 May 2027'
 */
export function dateWords(days: number): string {
  const date = new Date(days * DAY_MS);
  const month = MONTHS[date.getUTCMonth()];
  if (month === undefined) return '';
  return `${weekdayWord(days)} ${date.getUTCDate()} ${month} ${date.getUTCFullYear()}`;
}
