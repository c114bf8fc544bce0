import fc from 'fast-check';
import { all, create, type EvalFunction, type FactoryFunctionMap } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Column } from '../../src/formula/column.ts';
import { isFault } from '../../src/formula/fault.ts';
import { numbers, run, type SampleNotebook, work } from './sample-scope.ts';

/**
 * The outside reference: the whole of mathjs 15.2, evaluating the same text row by row. Comparison is exact
 * in ours; mathjs compares with a tolerance, set here to the least it takes, and rows that turn on it are left out.
 */
const math = create(all as FactoryFunctionMap, { relTol: 1e-15, absTol: 0 });

const ROWS = 5;

/** Random formulas of the language over the columns a, b, c and the single figure k, as text. */
const arithmetic = fc.letrec<{ number: string; truth: string }>((tie) => ({
  number: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('a', 'b', 'c', 'k', '2', '0.5', '7', 'pi'),
    fc
      .tuple(tie('number'), fc.constantFrom('+', '-', '*', '/'), tie('number'))
      .map(([x, sign, y]) => `(${x} ${sign} ${y})`),
    fc
      .tuple(tie('number'), fc.constantFrom('+', '-', '*'), tie('number'))
      .map(([x, sign, y]) => `${x} ${sign} ${y}`),
    fc.tuple(tie('number'), fc.constantFrom('2', '3', '0.5', '-1')).map(([x, power]) => `(${x})^${power}`),
    fc.tuple(tie('number'), fc.constantFrom('3', 'k')).map(([x, y]) => `(${x}) % ${y}`),
    tie('number').map((x) => `-(${x})`),
    tie('number').map((x) => `-${x.startsWith('-') ? `(${x})` : x}`),
    fc
      .tuple(fc.constantFrom('abs', 'sqrt', 'exp', 'log', 'log10', 'sign'), tie('number'))
      .map(([name, x]) => `${name}(${x})`),
    fc
      .tuple(fc.constantFrom('min', 'max'), tie('number'), tie('number'))
      .map(([name, x, y]) => `${name}(${x}, ${y})`),
    fc.tuple(tie('truth'), tie('number'), tie('number')).map(([when, x, y]) => `(${when} ? ${x} : ${y})`),
  ),
  truth: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    fc.constantFrom('true', 'false'),
    fc
      .tuple(tie('number'), fc.constantFrom('<', '<=', '>', '>=', '==', '!='), tie('number'))
      .map(([x, sign, y]) => `(${x}) ${sign} (${y})`),
    fc.tuple(tie('number'), tie('number'), tie('number')).map(([x, y, z]) => `(${x}) < (${y}) <= (${z})`),
    fc
      .tuple(tie('truth'), fc.constantFrom('and', 'or'), tie('truth'))
      .map(([x, sign, y]) => `(${x}) ${sign} (${y})`),
    tie('truth').map((x) => `not (${x})`),
  ),
}));

const column = fc.array(
  fc.oneof(
    fc.integer({ min: -5, max: 9 }),
    fc.double({ min: -20, max: 20, noNaN: true }).map((x) => (Math.abs(x) < 1e-6 ? 0 : x)),
  ),
  { minLength: ROWS, maxLength: ROWS },
);

function mathjsAt(code: EvalFunction, scope: Map<string, number>): number | boolean | 'outside' {
  const result: unknown = code.evaluate(scope);
  if (typeof result === 'boolean') return result;
  return typeof result === 'number' && Number.isFinite(result) ? result : 'outside';
}

/** Ours against theirs: the same figure, or a fault of the row where theirs has no real, finite value. */
function agree(found: number, theirs: number | boolean | 'outside', faulty: boolean): boolean {
  if (theirs === 'outside') return faulty;
  if (typeof theirs === 'boolean') return found === Number(theirs);
  if (faulty) return false;
  return Math.abs(found - theirs) <= 1e-12 * Math.max(1, Math.abs(theirs));
}

function workedOrNull(formula: string, sample: SampleNotebook): Column | null {
  const result = run(formula, sample);
  if (!isFault(result)) return result;
  expect(result.kind).toBe('domain');
  return null;
}

type Side = { compile(): { evaluate(scope: Map<string, number>): unknown } };
/** mathjs calls the sides of a single sign `args`, those of a chain such as a < b < c `params`. */
type Inner = { readonly args?: readonly Side[]; readonly params?: readonly Side[] };

const sides = (node: unknown, scope: Map<string, number>): readonly unknown[] =>
  ((node as Inner).args ?? (node as Inner).params ?? []).map((arg) => arg.compile().evaluate(scope));

/** Two neighbours apart by rounding alone: mathjs calls them equal, we do not. */
function nearlyEqualSides(node: unknown, scope: Map<string, number>): boolean {
  const values = sides(node, scope);
  return values.some((x, at) => {
    const y = values[at + 1];
    return (
      typeof x === 'number' &&
      typeof y === 'number' &&
      x !== y &&
      Math.abs(x - y) <= 1e-13 * Math.max(Math.abs(x), Math.abs(y))
    );
  });
}

/** A quotient within rounding of a whole number: the remainder jumps there. */
function nearlyWhole(node: unknown, scope: Map<string, number>): boolean {
  const [x, y] = sides(node, scope) as [number, number];
  const quotient = x / y;
  return (
    !Number.isInteger(quotient) &&
    Math.abs(quotient - Math.round(quotient)) <= 1e-12 * Math.max(1, Math.abs(quotient))
  );
}

/** True when no step of the formula leaves the real, finite numbers, where the two differ by design. */
function staysFinite(formula: string, scope: Map<string, number>): boolean {
  try {
    return stepsStayFinite(formula, scope);
  } catch {
    // mathjs gives up on complex numbers half-way.
    return false;
  }
}

function stepsStayFinite(formula: string, scope: Map<string, number>): boolean {
  let finite = true;
  math.parse(formula).traverse((node) => {
    if (!['OperatorNode', 'FunctionNode', 'RelationalNode'].includes(node.type)) return;
    const value: unknown = node.compile().evaluate(scope);
    if (typeof value !== 'boolean' && !(typeof value === 'number' && Number.isFinite(value))) finite = false;
    if (typeof value === 'boolean' && nearlyEqualSides(node, scope)) finite = false;
    if ('op' in node && node.op === '%' && nearlyWhole(node, scope)) finite = false;
  });
  return finite;
}

describe('random formulas of the language agree with mathjs', () => {
  for (const kind of ['number', 'truth'] as const) {
    test(`${kind} formulas over columns`, () => {
      let compared = 0;
      fc.assert(
        fc.property(
          arithmetic[kind],
          column,
          column,
          column,
          fc.integer({ min: 1, max: 6 }),
          (formula, a, b, c, k) => {
            const sample = {
              here: 't',
              tables: { t: { a: numbers('', ...a), b: numbers('', ...b), c: numbers('', ...c) } },
              figures: { k: numbers('', k) },
            };
            const ours = workedOrNull(formula, sample);
            const code = math.compile(formula) as unknown as EvalFunction;
            for (let row = 0; row < ROWS; row++) {
              const scope = new Map([
                ['a', a[row] as number],
                ['b', b[row] as number],
                ['c', c[row] as number],
                ['k', k],
              ]);
              const finite = staysFinite(formula, scope);
              // A single figure outside the real numbers stops the whole column, never one that stays inside.
              if (ours === null) expect(finite).toBe(false);
              if (ours === null || !finite) continue;
              compared++;
              const theirs = mathjsAt(code, scope);
              expect(
                agree(ours.values[row] as number, theirs, ours.faults?.has(row) ?? false),
                `${formula} in row ${row}: ${ours.values[row]}, mathjs ${theirs}`,
              ).toBe(true);
            }
          },
        ),
        { numRuns: 1500 },
      );
      // The property is not empty: most rows are really compared.
      expect(compared).toBeGreaterThan(2000);
    });
  }

  test('a step outside the real numbers is a fault of its row alone', () => {
    const sample = { here: 't', tables: { t: { a: numbers('', 4, -4, 0) } } };
    const { column: root } = work('1 / sqrt(a)', sample);
    expect(root.values[0]).toBe(0.5);
    expect([...(root.faults?.keys() ?? [])]).toEqual([1, 2]);
  });
});
