import type { NotebookDocument } from '../../notebook/document.ts';
import type { KeeperState } from '../../notebook/storage/keeper.ts';
import {
  type NotebookStore,
  StorageRefusal,
  type StoredNotebook,
} from '../../notebook/storage/notebook-store.ts';
import {
  forgetNotebooks,
  type RememberedNotebook,
  rememberedNotebooks,
  rememberNotebook,
} from './remembered.ts';
import { Session } from './session.ts';

/**
 * Opens the notebook that was open last on this device, or else the one kept last, or else the default one.
 * What goes wrong on the way, and notebooks that should be there and are not, are told in the session's
 * notice; the page always opens with a notebook.
 * @param start its figures are worked out from then on; null for at once
 */
export async function openSession(
  store: NotebookStore,
  makeDefault: () => Promise<NotebookDocument>,
  start: Promise<void> | null = null,
): Promise<Session> {
  let found: StoredNotebook | null;
  let lost: readonly RememberedNotebook[];
  try {
    const expected = rememberedNotebooks();
    const last = expected[0]?.id;
    // Asked for together: the one that was open last is nearly always there.
    const [ids, first] = await Promise.all([store.ids(), last === undefined ? null : store.load(last)]);
    lost = expected.filter(({ id }) => !ids.includes(id));
    found = first ?? (await otherKept(store, expected, ids));
  } catch (error) {
    const document = freshCopy(await makeDefault());
    return begin(new Session(document, store, null, troubleWords(error), 'save-file', start));
  }
  forgetNotebooks(lost.map((one) => one.id));
  const notice = lost.length > 0 ? lostWords(lost) : '';
  const document = found?.document ?? (await makeDefault());
  return begin(new Session(document, store, found, notice, notice ? 'open' : null, start));
}

/** The notebook open last of those that are still kept, or else the one saved last; null where none is kept. */
async function otherKept(
  store: NotebookStore,
  expected: readonly RememberedNotebook[],
  ids: readonly string[],
): Promise<StoredNotebook | null> {
  if (ids.length === 0) return null;
  const next = expected.find(({ id }) => ids.includes(id))?.id ?? (await store.list())[0]?.id;
  return next === undefined ? null : store.load(next);
}

/** `Plateau loop`, in a sentence that offers the file. */
function lostWords(lost: readonly RememberedNotebook[]): string {
  const titles = lost.slice(0, 3).map((one) => one.title || 'a notebook without a name');
  const names = lost.length > 3 ? `${titles.join(', ')} and ${lost.length - 3} more` : titles.join(', ');
  return `This device has lost ${names}, as browsers do when their disk is full or their data is cleared. If you have a file of it, open that file.`;
}

function troubleWords(error: unknown): string {
  const why = error instanceof Error && error.message ? error.message : 'The browser did not say why.';
  if (error instanceof StorageRefusal)
    return `The notebook kept on this device could not be opened: ${why} It was left as it is; this is a fresh copy of the worked example.`;
  return `This browser keeps nothing here: ${why} Everything works, but only until this page is closed. Save your notebook as a file before you leave.`;
}

/** The default notebook under an id of its own, so that it does not meet the one that could not be read. */
export function freshCopy(document: NotebookDocument): NotebookDocument {
  return { ...document, id: `${document.id}-${Date.now().toString(36)}` };
}

/** From here on the device should have this notebook, once it is really kept. */
function begin(session: Session): Session {
  const note = ({ kind }: KeeperState): void => {
    if (kind === 'kept') rememberNotebook(session.notebook.document);
  };
  note(session.keeper.state);
  session.keeper.subscribe(note);
  return session;
}

/**
 * A session on a notebook that is kept on this device.
 *
 * @throws StorageRefusal or Error, with a sentence, when it is gone or cannot be read
 */
export async function sessionOfKept(store: NotebookStore, id: string): Promise<Session> {
  const found = await store.load(id);
  if (found === null) throw new Error('It is no longer on this device.');
  return begin(new Session(found.document, store, found));
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
