import { readIsoDate } from '../tables/read-date.ts';

/** Which of the two small figures of a date comes first. */
export type DayOrder = 'day-first' | 'month-first';

const SLASHED = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4})$/;
const POINTED = /^(\d{1,2})\.(\d{1,2})\.(\d{4})$/;
const PACKED = /^(\d{4})(\d{2})(\d{2})$/;

/**
 * Which comes first in the dates of a column, the day or the month; null when no date tells (none has a figure
 * above 12, or they contradict each other).
 *
 * @example dayOrder(['03/04/2026', '25/04/2026']) // 'day-first'
 */
export function dayOrder(cells: readonly string[]): DayOrder | null {
  let dayFirst = false;
  let monthFirst = false;
  for (const cell of cells) {
    const parts = SLASHED.exec(cell.trim());
    if (parts === null) continue;
    if (Number(parts[1]) > 12) dayFirst = true;
    if (Number(parts[2]) > 12) monthFirst = true;
  }
  if (dayFirst === monthFirst) return null;
  return dayFirst ? 'day-first' : 'month-first';
}

/**
 * A date as YYYY-MM-DD from 19.05.2026 (points: the day is first), 20260519, or 19/05/2026 where the order is
 * known; null when it cannot be read.
 *
 * @example readDate('19.05.2026', null) // '2026-05-19'
 */
export function readDate(text: string, order: DayOrder | null): string | null {
  const packed = PACKED.exec(text);
  if (packed !== null) return readIsoDate(`${packed[1]}-${packed[2]}-${packed[3]}`);
  const pointed = POINTED.exec(text);
  if (pointed !== null) return readIsoDate(`${pointed[3]}-${pointed[2]}-${pointed[1]}`);
  const slashed = SLASHED.exec(text);
  if (slashed === null || order === null) return null;
  const [day, month] = order === 'day-first' ? [slashed[1], slashed[2]] : [slashed[2], slashed[1]];
  return readIsoDate(`${slashed[3]}-${month}-${day}`);
}
