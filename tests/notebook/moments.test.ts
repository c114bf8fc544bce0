import { IDBFactory, IDBKeyRange } from 'fake-indexeddb';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { NotebookDocument, TableCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import {
  addCell,
  addRows,
  entryEdit,
  formulaEdit,
  notebookEdit,
  removeCell,
  removeRows,
  rename,
} from '../../src/notebook/edits.ts';
import { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { fittingPast, goTo, type Moment } from '../../src/notebook/moments.ts';
import { writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { openPastStore } from '../../src/notebook/storage/past-store.ts';
import { entered, formula, notebook, number, table, worked } from './small-notebook.ts';

globalThis.IDBKeyRange ??= IDBKeyRange;

const first = (): NotebookDocument =>
  notebook(
    number('budget', 480, 'EUR'),
    table('route', entered('km', 'number', [1, 2, 3], { unit: 'km' }), worked('twice', 'km * 2')),
    formula('whole', 'sum(route.twice)'),
  );

/** One of every sort of edit, made for whatever the notebook holds now. */
function editFor(document: NotebookDocument, sort: number, n: number): Edit | null {
  const route = document.cells.find((cell) => cell.id === 'route') as TableCell | undefined;
  const rows = (route?.columns[0] as { entries?: unknown[] } | undefined)?.entries?.length ?? 0;
  switch (sort) {
    case 0:
      return rows === 0 ? null : entryEdit(document, 'route', 'km', n % rows, n);
    case 1:
      return route === undefined ? null : addRows(document, 'route', n % (rows + 1), [{ km: n }]);
    case 2:
      return rows === 0 ? null : removeRows(document, 'route', n % rows, 1);
    case 3:
      return notebookEdit(document, 'title', `Trip ${n}`);
    case 4:
      return document.cells.some((cell) => cell.id === `note-${n % 3}`)
        ? removeCell(document, `note-${n % 3}`)
        : addCell(document, { kind: 'note', id: `note-${n % 3}`, title: 'Note', text: String(n) }, n % 3);
    case 5:
      return rename(document, 'budget', undefined, `budget_${n}`);
    default:
      return formulaEdit(document, 'whole', undefined, `sum(route.twice) + ${n} km`);
  }
}

test('undo and redo go on across visits: undoing all gives the first notebook byte for byte', async () => {
  const step = fc.oneof(
    { weight: 6, arbitrary: fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 40 })) },
    { weight: 3, arbitrary: fc.constant('undo' as const) },
    { weight: 2, arbitrary: fc.constant('redo' as const) },
    { weight: 2, arbitrary: fc.constant('visit' as const) },
  );
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 40 }), async (steps) => {
      const factory = new IDBFactory() as never;
      let store = openPastStore(factory);
      let revision = 0;
      let live = LiveNotebook.open(first());
      const begun = writeNotebookFile(live.document);
      for (const each of steps) {
        if (each === 'undo') live.undo();
        else if (each === 'redo') live.redo();
        else if (each === 'visit') {
          const { document } = live;
          live.dispose();
          store.close();
          store = openPastStore(factory);
          live = LiveNotebook.open(document);
          const past = await store.load('small', revision);
          if (past !== null) live.recall(fittingPast(document, past));
          expect(past !== null || revision === 0).toBe(true);
        } else {
          const edit = editFor(live.document, ...each);
          if (edit !== null && JSON.stringify(edit).length > 0) live.apply(edit);
        }
        revision += 1;
        await store.keep('small', revision, live.past);
      }
      const now = writeNotebookFile(live.document);
      while (live.canUndo) live.undo();
      expect(writeNotebookFile(live.document)).toBe(begun);
      while (live.canRedo) live.redo();
      if (steps.at(-1) !== 'undo') expect(live.past.undone).toEqual([]);
      expect(now.length).toBeGreaterThan(0);
      live.dispose();
      store.close();
    }),
    { numRuns: 40, seed: 11 },
  );
});

test('a past of another revision, or one that no longer fits, is not taken over', async () => {
  const store = openPastStore(new IDBFactory() as never);
  const live = LiveNotebook.open(first());
  live.apply(notebookEdit(live.document, 'title', 'A'));
  live.apply(entryEdit(live.document, 'route', 'km', 0, 9));
  await store.keep('small', 4, live.past);
  expect(await store.load('small', 3)).toBeNull();
  expect(await store.load('other', 4)).toBeNull();
  const past = (await store.load('small', 4))!;
  expect(past.made).toHaveLength(2);
  // The title is another than the first edit left: only what came after it can be undone.
  const changed = { ...live.document, title: 'B' };
  expect(fittingPast(changed, past).made).toEqual(past.made.slice(1));
  expect(fittingPast({ ...changed, cells: [] }, past).made).toEqual([]);
  live.dispose();
  store.close();
});

test('moments are kept by name, gone to in one step, and taken away', async () => {
  const store = openPastStore(new IDBFactory() as never);
  const live = LiveNotebook.open(first());
  const moment: Moment = {
    id: 'm1',
    name: 'before the order',
    at: '2026-03-14T09:00:00.000Z',
    document: live.document,
  };
  await store.keepMoment('small', moment);
  await store.keepMoment('small', { ...moment, id: 'm2', name: 'later', at: '2026-03-15T09:00:00.000Z' });
  await store.keepMoment('small', { ...moment, id: 'bad', document: { format: 'no' } as never });
  expect((await store.moments('small')).map(({ name }) => name)).toEqual(['later', 'before the order']);
  expect(await store.moments('other')).toEqual([]);

  expect(goTo(live.document, moment)).toBeNull();
  live.apply(entryEdit(live.document, 'route', 'km', 1, 77));
  live.apply(rename(live.document, 'budget', undefined, 'cash'));
  const changed = writeNotebookFile(live.document);
  const [, kept] = await store.moments('small');
  live.apply(goTo(live.document, kept!)!);
  expect(writeNotebookFile(live.document)).toBe(writeNotebookFile(first()));
  live.undo();
  expect(writeNotebookFile(live.document)).toBe(changed);

  await store.removeMoment('small', 'm2');
  expect((await store.moments('small')).map(({ id }) => id)).toEqual(['m1']);
  live.dispose();
  store.close();
});
