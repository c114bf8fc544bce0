import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test, vi } from 'vitest';
import { entryEdit } from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { demo } from '../starter/support.ts';
import { entered, notebook, table, worked } from './small-notebook.ts';

/** Node gives its collector out only when told to, and then only to contexts made afterwards. */
function collector(): () => void {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc') as () => void;
}

test('figures of earlier edits are given back: of the columns of twenty edits few but the last ones are held', async () => {
  const collect = collector();
  const live = LiveNotebook.open(demo());
  await live.settled();
  const cell = live.document.cells.find((one) => one.kind === 'table' && one.name === 'wear');
  const column = cell?.kind === 'table' ? cell.columns.find((one) => one.name === 'now') : undefined;
  if (cell?.kind !== 'table' || column?.kind !== 'number') throw new Error('the demo has no readings');
  const row = column.entries.findIndex((entry) => typeof entry === 'number');
  const reading = column.entries[row] as number;
  const earlier: WeakRef<object>[] = [];
  for (let edit = 1; edit <= 20; edit++) {
    live.apply(entryEdit(live.document, cell.id, column.id, row, reading * (1 + edit / 1000)));
    const { recomputed } = await live.settled();
    expect(recomputed.length).toBeGreaterThan(10);
    for (const node of recomputed) {
      const is = live.read(node);
      if (is.state === 'settled') earlier.push(new WeakRef(is.column));
    }
  }
  // A weak reference holds what it leads to until the turn it was made in is over.
  await new Promise((then) => setTimeout(then, 0));
  collect();
  const now = new Set(
    [...earlier].flatMap((one) => {
      const column = one.deref();
      return column === undefined ? [] : [column];
    }),
  );
  expect(earlier.length).toBeGreaterThan(200);
  // What is shown now, what it was before the last edit, and what that was compared with.
  expect(now.size).toBeLessThan(earlier.length / 4);
});

test('what was computed is remembered of the last edit alone, while nobody asks for it', async () => {
  const live = LiveNotebook.open(notebook(table('t', entered('a', 'number', [1]), worked('b', 'a * 2'))));
  await live.settled();
  const figure = (): number => {
    const is = live.read('t.b');
    return is.state === 'settled' && is.column.kind === 'number' ? is.column.values[0]! : Number.NaN;
  };
  for (let edit = 2; edit <= 20; edit++) {
    live.apply(entryEdit(live.document, live.document.cells[0]!.id, 'a', 0, edit));
    await vi.waitFor(() => expect(figure()).toBe(2 * edit), { interval: 1 });
  }
  // By hand: the one column that was written, and the one that is worked out from it.
  expect([...(await live.settled()).recomputed].sort()).toEqual(['t.a', 't.b']);
});
