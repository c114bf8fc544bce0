import { IDBFactory } from 'fake-indexeddb';
import { expect, test } from 'vitest';
import { EditError } from '../../../src/notebook/edit-error.ts';
import { openNotebookStore } from '../../../src/notebook/storage/notebook-store.ts';
import {
  changedWords,
  copied,
  inPlace,
  NotebookShelf,
  type ShelfLine,
} from '../../../src/shell/notebooks/notebook-shelf.ts';
import { sizeWords } from '../../../src/shell/size-words.ts';
import { notebook, number } from '../../notebook/small-notebook.ts';

const trip = { ...notebook(number('budget', 480, 'EUR')), id: 'trip', title: 'Trip' };

function shelfWith() {
  const store = openNotebookStore(new IDBFactory() as never);
  const told: unknown[] = [];
  const listener = {
    saved: (id: string, revision: number) => told.push([id, revision]),
    removed: (id: string) => told.push(`${id} removed`),
  };
  return { store, told, shelf: new NotebookShelf(store, listener) };
}

test('a line stays where it is shown, whatever was saved since; one that was not shown comes first', () => {
  const line = (id: string, savedAt: string): ShelfLine => ({ id, title: id, savedAt, inside: null });
  const shown = [line('open', '10:00'), line('aimed-at', '09:00'), line('gone', '08:00')];
  // As the store lists them: the last saved first.
  const now = [line('aimed-at', '10:05'), line('new', '10:04'), line('open', '10:03')];
  expect(inPlace(shown, now).map(({ id, savedAt }) => `${id} ${savedAt}`)).toEqual([
    'new 10:04',
    'open 10:03',
    'aimed-at 10:05',
  ]);
});

test('lists what is kept, with what is inside and how large it is as a file', async () => {
  const { store, shelf } = shelfWith();
  await store.save('trip', 0, [], trip);
  const [line] = await shelf.lines();
  expect(line).toMatchObject({ id: 'trip', title: 'Trip', inside: null });
  const { inside } = await shelf.lookInto(line!);
  expect(inside).toMatchObject({ cards: 1 });
  expect(inside !== null && 'bytes' in inside && inside.bytes).toBeGreaterThan(200);
  expect((await shelf.lookInto({ ...line!, id: 'gone' })).inside).toEqual({
    refusal: 'It is no longer on this device.',
  });
  store.close();
});

test('renames what is not open, tells the other tabs, and refuses an impossible title', async () => {
  const { store, shelf, told } = shelfWith();
  await store.save('trip', 0, [], trip);
  await shelf.rename('trip', 'Long way');
  expect((await store.load('trip'))?.document).toEqual({ ...trip, title: 'Long way' });
  expect(told).toEqual([['trip', 2]]);
  await expect(shelf.rename('trip', 'x'.repeat(300))).rejects.toThrow(EditError);
  expect((await store.load('trip'))?.document.title).toBe('Long way');
  store.close();
});

test('a copy has its own id and title; the first stays as it is', async () => {
  const { store, shelf } = shelfWith();
  await store.save('trip', 0, [], trip);
  const copy = await shelf.copyOf('trip');
  expect(copy).toEqual({ ...trip, id: copy?.id, title: 'Trip, copy' });
  expect(copy?.id).not.toBe('trip');
  expect(copied(trip).id).not.toBe(copied(trip).id);
  expect(await shelf.copyOf('gone')).toBeNull();
  store.close();
});

test('what was taken off is put back as it was', async () => {
  const { store, shelf, told } = shelfWith();
  await store.save('trip', 0, [], trip);
  const taken = await shelf.takeOff('trip');
  expect(await shelf.lines()).toEqual([]);
  expect(told).toEqual(['trip removed']);
  await shelf.putBack(taken!);
  expect((await store.load('trip'))?.document).toEqual(trip);
  store.close();
});

test.each([
  [999, '999 bytes'],
  [1_540, '1.5 kB'],
  [168_850, '169 kB'],
  [999_600, '1.0 MB'],
  [23_400_000, '23 MB'],
])('%d is %s', (bytes, words) => {
  expect(sizeWords(bytes)).toBe(words);
});

test('when it was changed: the time today, the day before, the year only when it is another', () => {
  const now = new Date(2026, 2, 14, 12);
  const at = (...when: [number, number, number, number, number]) =>
    changedWords(new Date(...when).toISOString(), now, 'en-GB');
  expect(at(2026, 2, 14, 9, 5)).toBe('today, 09:05');
  expect(at(2026, 2, 13, 9, 5)).toBe('13 Mar, 09:05');
  expect(at(2025, 2, 13, 9, 5)).toBe('13 Mar 2025, 09:05');
  expect(changedWords('soon', now)).toBe('at a time that was not noted');
});
