import { sameCurrencies, sameDimensions, type Unit } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import { convertFigure } from './convert-figure.ts';
import { type DecimalMark, readTypedNumber, troubleWords } from './number-policy.ts';

export type FigureRead = { readonly figure: number } | { readonly reason: string; readonly mend: string };

/** Signs that stand for a unit's name. A dollar sign is none: it is the sign of several currencies. */
const SIGNS: Readonly<Record<string, string>> = {
  '€': 'EUR',
  '£': 'GBP',
  '"': 'inch',
  '″': 'inch',
  '°C': 'degC',
  '°F': 'degF',
};

/**
 * A figure typed by hand, with or without a unit, in the unit of its column.
 *
 * @param unitText the column's unit, '' for a plain number
 * @example readFigure('4 mi', 'km') // { figure: 6.437376 }
 * @example readFigure('3/8 in', 'mm') // { figure: 9.525 }
 */
export function readFigure(text: string, unitText: string, mark?: DecimalMark): FigureRead {
  const { number, unit } = split(text.trim());
  const read = readTypedNumber(number, mark);
  if ('trouble' in read) return troubleWords(read.trouble, unit === '' ? text : number || text);
  return unit === '' || unit === unitText ? read : inColumnUnit(read.figure, unit, unitText);
}

/** The number and the unit behind it (or, for money, before it). */
function split(text: string): { number: string; unit: string } {
  const before = /^([A-Z]{3}|[€£$])\s*(?=[\d.,+\-\u2212])/.exec(text);
  if (before !== null) return { number: text.slice(before[0].length), unit: named(before[1]!) };
  // The e of 1e3 belongs to the number; any other letter or sign begins the unit.
  const parts = /^([\d\s.,'’+\-\u2212\u2013/]*(?:(?<=[\d.,])[eE][+-]?\d+)?)\s*([^\d\s].*)?$/s.exec(text);
  if (parts === null || parts[2] === undefined) return { number: text, unit: '' };
  if (!/\d/.test(parts[1]!)) return { number: text, unit: '' };
  const number = parts[1]!.trim();
  // In '1.2/(1000 km)' the slash belongs to the unit, which is 1/(1000 km).
  return number.endsWith('/')
    ? { number: number.slice(0, -1), unit: `1/${parts[2].trim()}` }
    : { number, unit: named(parts[2].trim()) };
}

/** The unit as a formula writes it: signs named, and `mm per 1,000 km` as `mm/(1000 km)`. */
function named(unit: string): string {
  if (Object.hasOwn(SIGNS, unit)) return SIGNS[unit]!;
  const per = /^(.*?)\s*\bper\s+(.+)$/.exec(unit);
  return per === null ? unit : `${per[1] || '1'}/(${per[2]!.replace(/(\d)[, ](?=\d{3}\b)/g, '$1')})`;
}

function inColumnUnit(figure: number, typed: string, unitText: string): FigureRead {
  const mend =
    unitText === ''
      ? 'Type the number alone; this field has no unit.'
      : `Type it in ${unitText}, or in a unit of the same kind.`;
  if (typed === '$') {
    return {
      reason: 'the $ sign is used by several currencies',
      mend: 'Write the code instead, such as USD or AUD.',
    };
  }
  const from = tryUnit(typed);
  if (from === null) return { reason: `'${typed.slice(0, 40)}' is not a unit`, mend };
  const to = tryUnit(unitText);
  if (to === null || !sameDimensions(from, to)) {
    const wanted = unitText === '' ? 'this field has no unit' : `this field is in ${unitText}`;
    return { reason: `'${typed.slice(0, 40)}' does not fit: ${wanted}`, mend };
  }
  return exchanged(figure, from, to, mend);
}

function exchanged(figure: number, from: Unit, to: Unit, mend: string): FigureRead {
  if (!sameCurrencies(from.currencies, to.currencies)) {
    return {
      reason: `${from.text} is another currency than ${to.text}`,
      mend: `Type the amount in ${to.text}; a field does not exchange money.`,
    };
  }
  const converted = convertFigure(figure, from, to);
  if (!Number.isFinite(converted)) return { reason: `${figure} ${from.text} is too large to hold`, mend };
  return { figure: converted === 0 ? 0 : converted };
}
