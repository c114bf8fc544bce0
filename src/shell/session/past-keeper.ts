import type { NotebookDocument } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { fittingPast } from '../../notebook/moments.ts';
import type { PastStore } from '../../notebook/storage/past-store.ts';

/**
 * Has undo and redo go on across visits: what was made is kept with each save of the notebook, under the same
 * revision, and taken over when that revision is opened again. Without it nothing is lost but the way back.
 */
export class PastKeeper {
  readonly #notebook: LiveNotebook;
  readonly #store: PastStore;

  private constructor(notebook: LiveNotebook, store: PastStore) {
    this.#notebook = notebook;
    this.#store = store;
  }

  /**
   * Takes over the past of the notebook as it was opened; edits made since stand on it.
   *
   * @param opened the document as it was opened  @param revision under which it was kept, 0 for a new one
   */
  static async begin(
    notebook: LiveNotebook,
    store: PastStore,
    opened: NotebookDocument,
    revision: number,
  ): Promise<PastKeeper> {
    const past = await store.load(opened.id, revision).catch(() => null);
    if (past !== null) notebook.recall(fittingPast(opened, past));
    return new PastKeeper(notebook, store);
  }

  /** Keeps the past of what is being saved as this revision. */
  note(revision: number): void {
    this.#store.keep(this.#notebook.document.id, revision, this.#notebook.past).catch(() => {
      // Undo then begins anew on the next visit; the notebook itself is kept elsewhere.
    });
  }
}
