import type { NotebookStore } from '../../notebook/storage/notebook-store.ts';
import type { PastKeeper } from './past-keeper.ts';

/** The revision saved last, for whoever comes to keep the past after it. */
export interface SavedLast {
  revision: number | null;
}

/**
 * The store with the past kept beside each save.
 *
 * @param past gives who keeps it, once that has been fetched  @param last is told of each save
 */
export function withPast(
  store: NotebookStore,
  past: () => PastKeeper | null,
  last: SavedLast,
): Pick<NotebookStore, 'load' | 'save'> {
  return {
    load: (id) => store.load(id),
    save: async (id, known, edits, whole) => {
      // Begun at the same time: a page that is closed now keeps both or neither.
      past()?.note(known + 1);
      const saved = await store.save(id, known, edits, whole);
      last.revision = saved.revision;
      // What another tab saved comes in as one edit more, once this turn is over.
      if (saved.revision !== known + 1) setTimeout(() => past()?.note(saved.revision));
      return saved;
    },
  };
}
