import { ENTRY_LENGTH, type Entry, type EntryColumn } from './entry.ts';
import type { DecimalMark } from './number-policy.ts';
import { readIsoDate } from './read-date.ts';
import { readFigure } from './read-figure.ts';
import { readYesNo } from './read-yes-no.ts';

/** Why typed text was refused, and what mends it: two plain sentences' worth, shown in the field. */
export interface EntryRefusal {
  readonly reason: string;
  readonly mend: string;
}

export type EntryRead = { readonly entry: Entry } | EntryRefusal;

/**
 * Reads what was typed by hand into a field. Empty text, or the dash that stands for a missing figure, empties
 * the field.
 *
 * Numbers take a decimal comma or point, grouped thousands, fractions, percent, and units, which are converted
 * to the column's. One mark alone, as in 1,234, is the decimal mark unless `locale` writes decimals with the
 * other. Dates are YYYY-MM-DD. A choice is found whatever its capitals.
 *
 * @param locale the reader's own, such as 'en-GB' or 'de'; left out: decimals either way
 * @example readEntry('1,5 mm', { kind: 'number', unit: 'mm' }) // { entry: 1.5 }
 * @example readEntry('soon', { kind: 'date' })
 * // { reason: "'soon' is not a date", mend: 'Write the date as year-month-day, such as 2026-03-14.' }
 */
export function readEntry(text: string, column: EntryColumn, locale?: string): EntryRead {
  const bare = text.trim();
  if (bare === '' || (column.kind !== 'text' && /^[-–—]$/.test(bare))) return { entry: null };
  if (bare.length > ENTRY_LENGTH) {
    return {
      reason: `the text is ${bare.length} characters long`,
      mend: `Keep it under ${ENTRY_LENGTH} characters.`,
    };
  }
  switch (column.kind) {
    case 'number': {
      const read = readFigure(
        bare,
        column.unit ?? '',
        locale === undefined ? undefined : decimalMark(locale),
      );
      return 'figure' in read ? { entry: read.figure } : read;
    }
    case 'text':
      return { entry: bare };
    case 'choice':
      return readChoice(bare, column.options ?? []);
    case 'date': {
      const date = readIsoDate(bare);
      if (date !== null) return { entry: date };
      return {
        reason: `${quoted(bare)} is not a date`,
        mend: 'Write the date as year-month-day, such as 2026-03-14.',
      };
    }
    case 'yes_no': {
      const answer = readYesNo(bare);
      return answer === null
        ? { reason: `${quoted(bare)} is neither yes nor no`, mend: 'Type yes or no.' }
        : { entry: answer };
    }
  }
}

function quoted(text: string): string {
  return `'${text.slice(0, 40)}'`;
}

function readChoice(text: string, options: readonly string[]): EntryRead {
  if (options.length === 0 || options.includes(text)) return { entry: text };
  const folded = options.filter((option) => option.trim().toLowerCase() === text.toLowerCase());
  if (folded.length === 1) return { entry: folded[0]! };
  const listed = options.slice(0, 8).join(', ');
  const more = options.length > 8 ? `, or one of ${options.length - 8} more` : '';
  return { reason: `${quoted(text)} is not one of the choices`, mend: `Choose from ${listed}${more}.` };
}

const marks = new Map<string, DecimalMark>();

function decimalMark(locale: string): DecimalMark {
  const held = marks.get(locale);
  if (held !== undefined) return held;
  let mark: DecimalMark = '.';
  try {
    const parts = new Intl.NumberFormat(locale).formatToParts(1.5);
    mark = parts.find((part) => part.type === 'decimal')?.value === ',' ? ',' : '.';
  } catch (error) {
    // An unknown locale writes with a point; anything but its RangeError is a slip of ours.
    if (!(error instanceof RangeError)) throw error;
  }
  marks.set(locale, mark);
  return mark;
}
