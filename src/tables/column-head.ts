import { tryUnit } from '../formula/unit-text.ts';
import { freeName } from './plain-name.ts';

/** What the head of a CSV column says: `rate (1/(1000 km))`. */
export interface ColumnHead {
  /** Plain and unlike the other columns' names. */
  readonly name: string;
  /** The words as the file has them, without the unit. */
  readonly title: string;
  /** Text of a unit that formulas know; '' when the head gives none. */
  readonly unit: string;
}

/** The head as written in our files: the name, and its unit in brackets. */
export function headText(name: string, unit: string | undefined): string {
  return unit === undefined || unit === '' ? name : `${name} (${unit})`;
}

/**
 * Splits a head into words and unit. Brackets that hold no unit, as in `price (net)`, belong to the words.
 *
 * @example splitHead('rate (1/(1000 km))') // { title: 'rate', unit: '1/(1000 km)' }
 */
export function splitHead(text: string): { title: string; unit: string } {
  const trimmed = text.trim();
  const open = openingBracket(trimmed);
  if (open <= 0) return { title: trimmed, unit: '' };
  const inside = trimmed.slice(open + 1, -1).trim();
  return inside !== '' && tryUnit(inside) !== null
    ? { title: trimmed.slice(0, open).trim(), unit: inside }
    : { title: trimmed, unit: '' };
}

/** Place of the bracket that the last character closes; -1 when it closes none. */
function openingBracket(text: string): number {
  if (!text.endsWith(')')) return -1;
  let depth = 0;
  for (let at = text.length - 1; at >= 0; at -= 1) {
    if (text[at] === ')') depth += 1;
    if (text[at] === '(') depth -= 1;
    if (depth === 0) return at;
  }
  return -1;
}

/**
 * Names for all columns of a file, whatever its heads say: empty, doubled and hostile heads all get a plain
 * name of their own, and none is lost.
 *
 * @example readHeads(['km', 'km', '__proto__']).map((head) => head.name) // ['km', 'km_2', 'proto']
 */
export function readHeads(header: readonly string[]): ColumnHead[] {
  const taken = new Set<string>();
  return header.map((text, at) => {
    const { title, unit } = splitHead(text);
    const name = freeName(title === '' ? `column_${at + 1}` : title, taken);
    taken.add(name);
    return { name, title, unit };
  });
}
