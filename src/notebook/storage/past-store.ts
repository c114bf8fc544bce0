import { promisifyRequest } from 'idb-keyval';
import type { Edit } from '../edit.ts';
import type { Past } from '../history.ts';
import type { Moment } from '../moments.ts';
import { openDocument } from '../schema.ts';
import { openStrictStore, ownIndexedDB } from './strict-store.ts';

export const PAST_DATABASE_NAME = 'sparewell-past';
const STORE_NAME = 'past';
/** Edits kept of one notebook; older ones are let go. */
const MOST_EDITS = 1_000;

/** Where undo stands: edits `first` to `made` are in force, from there to `end` they were undone. */
interface Head {
  readonly revision: number;
  readonly first: number;
  readonly made: number;
  readonly end: number;
  /** Unlike that of any other write: whoever writes next sees by it whether another tab wrote in between. */
  readonly stamp?: string;
}

/** What this tab wrote last of one notebook's past. */
interface Written {
  readonly edits: readonly Edit[];
  readonly first: number;
  readonly stamp: string | undefined;
}

/**
 * What was made and undone in each notebook, and its named moments, kept beside the notebooks themselves: a
 * notebook is whole without them.
 */
export interface PastStore {
  /** What undo and redo could go through when revision `revision` was saved; null when that is not known. */
  load(id: string, revision: number): Promise<Past | null>;
  /** Keeps the past that leads to revision `revision`; only what is new since the last call is written. */
  keep(id: string, revision: number, past: Past): Promise<void>;
  /** Moments of a notebook, the newest first; one that cannot be read is left out. */
  moments(id: string): Promise<readonly Moment[]>;
  keepMoment(id: string, moment: Moment): Promise<void>;
  removeMoment(id: string, momentId: string): Promise<void>;
  close(): void;
}

/** @param indexedDB the browser's own unless given */
export function openPastStore(indexedDB: IDBFactory | null = ownIndexedDB()): PastStore {
  const store = openStrictStore({ indexedDB, databaseName: PAST_DATABASE_NAME, storeName: STORE_NAME });
  const written = new Map<string, Written>();
  return {
    load: async (id, revision) => {
      const found = await store.use('readonly', (records) => loadPast(records, id, revision));
      if (found === null) return null;
      const { past, first, stamp } = found;
      written.set(id, { edits: [...past.made, ...past.undone.toReversed()], first, stamp });
      return past;
    },
    keep: (id, revision, past) => {
      const before = written.get(id) ?? null;
      const edits = [...past.made, ...past.undone.toReversed()];
      const kept = sharedCount(before?.edits ?? [], edits);
      const base = before?.first ?? 0;
      const stamp = crypto.randomUUID();
      written.set(id, { edits, first: base, stamp });
      const made = base + past.made.length;
      const head: Head = {
        revision,
        first: Math.max(base, made - MOST_EDITS),
        made,
        end: base + edits.length,
        stamp,
      };
      return store.use('readwrite', async (records) => {
        const found: unknown = await promisifyRequest(records.get(['head', id]));
        // What an earlier visit or another tab wrote leads elsewhere: all of it is written over.
        const isOwn = before !== null && isHead(found) && found.stamp === before.stamp;
        const from = isOwn ? kept : 0;
        records.delete(editRange(id, isOwn ? base + kept : 0));
        for (let i = from; i < edits.length; i += 1) records.put(edits[i], ['edit', id, base + i]);
        if (head.first > base) records.delete(editRange(id, base, head.first));
        records.put(head, ['head', id]);
        return promisifyRequest(records.transaction);
      });
    },
    moments: (id) =>
      store.use('readonly', async (records) => {
        const found: unknown[] = await promisifyRequest(records.getAll(momentRange(id)));
        return found.filter(isMoment).sort((a, b) => (a.at < b.at ? 1 : -1));
      }),
    keepMoment: (id, moment) =>
      store.use('readwrite', (records) => {
        records.put(moment, ['moment', id, moment.id]);
        return promisifyRequest(records.transaction);
      }),
    removeMoment: (id, momentId) =>
      store.use('readwrite', (records) => {
        records.delete(['moment', id, momentId]);
        return promisifyRequest(records.transaction);
      }),
    close: store.close,
  };
}

const editRange = (id: string, from: number, to = Number.POSITIVE_INFINITY): IDBKeyRange =>
  IDBKeyRange.bound(['edit', id, from], ['edit', id, to], false, true);

const momentRange = (id: string): IDBKeyRange =>
  IDBKeyRange.bound(['moment', id, ''], ['moment', id, '\uffff']);

/** How many edits two pasts begin with alike. */
function sharedCount(before: readonly Edit[], after: readonly Edit[]): number {
  let count = 0;
  while (count < before.length && count < after.length && before[count] === after[count]) count += 1;
  return count;
}

async function loadPast(
  records: IDBObjectStore,
  id: string,
  revision: number,
): Promise<{ readonly past: Past; readonly first: number; readonly stamp?: string } | null> {
  const asking = records.get(['head', id]);
  const reading = records.getAll(editRange(id, 0));
  const [head, edits] = await Promise.all([promisifyRequest(asking), promisifyRequest(reading)]);
  if (!isHead(head) || head.revision !== revision || edits.length !== head.end - head.first) return null;
  if (!edits.every(isEdit)) return null;
  const made = head.made - head.first;
  return {
    past: { made: edits.slice(0, made), undone: edits.slice(made).reverse() },
    first: head.first,
    stamp: head.stamp,
  };
}

/** Only that it is one at all: whether it fits is found out before it is taken over. */
function isEdit(found: unknown): found is Edit {
  return typeof found === 'object' && found !== null && 'kind' in found;
}

function isHead(found: unknown): found is Head {
  const { revision, first, made, end } = (found ?? {}) as Partial<Head>;
  const [a, b, c] = [first ?? -1, made ?? -1, end ?? -1];
  return Number.isInteger(revision) && [a, b, c].every(Number.isInteger) && a >= 0 && a <= b && b <= c;
}

function isMoment(found: unknown): found is Moment {
  const { id, name, at, document } = (found ?? {}) as Partial<Moment>;
  if (typeof id !== 'string' || typeof name !== 'string' || typeof at !== 'string') return false;
  return 'document' in openDocument(document);
}
