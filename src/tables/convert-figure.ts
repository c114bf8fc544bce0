import type { Unit } from '../formula/unit.ts';
import { conversionFactor } from '../formula/unit-text.ts';

/** Digits that survive there and back: 4 mi to km and back is 4 again. */
const KEPT_DIGITS = 15;
/** Decimals that are sound after a nought 273 away was added and another taken off. */
const KEPT_DECIMALS = 10;

/**
 * A figure in another unit of the same dimensions, temperatures with their noughts included.
 *
 * @throws RangeError when the dimensions differ
 * @example convertFigure(4, parseUnit('mi'), parseUnit('km')) // 6.437376
 */
export function convertFigure(figure: number, from: Unit, to: Unit): number {
  const factor = conversionFactor(from, to);
  if (factor === 1 && from.offset === to.offset) return figure;
  if (from.offset === 0 && to.offset === 0) return Number((figure * factor).toPrecision(KEPT_DIGITS));
  return Number(((figure + from.offset) * factor - to.offset).toFixed(KEPT_DECIMALS));
}
