import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  CLEAR_LENS,
  findFigure,
  isStillSo,
  type Lens,
  lensRows,
  type Where,
} from '../../../cells/shared/table-lens.ts';
import { type Grid, gridOf } from '../../../cells/shared/table-model.ts';
import { RowOrder } from '../../../cells/shared/table-order.ts';
import { inSlices } from '../../../cells/shared/table-slices.ts';
import type { TableCell } from '../../../src/notebook/document.ts';
import { LiveNotebook } from '../../../src/notebook/live-notebook.ts';
import { entered, notebook, table, worked } from '../../notebook/small-notebook.ts';

async function gridWith(
  km: readonly (number | string | null)[],
  surface: readonly (string | null)[],
): Promise<Grid> {
  const live = LiveNotebook.open(
    notebook(
      table(
        'route',
        entered('surface', 'text', surface),
        entered('km', 'number', km, { unit: 'km' }),
        worked('twice', 'km * 2', 'km'),
      ),
    ),
  );
  await live.settled();
  const grid = gridOf(live, live.document.cells[0] as TableCell, false);
  live.dispose();
  return grid;
}

/** What a generator gives in the end, however many steps it takes. */
function ended<T>(work: Generator<void, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

function shown(grid: Grid, lens: Lens): number[] {
  const rows = ended(lensRows(grid, lens));
  if (rows === null || 'reason' in rows) throw new Error(`no rows: ${JSON.stringify(rows)}`);
  return [...rows];
}

const by = (column: string, falling = false): Lens => ({ ...CLEAR_LENS, sorting: { column, falling } });
const where = (column: string, test: Where['test'], text = ''): Lens => ({
  ...CLEAR_LENS,
  wheres: [{ column, test, text }],
});

test('sorted either way, missing and faulty figures come last and equal ones as they stand', async () => {
  const grid = await gridWith([30, null, 7, 'x', 30], ['b', 'a', null, 'a10', 'a9']);
  expect(shown(grid, by('km'))).toEqual([2, 0, 4, 1, 3]);
  expect(shown(grid, by('twice', true))).toEqual([0, 4, 2, 1, 3]);
  expect(shown(grid, by('surface'))).toEqual([1, 4, 3, 0, 2]);
});

test('conditions: words, figures with units, empty fields and faults', async () => {
  const grid = await gridWith([100, null, 200, 'x', 161], ['Gravel', 'sand', 'fine gravel', null, 'sand']);
  expect(shown(grid, where('surface', 'holds', 'GRAVEL'))).toEqual([0, 2]);
  expect(shown(grid, where('surface', 'is', 'sand'))).toEqual([1, 4]);
  // 100 mi are 160.9344 km (NIST SP 811, appendix B.8).
  expect(shown(grid, where('km', 'least', '100 mi'))).toEqual([2, 4]);
  expect(shown(grid, where('km', 'most', '161'))).toEqual([0, 4]);
  expect(shown(grid, where('km', 'empty'))).toEqual([1]);
  expect(shown(grid, where('km', 'fault'))).toEqual([3]);
  expect(
    shown(grid, { sorting: { column: 'km', falling: true }, wheres: where('surface', 'filled').wheres }),
  ).toEqual([2, 4, 0, 1]);
});

test('a condition that cannot be read says why, and no lens shows all rows as they stand', async () => {
  const grid = await gridWith([1], ['a']);
  expect(ended(lensRows(grid, where('km', 'least', '3 kg')))).toMatchObject({
    reason: "'kg' does not fit: this field is in km",
  });
  expect(ended(lensRows(grid, CLEAR_LENS))).toBeNull();
});

test('sorting agrees with the language’s own stable sort', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constant(null)), { maxLength: 40 }),
      async (km) => {
        const grid = await gridWith(km, km.map(String));
        const rank = (row: number): number => km[row] ?? Number.POSITIVE_INFINITY;
        const expected = km
          .map((_, row) => row)
          .sort((a, b) => (rank(a) === rank(b) ? 0 : rank(a) - rank(b)));
        expect(shown(grid, by('km'))).toEqual(expected);
        expect(isStillSo(grid, by('km'), Int32Array.from(expected))).toBe(true);
      },
    ),
    { numRuns: 50, seed: 7 },
  );
});

test('rows that would now be shown otherwise are noticed', async () => {
  const grid = await gridWith([3, 1], ['a', 'b']);
  expect(isStillSo(grid, by('km'), Int32Array.of(0, 1))).toBe(false);
  expect(isStillSo(grid, where('km', 'least', '2'), Int32Array.of(0, 1))).toBe(false);
  expect(isStillSo(grid, where('km', 'least', '2'), Int32Array.of(0))).toBe(true);
});

test('finding goes on from where the keyboard is, once round, either way', async () => {
  const grid = await gridWith([1200, 5, 7], ['sand', 'rock', 'sand']);
  const view = { placeCount: 3, rowAt: (place: number) => place, backwards: false };
  const from = (row: number, column: number) => ({ row, column });
  expect(ended(findFigure(grid, 'SAND', from(0, 0), view))).toEqual(from(2, 0));
  expect(ended(findFigure(grid, 'sand', from(2, 0), view))).toEqual(from(0, 0));
  expect(ended(findFigure(grid, 'sand', from(1, 1), { ...view, backwards: true }))).toEqual(from(0, 0));
  expect(ended(findFigure(grid, '1,200', from(-1, 0), view))).toEqual(from(0, 1));
  expect(ended(findFigure(grid, 'gravel', from(0, 0), view))).toBeNull();
});

test('rows and the places where they are shown', () => {
  const order = new RowOrder();
  expect([order.rowAt(4), order.placeOf(4), order.countOf(9)]).toEqual([4, 4, 9]);
  order.show(Int32Array.of(5, 2));
  expect([order.rowAt(0), order.rowAt(2), order.rowAt(-1)]).toEqual([5, -1, -1]);
  expect([order.placeOf(2), order.placeOf(4), order.countOf(9)]).toEqual([1, -1, 2]);
});

test('work in slices gives its result, and stops when it is called off', async () => {
  function* work(): Generator<void, string> {
    const until = performance.now() + 20;
    while (performance.now() < until) yield;
    return 'done';
  }
  function* endless(): Generator<void, string> {
    for (;;) yield;
  }
  expect(await inSlices(work(), () => false)).toBe('done');
  expect(await inSlices(endless(), () => true)).toBeNull();
});
