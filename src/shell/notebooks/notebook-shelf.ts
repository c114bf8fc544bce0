import { applyEdit } from '../../notebook/apply-edit.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import { notebookEdit } from '../../notebook/edits.ts';
import { freshId } from '../../notebook/fresh-id.ts';
import { writeNotebookFile } from '../../notebook/notebook-file.ts';
import type { NotebookStore } from '../../notebook/storage/notebook-store.ts';

/** One notebook on the list. */
export interface ShelfLine {
  readonly id: string;
  readonly title: string;
  /** ISO 8601 date and time of the last change, UTC. */
  readonly savedAt: string;
  /** What opening it found; null until it has been looked into. */
  readonly inside: { readonly cards: number; readonly bytes: number } | { readonly refusal: string } | null;
}

/** A notebook that was taken off the shelf, to be put back as it was. */
export interface TakenOff {
  readonly document: NotebookDocument;
}

/** What is told of the work on the shelf. */
export interface ShelfListener {
  /** A notebook was saved, with its new revision: other tabs may have it open. */
  saved(id: string, revision: number): void;
  /** A notebook was taken off: it is not to be missed on the next visit. */
  removed(id: string): void;
}

type ShelfStore = Pick<NotebookStore, 'list' | 'load' | 'save' | 'remove'>;

/**
 * The notebooks kept on this device, seen from outside: listed, renamed, copied, taken off and put back. What
 * is open on the page is changed there, by an edit, and not here.
 */
export class NotebookShelf {
  readonly #store: ShelfStore;
  readonly #listener: ShelfListener;

  constructor(store: ShelfStore, listener: ShelfListener) {
    this.#store = store;
    this.#listener = listener;
  }

  async lines(): Promise<readonly ShelfLine[]> {
    const lines = await this.#store.list();
    return lines.map(({ id, title, savedAt }) => ({ id, title, savedAt, inside: null }));
  }

  /** The line with what is inside: how many cards, and how large it is as a file. */
  async lookInto(line: ShelfLine): Promise<ShelfLine> {
    try {
      const stored = await this.#store.load(line.id);
      if (stored === null) return { ...line, inside: { refusal: 'It is no longer on this device.' } };
      const bytes = new TextEncoder().encode(writeNotebookFile(stored.document)).length;
      return { ...line, inside: { cards: stored.document.cells.length, bytes } };
    } catch (error) {
      const refusal = error instanceof Error && error.message !== '' ? error.message : 'It cannot be read.';
      return { ...line, inside: { refusal } };
    }
  }

  /**
   * Gives a notebook that is not open another title.
   *
   * @throws EditError for a title that is empty or too long; StorageRefusal when it cannot be read
   */
  async rename(id: string, title: string): Promise<void> {
    const stored = await this.#store.load(id);
    if (stored === null || stored.document.title === title) return;
    const edit = notebookEdit(stored.document, 'title', title);
    const saved = await this.#store.save(id, stored.revision, [edit], applyEdit(stored.document, edit));
    this.#listener.saved(id, saved.revision);
  }

  /** A copy with an id and a title of its own, not yet kept; null when the notebook is gone. */
  async copyOf(id: string): Promise<NotebookDocument | null> {
    const stored = await this.#store.load(id);
    return stored === null ? null : copied(stored.document);
  }

  /** Takes a notebook off this device; null when it could not be read, and so cannot be put back. */
  async takeOff(id: string): Promise<TakenOff | null> {
    const stored = await this.#store.load(id).catch(() => null);
    await this.#store.remove(id);
    this.#listener.removed(id);
    return stored === null ? null : { document: stored.document };
  }

  async putBack({ document }: TakenOff): Promise<void> {
    await this.#store.save(document.id, 0, [], document);
  }
}

/**
 * The same notebook under another id, called a copy.
 *
 * @example copied({ ...trip, title: 'Plateau loop' }).title // 'Plateau loop, copy'
 */
export function copied(document: NotebookDocument): NotebookDocument {
  return { ...document, id: freshId('notebook'), title: `${document.title}, copy` };
}

/**
 * The list as it stands now, in the order in which it was shown: a line that was aimed at does not move away
 * because another notebook was saved meanwhile. Those that were not shown come first.
 *
 * @example inPlace([b, a], [a, c, b]).map(({ id }) => id) // ['c', 'b', 'a']
 */
export function inPlace(shown: readonly ShelfLine[], now: readonly ShelfLine[]): readonly ShelfLine[] {
  const kept = shown.flatMap(({ id }) => now.filter((line) => line.id === id));
  return [...now.filter((line) => !kept.includes(line)), ...kept];
}

/**
 * When something was changed: the time for today, the day and the time before.
 *
 * @example changedWords('2026-03-14T09:05:00Z', new Date('2026-03-14T12:00:00Z'), 'en-GB') // 'today, 09:05'
 */
export function changedWords(savedAt: string, now: Date, locale?: string): string {
  const at = new Date(savedAt);
  if (Number.isNaN(at.getTime())) return 'at a time that was not noted';
  const time = at.toLocaleTimeString(locale, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
  if (at.toDateString() === now.toDateString()) return `today, ${time}`;
  const year = at.getFullYear() === now.getFullYear() ? undefined : 'numeric';
  return `${at.toLocaleDateString(locale, { day: 'numeric', month: 'short', year })}, ${time}`;
}
