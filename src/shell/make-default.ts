import type { NotebookDocument } from '../notebook/document.ts';

/** The worked example. Its files are loaded only when it is wanted. */
export async function makeDefault(): Promise<NotebookDocument> {
  const [{ defaultNotebook }, { loadFiles }] = await Promise.all([
    import('../starter/default-notebook.ts'),
    import('../starter/load-files.ts'),
  ]);
  return defaultNotebook(loadFiles());
}
