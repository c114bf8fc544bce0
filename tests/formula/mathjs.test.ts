import { all, create, type FactoryFunctionMap } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { mathParse, mathUnit } from '../../src/formula/mathjs.ts';

const whole = create(all as FactoryFunctionMap);

interface WholeUnit {
  readonly units: readonly {
    readonly unit: {
      readonly value: number;
      readonly offset: number | { valueOf(): number };
      readonly dimensions: readonly number[];
    };
    readonly prefix: { readonly value: number };
  }[];
}

/** Every unit of mathjs without a prefix, and some with one. */
const NAMES = [
  ...Object.keys((whole as unknown as { Unit: { UNITS: Record<string, unknown> } }).Unit.UNITS),
  ...['km', 'mm', 'mL', 'kilometers', 'kPa', 'MW', 'ms', 'decilitre', 'kohm', 'GiB'],
].filter((name) => /^[A-Za-z]+$/.test(name) && name !== 'VAR');

/** Where a tree of ours says something else than mathjs's own: paths, none if they agree. */
function differences(ours: unknown, theirs: unknown, path = 'tree'): string[] {
  if (typeof ours !== 'object' || ours === null) return Object.is(ours, theirs) ? [] : [path];
  const [a, b] = [ours, theirs ?? {}] as Record<string, unknown>[] as [
    Record<string, unknown>,
    Record<string, unknown>,
  ];
  const type = a.type === b.type ? [] : [`${path}.type`];
  return [...type, ...Object.keys(a).flatMap((key) => differences(a[key], b[key], `${path}.${key}`))];
}

describe('the parts of mathjs that are put together by hand', () => {
  test('know every unit that the whole of mathjs knows, with the same factor, offset and dimensions', () => {
    expect(NAMES.length).toBeGreaterThan(200);
    for (const name of NAMES) {
      const [part] = (whole.unit(name) as unknown as WholeUnit).units;
      expect({ name, ...mathUnit(name) }).toEqual({
        name,
        factor: Number(part?.unit.value) * (part?.prefix.value ?? Number.NaN),
        offset: Number(part?.unit.offset),
        dimensions: part?.unit.dimensions,
      });
    }
  });

  test.each(['', 'furlongish', 'km/h', '2 km', 'km^2', 'constructor', '__proto__', 'VAR'])(
    'know no unit called %j',
    (name) => {
      expect(mathUnit(name)).toBeNull();
    },
  );

  test.each([
    '1 + 2 * x ^ -3',
    'a < b <= c',
    'f(x, y.z[1])',
    'x ? y : z',
    '10% * 5 km',
    '-x!',
    '"text"',
    '[1, 2; 3, 4]',
    '{a: 1}',
    'f(x) = 2 x',
    'x = 3; x',
    '1:3',
    '0x1F + 1e3',
    'a ? b : c < d ? e : f',
    '2 a / 3 b',
    '1 km to mi',
    'x and not y or z xor w',
    'a.b.c',
  ])('read %s as the whole of mathjs does', (formula) => {
    expect(differences(mathParse(formula), whole.parse(formula))).toEqual([]);
  });

  test.each(['1 +', '(1', '1)', 'a b c d(', '[1, 2; 3]', '3 = x', '"x', '1 .. 2', '@'])(
    'refuse %s as the whole of mathjs does',
    (formula) => {
      const refusal = (parse: (text: string) => unknown): unknown => {
        try {
          parse(formula);
          return null;
        } catch (error) {
          return [(error as Error).message, (error as { char?: number }).char];
        }
      };
      expect(refusal(mathParse)).not.toBeNull();
      expect(refusal(mathParse)).toEqual(refusal((text) => whole.parse(text)));
    },
  );

  test('have nothing that evaluates', () => {
    const node = mathParse('1 + 1');
    expect(
      ['evaluate', 'compile', '_compile', 'toTex', 'toHTML', 'map'].filter((name) => name in node),
    ).toEqual([]);
  });
});
