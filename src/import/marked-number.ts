import type { DecimalMark } from '../tables/number-policy.ts';

/** What one figure says of the marks of its file. */
export type MarkEvidence = '.' | ',' | 'either' | 'none';

export type MarkedNumber =
  /** `odd`: written with the other decimal mark than its column; no other reading is possible. */
  | { readonly figure: number; readonly odd?: true }
  /** One mark with three digits behind it, and nothing says which mark it is. */
  | { readonly trouble: 'either' }
  /** Digits lost by a sheet program, as in 4,26E+12. */
  | { readonly trouble: 'exponent' }
  | { readonly trouble: 'not-a-number' };

const SPACES = /[\u00a0\u2007\u2009\u202f ]/g;
const PLAIN_DIGITS = /^\d+$/;
/** A whole part with its groups: by threes, or as in India by twos before the last three. */
const GROUPED = /^(?:\d{1,3}(?:([.,'’ ])\d{3})(?:\1\d{3})*|\d{1,2}(?:,\d{2})+,\d{3})$/;
const NOT_A_NUMBER = { trouble: 'not-a-number' } as const;

/**
 * Reads digits with marks between them: groups by space, apostrophe, point or comma, decimals after a point or
 * a comma, 25,- for a price without cents.
 *
 * @param decimal the decimal mark of the column; null when nothing tells it
 * @example readMarkedNumber('1.234,50', ',') // { figure: 1234.5 }
 * @example readMarkedNumber('1.234', null) // { trouble: 'either' }
 */
export function readMarkedNumber(text: string, decimal: DecimalMark | null): MarkedNumber {
  if (PLAIN_DIGITS.test(text)) return { figure: Number(text) };
  const sign = /^[-+−–]/.exec(text)?.[0];
  const isBelow = sign !== undefined && sign !== '+';
  const bare = (sign === undefined ? text : text.slice(1)).trim().replace(/[.,][-–—]{1,2}$/, '');
  if (/^\d+(?:[.,]\d+)?e[+-]?\d+$/i.test(bare)) return { trouble: 'exponent' };
  const digits = bare.replace(SPACES, ' ');
  const read = readDigits(digits, decimal);
  return isBelow && 'figure' in read && read.figure !== 0 ? { ...read, figure: -read.figure } : read;
}

function readDigits(digits: string, decimal: DecimalMark | null): MarkedNumber {
  const last = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','));
  if (last === -1) return whole(digits);
  const mark = digits[last] as DecimalMark;
  const before = digits.slice(0, last);
  const after = digits.slice(last + 1);
  const other = mark === '.' ? ',' : '.';
  if (before.includes(mark)) return whole(digits, decimal === mark ? decimal : null);
  if (before.includes(other)) {
    if (!/^\d+$/.test(after)) return NOT_A_NUMBER;
    return withDecimals(before, after, decimal === other);
  }
  if (!/^\d*$/.test(after)) return NOT_A_NUMBER;
  if (isSure(before, after)) return withDecimals(before, after, decimal === other);
  if (decimal === null) return { trouble: 'either' };
  return decimal === mark ? withDecimals(before, after, false) : whole(digits);
}

/** Is one mark before these digits a decimal mark, whatever the file? Only three digits may be a group. */
function isSure(before: string, after: string): boolean {
  return after.length !== 3 || !/^[1-9]\d{0,2}$/.test(before);
}

function whole(digits: string, clash: DecimalMark | null = null): MarkedNumber {
  if (!PLAIN_DIGITS.test(digits) && !GROUPED.test(digits)) return NOT_A_NUMBER;
  const figure = Number(digits.replace(/\D/g, ''));
  return clash === null ? { figure } : { figure, odd: true };
}

function withDecimals(before: string, after: string, odd: boolean): MarkedNumber {
  if (before === '' && after === '') return NOT_A_NUMBER;
  if (before !== '' && !PLAIN_DIGITS.test(before) && !GROUPED.test(before)) return NOT_A_NUMBER;
  const figure = Number(`${before.replace(/\D/g, '') || '0'}.${after || '0'}`);
  return odd ? { figure, odd: true } : { figure };
}

/**
 * Which mark a figure shows to be the decimal one. Written for speed: it runs over every figure of a file.
 *
 * @param text a field with one figure in it, and perhaps a currency or a unit
 * @example markEvidence('€ 1.234,50') // ','
 * @example markEvidence('1.234') // 'either'
 * @example markEvidence('1,234,567') // '.'
 */
export function markEvidence(text: string): MarkEvidence {
  let points = 0;
  let commas = 0;
  let before = 0;
  let after = 0;
  let firstDigit = 0;
  let last = '';
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      if (before === 0 && after === 0 && last === '') firstDigit = code;
      if (last === '') before += 1;
      else after += 1;
    } else if (code === 46 || code === 44) {
      // A point after a word ('Fr. 12') is none of the figure.
      if (before === 0 && (points + commas > 0 || !isDigitAt(text, at + 1))) continue;
      if (!isDigitAt(text, at + 1)) break;
      if (code === 46) points += 1;
      else commas += 1;
      last = code === 46 ? '.' : ',';
      after = 0;
    } else if (before > 0 && !isGroupSpace(code)) break;
  }
  if (last === '') return 'none';
  if (points > 0 && commas > 0) return (last === '.' ? points : commas) === 1 ? (last as '.' | ',') : 'none';
  if (points + commas > 1) return after === 3 && before <= 3 ? (points > 0 ? ',' : '.') : 'none';
  const isEither = after === 3 && before >= 1 && before <= 3 && firstDigit !== 48;
  return isEither ? 'either' : (last as '.' | ',');
}

function isDigitAt(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code >= 48 && code <= 57;
}

function isGroupSpace(code: number): boolean {
  return code === 32 || code === 0xa0 || code === 0x202f || code === 0x2009 || code === 39 || code === 0x2019;
}
