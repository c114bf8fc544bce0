import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowsInView, windowSegments } from '../../../cells/shared/table-window.ts';

describe('rows in view', () => {
  test('the example of its docblock', () => {
    // By hand: 3100 / 31 = row 100, twenty fit and one more may be cut, six more drawn on each side.
    expect(rowsInView(1000, { scrollTopPx: 3100, heightPx: 620, rowPx: 31 })).toEqual([94, 127]);
  });

  test('every row that the window shows is drawn, and none that is not there', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60_000 }),
        fc.integer({ min: 0, max: 2_000_000 }),
        fc.integer({ min: 0, max: 2_000 }),
        fc.integer({ min: 20, max: 60 }),
        (rowCount, scrollTopPx, heightPx, rowPx) => {
          const [from, to] = rowsInView(rowCount, { scrollTopPx, heightPx, rowPx });
          const firstSeen = Math.floor(scrollTopPx / rowPx);
          const lastSeen = Math.ceil((scrollTopPx + heightPx) / rowPx) - 1;
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(rowCount);
          expect(from).toBeLessThan(rowCount);
          if (firstSeen < rowCount) expect(from).toBeLessThanOrEqual(firstSeen);
          expect(to).toBeGreaterThanOrEqual(Math.min(rowCount, lastSeen + 1));
        },
      ),
    );
  });
});

describe('as many rows wherever one scrolls', () => {
  test('at the top, in the middle and at the end, while there are enough', () => {
    const countAt = (rowCount: number, scrollTopPx: number): number => {
      const [from, to] = rowsInView(rowCount, { scrollTopPx, heightPx: 620, rowPx: 31 });
      return to - from;
    };
    // By hand: 620 / 31 + 1 + 2 times 6.
    for (const scrollTopPx of [0, 17, 3_100, 3_117, 30_380]) expect(countAt(1000, scrollTopPx)).toBe(33);
    expect(countAt(30, 0)).toBe(30);
  });
});

describe('segments of a long table', () => {
  test('the focused row stays in the page on its own, with gaps around it', () => {
    expect(windowSegments(100, 10, 20, 50)).toEqual([
      { kind: 'gap', rows: 10 },
      { kind: 'rows', from: 10, to: 20 },
      { kind: 'gap', rows: 30 },
      { kind: 'rows', from: 50, to: 51 },
      { kind: 'gap', rows: 49 },
    ]);
  });

  test('gaps and rows together are all rows, once and in order', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 5_000 }),
        fc.nat(5_000),
        fc.nat(200),
        fc.option(fc.integer({ min: -1, max: 5_200 })),
        (rowCount, start, length, keep) => {
          const from = Math.min(start, rowCount);
          const to = Math.min(rowCount, from + length);
          let next = 0;
          const drawn = new Set<number>();
          for (const segment of windowSegments(rowCount, from, to, keep)) {
            if (segment.kind === 'gap') next += segment.rows;
            else {
              expect(segment.from).toBe(next);
              for (let row = segment.from; row < segment.to; row++) drawn.add(row);
              next = segment.to;
            }
          }
          expect(next).toBe(rowCount);
          for (let row = from; row < to; row++) expect(drawn).toContain(row);
          if (keep !== null && keep >= 0 && keep < rowCount) expect(drawn).toContain(keep);
        },
      ),
    );
  });
});
