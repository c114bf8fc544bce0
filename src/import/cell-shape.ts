import { tryUnit } from '../formula/unit-text.ts';
import { moneyOf } from './currency-signs.ts';

/** What a field looks like, before anything is known of its column. */
export type CellShape =
  | 'blank'
  | 'figure' // 12,50
  | 'money' // € 12.50
  | 'percent' // 12.5 %
  | 'measure' // 29.676 KM, 10 pcs
  | 'date' // 19.05.2026
  | 'code' // NG-1104: no spaces, with a digit
  | 'words';

const FIGURE = /^[-+−]?\d[\d.,'’\u00a0\u2007\u2009\u202f ]*(?:[.,][-–—]{1,2})?$|^[-+−]?[.,]\d+$/;
const DATE = /^(?:\d{1,2}[./-]\d{1,2}[./-](?:\d{4}|\d{2})|\d{4}[./-]\d{1,2}[./-]\d{1,2})(?:[ T]\d.*)?$/;
/** A figure with something before or behind it. */
const AROUND =
  /^([^\d\s.,+-][^\d]{0,5}?)?\s*([-+−]?\d[\d.,'’\u00a0\u2007\u2009\u202f ]*?(?:[.,][-–—]{1,2})?)\s*([^\d\s.,][^\d]{0,11}(?:\/[^\d]{0,8})?)?$/;

/**
 * @example shapeOf('€ 1.234,50') // 'money'
 * @example shapeOf('NG-1104') // 'code'
 */
export function shapeOf(text: string): CellShape {
  const bare = text.trim();
  if (bare === '') return 'blank';
  if (DATE.test(bare)) return 'date';
  if (FIGURE.test(bare)) return 'figure';
  if (bare.length <= 40 && /\d/.test(bare)) {
    const parts = AROUND.exec(bare);
    if (parts !== null) {
      const shape = shapeAround(parts[1]?.trim() ?? '', parts[3]?.trim() ?? '', /\d\s/.test(bare));
      if (shape !== null) return shape;
    }
  }
  return /\d/.test(bare) && !/\s/.test(bare) ? 'code' : 'words';
}

function shapeAround(before: string, after: string, isParted: boolean): CellShape | null {
  if (before === '' && after === '%') return 'percent';
  const sign = after.split('/')[0]!.trim();
  if (moneyOf(before) !== undefined && (after === '' || after.length <= 8)) return 'money';
  if (before === '' && (moneyOf(sign) !== undefined || moneyOf(after) !== undefined)) return 'money';
  if (before !== '' || !/^\p{L}{1,8}[²³.]?$/u.test(after)) return null;
  // '520X' may be a code; '520 X' and '520km' are a figure and what it counts.
  return isParted || PIECES.test(after) || tryUnit(after.toLowerCase()) !== null ? 'measure' : null;
}

const PIECES = /^(?:pcs?|pces?|ea|stk?|stck|szt|шт|er|days?|tage?|wks?)\.?$/i;

/** A figure of some kind: what a header never has. */
export function isFigureShape(shape: CellShape): boolean {
  return (
    shape === 'figure' || shape === 'money' || shape === 'percent' || shape === 'measure' || shape === 'date'
  );
}
