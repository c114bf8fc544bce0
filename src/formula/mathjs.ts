import { createParse, createUnitClass } from 'mathjs';
import { PARSE_NODES } from './parse-nodes.ts';

/*
 * mathjs's parser and its table of units, put together by hand. Of all that they name as their needs, reading
 * a formula and looking up a unit use next to nothing; the rest (matrices, fractions, big numbers, nodes that
 * evaluate themselves) is left out. That is two thirds of their weight, and what is not there cannot be made
 * to run by a stranger's formula: left open, mathjs's evaluator can hang or crash the page.
 */

/** Stands for a part that only evaluating would use. */
const left = (part: string) => (): never => {
  throw new Error(`mathjs is here to read formulas, not to work them out: it asked for ${part}.`);
};

const config = { number: 'number', numberFallback: 'number', predictable: false } as const;

/** mathjs picks one of several functions by its arguments; here formulas are always one text. */
const typed = Object.assign(
  (_name: string, signatures: Readonly<Record<string, unknown>>) => signatures.string,
  { addConversion: () => undefined },
);

/** mathjs's table writes the steps of two temperature scales as fractions. */
class Fraction {
  readonly isFraction = true;
  readonly value: number;
  constructor(above: number, below: number) {
    this.value = above / below;
  }
  valueOf(): number {
    return this.value;
  }
}

const ARITHMETIC = [
  'addScalar',
  'subtractScalar',
  'multiplyScalar',
  'divideScalar',
  'pow',
  'abs',
  'fix',
  'round',
  'equal',
  'isNumeric',
  'format',
  'number',
  'BigNumber',
] as const;

/** Put together when the first unit is read: its table takes a page that starts 15 ms. */
let unitClass: ReturnType<typeof makeUnitClass> | null = null;

const makeUnitClass = () =>
  createUnitClass({
    ...Object.fromEntries(ARITHMETIC.map((part) => [part, left(part)])),
    config,
    Fraction,
    // One unit of electrical power is measured along the imaginary axis; no formula here can read it.
    Complex: { I: Number.NaN },
  });

/** Reads a formula into mathjs's tree; what it cannot read is an error with the place as `char`. */
export const mathParse = createParse({ typed, config, numeric: Number, ...PARSE_NODES });

interface MathUnitPart {
  readonly unit: {
    readonly value: number | Fraction;
    readonly offset: number;
    readonly dimensions: readonly number[];
  };
  readonly prefix: { readonly value: number };
  readonly power: number;
}

/** What mathjs knows of a unit of one name. */
export interface MathUnit {
  /** What one of it is in mathjs's own unit of that dimension: 1000 for km. */
  readonly factor: number;
  readonly offset: number;
  readonly dimensions: readonly number[];
}

/** The unit of that name with its prefix, if mathjs knows it, or null. */
export function mathUnit(name: string): MathUnit | null {
  try {
    unitClass ??= makeUnitClass();
    const { units } = new unitClass(null, name) as { readonly units: readonly MathUnitPart[] };
    const [part] = units;
    if (units.length !== 1 || part === undefined || part.power !== 1) return null;
    const factor = Number(part.unit.value) * part.prefix.value;
    return Number.isNaN(factor)
      ? null
      : { factor, offset: part.unit.offset, dimensions: part.unit.dimensions };
  } catch {
    return null;
  }
}
