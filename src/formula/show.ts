import type { Column, ColumnType } from './column.ts';
import type { Unit } from './unit.ts';
import { tryUnit } from './unit-text.ts';

/** What stands where a figure is missing. */
export const MISSING_SIGN = '–';

let locale = 'en';
let mark = '.';
/** Numbers are written with a point and commas, as in `en`. */
let isPlainEnglish = true;
/** Where English is written so; asked of the browser, the answer takes it 30 ms as the page starts. */
const PLAIN_ENGLISH = new Set(['en', 'en-US', 'en-GB', 'en-AU', 'en-CA', 'en-IE', 'en-NZ']);
const formats = new Map<string, Intl.NumberFormat>();

/**
 * Has numbers written as in this locale from now on, with Latin digits: once, as the page starts. A locale that
 * is none is left aside.
 *
 * Example: after writeNumbersAs('de-DE') showNumber(12345.678, 1) is '12.345,7'.
 */
export function writeNumbersAs(wanted: string): void {
  if (PLAIN_ENGLISH.has(wanted)) {
    [locale, mark, isPlainEnglish] = [wanted, '.', true];
    formats.clear();
    return;
  }
  try {
    mark = new Intl.NumberFormat(wanted, LATIN).formatToParts(1.5).find(isMark)?.value ?? '.';
    [locale, isPlainEnglish] = [wanted, false];
    formats.clear();
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
  }
}

const LATIN = { numberingSystem: 'latn' } as const;
const isMark = ({ type }: Intl.NumberFormatPart): boolean => type === 'decimal';

/** The locale in which numbers are written, and read where one mark alone could mean two things. */
export const numberLocale = (): string => locale;

/** A number in full, to be written over: no group marks, the decimal mark of the locale. */
export const plainNumber = (figure: number): string => String(figure).replace('.', mark);

/** A count with grouped thousands: '1,234'. */
export const showCount = (count: number): string => showNumber(count, 0);

/** An amount of money: two decimals, or up to four where it has more: '1,250.00', '0.125'. */
export function showAmount(amount: number): string {
  const decimals = [2, 3].find((places) => Number(amount.toFixed(places)) === Number(amount.toFixed(4))) ?? 4;
  return showNumber(amount, decimals);
}

/** A number with at least and at most so many decimals, its thousands grouped. */
function write(figure: number, least: number, most: number): string {
  return (isPlainEnglish ? writeExact(figure, least, most) : null) ?? format(least, most).format(figure);
}

/**
 * The same in plain English for a number that needs no rounding, where there is nothing to be asked of the browser;
 * null for any other.
 */
function writeExact(figure: number, least: number, most: number): string | null {
  if (Object.is(figure, -0)) return null;
  for (let places = least; places <= most; places++) {
    // Of 15 digits no two stand for the same figure: those that do are its only ones.
    if (Math.abs(figure) * 10 ** places >= 1e15) return null;
    const text = figure.toFixed(places);
    if (Number(text) !== figure) continue;
    const [whole = '', rest] = text.split('.');
    const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, ',');
    return rest === undefined ? grouped : `${grouped}.${rest}`;
  }
  return null;
}

function format(least: number, most: number): Intl.NumberFormat {
  const key = `${least} ${most}`;
  let held = formats.get(key);
  if (held === undefined) {
    held = new Intl.NumberFormat(locale, {
      ...LATIN,
      minimumFractionDigits: least,
      maximumFractionDigits: most,
    });
    formats.set(key, held);
  }
  return held;
}

/** Places that show about four figures: 0.01234, 1.234, 123.4, 12,345. */
export function usualDecimals(figure: number): number {
  const size = Math.abs(figure);
  if (size === 0 || Number.isInteger(figure)) return 0;
  if (size >= 1000) return 0;
  return Math.min(8, Math.max(0, 3 - Math.floor(Math.log10(size))));
}

/**
 * A number with grouped thousands; with `decimals` given all figures of a column have that many. A figure
 * too small for its places is not shown as nought: 0.0004 with 2 places is `<0.01`.
 *
 * Example: showNumber(12345.678, 1) is '12,345.7'.
 */
export function showNumber(figure: number, decimals?: number): string {
  if (Number.isNaN(figure)) return MISSING_SIGN;
  const size = Math.abs(figure);
  if (size >= 1e15) return figure.toExponential(4).replace('.', mark);
  if (decimals === undefined) {
    const places = usualDecimals(figure);
    return minus(write(figure, 0, places));
  }
  if (size > 0 && size < 0.5 * 10 ** -decimals && decimals > 0) {
    const bound = write(10 ** -decimals, decimals, decimals);
    return figure > 0 ? `<${bound}` : `>−${bound}`;
  }
  return minus(write(figure, decimals, decimals));
}

/** A true minus sign, and none before a rounded nought. */
function minus(text: string): string {
  // Some locales put a sign of direction before the minus, or have the true one already.
  const bare = text.replace(/[\u200e\u200f\u061c]/g, '');
  if (!/^[-−]/.test(bare)) return bare;
  return /[1-9]/.test(bare) ? `−${bare.slice(1)}` : bare.slice(1);
}

/** Days since 1970-01-01 as an ISO 8601 date. */
export function showDate(days: number): string {
  return Number.isNaN(days) ? MISSING_SIGN : new Date(days * 86_400_000).toISOString().slice(0, 10);
}

/**
 * One figure of a column as it is shown, without its unit. Missing is –.
 *
 * Example: a yes/no of 1 is 'yes'; 640 km with no decimals given is '640'.
 */
export function showFigure(column: Column, row: number, type: ColumnType, decimals?: number): string {
  if (column.kind === 'text') return column.values[row] ?? MISSING_SIGN;
  const figure = column.values[row] ?? Number.NaN;
  if (column.kind === 'yes_no') return Number.isNaN(figure) ? MISSING_SIGN : figure === 1 ? 'yes' : 'no';
  if (column.kind === 'date' || type.kind === 'date') return showDate(figure);
  return showNumber(figure, decimals);
}

/** Decimals for a whole column: enough for its typical figure, the same all down. */
export function columnDecimals(column: Column): number {
  if (column.kind !== 'number') return 0;
  let most = 0;
  for (const figure of column.values) {
    if (Number.isNaN(figure) || Number.isInteger(figure)) continue;
    const text = String(Number(Math.abs(figure).toPrecision(4)));
    const point = text.indexOf('.');
    if (!text.includes('e') && point >= 0) most = Math.max(most, text.length - point - 1);
  }
  return Math.min(most, 4);
}

/** A unit as it stands under a column head: '1/(1000 km)' is 'per 1,000 km', 'EUR/kg' stays. */
export function showUnit(unit: string): string {
  const text = unit.trim();
  const grouped = (part: string): string =>
    part.replace(/\b\d{4,}\b/g, (digits) => write(Number(digits), 0, 0));
  const per = /^(.*?)\/\s*\(?(\d[^()]*)\)?$/.exec(text);
  if (per !== null) {
    const over = (per[1] as string).trim();
    return `${over === '' || over === '1' ? '' : `${over} `}per ${grouped(per[2] as string)}`;
  }
  return text.replace(/\*/g, ' ');
}

/** A figure with its unit, for sentences. */
export function withUnit(figure: string, unit: Unit | null): string {
  return unit === null || unit.text === '' || figure === MISSING_SIGN
    ? figure
    : `${figure} ${showUnit(unit.text)}`;
}

/** Whether a text can be read as a unit. */
export const isUnitText = (text: string): boolean => tryUnit(text) !== null;
