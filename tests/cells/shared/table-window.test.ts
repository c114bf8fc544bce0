import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rowsForFrame, rowsInView, windowSegments } from '../../../cells/shared/table-window.ts';

describe('rows in view', () => {
  test('the example of its docblock', () => {
    // By hand: 3100 / 31 = row 100, 3720 / 31 = row 120, twelve more drawn on each side.
    expect(rowsInView(1000, { scrollTopPx: 3100, heightPx: 620, rowPx: 31 })).toEqual([88, 132]);
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

describe('rows of one frame', () => {
  const at = (scrollTopPx: number) => ({ scrollTopPx, heightPx: 620, rowPx: 31 });

  test('a step draws all around the window at once, a leap the window first and the rest next', () => {
    // By hand: rows 120 to 140 are seen, twelve more around them; nineteen or so of 44 are new after a leap.
    expect(rowsForFrame(1000, at(3720), [98, 142])).toEqual({ rows: [108, 152], isWhole: true });
    const first = rowsForFrame(1000, at(15_500), [98, 142]);
    expect(first).toEqual({ rows: [498, 522], isWhole: false });
    expect(rowsForFrame(1000, at(15_500), first.rows)).toEqual({ rows: [488, 532], isWhole: true });
  });

  test('wherever one leaps, the rows seen are drawn at once, and two frames draw all', () => {
    const px = fc.integer({ min: 0, max: 60_000 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3_000 }), px, px, (rowCount, before, after) => {
        const drawn = rowsInView(rowCount, at(before));
        const once = rowsForFrame(rowCount, at(after), drawn);
        const [from, to] = once.rows;
        expect(from).toBeLessThanOrEqual(Math.floor(after / 31));
        expect(to).toBeGreaterThanOrEqual(Math.min(rowCount, Math.ceil((after + 620) / 31)));
        const twice = rowsForFrame(rowCount, at(after), once.rows);
        expect(once.isWhole ? once.rows : twice.rows).toEqual(rowsInView(rowCount, at(after)));
      }),
    );
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
