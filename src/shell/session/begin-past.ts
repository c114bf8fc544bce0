import type { NotebookDocument } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { openPastStore } from '../../notebook/storage/past-store.ts';
import { PastKeeper } from './past-keeper.ts';

/** What was made and undone, and named moments, of all notebooks on this device. */
export const pastStore = openPastStore();

/** Takes over the past of a notebook that was just opened. */
export function beginPast(
  notebook: LiveNotebook,
  opened: NotebookDocument,
  revision: number,
): Promise<PastKeeper> {
  return PastKeeper.begin(notebook, pastStore, opened, revision);
}
