import { CURRENCY_CODES } from './currencies.ts';
import { FormulaFault } from './fault.ts';
import { mathUnit } from './mathjs.ts';
import { nearest } from './nearest.ts';
import {
  DIMENSIONS,
  divideUnits,
  multiplyUnits,
  PLAIN,
  raiseUnit,
  sameDimensions,
  type Unit,
} from './unit.ts';

/**
 * Units that mathjs lacks or names otherwise: text that stands for them, in units that it has.
 * Gallons: 231 cubic inches (US) and 4.54609 L (UK), exact (NIST SP 811, appendix B.8).
 */
const OTHER_NAMES: Readonly<Record<string, string>> = {
  in: 'inch',
  ft: 'foot',
  day: 'day',
  months: 'month',
  galUS: '231 inch^3',
  galUK: '4.54609 L',
  mpgUS: 'mile/(231 inch^3)',
  mpgUK: 'mile/(4.54609 L)',
  kgf: '9.80665 N',
  floz: '29.5735295625 mL',
};

const MOST_TEXT = 60;
const known = new Map<string, Unit | null>();

/** The unit of one name, or null if there is no such unit. */
export function lookUpUnit(name: string): Unit | null {
  const held = known.get(name);
  if (held !== undefined) return held;
  const found = findUnit(name);
  // Bounded: names come from whatever is typed.
  if (known.size > 2000) known.clear();
  known.set(name, found);
  return found;
}

function findUnit(name: string): Unit | null {
  if (name === '%') return { ...PLAIN, text: '%', factor: 0.01 };
  if (CURRENCY_CODES.has(name)) return money(name);
  if (Object.hasOwn(OTHER_NAMES, name)) {
    const meaning = OTHER_NAMES[name] as string;
    const unit =
      meaning === name
        ? fromMathjs(name)
        : /^[a-z]+$/.test(meaning)
          ? fromMathjs(meaning)
          : parseUnit(meaning);
    return unit === null ? null : { ...unit, text: name };
  }
  return /^[A-Za-z][A-Za-z]*$/.test(name) ? fromMathjs(name) : null;
}

function money(code: string): Unit {
  const dimensions = DIMENSIONS.map((dimension) => (dimension === 'money' ? 1 : 0));
  return { text: code, dimensions, factor: 1, offset: 0, currencies: { [code]: 1 } };
}

function fromMathjs(name: string): Unit | null {
  const found = mathUnit(name);
  if (found === null) return null;
  const dimensions = DIMENSIONS.map((_, i) => found.dimensions[i] ?? 0);
  return { text: name, dimensions, factor: found.factor, offset: found.offset, currencies: {} };
}

/**
 * Reads a unit such as 'km', 'EUR/kg', 'mm/(1000 km)', 'L/100 km', 'lbf ft', '%' or '' (plain number).
 * A space multiplies and binds closer than the slash, so that 'L/100 km' is litres per 100 km.
 *
 * Throws FormulaFault naming what cannot be read.
 *
 * Example: parseUnit('mm/(1000 km)').factor is 1e-9.
 */
export function parseUnit(text: string): Unit {
  const trimmed = text.trim();
  if (trimmed === '') return PLAIN;
  if (trimmed.length > MOST_TEXT) throw unreadable(text, `a unit has at most ${MOST_TEXT} characters`);
  const tokens = trimmed.match(/\d+(?:\.\d+)?(?:[eE][+-]?\d+)?|[A-Za-z]+|[%*/^()·-]|\S/g) ?? [];
  const reader = new UnitReader(tokens, text);
  const unit = reader.quotient(0);
  reader.end();
  return { ...unit, text: trimmed };
}

/** parseUnit without throwing. */
export function tryUnit(text: string): Unit | null {
  try {
    return parseUnit(text);
  } catch {
    return null;
  }
}

function unreadable(text: string, why: string): FormulaFault {
  return new FormulaFault({
    kind: 'units',
    message: `The unit ${text} cannot be read: ${why}.`,
    mend: 'Write it like km, mm, EUR/kg or mm/(1000 km).',
    place: {},
  });
}

const NAMES_FOR_HELP = [
  'km',
  'm',
  'mm',
  'inch',
  'mi',
  'kg',
  'g',
  'lb',
  'L',
  'mL',
  'h',
  'day',
  'month',
  'EUR',
  'USD',
  'bar',
  'psi',
  'degC',
];

class UnitReader {
  private at = 0;
  private readonly tokens: readonly string[];
  private readonly text: string;

  constructor(tokens: readonly string[], text: string) {
    this.tokens = tokens;
    this.text = text;
  }

  end(): void {
    const rest = this.tokens[this.at];
    if (rest !== undefined) throw unreadable(this.text, `${rest} stands where the unit should end`);
  }

  quotient(depth: number): Unit {
    let unit = this.product(depth);
    for (;;) {
      const sign = this.tokens[this.at];
      if (sign !== '/' && sign !== '*' && sign !== '·') return unit;
      this.at++;
      const next = this.product(depth);
      unit = sign === '/' ? divideUnits(unit, next) : multiplyUnits(unit, next);
    }
  }

  private product(depth: number): Unit {
    let unit = this.power(depth);
    for (;;) {
      const next = this.tokens[this.at];
      if (next === undefined || !/^[\dA-Za-z(%]/.test(next)) return unit;
      unit = multiplyUnits(unit, this.power(depth));
    }
  }

  private power(depth: number): Unit {
    const base = this.atom(depth);
    if (this.tokens[this.at] !== '^') return base;
    this.at++;
    const sign = this.tokens[this.at] === '-' ? -1 : 1;
    if (sign === -1) this.at++;
    const power = Number(this.tokens[this.at++]);
    if (!Number.isInteger(power) || power > 6)
      throw unreadable(this.text, 'a power is a whole number up to 6');
    return raiseUnit(base, sign * power);
  }

  private atom(depth: number): Unit {
    const token = this.tokens[this.at++];
    if (token === undefined) throw unreadable(this.text, 'it ends too early');
    if (token === '(') {
      if (depth > 4) throw unreadable(this.text, 'its brackets are nested too deep');
      const inside = this.quotient(depth + 1);
      if (this.tokens[this.at++] !== ')') throw unreadable(this.text, 'a closing bracket is missing');
      return inside;
    }
    if (/^\d/.test(token)) {
      const factor = Number(token);
      if (!(factor > 0) || !Number.isFinite(factor)) throw unreadable(this.text, `${token} is no factor`);
      return { ...PLAIN, factor };
    }
    const unit = lookUpUnit(token);
    if (unit === null) {
      const near = nearest(token, NAMES_FOR_HELP);
      throw unreadable(
        this.text,
        `${token} is no unit${near.length > 0 ? `; ${near.join(' or ')} is near` : ''}`,
      );
    }
    return unit;
  }
}

/**
 * What a figure in `from` is multiplied by to be in `to`; same dimensions, no temperatures on other noughts,
 * no change of currency.
 */
export function conversionFactor(from: Unit, to: Unit): number {
  if (!sameDimensions(from, to))
    throw new RangeError(`${from.text} and ${to.text} have different dimensions`);
  return from.factor / to.factor;
}
