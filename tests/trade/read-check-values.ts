import { readFileSync } from 'node:fs';
import Papa from 'papaparse';

/** One row of check-values.csv, beside this file: what another tool or a source says. */
export interface CheckValue {
  readonly id: string;
  readonly quantity: string;
  readonly inputs: ReadonlyMap<string, string>;
  readonly expected: number;
  readonly tolerance: string;
  readonly source: string;
}

/** All rows of check-values.csv; figures are read strictly, so that a slip in the file is a failure. */
export function readCheckValues(): readonly CheckValue[] {
  const text = readFileSync(new URL('./check-values.csv', import.meta.url), 'utf8');
  const { data, errors } = Papa.parse<string[]>(text.trimEnd(), { header: false });
  if (errors.length > 0) throw new Error(`check-values.csv: ${errors[0]?.message}`);
  return data.slice(1).map(([id, quantity, , inputs, expected, tolerance, source]) => {
    if (!id || !inputs || !expected || !tolerance || !source)
      throw new Error(`check-values.csv: ${id} is not whole`);
    return {
      id,
      quantity: quantity ?? '',
      inputs: new Map(inputs.split(';').map((pair) => pair.split('=') as [string, string])),
      expected: figure(expected),
      tolerance,
      source,
    };
  });
}

export function figure(text: string | undefined): number {
  const value = Number(text);
  if (text === undefined || text.trim() === '' || !Number.isFinite(value))
    throw new Error(`not a figure: ${text}`);
  return value;
}

/** Whether `actual` is within a tolerance such as `rel:1e-12`, `abs:0.002`, `exact`. */
export function within(actual: number, expected: number, tolerance: string): boolean {
  if (tolerance === 'exact') return actual === expected;
  const [kind, bound] = tolerance.split(':');
  const miss = Math.abs(actual - expected);
  if (kind === 'rel') return miss <= figure(bound) * Math.abs(expected);
  if (kind === 'abs') return miss <= figure(bound);
  throw new Error(`no such tolerance: ${tolerance}`);
}
