import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type CallRows, proposeCalls } from '../../src/trade/propose-calls.ts';

/** Rows of parts met with calls, costs and permissions part by part. */
function rows(
  costs: readonly (readonly number[])[],
  allowed: readonly (readonly number[])[],
  pins: readonly number[] = [],
  forbidden: readonly number[] = [],
): CallRows {
  const flat = costs.flatMap((own, part) => own.map((_, call) => [part, call] as const));
  return {
    parts: costs.length,
    partOf: Int32Array.from(flat, ([part]) => part),
    callOf: Int32Array.from(flat, ([, call]) => call),
    cost: Float64Array.from(costs.flat()),
    allowed: Float64Array.from(allowed.flat()),
    forbidden: Uint8Array.from(costs.flat(), (_, row) => (forbidden.includes(row) ? 1 : 0)),
    pinned: Int32Array.from(costs, (_, part) => pins[part] ?? -1),
  };
}

describe('the call of each part for itself', () => {
  test('the cheapest that is allowed; a held-back one is never proposed, whatever it would save', () => {
    expect(proposeCalls(rows([[12, 144, 160]], [[0, 1, 1]]))).toEqual([
      { row: 1, proposedRow: 1, bestBy: 16, state: 'proposed' },
    ]);
  });

  test('of equals the first', () => {
    expect(proposeCalls(rows([[50, 50]], [[1, 1]]))[0]).toMatchObject({ row: 0, bestBy: 0 });
  });

  test('a call ruled out by hand is not proposed, nor kept when set; with none left that is said', () => {
    expect(proposeCalls(rows([[12, 30, 16]], [[1, 1, 1]], [], [0]))).toEqual([
      { row: 2, proposedRow: 2, bestBy: 14, state: 'proposed' },
    ]);
    expect(proposeCalls(rows([[12, 30, 16]], [[1, 1, 1]], [1], [1]))[0]).toMatchObject({
      row: 0,
      state: 'not allowed by hand',
    });
    expect(proposeCalls(rows([[12, 30]], [[1, 0]], [], [0]))[0]).toMatchObject({
      row: -1,
      state: 'forbidden by hand',
    });
    // A price that is missing for a call ruled out holds nothing up.
    expect(proposeCalls(rows([[12, Number.NaN]], [[1, 1]], [], [1]))[0]).toMatchObject({
      row: 0,
      state: 'proposed',
    });
  });

  test('a call set by hand stands if it is allowed, and is told from the proposed one', () => {
    expect(proposeCalls(rows([[12, 30, 16]], [[1, 1, 1]], [1]))).toEqual([
      { row: 1, proposedRow: 0, bestBy: 4, state: 'by hand' },
    ]);
    expect(proposeCalls(rows([[12, 30, 16]], [[0, 1, 1]], [0]))).toEqual([
      { row: 2, proposedRow: 2, bestBy: 14, state: 'not allowed by hand' },
    ]);
  });

  test('a missing price makes no other call look best', () => {
    expect(proposeCalls(rows([[44, Number.NaN]], [[1, 1]]))[0]).toMatchObject({
      row: -1,
      state: 'needs a price',
    });
    expect(proposeCalls(rows([[44, Number.NaN]], [[1, 0]]))[0]).toMatchObject({ row: 0, state: 'proposed' });
    expect(proposeCalls(rows([[44, 50]], [[1, Number.NaN]]))[0]).toMatchObject({
      row: -1,
      state: 'needs a price',
    });
  });

  test('no call allowed is said', () => {
    expect(proposeCalls(rows([[44, 50]], [[0, 0]]))[0]).toMatchObject({
      row: -1,
      proposedRow: -1,
      state: 'no call meets the limit',
    });
  });

  test('each part is independent of the others, and no allowed call is cheaper (property)', () => {
    const part = fc.array(fc.tuple(fc.integer({ min: -200, max: 900 }), fc.boolean()), {
      minLength: 4,
      maxLength: 4,
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), (parts) => {
        const costs = parts.map((own) => own.map(([cost]) => cost));
        const allowed = parts.map((own) => own.map(([, may]) => Number(may)));
        const together = proposeCalls(rows(costs, allowed));
        together.forEach((held, at) => {
          const alone = proposeCalls(rows([costs[at] as number[]], [allowed[at] as number[]]))[0];
          expect(held.state).toBe(alone?.state);
          if (held.row < 0) {
            expect(allowed[at]).not.toContain(1);
            return;
          }
          const chosen = (costs.flat()[held.row] ?? 0) as number;
          const open = (costs[at] as number[]).filter((_, call) => allowed[at]?.[call] === 1);
          expect(chosen).toBe(Math.min(...open));
        });
      }),
    );
  });
});
