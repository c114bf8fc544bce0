import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numbers, type SampleNotebook, work } from './sample-scope.ts';

/** Figures at the edges: both noughts, missing, what overflows when multiplied, what has no real power. */
const FIGURES: fc.Arbitrary<number | null> = fc.oneof(
  fc.constantFrom(0, -0, null, 1, -1, 0.5, -8, 7, 1e300, -1e300, 1e-300),
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
);
/** Up to three turns of four rows and what is left over. */
const ROWS = fc.array(fc.tuple(FIGURES, FIGURES, FIGURES), { minLength: 1, maxLength: 14 });

type Row = readonly [number | null, number | null, number | null];

const notebook = (rows: readonly Row[], single: number | null): SampleNotebook => ({
  here: 't',
  tables: {
    t: {
      a: numbers('', ...rows.map((row) => row[0])),
      b: numbers('', ...rows.map((row) => row[1])),
      c: numbers('', ...rows.map((row) => row[2])),
    },
  },
  figures: { one: numbers('', single) },
});

/** What a row gives when it is worked out alone by the language itself: a figure, missing, or a fault. */
type Outcome = number | 'missing' | 'fault';

function outcome(figures: readonly (number | null)[], compute: (...x: number[]) => number): Outcome {
  if (figures.includes(null)) return 'missing';
  const result = compute(...(figures as number[]));
  return Number.isFinite(result) ? result : 'fault';
}

function outcomes(formula: string, sample: SampleNotebook): Outcome[] {
  const { column } = work(formula, sample);
  return [...column.values].map((value, row) =>
    column.faults?.has(row) ? 'fault' : Number.isNaN(value) ? 'missing' : (value as number),
  );
}

const SIGNS: readonly (readonly [string, (x: number, y: number) => number])[] = [
  ['+', (x, y) => x + y],
  ['-', (x, y) => x - y],
  ['*', (x, y) => x * y],
  ['/', (x, y) => x / y],
  ['^', (x, y) => x ** y],
  ['%', (x, y) => x - y * Math.floor(x / y)],
];

describe('down the rows a sign gives what it gives row by row', () => {
  test.each(SIGNS)('%s', (sign, compute) => {
    fc.assert(
      fc.property(ROWS, FIGURES, (rows, single) => {
        const sample = notebook(rows, single);
        expect(outcomes(`a ${sign} b`, sample)).toEqual(rows.map(([a, b]) => outcome([a, b], compute)));
        expect(outcomes(`a ${sign} one`, sample)).toEqual(rows.map(([a]) => outcome([a, single], compute)));
        expect(outcomes(`one ${sign} a`, sample)).toEqual(rows.map(([a]) => outcome([single, a], compute)));
      }),
      { numRuns: 200 },
    );
  });

  test('two signs, of which the first writes where the second reads', () => {
    const two = (
      first: Outcome,
      second: number | null,
      compute: (x: number, y: number) => number,
    ): Outcome =>
      first === 'fault' ? 'fault' : outcome([first === 'missing' ? null : first, second], compute);
    fc.assert(
      fc.property(ROWS, (rows) => {
        const sample = notebook(rows, 1);
        const products = rows.map(([a, b]) => outcome([a, b], (x, y) => x * y));
        const down = (compute: (x: number, y: number) => number): Outcome[] =>
          rows.map(([, , c], row) => two(products[row] as Outcome, c, compute));
        expect(outcomes('a * b - c', sample)).toEqual(down((x, y) => x - y));
        expect(outcomes('c - a * b', sample)).toEqual(down((x, y) => y - x));
        expect(outcomes('(a + b) * (a + b)', sample)).toEqual(
          rows.map(([a, b]) => outcome([a, b], (x, y) => (x + y) * (x + y))),
        );
      }),
      { numRuns: 200 },
    );
  });
});

const COMPARISONS: readonly (readonly [string, (x: number, y: number) => boolean])[] = [
  ['==', (x, y) => x === y],
  ['!=', (x, y) => x !== y],
  ['<', (x, y) => x < y],
  ['<=', (x, y) => x <= y],
  ['>', (x, y) => x > y],
  ['>=', (x, y) => x >= y],
];

describe('down the rows a comparison, and what is chosen by it, is as row by row', () => {
  test.each(COMPARISONS)('%s', (sign, compare) => {
    fc.assert(
      fc.property(ROWS, FIGURES, (rows, single) => {
        const sample = notebook(rows, single);
        const yes = (x: number | null, y: number | null): number | null =>
          x === null || y === null ? null : compare(x, y) ? 1 : 0;
        const answers = (formula: string): unknown => outcomes(formula, sample);
        const told = (answer: number | null): Outcome => answer ?? 'missing';
        expect(answers(`a ${sign} b`)).toEqual(rows.map(([a, b]) => told(yes(a, b))));
        expect(answers(`one ${sign} b`)).toEqual(rows.map(([, b]) => told(yes(single, b))));
        expect(answers(`a ${sign} b ? c : one`)).toEqual(
          rows.map(([a, b, c]) => {
            const answer = yes(a, b);
            return told(answer === null ? null : answer === 1 ? c : single);
          }),
        );
        expect(answers(`a ${sign} b ? a / b : c`)).toEqual(
          rows.map(([a, b, c]) => {
            const answer = yes(a, b);
            if (answer === null) return 'missing';
            return answer === 1 ? outcome([a, b], (x, y) => x / y) : told(c);
          }),
        );
      }),
      { numRuns: 200 },
    );
  });
});

test('what is too large to be written is a fault where it arises, and does not pass for missing or 0 further on', () => {
  const sample = notebook([[1e300, 1e300, 1]], 1);
  for (const formula of ['a * b > 5', '1 / (a * b)', 'a * b == a * b', 'a * b * 0'])
    expect(outcomes(formula, sample), formula).toEqual(['fault']);
});
