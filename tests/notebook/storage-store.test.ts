import { IDBFactory } from 'fake-indexeddb';
import { describe, expect, it, vi } from 'vitest';
import { applyEdit } from '../../src/notebook/apply-edit.ts';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { addCell, entryEdit, notebookEdit } from '../../src/notebook/edits.ts';
import {
  DATABASE_NAME,
  openNotebookStore,
  StorageRefusal,
} from '../../src/notebook/storage/notebook-store.ts';
import { OPEN_LIMIT_MS } from '../../src/notebook/storage/strict-store.ts';
import { sampleNotebook } from './sample.ts';

const doc = sampleNotebook();
const at = (hour: number) => ({ now: () => new Date(Date.UTC(2026, 2, 14, hour)) });
const note = (id: string) => ({ id, kind: 'note', title: id, text: '' }) as const;

/** Puts any value into the database as it is, past all checks. */
async function putRaw(factory: IDBFactory, id: string, value: unknown): Promise<void> {
  await new Promise<void>((resolve, reject) => {
    const request = factory.open(DATABASE_NAME);
    request.onsuccess = () => {
      const transaction = request.result.transaction('notebooks', 'readwrite');
      transaction.objectStore('notebooks').put(value, id);
      transaction.oncomplete = () => {
        request.result.close();
        resolve();
      };
      transaction.onabort = () => reject(transaction.error);
    };
  });
}

describe('the notebook store', () => {
  it('keeps, lists, loads and removes notebooks', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory, at(9));
    expect(await store.load('plateau')).toBe(null);
    expect(await store.save('plateau', 0, [], doc)).toEqual({
      document: doc,
      revision: 1,
      savedAt: '2026-03-14T09:00:00.000Z',
      merged: false,
      conflicts: [],
    });
    const later = openNotebookStore(factory, at(10));
    await later.save('other', 0, [], { ...doc, id: 'other', title: 'Other' });
    expect((await store.ids()).sort()).toEqual(['other', 'plateau']);
    expect(await store.list()).toEqual([
      { id: 'other', title: 'Other', savedAt: '2026-03-14T10:00:00.000Z', revision: 1 },
      { id: 'plateau', title: 'Plateau loop', savedAt: '2026-03-14T09:00:00.000Z', revision: 1 },
    ]);
    expect(await later.load('plateau')).toEqual({
      document: doc,
      revision: 1,
      savedAt: '2026-03-14T09:00:00.000Z',
    });
    await store.remove('plateau');
    expect(await store.load('plateau')).toBe(null);
    expect((await store.list()).map((line) => line.id)).toEqual(['other']);
  });

  it('asks for strict durability on every transaction that writes', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    const { IDBDatabase } = await import('fake-indexeddb');
    await store.load('plateau');
    const begun = vi.spyOn(IDBDatabase.prototype, 'transaction');
    await store.save('plateau', 0, [], doc);
    await store.load('plateau');
    await store.list();
    await store.remove('plateau');
    const asked = begun.mock.calls.map(([, mode, options]) => [
      mode,
      (options as IDBTransactionOptions | undefined)?.durability,
    ]);
    expect(asked).toEqual([
      ['readwrite', 'strict'],
      ['readonly', undefined],
      ['readonly', undefined],
      ['readwrite', 'strict'],
    ]);
  });

  it('writes the whole notebook when nobody saved in between, else brings the edits together', async () => {
    const factory = new IDBFactory();
    const [mine, theirs] = [openNotebookStore(factory), openNotebookStore(factory)];
    await mine.save('plateau', 0, [], doc);
    const edit = notebookEdit(doc, 'title', 'Theirs');
    expect(await theirs.save('plateau', 1, [edit], applyEdit(doc, edit))).toMatchObject({
      revision: 2,
      merged: false,
    });
    const entry = entryEdit(doc, 'wear', 'wear-now', 0, 2.9);
    const clash = notebookEdit(doc, 'title', 'Mine');
    const whole = [entry, clash].reduce(applyEdit, doc);
    const saved = await mine.save('plateau', 1, [entry, clash], whole);
    expect(saved).toMatchObject({ revision: 3, merged: true, document: { title: 'Theirs' } });
    expect(saved.conflicts.map((conflict) => conflict.edit)).toEqual([clash]);
    const loaded = await theirs.load('plateau');
    expect(loaded?.document).toEqual(saved.document);
    expect(loaded?.document).toEqual({ ...applyEdit(doc, entry), title: 'Theirs' });
  });

  it('loses no edit when two tabs save at the same time, over and over', async () => {
    const factory = new IDBFactory();
    await openNotebookStore(factory).save('plateau', 0, [], doc);
    const tab = async (name: string): Promise<void> => {
      const store = openNotebookStore(factory);
      let known = 1;
      let mine: NotebookDocument = doc;
      for (let i = 0; i < 20; i += 1) {
        const edit = addCell(mine, note(`${name}${i}`), 0);
        const saved = await store.save('plateau', known, [edit], applyEdit(mine, edit));
        expect(saved.conflicts).toEqual([]);
        known = saved.revision;
        mine = saved.document;
      }
    };
    await Promise.all([tab('a'), tab('b'), tab('c')]);
    const stored = await openNotebookStore(factory).load('plateau');
    expect(stored?.revision).toBe(61);
    expect(stored?.document.cells).toHaveLength(doc.cells.length + 60);
  });

  it('saves again what another tab has removed meanwhile', async () => {
    const store = openNotebookStore(new IDBFactory());
    await store.save('plateau', 0, [], doc);
    await store.remove('plateau');
    expect(await store.save('plateau', 1, [], doc)).toMatchObject({ revision: 2, merged: false });
  });

  it('opens again after an open that failed', async () => {
    const factory = new IDBFactory();
    const opening = vi.spyOn(factory, 'open').mockImplementationOnce(() => {
      const request = { error: null } as unknown as IDBOpenDBRequest;
      queueMicrotask(() => request.onerror?.call(request, new Event('error')));
      return request;
    });
    const store = openNotebookStore(factory);
    await expect(store.load('plateau')).rejects.toThrow('The browser could not open its storage.');
    expect(await store.load('plateau')).toBe(null);
    await store.load('plateau');
    expect(opening).toHaveBeenCalledTimes(2);
  });

  it('gives up an open that hangs, closes it if it comes too late, and opens again', async () => {
    const factory = new IDBFactory();
    const hanging = {} as IDBOpenDBRequest;
    vi.spyOn(factory, 'open').mockImplementationOnce(() => hanging);
    const waits: { milliseconds: number; then: () => void; stopped: boolean }[] = [];
    const after = (milliseconds: number, then: () => void) => {
      const wait = { milliseconds, then, stopped: false };
      waits.push(wait);
      return () => {
        wait.stopped = true;
      };
    };
    const store = openNotebookStore(factory, { after });
    const loading = store.load('plateau');
    expect(waits.map((wait) => wait.milliseconds)).toEqual([OPEN_LIMIT_MS]);
    waits[0]!.then();
    await expect(loading).rejects.toThrow('The browser did not open its storage in time.');
    const close = vi.fn();
    Object.assign(hanging, { result: { close } });
    hanging.onsuccess?.call(hanging, new Event('success'));
    expect(close).toHaveBeenCalledTimes(1);
    expect(await store.load('plateau')).toBe(null);
    expect(waits[1]!.stopped).toBe(true);
  });

  it('lets go when another tab upgrades or deletes the database, and opens it again after', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    await store.save('plateau', 0, [], doc);
    await new Promise<void>((resolve, reject) => {
      const deleting = factory.deleteDatabase(DATABASE_NAME);
      deleting.onsuccess = () => resolve();
      deleting.onblocked = () => reject(new Error('blocked'));
    });
    expect(await store.load('plateau')).toBe(null);
    expect(await store.save('plateau', 1, [], doc)).toMatchObject({ revision: 2 });
  });

  it('begins again when the connection was closed behind its back', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    await store.save('plateau', 0, [], doc);
    const { IDBDatabase } = await import('fake-indexeddb');
    vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementationOnce(() => {
      throw new DOMException('closing', 'InvalidStateError');
    });
    expect(await store.save('plateau', 1, [], doc)).toMatchObject({ revision: 2 });
  });

  it('says what is wrong with a stored notebook, leaves it alone and lists it', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory, at(9));
    await store.save('plateau', 0, [], doc);
    const newer = { document: { ...doc, version: 2 }, revision: 7, savedAt: '2026-03-14T08:00:00.000Z' };
    await putRaw(factory, 'plateau', newer);
    await putRaw(factory, 'odd', 5);
    await expect(store.load('plateau')).rejects.toThrow(StorageRefusal);
    await expect(store.load('plateau')).rejects.toThrow('saved by a newer Sparewell');
    await expect(store.load('odd')).rejects.toThrow('What this browser keeps for the notebook is damaged.');
    await expect(store.save('plateau', 1, [], doc)).rejects.toThrow('saved by a newer Sparewell');
    await expect(store.load('plateau')).rejects.toThrow('saved by a newer Sparewell');
    expect((await store.list()).map((line) => [line.id, line.revision])).toEqual([
      ['plateau', 7],
      ['odd', 0],
    ]);
  });

  it('reports a write that the browser gives up, and keeps what was there', async () => {
    const factory = new IDBFactory();
    const store = openNotebookStore(factory);
    await store.save('plateau', 0, [], doc);
    const unsound = { ...doc, extra: () => 1 } as unknown as NotebookDocument;
    await expect(store.save('plateau', 1, [], unsound)).rejects.toHaveProperty('name', 'DataCloneError');
    expect((await store.load('plateau'))?.revision).toBe(1);
  });
});
