import type { NotebookDocument } from '../../notebook/document.ts';
import { NOTEBOOK_FILE_ENDING, writeNotebookFile } from '../../notebook/notebook-file.ts';
import { fileName } from '../session/notebook-files.ts';

/** The parts of the File System Access API that are used; not all browsers have it. */
export interface FileHandle {
  readonly name: string;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  queryPermission?(which: { mode: 'readwrite' }): Promise<PermissionState>;
  requestPermission?(which: { mode: 'readwrite' }): Promise<PermissionState>;
}

type Picker = (options: object) => Promise<FileHandle>;

const picker = (): Picker | undefined => (globalThis as { showSaveFilePicker?: Picker }).showSaveFilePicker;

export const canKeepFiles = (): boolean => picker() !== undefined;

/** Has the user choose where the file is to be; null when nothing was chosen. */
export async function chooseHome(notebook: NotebookDocument): Promise<FileHandle | null> {
  try {
    return (
      (await picker()?.({
        suggestedName: `${fileName(notebook.title)}${NOTEBOOK_FILE_ENDING}`,
        types: [{ description: 'Sparewell notebook', accept: { 'application/json': ['.json'] } }],
      })) ?? null
    );
  } catch (error) {
    // The user left the dialog.
    if ((error as Error | null)?.name === 'AbortError') return null;
    throw error;
  }
}

/**
 * Keeps one file on disk current: the newest state asked for is written, one write at a time. The browser puts
 * the new content in place of the old only when it is whole.
 */
export class FileHome {
  readonly handle: FileHandle;
  readonly #onFailure: (error: unknown) => void;
  #next: NotebookDocument | null = null;
  #writing: Promise<void> | null = null;

  constructor(handle: FileHandle, onFailure: (error: unknown) => void) {
    this.handle = handle;
    this.#onFailure = onFailure;
  }

  /** Whether the browser lets the page write now; after a new start it first asks the user. */
  async mayWrite(): Promise<boolean> {
    const state = await this.handle.queryPermission?.({ mode: 'readwrite' });
    return state === undefined || state === 'granted';
  }

  /** Asks the user, from a click. */
  async askToWrite(): Promise<boolean> {
    const state = await this.handle.requestPermission?.({ mode: 'readwrite' });
    return state === undefined || state === 'granted';
  }

  keep(notebook: NotebookDocument): void {
    this.#next = notebook;
    this.#writing ??= this.#writeAll().finally(() => {
      this.#writing = null;
    });
  }

  async #writeAll(): Promise<void> {
    try {
      while (this.#next) {
        const notebook = this.#next;
        this.#next = null;
        const file = await this.handle.createWritable();
        await file.write(writeNotebookFile(notebook));
        await file.close();
      }
    } catch (error) {
      this.#onFailure(error);
    }
  }
}
