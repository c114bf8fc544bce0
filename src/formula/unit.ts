/** Powers of the base dimensions, in the order of DIMENSIONS. */
export type Dimensions = readonly number[];

export const DIMENSIONS = [
  'mass',
  'length',
  'time',
  'current',
  'temperature',
  'light',
  'amount',
  'angle',
  'data',
  'money',
] as const;

/**
 * A unit of measure. A figure x in this unit is x * factor (+ offset * factor for temperatures) in the base
 * units (kg, m, s, ...), and for money also times the worth of each currency to its power. Currencies share
 * one dimension, money; their worth comes from the notebook's `rates_of_exchange` when the formula runs.
 */
export interface Unit {
  /** As written: 'mm/(1000 km)'. '' for a plain number. */
  readonly text: string;
  readonly dimensions: Dimensions;
  readonly factor: number;
  /** Temperatures on a scale with another nought, degC and degF; 0 for all else. */
  readonly offset: number;
  /** ISO 4217 code to power. */
  readonly currencies: Readonly<Record<string, number>>;
}

const NONE: Dimensions = DIMENSIONS.map(() => 0);

/** A number without unit. */
export const PLAIN: Unit = { text: '', dimensions: NONE, factor: 1, offset: 0, currencies: {} };

/** Same dimensions: figures of the two can be added once converted. */
export function sameDimensions(a: Unit, b: Unit): boolean {
  return a.dimensions.every((power, i) => power === b.dimensions[i]);
}

/** No dimension at all (percent included). */
export function isDimensionless(unit: Unit): boolean {
  return unit.dimensions.every((power) => power === 0);
}

/** A plain number: no dimension and no factor. */
export function isPlain(unit: Unit): boolean {
  return isDimensionless(unit) && unit.factor === 1 && sameCurrencies(unit.currencies, {});
}

export function sameCurrencies(
  a: Readonly<Record<string, number>>,
  b: Readonly<Record<string, number>>,
): boolean {
  const codes = new Set([...Object.keys(a), ...Object.keys(b)]);
  for (const code of codes) if ((a[code] ?? 0) !== (b[code] ?? 0)) return false;
  return true;
}

/** Same measure: no conversion is needed between the two. */
export function sameMeasure(a: Unit, b: Unit): boolean {
  return (
    sameDimensions(a, b) &&
    Math.abs(a.factor - b.factor) <= 1e-14 * Math.abs(a.factor) &&
    a.offset === b.offset &&
    sameCurrencies(a.currencies, b.currencies)
  );
}

function addCurrencies(a: Unit, b: Unit, sign: number): Readonly<Record<string, number>> {
  const sum: Record<string, number> = { ...a.currencies };
  for (const [code, power] of Object.entries(b.currencies)) {
    const total = (sum[code] ?? 0) + sign * power;
    if (total === 0) delete sum[code];
    else sum[code] = total;
  }
  return sum;
}

/** The unit of a product; its text is made only when it is shown. */
export function multiplyUnits(a: Unit, b: Unit): Unit {
  return {
    text: joinTexts(a, b, '*'),
    dimensions: a.dimensions.map((power, i) => power + (b.dimensions[i] ?? 0)),
    factor: a.factor * b.factor,
    offset: 0,
    currencies: addCurrencies(a, b, 1),
  };
}

/** The unit of a quotient. */
export function divideUnits(a: Unit, b: Unit): Unit {
  return {
    text: joinTexts(a, b, '/'),
    dimensions: a.dimensions.map((power, i) => power - (b.dimensions[i] ?? 0)),
    factor: a.factor / b.factor,
    offset: 0,
    currencies: addCurrencies(a, b, -1),
  };
}

/** The unit of a power; `power` may be a fraction such as 0.5. */
export function raiseUnit(unit: Unit, power: number): Unit {
  const currencies: Record<string, number> = {};
  for (const [code, held] of Object.entries(unit.currencies)) currencies[code] = held * power;
  return {
    text: unit.text === '' ? '' : `(${unit.text})^${power}`,
    dimensions: unit.dimensions.map((held) => held * power),
    factor: unit.factor ** power,
    offset: 0,
    currencies,
  };
}

function joinTexts(a: Unit, b: Unit, sign: '*' | '/'): string {
  if (b.text === '') return a.text;
  if (sign === '*') return a.text === '' ? b.text : `${a.text}*${wrapped(b.text)}`;
  return `${a.text === '' ? '1' : a.text}/${wrapped(b.text)}`;
}

const wrapped = (text: string): string => (/[*/\s]/.test(text) ? `(${text})` : text);
