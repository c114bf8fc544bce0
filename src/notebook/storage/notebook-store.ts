import { promisifyRequest } from 'idb-keyval';
import { applyEdit } from '../apply-edit.ts';
import type { NotebookDocument } from '../document.ts';
import type { Edit } from '../edit.ts';
import { invertEdit } from '../invert-edit.ts';
import { mergeEdits, type SaveConflict } from '../merge-edits.ts';
import { openDocument } from '../schema.ts';
import { openStrictStore, ownIndexedDB, type StrictStoreOptions } from './strict-store.ts';

export const DATABASE_NAME = 'sparewell';
const STORE_NAME = 'notebooks';

export interface StoredNotebook {
  readonly document: NotebookDocument;
  /** Counts the saves of this notebook, from 1. */
  readonly revision: number;
  /** ISO 8601 date and time, UTC. */
  readonly savedAt: string;
}

export interface SavedNotebook extends StoredNotebook {
  /** The saved document is not the caller's own: another tab had saved in between, and its edits are in it. */
  readonly merged: boolean;
  /** Edits of the caller that no longer fit what the other tab saved; they are not in the document. */
  readonly conflicts: readonly SaveConflict[];
}

export interface NotebookLine {
  readonly id: string;
  readonly title: string;
  readonly savedAt: string;
  readonly revision: number;
}

export interface NotebookStore {
  /** The notebook as stored, or null; a stored notebook that fails its check is a StorageRefusal. */
  load(id: string): Promise<StoredNotebook | null>;
  /** Ids of all stored notebooks, none of which is read for it. */
  ids(): Promise<string[]>;
  /** All stored notebooks, the one saved last first; those that cannot be read are listed with their id. */
  list(): Promise<NotebookLine[]>;
  /**
   * Saves in one transaction: reads what is stored; if its revision is `known`, writes `whole`; else applies
   * `edits` (made since `known`) to what is stored, so that two tabs never lose each other's edits.
   *
   * @param known revision that the caller loaded or saved last; 0 for a notebook never saved
   */
  save(id: string, known: number, edits: readonly Edit[], whole: NotebookDocument): Promise<SavedNotebook>;
  remove(id: string): Promise<void>;
  /** Calls back when the browser takes the storage away under an open page; returns what ends it. */
  onLost(listener: () => void): () => void;
  /** Lets the connection go; the next use opens it again. */
  close(): void;
}

/** A stored notebook that cannot be opened; it stays where it is, untouched. */
export class StorageRefusal extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'StorageRefusal';
  }
}

interface StoreOptions {
  readonly now?: () => Date;
  readonly after?: StrictStoreOptions['after'];
}

/**
 * Notebooks kept in this browser (IndexedDB), each under its id.
 *
 * @param indexedDB the browser's own unless given
 */
export function openNotebookStore(
  indexedDB: IDBFactory | null = ownIndexedDB(),
  options: StoreOptions = {},
): NotebookStore {
  const listeners = new Set<() => void>();
  const store = openStrictStore({
    indexedDB,
    onLost: () => {
      for (const listener of [...listeners]) listener();
    },
    databaseName: DATABASE_NAME,
    storeName: STORE_NAME,
    after: options.after,
  });
  const now = options.now ?? (() => new Date());
  return {
    load: (id) =>
      store.use('readonly', async (notebooks) => {
        const found: unknown = await promisifyRequest(notebooks.get(id));
        return found === undefined ? null : checkedRecord(found);
      }),
    ids: () =>
      store.use('readonly', async (notebooks) =>
        (await promisifyRequest(notebooks.getAllKeys())).map((key) => String(key)),
      ),
    list: () =>
      store.use('readonly', async (notebooks) => {
        const lines: NotebookLine[] = [];
        await eachRecord(notebooks, (key, value) => lines.push(lineOf(key, value)));
        return lines.sort((a, b) => (a.savedAt < b.savedAt ? 1 : a.savedAt > b.savedAt ? -1 : 0));
      }),
    save: (id, known, edits, whole) =>
      store.use('readwrite', (notebooks) =>
        saveInOne(notebooks, { id, known, edits, whole, savedAt: now().toISOString() }),
      ),
    remove: (id) =>
      store.use('readwrite', (notebooks) => {
        notebooks.delete(id);
        return promisifyRequest(notebooks.transaction);
      }),
    onLost: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: store.close,
  };
}

interface Save {
  readonly id: string;
  readonly known: number;
  readonly edits: readonly Edit[];
  readonly whole: NotebookDocument;
  readonly savedAt: string;
}

/**
 * Read, merge and write without leaving the transaction: between the two, no other tab can save. All work is
 * done in the request's own callback, because a transaction ends as soon as it has nothing left to wait for.
 */
function saveInOne(notebooks: IDBObjectStore, save: Save): Promise<SavedNotebook> {
  const { transaction } = notebooks;
  return new Promise((resolve, reject) => {
    let saved: SavedNotebook | undefined;
    let failure: unknown;
    transaction.oncomplete = () => resolve(saved!);
    transaction.onabort = () =>
      reject(failure ?? transaction.error ?? new Error('The browser gave up saving.'));
    const reading = notebooks.get(save.id);
    reading.onsuccess = () => {
      try {
        saved = merged(reading.result, save);
        const { document, revision, savedAt } = saved;
        notebooks.put({ document, revision, savedAt } satisfies StoredNotebook, save.id);
      } catch (error) {
        failure = error;
        transaction.abort();
      }
    };
  });
}

function merged(found: unknown, save: Save): SavedNotebook {
  const { known, edits, whole, savedAt } = save;
  if (found === undefined)
    return { document: whole, revision: known + 1, savedAt, merged: false, conflicts: [] };
  const stored = isRecord(found) ? found : null;
  if (stored?.revision === known)
    return { document: whole, revision: known + 1, savedAt, merged: false, conflicts: [] };
  const theirs = checkedRecord(found);
  const base = baseOf(whole, edits);
  const result = mergeEdits(base, theirs.document, edits);
  return {
    document: result.document,
    revision: theirs.revision + 1,
    savedAt,
    merged: true,
    conflicts: result.conflicts,
  };
}

/** The notebook as it was before the edits. */
function baseOf(whole: NotebookDocument, edits: readonly Edit[]): NotebookDocument {
  return edits.toReversed().map(invertEdit).reduce(applyEdit, whole);
}

function isRecord(found: unknown): found is StoredNotebook {
  if (typeof found !== 'object' || found === null) return false;
  const { document, revision, savedAt } = found as Partial<StoredNotebook>;
  return typeof document === 'object' && Number.isInteger(revision) && typeof savedAt === 'string';
}

function checkedRecord(found: unknown): StoredNotebook {
  if (!isRecord(found)) throw new StorageRefusal('What this browser keeps for the notebook is damaged.');
  const opened = openDocument(found.document);
  if ('refusal' in opened) throw new StorageRefusal(opened.refusal);
  return { document: opened.document, revision: found.revision, savedAt: found.savedAt };
}

function lineOf(key: IDBValidKey, value: unknown): NotebookLine {
  const id = String(key);
  if (!isRecord(value)) return { id, title: id, savedAt: '', revision: 0 };
  const title: unknown = value.document?.title;
  return {
    id,
    title: typeof title === 'string' ? title : id,
    savedAt: value.savedAt,
    revision: value.revision,
  };
}

function eachRecord(
  notebooks: IDBObjectStore,
  visit: (key: IDBValidKey, value: unknown) => void,
): Promise<void> {
  return new Promise((resolve, reject) => {
    const walking = notebooks.openCursor();
    walking.onerror = () => reject(walking.error);
    walking.onsuccess = () => {
      const cursor = walking.result;
      if (cursor === null) {
        resolve();
        return;
      }
      visit(cursor.key, cursor.value);
      cursor.continue();
    };
  });
}
