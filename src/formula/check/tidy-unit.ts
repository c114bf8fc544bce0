import { DIMENSIONS, isDimensionless, PLAIN, sameCurrencies, sameDimensions, type Unit } from '../unit.ts';
import { parseUnit } from '../unit-text.ts';

/** Unit in which a dimension is written when nothing in the formula says otherwise. */
const USUAL: Readonly<Record<(typeof DIMENSIONS)[number], string>> = {
  mass: 'kg',
  length: 'km',
  time: 'day',
  current: 'A',
  temperature: 'K',
  light: 'cd',
  amount: 'mol',
  angle: 'rad',
  data: 'b',
  money: '',
};

/**
 * The unit in which a result is handed on when its column or cell declares none: the shortest unit among
 * the figures read that has its dimensions, else one put together from usual units.
 */
export function tidyUnit(unit: Unit, met: readonly Unit[], money: string): Unit {
  if (isDimensionless(unit)) return PLAIN;
  if (unit.offset !== 0) return unit;
  const candidates = met.filter(
    (other) => sameDimensions(other, unit) && sameCurrencies(other.currencies, unit.currencies),
  );
  const same = candidates.find((other) => other.factor === unit.factor) ?? candidates[0];
  if (same !== undefined) return same;
  const litres = parseUnit('L');
  if (sameDimensions(unit, litres)) return litres;
  return parseUnit(usualText(unit, money));
}

function usualText(unit: Unit, money: string): string {
  const over: string[] = [];
  const under: string[] = [];
  DIMENSIONS.forEach((dimension, i) => {
    const power = unit.dimensions[i] ?? 0;
    if (power === 0) return;
    const name = dimension === 'money' ? money : USUAL[dimension];
    const size = Math.abs(power);
    const written = size === 1 ? name : `${name}^${size}`;
    (power > 0 ? over : under).push(written);
  });
  // Broken powers have no usual text; they stay in base units.
  if (unit.dimensions.some((power) => !Number.isInteger(power))) return '';
  const top = over.length === 0 ? '1' : over.join(' ');
  return under.length === 0 ? top : `${top}/(${under.join(' ')})`.replace(/\((\w+)\)$/, '$1');
}
