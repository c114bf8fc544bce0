import type { NotebookDocument } from '../../notebook/document.ts';
import type { NotebookStore, StoredNotebook } from '../../notebook/storage/notebook-store.ts';
import { rememberedNotebook, rememberNotebook } from './remembered.ts';
import { Session } from './session.ts';

/**
 * Opens the notebook that was open last on this device, or else the one kept last, or else the default one.
 * What goes wrong on the way is said in the session's notice, and the default notebook is opened.
 */
export async function openSession(
  store: NotebookStore,
  makeDefault: () => Promise<NotebookDocument>,
): Promise<Session> {
  const remembered = rememberedNotebook();
  try {
    const found = await lastNotebook(store, remembered);
    if (found) return begin(new Session(found.document, store, found));
  } catch (error) {
    const why = error instanceof Error ? error.message : 'The browser did not say why.';
    const notice = `The notebook kept on this device could not be opened: ${why} It was left as it is; this is a fresh copy of the worked example.`;
    return begin(new Session(freshCopy(await makeDefault()), store, null, notice));
  }
  const notice = remembered
    ? 'This device has lost the notebook that was kept here, as browsers do when their disk is full or their data is cleared. If you saved it as a file, open that file.'
    : '';
  return begin(new Session(await makeDefault(), store, null, notice));
}

async function lastNotebook(store: NotebookStore, remembered: string | null): Promise<StoredNotebook | null> {
  if (remembered) {
    const found = await store.load(remembered);
    if (found) return found;
  }
  const [latest] = await store.list();
  return latest ? store.load(latest.id) : null;
}

/** The default notebook under an id of its own, so that it does not meet the one that could not be read. */
export function freshCopy(document: NotebookDocument): NotebookDocument {
  return { ...document, id: `${document.id}-${Date.now().toString(36)}` };
}

function begin(session: Session): Session {
  rememberNotebook(session.notebook.document.id);
  return session;
}

/**
 * A session on another document: one from a file, or a new one. A document whose id is kept already is taken
 * in as a copy, so that opening an old file never overwrites what is kept.
 */
export async function sessionOn(
  store: NotebookStore,
  document: NotebookDocument,
  notice = '',
): Promise<Session> {
  let taken = false;
  try {
    taken = (await store.load(document.id)) !== null;
  } catch {
    // What cannot be read must not be written over either.
    taken = true;
  }
  return begin(new Session(taken ? freshCopy(document) : document, store, null, notice));
}
