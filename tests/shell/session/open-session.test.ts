import { IDBFactory } from 'fake-indexeddb';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type NotebookStore, openNotebookStore } from '../../../src/notebook/storage/notebook-store.ts';
import { openSession } from '../../../src/shell/session/open-session.ts';
import { rememberNotebook } from '../../../src/shell/session/remembered.ts';
import type { Session } from '../../../src/shell/session/session.ts';
import { notebook, number } from '../../notebook/small-notebook.ts';

const named = (id: string) => ({ ...notebook(number('budget', 480, 'EUR')), id, title: id });
const never = new Promise<void>(() => undefined);

let hour = 8;
let store: NotebookStore;

/** What local storage is to a page: texts by name. */
function texts(): Pick<Storage, 'getItem' | 'setItem'> {
  const held = new Map<string, string>();
  return {
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => {
      held.set(key, value);
    },
  };
}

beforeEach(() => {
  hour = 8;
  vi.stubGlobal('localStorage', texts());
  // No page is drawn here: what waits for its paint waits for ever.
  vi.stubGlobal('requestAnimationFrame', () => 0);
  store = openNotebookStore(new IDBFactory() as never, { now: () => new Date(Date.UTC(2027, 3, 1, hour++)) });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const keep = (id: string): Promise<unknown> => store.save(id, 0, [], named(id));

async function opened(): Promise<{ readonly id: string; readonly notice: string }> {
  let session: Session | null = null;
  try {
    session = await openSession(store, () => Promise.resolve(named('example')), never);
    return { id: session.notebook.document.id, notice: session.notice };
  } finally {
    await session?.close();
  }
}

test('a first visit opens the worked example', async () => {
  expect(await opened()).toEqual({ id: 'example', notice: '' });
});

test('the notebook open last is opened, not the one saved last, and no other is read', async () => {
  for (const id of ['one', 'two', 'three']) await keep(id);
  for (const id of ['one', 'two']) rememberNotebook(named(id));
  const load = vi.spyOn(store, 'load');
  const list = vi.spyOn(store, 'list');
  expect(await opened()).toEqual({ id: 'two', notice: '' });
  expect(load.mock.calls).toEqual([['two']]);
  expect(list).not.toHaveBeenCalled();
});

test('without a word on what was open last, the one saved last is opened', async () => {
  for (const id of ['one', 'two']) await keep(id);
  expect(await opened()).toEqual({ id: 'two', notice: '' });
});

test('one that is gone is told, and the one open before it is opened', async () => {
  for (const id of ['one', 'two']) await keep(id);
  for (const id of ['one', 'gone']) rememberNotebook(named(id));
  const found = await opened();
  expect(found.id).toBe('one');
  expect(found.notice).toMatch(/^This device has lost gone, /);
  // Told once.
  expect(await opened()).toEqual({ id: 'one', notice: '' });
});

test('when all are gone, the worked example is opened and each is named', async () => {
  for (const id of ['one', 'two']) rememberNotebook(named(id));
  const found = await opened();
  expect(found.id).toBe('example');
  expect(found.notice).toMatch(/^This device has lost two, one, /);
});
