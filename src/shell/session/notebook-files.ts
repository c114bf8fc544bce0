import type { NotebookDocument } from '../../notebook/document.ts';
import { NOTEBOOK_FILE_ENDING, readNotebookBytes, writeNotebookFile } from '../../notebook/notebook-file.ts';
import type { Opened } from '../../notebook/schema.ts';

/**
 * Has the user choose a notebook file and reads it.
 *
 * @returns the document, the sentence why it cannot be opened, or null when nothing was chosen
 */
export async function chooseNotebookFile(): Promise<
  { document: NotebookDocument } | { refusal: string } | null
> {
  const file = await chooseFile('.json,application/json');
  if (!file) return null;
  const opened = await readFile(file);
  if (!('refusal' in opened)) return opened;
  const ending = file.name.endsWith(NOTEBOOK_FILE_ENDING)
    ? ''
    : ` Choose one whose name ends in ${NOTEBOOK_FILE_ENDING}.`;
  return { refusal: `${file.name}: ${opened.refusal}${ending} What was open stays open.` };
}

/** Reads a notebook file that was chosen or dropped; one that cannot be read is refused with a sentence. */
export async function readFile(file: File): Promise<Opened> {
  let bytes: ArrayBuffer;
  try {
    bytes = await file.arrayBuffer();
  } catch {
    return { refusal: 'The browser could not read this file; it may have been moved. Choose it again.' };
  }
  return readNotebookBytes(new Uint8Array(bytes));
}

function chooseFile(accept: string): Promise<File | null> {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = accept;
  return new Promise((resolve) => {
    input.addEventListener('change', () => resolve(input.files?.[0] ?? null), { once: true });
    input.addEventListener('cancel', () => resolve(null), { once: true });
    input.click();
  });
}

/** Hands the notebook to the user as a file. */
export function saveNotebookFile(notebook: NotebookDocument): void {
  const url = URL.createObjectURL(new Blob([writeNotebookFile(notebook)], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = url;
  link.download = `${fileName(notebook.title)}${NOTEBOOK_FILE_ENDING}`;
  link.click();
  // The browser reads the address after this turn; a minute is ample on a slow device.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** A title as the name of a file: `Plateau loop` is `plateau-loop`. */
export function fileName(title: string): string {
  const plain = title
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return plain || 'notebook';
}
