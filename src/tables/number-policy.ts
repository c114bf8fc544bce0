/**
 * What becomes of each bad number, in one place.
 *
 * | found               | typed by hand in a field              | in a file                                   |
 * | ------------------- | ------------------------------------- | ------------------------------------------- |
 * | empty, or a dash    | the field is empty: missing, never 0  | the same (a dash stays as text, as below)   |
 * | not a number        | refused; what was there stays         | kept as its text, shown boxed with a reason |
 * | infinite, NaN       | refused                               | kept as its text, shown boxed with a reason |
 * | decimal comma       | read: 3,1 is 3.1                      | kept as its text: a file's mark is the point |
 * | grouped thousands   | read when the groups are whole        | kept as its text                            |
 * | one comma or point  | the decimal mark: 1,234 is 1.234,     | the point is the decimal mark               |
 * |                     | unless the reader's locale says group |                                             |
 * | negative            | read: a temperature may be; where it is impossible the value's own bounds refuse it, or the   |
 * |                     | function that cannot take it says so in the row (domain fault)                                |
 * | minus nought        | nought                                | nought                                      |
 *
 * So a bad number is never silently blank or nought, on whichever way it came in.
 */
export type NumberRead = { readonly figure: number } | { readonly trouble: NumberTrouble };

export type NumberTrouble =
  | 'not-a-number'
  | 'infinite'
  | 'decimal-comma'
  | 'groups' // thousands not grouped by three, or two decimal marks
  | 'nought-below'; // a fraction with 0 under the line

export type DecimalMark = '.' | ',';

export interface TroubleWords {
  readonly reason: string;
  readonly mend: string;
}

/** The sentence for a bad number: what is wrong with it, and what mends it. */
export function troubleWords(trouble: NumberTrouble, text: string): TroubleWords {
  const shown = `'${text.trim().slice(0, 40)}'`;
  switch (trouble) {
    case 'infinite':
      return { reason: `${shown} is not a finite number`, mend: 'Type a number, or leave the field empty.' };
    case 'decimal-comma':
      return {
        reason: `${shown} is written with a comma`,
        mend: 'Write the number with a decimal point, as in 3.1.',
      };
    case 'groups':
      return {
        reason: `${shown} cannot be told apart into thousands and decimals`,
        mend: 'Type it without marks between thousands, such as 12345.6.',
      };
    case 'nought-below':
      return { reason: `${shown} divides by nought`, mend: 'Type a fraction such as 3/8.' };
    case 'not-a-number':
      return {
        reason: `${shown} is not a number`,
        mend: 'Type a number such as 3.1, or leave the field empty.',
      };
  }
}

const FILE_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const BEYOND_NUMBERS = /^[+-]?(?:inf|infinity|∞|nan)$/i;

/** A finite number as our types hold it: minus nought is nought. */
function finite(figure: number): NumberRead {
  return Number.isFinite(figure) ? { figure: figure === 0 ? 0 : figure } : { trouble: 'infinite' };
}

/** Reads a number of a file: decimal point, no groups, as in `-12.5` or `1e3`. */
export function readFileNumber(text: string): NumberRead {
  const trimmed = text.trim();
  if (FILE_NUMBER.test(trimmed)) return finite(Number(trimmed));
  if (BEYOND_NUMBERS.test(trimmed)) return { trouble: 'infinite' };
  return { trouble: /^[+-]?\d[\d.]*,\d+$/.test(trimmed) ? 'decimal-comma' : 'not-a-number' };
}

/**
 * Reads a number typed by hand: decimal comma or point, thousands grouped by space, apostrophe, comma or
 * point, fractions such as `3/8` and `1 3/8`.
 *
 * @param mark the reader's own decimal mark, where known: settles what `1,234` is; else it is a decimal
 * @example readTypedNumber('12,345.6') // { figure: 12345.6 }
 */
export function readTypedNumber(text: string, mark?: DecimalMark): NumberRead {
  const bare = text
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/[\u00a0\u2007\u2009\u202f]/g, ' ')
    .trim();
  if (BEYOND_NUMBERS.test(bare)) return { trouble: 'infinite' };
  if (bare.includes('/')) return readFraction(bare);
  const parts = /^([+-]?)\s*([\d.,'’ ]*?)(e[+-]?\d+)?$/i.exec(bare);
  const digits = parts?.[2] ?? '';
  if (parts === null || !/\d/.test(digits)) return { trouble: 'not-a-number' };
  const plain = plainDigits(digits, mark);
  return plain === null ? { trouble: 'groups' } : finite(Number(`${parts[1]}${plain}${parts[3] ?? ''}`));
}

function readFraction(text: string): NumberRead {
  const parts = /^([+-]?)\s*(?:(\d+)\s+)?(\d+)\s*\/\s*(\d+)$/.exec(text);
  if (parts === null) return { trouble: 'not-a-number' };
  const below = Number(parts[4]);
  if (below === 0) return { trouble: 'nought-below' };
  const size = Number(parts[2] ?? 0) + Number(parts[3]) / below;
  return finite(parts[1] === '-' ? -size : size);
}

/** Digits with a decimal point alone; null when the marks make no sense. */
function plainDigits(digits: string, mark: DecimalMark | undefined): string | null {
  const decimal = decimalMarkOf(digits, mark);
  const cut = decimal === null ? digits.length : digits.lastIndexOf(decimal);
  const whole = digits.slice(0, cut);
  const rest = digits.slice(cut + 1);
  if (!/^\d*$/.test(rest)) return null;
  if (whole === '' && rest === '') return null;
  const groupMarks = new Set(whole.replace(/\d/g, ''));
  if (groupMarks.size > 1 || (decimal !== null && groupMarks.has(decimal))) return null;
  if (groupMarks.size === 1 && !/^\d{1,3}(?:\D\d{3})+$/.test(whole)) return null;
  return `${whole.replace(/\D/g, '') || '0'}.${rest || '0'}`;
}

/** Which of the marks is the decimal one; null when the number is whole. */
function decimalMarkOf(digits: string, mark: DecimalMark | undefined): DecimalMark | null {
  const points = digits.split('.').length - 1;
  const commas = digits.split(',').length - 1;
  if (points > 0 && commas > 0) return digits.lastIndexOf('.') > digits.lastIndexOf(',') ? '.' : ',';
  if (points + commas === 0) return null;
  const used: DecimalMark = points > 0 ? '.' : ',';
  // Two of one mark can only be groups, as in 1,234,567.
  if (points + commas > 1) return null;
  const looksGrouped = /^[1-9]\d{0,2}[.,]\d{3}$/.test(digits);
  return looksGrouped && mark !== undefined && mark !== used ? null : used;
}
