import type { NotebookDocument } from '../notebook/document.ts';
import { readNotebookFile } from '../notebook/notebook-file.ts';

/** Stands beside the page; the build makes it from `starter` and `datasets` (vite.config.ts). */
export const WORKED_EXAMPLE = 'worked-example.sparewell.json';

/**
 * The worked example, fetched when it is wanted.
 *
 * Throws Error with a sentence if it cannot be had.
 */
export async function makeDefault(): Promise<NotebookDocument> {
  const answer = await fetch(new URL(WORKED_EXAMPLE, document.baseURI)).catch(() => null);
  if (answer === null) throw new Error('The worked example could not be fetched: look to the network.');
  if (!answer.ok) throw new Error('The worked example is missing beside the page, where it should stand.');
  const opened = readNotebookFile(await answer.text());
  if ('refusal' in opened) throw new Error(`The worked example cannot be opened: ${opened.refusal}`);
  return opened.document;
}
