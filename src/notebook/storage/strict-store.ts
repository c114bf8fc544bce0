import type { UseStore } from 'idb-keyval';

/** How long an open may take before it is given up: some browsers leave the first open hanging for ever. */
export const OPEN_LIMIT_MS = 8_000;

export interface StrictStoreOptions {
  /** null where the browser has none: every use then fails with a sentence. */
  readonly indexedDB: IDBFactory | null;
  readonly databaseName: string;
  readonly storeName: string;
  /** Calls back after so many milliseconds; returns what stops it. For tests. */
  readonly after?: (milliseconds: number, then: () => void) => () => void;
  /** The browser has taken an open database away: its data was cleared, or its disk failed. */
  readonly onLost?: () => void;
}

export interface StrictStore {
  readonly use: UseStore;
  close(): void;
}

/** The browser's own databases; null where they are switched off, which some browsers say by throwing. */
export function ownIndexedDB(): IDBFactory | null {
  try {
    return globalThis.indexedDB ?? null;
  } catch {
    return null;
  }
}

/**
 * A store for idb-keyval that we open ourselves, since its own has relaxed durability, keeps a failed open for
 * ever and holds on when another tab wants to upgrade: every transaction that writes asks for `strict`
 * durability (written to disk before it counts as done), each open has a time limit, a failed one is tried
 * anew on the next use, and the connection is let go when another tab asks for it.
 */
export function openStrictStore(options: StrictStoreOptions): StrictStore {
  let opening: Promise<IDBDatabase> | null = null;
  const forget = (): void => {
    opening = null;
  };
  const database = (): Promise<IDBDatabase> => {
    if (opening === null) {
      const attempt = openDatabase(options, forget);
      opening = attempt;
      attempt.catch(() => {
        if (opening === attempt) forget();
      });
    }
    return opening;
  };
  return {
    use: async (mode, callback) => {
      const begin = async (): Promise<IDBObjectStore> => {
        const open = await database();
        const settings = mode === 'readwrite' ? ({ durability: 'strict' } as const) : undefined;
        return open.transaction(options.storeName, mode, settings).objectStore(options.storeName);
      };
      try {
        return callback(await begin());
      } catch (error) {
        if ((error as Error | null)?.name !== 'InvalidStateError') throw error;
        // The connection was closed behind our back, as some browsers do: open a new one and begin again.
        forget();
        return callback(await begin());
      }
    },
    close() {
      opening?.then(
        (open) => open.close(),
        () => undefined,
      );
      forget();
    },
  };
}

function openDatabase(options: StrictStoreOptions, onGone: () => void): Promise<IDBDatabase> {
  const after = options.after ?? waitWithTimer;
  return new Promise((resolve, reject) => {
    let late = false;
    if (options.indexedDB === null) throw new Error('Its storage is switched off for this page.');
    const request = options.indexedDB.open(options.databaseName, 1);
    const stopWaiting = after(OPEN_LIMIT_MS, () => {
      late = true;
      reject(new Error('The browser did not open its storage in time.'));
    });
    request.onupgradeneeded = () => {
      if (!request.result.objectStoreNames.contains(options.storeName)) {
        request.result.createObjectStore(options.storeName);
      }
    };
    request.onsuccess = () => {
      stopWaiting();
      const database = request.result;
      if (late) {
        database.close();
        return;
      }
      database.onversionchange = () => {
        database.close();
        onGone();
      };
      database.onclose = () => {
        onGone();
        options.onLost?.();
      };
      resolve(database);
    };
    request.onerror = () => {
      stopWaiting();
      reject(request.error ?? new Error('The browser could not open its storage.'));
    };
    request.onblocked = () => {
      stopWaiting();
      late = true;
      reject(new Error('Another tab holds the storage; close it and try again.'));
    };
  });
}

function waitWithTimer(milliseconds: number, then: () => void): () => void {
  const timer = setTimeout(then, milliseconds);
  return () => clearTimeout(timer);
}
