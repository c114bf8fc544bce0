import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { partFigures } from '../../src/trade/part-figures.ts';

const FOLDER = new URL('../../src/trade/', import.meta.url);
/** name(arguments) = value, or name(arguments).field = value; arguments and value are JSON. */
const EXAMPLE = /@example (\w+)\((.*)\)(?:\.(\w+))? = (.+)$/gm;
/** They refuse, remember or choose; they give no figure that a reader would look up. */
const WITHOUT_FIGURE = [
  'check-part.ts',
  'chance-memo.ts',
  'domain.ts',
  'domain-error.ts',
  'propose-calls.ts',
];

const files = readdirSync(FOLDER).filter((file) => file.endsWith('.ts') && !WITHOUT_FIGURE.includes(file));

/** Lists are columns, objects the figures of a part. */
function argument(json: unknown): unknown {
  if (Array.isArray(json)) return Float64Array.from(json);
  return typeof json === 'object' && json !== null ? partFigures(json) : json;
}

/** Compares figures to 1e-9, absolute below 1; lists and objects by their parts. */
function expectSame(actual: unknown, expected: unknown, where: string): void {
  if (typeof expected === 'number') {
    const bound = 1e-9 * (expected === 0 ? 1e-6 : Math.abs(expected));
    expect(
      Math.abs((actual as number) - expected),
      `${where}: ${actual}, not ${expected}`,
    ).toBeLessThanOrEqual(bound);
  } else if (Array.isArray(expected)) {
    expect((actual as ArrayLike<number>).length, where).toBe(expected.length);
    for (const [k, each] of expected.entries()) {
      expectSame((actual as ArrayLike<number>)[k], each, `${where}[${k}]`);
    }
  } else {
    for (const [key, each] of Object.entries(expected as object)) {
      expectSame((actual as Record<string, unknown>)[key], each, `${where}.${key}`);
    }
  }
}

describe('examples in the docblocks of src/trade', () => {
  test.each(files)('%s', async (file) => {
    const text = readFileSync(new URL(file, FOLDER), 'utf8');
    const examples = [...text.matchAll(EXAMPLE)];
    const written = text.split('@example').length - 1;
    expect(examples.length, 'every example can be read').toBe(written);
    expect(examples.length, 'a file of functions has a worked example').toBeGreaterThan(0);
    const module = await import(new URL(file, FOLDER).href);
    for (const [where, name, given, field, value] of examples) {
      const result = module[name!](...JSON.parse(`[${given}]`).map(argument));
      expectSame(field ? result[field] : result, JSON.parse(value!), where);
    }
  });
});
