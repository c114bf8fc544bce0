import { promisifyRequest } from 'idb-keyval';
import { openStrictStore, ownIndexedDB } from './strict-store.ts';

/** Which file on disk is the second home of which notebook; the handles are what the browser gives for files. */
export interface FileHandles<Handle> {
  get(notebookId: string): Promise<Handle | null>;
  set(notebookId: string, handle: Handle): Promise<void>;
  remove(notebookId: string): Promise<void>;
}

/** Handles kept in a database of their own: one store holds one kind of thing. */
export function openFileHandles<Handle>(indexedDB: IDBFactory | null = ownIndexedDB()): FileHandles<Handle> {
  const store = openStrictStore({ indexedDB, databaseName: 'sparewell-files', storeName: 'handles' });
  const write = (change: (handles: IDBObjectStore) => void): Promise<void> =>
    store.use('readwrite', (handles) => {
      change(handles);
      return promisifyRequest(handles.transaction);
    });
  return {
    get: (id) =>
      store.use('readonly', async (handles) => {
        const found: unknown = await promisifyRequest(handles.get(id));
        return found === undefined ? null : (found as Handle);
      }),
    set: (id, handle) => write((handles) => handles.put(handle, id)),
    remove: (id) => write((handles) => handles.delete(id)),
  };
}
