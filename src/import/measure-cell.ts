import { sameCurrencies, sameDimensions } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import { convertFigure } from '../tables/convert-figure.ts';
import type { DecimalMark } from '../tables/number-policy.ts';
import { moneyOf } from './currency-signs.ts';
import { readMarkedNumber } from './marked-number.ts';

export type MeasureRead = { readonly figure: number; readonly unit: string } | { readonly reason: string };

const CELL =
  /^([^\d.,+−-]{0,6}?)\s*([-+−]?(?:\d[\d.,'’\u00a0\u2007\u2009\u202f ]*|[.,]\d+))(?:[eE]([+-]?\d{1,3})(?![\p{L}\d]))?\s*(\D.*)?$/su;

/** Units in words that are not a formula's. */
const WORDS: Readonly<Record<string, string>> = {
  kms: 'km',
  kilometres: 'km',
  kilometers: 'km',
  kilometer: 'km',
  miles: 'mi',
  mile: 'mi',
  metres: 'm',
  meters: 'm',
  days: 'day',
  d: 'day',
  hrs: 'h',
  hours: 'h',
  std: 'h',
  км: 'km',
  м: 'm',
  мм: 'mm',
  кг: 'kg',
  '″': 'inch',
  '"': 'inch',
  '€': 'EUR',
  '£': 'GBP',
};

/**
 * The name by which formulas know a unit that a file writes in its own way; '' when it is none.
 *
 * @example unitName('KM') // 'km'
 */
export function unitName(text: string): string {
  const bare = text.trim().replace(/\.$/, '');
  if (bare === '') return '';
  const word = WORDS[bare.toLowerCase()];
  if (word !== undefined) return word;
  if (tryUnit(bare) !== null) return bare;
  if (bare.length > 1 && tryUnit(bare.toLowerCase()) !== null) return bare.toLowerCase();
  return moneyOf(bare)?.code ?? '';
}

/**
 * Reads a field of a table of measures: a figure with its marks and, perhaps, its unit, in the unit wanted.
 *
 * @param wanted the notebook column's unit, '' for plain numbers
 * @param headUnit unit of fields that name none: of the file's head, else the wanted one
 * @param decimal decimal mark of the file's column; null when nothing tells it
 * @example readMeasure('29.676 KM', 'km', '', '.') // { figure: 29.676, unit: 'km' }
 * @example readMeasure('120 mi', 'km', '', null) // { figure: 193.12128, unit: 'mi' }
 */
export function readMeasure(
  text: string,
  wanted: string,
  headUnit: string,
  decimal: DecimalMark | null,
): MeasureRead {
  const shown = `'${text.trim().slice(0, 40)}'`;
  const parts = CELL.exec(text.trim());
  if (parts === null) return { reason: `${shown} is not a number` };
  const number = readMarkedNumber(parts[2]!.trim(), decimal);
  if ('trouble' in number) {
    return {
      reason:
        number.trouble === 'either'
          ? `${shown} could be read two ways, with thousands or with decimals; answer the question on the file's marks`
          : `${shown} is not a number`,
    };
  }
  const named = `${parts[1] ?? ''}${parts[4] ?? ''}`.trim();
  const figure =
    parts[3] === undefined ? number.figure : Number(`${parts[2]!.replace(',', '.')}e${parts[3]}`);
  if (!Number.isFinite(figure)) return { reason: `${shown} is not a finite number` };
  const unit = named === '' ? headUnit || wanted : unitName(named);
  if (unit === '' && named !== '') return { reason: `${shown} has a unit that is not known: ${named}` };
  return convert(figure, unit, wanted, shown);
}

function convert(figure: number, unit: string, wanted: string, shown: string): MeasureRead {
  if (unit === wanted) return { figure, unit };
  const from = tryUnit(unit);
  const to = tryUnit(wanted);
  if (from === null || to === null || !sameDimensions(from, to)) {
    return { reason: `${shown} is in ${unit || 'no unit'}, the column is in ${wanted || 'plain numbers'}` };
  }
  if (!sameCurrencies(from.currencies, to.currencies)) {
    return { reason: `${shown} is in ${unit}, the column is in ${wanted}; money is not exchanged here` };
  }
  return { figure: convertFigure(figure, from, to), unit };
}
