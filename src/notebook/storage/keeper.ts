import { differenceEdit } from '../difference-edit.ts';
import type { NotebookDocument } from '../document.ts';
import type { Edit } from '../edit.ts';
import { mergeEdits, type SaveConflict } from '../merge-edits.ts';
import { same } from '../same.ts';
import type { NotebookStore, SavedNotebook } from './notebook-store.ts';
import { saveFailureWords } from './save-failure.ts';

/** What the keeper needs of a live notebook. */
export interface WatchedNotebook {
  readonly document: NotebookDocument;
  subscribe(
    listener: (change: { readonly document: boolean; readonly edit: Edit | null }) => void,
  ): () => void;
}

export type KeeperState =
  | { readonly kind: 'kept'; readonly at: Date }
  | { readonly kind: 'keeping' }
  /** `since`: when the first of the failed attempts was made. */
  | { readonly kind: 'failed'; readonly message: string; readonly since: Date };

/** What another tab saved, brought together with what is not yet saved here. */
export interface OtherTab {
  /** The notebook to show from now on. */
  readonly document: NotebookDocument;
  /** Edits made here that no longer fit; they are not in the document. */
  readonly conflicts: readonly SaveConflict[];
}

/** The part of BroadcastChannel that is used. */
export interface TabChannel {
  postMessage(message: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
  close(): void;
}

export interface KeeperOptions {
  readonly store: Pick<NotebookStore, 'save' | 'load'>;
  /** Revision and time of the stored notebook that was opened; null for one never saved, which is saved at once. */
  readonly stored: { readonly revision: number; readonly savedAt: string } | null;
  /**
   * Another tab has saved this notebook. To adopt it, the shell makes the watched notebook hold `document`
   * before this returns: by an edit, or by calling `watch` with a new live notebook. If it does not, nothing
   * is lost: every later save is brought together with what is stored.
   */
  readonly onOtherTab?: (other: OtherTab) => void;
  /** Ends when what was edited is on the screen: a save begins then. Left out: it begins at the end of the turn. */
  readonly painted?: () => Promise<void>;
  /** Left out: the browser's own, where there is one. */
  readonly channel?: TabChannel | null;
  readonly now?: () => Date;
  readonly after?: (milliseconds: number, then: () => void) => () => void;
}

export const CHANNEL_NAME = 'sparewell';

/** Seconds between attempts after a failed save; the last goes on for ever. */
const RETRY_SECONDS = [1, 2, 5, 15, 30] as const;

/** No revision is this: every save is then merged with what is stored. */
const APART = -1;

/**
 * Keeps a notebook in the browser as it is edited: edits made while a save is under way go into the next one,
 * one save at a time. A failed save is shown, holds everything in memory and is tried again until it is kept.
 */
export class Keeper {
  #notebook: WatchedNotebook;
  #last: NotebookDocument;
  #unsubscribe: () => void;
  #pending: Edit[] = [];
  #revision: number;
  #saving: Promise<void> | null = null;
  #adopting = false;
  #disposed = false;
  #dirty: boolean;
  #failures = 0;
  #stopWaiting: (() => void) | null = null;
  /** Has the save begin that waits for the screen. */
  #hurry: () => void = () => undefined;
  #state: KeeperState;
  readonly #options: KeeperOptions;
  readonly #channel: TabChannel | null;
  readonly #listeners = new Set<(state: KeeperState) => void>();

  constructor(notebook: WatchedNotebook, options: KeeperOptions) {
    this.#options = options;
    this.#notebook = notebook;
    this.#last = notebook.document;
    this.#revision = options.stored?.revision ?? 0;
    this.#dirty = options.stored === null;
    this.#state =
      options.stored === null ? { kind: 'keeping' } : { kind: 'kept', at: new Date(options.stored.savedAt) };
    this.#channel = options.channel === undefined ? ownChannel() : options.channel;
    if (this.#channel !== null) this.#channel.onmessage = (event) => this.#heard(event.data);
    this.#unsubscribe = this.#listen();
    if (this.#dirty) this.#begin();
  }

  get state(): KeeperState {
    return this.#state;
  }

  /** Calls back on each change of state; returns what ends it. */
  subscribe(listener: (state: KeeperState) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Watches another live notebook of the same notebook from now on. */
  watch(notebook: WatchedNotebook): void {
    this.#unsubscribe();
    this.#notebook = notebook;
    this.#unsubscribe = this.#listen();
    this.#noteChange(null);
  }

  /** Tries a failed save again at once. */
  retry(): void {
    this.#endWait();
    this.#begin();
  }

  /** Saves the whole notebook once more: what was kept has been taken away. */
  saveAgain(): void {
    this.#dirty = true;
    if (this.#state.kind === 'failed') return;
    this.#show({ kind: 'keeping' });
    this.#begin();
  }

  /** Saves what is not yet kept; resolves with the state after it: kept, or failed with its sentence. */
  async flush(): Promise<KeeperState> {
    this.retry();
    this.#hurry();
    while (this.#saving !== null) await this.#saving;
    return this.#state;
  }

  /** Stops watching and waiting. What is not kept is not saved any more: flush first. */
  dispose(): void {
    this.#disposed = true;
    this.#unsubscribe();
    this.#endWait();
    this.#listeners.clear();
    if (this.#channel !== null) this.#channel.onmessage = null;
    this.#channel?.close();
  }

  #listen(): () => void {
    return this.#notebook.subscribe((change) => {
      if (change.document) this.#noteChange(change.edit);
    });
  }

  #noteChange(edit: Edit | null): void {
    const document = this.#notebook.document;
    if (this.#adopting || document === this.#last) {
      this.#last = document;
      return;
    }
    this.#pending.push(edit ?? differenceEdit(this.#last, document, 'Changes'));
    this.#last = document;
    this.#dirty = true;
    if (this.#state.kind !== 'failed') {
      this.#show({ kind: 'keeping' });
      this.#begin();
    }
  }

  /** Starts a save unless one is under way, nothing is to be saved, or a failed one waits for its time. */
  #begin(): void {
    if (this.#saving !== null || !this.#dirty || this.#stopWaiting !== null || this.#disposed) return;
    // Not before this turn ends, so that edits made together are saved together.
    this.#saving = this.#soon()
      .then(() => this.#saveOnce())
      .finally(() => {
        this.#saving = null;
        this.#begin();
      });
  }

  #soon(): Promise<void> {
    const painted = this.#options.painted?.();
    if (painted === undefined) return Promise.resolve();
    return new Promise((resolve) => {
      this.#hurry = resolve;
      void painted.then(resolve);
    });
  }

  async #saveOnce(): Promise<void> {
    if (this.#disposed) return;
    const edits = this.#pending;
    const whole = this.#last;
    this.#pending = [];
    this.#dirty = false;
    let saved: SavedNotebook;
    try {
      saved = await this.#options.store.save(whole.id, this.#revision, edits, whole);
    } catch (error) {
      if (this.#disposed) return;
      this.#pending = [...edits, ...this.#pending];
      this.#dirty = true;
      this.#failed(error);
      return;
    }
    // Disposed of meanwhile: nobody is left to be told, and the channel to other tabs is closed.
    if (!this.#disposed) this.#kept(saved, whole);
  }

  #kept(saved: SavedNotebook, whole: NotebookDocument): void {
    this.#failures = 0;
    this.#revision = saved.revision;
    if (saved.merged) this.#adopt(saved.document, whole, saved.conflicts);
    this.#channel?.postMessage({ id: whole.id, revision: saved.revision });
    this.#show(this.#dirty ? { kind: 'keeping' } : { kind: 'kept', at: new Date(saved.savedAt) });
  }

  #failed(error: unknown): void {
    const since =
      this.#state.kind === 'failed' ? this.#state.since : (this.#options.now ?? (() => new Date()))();
    const seconds = RETRY_SECONDS[Math.min(this.#failures, RETRY_SECONDS.length - 1)]!;
    this.#failures += 1;
    const after = this.#options.after ?? waitWithTimer;
    this.#stopWaiting = after(seconds * 1000, () => {
      this.#stopWaiting = null;
      this.#begin();
    });
    this.#show({ kind: 'failed', message: saveFailureWords(error), since });
  }

  #endWait(): void {
    this.#stopWaiting?.();
    this.#stopWaiting = null;
  }

  /**
   * Hands over what another tab saved, with the edits made here since. If it is not adopted, the notebook here
   * and the stored one have come apart, and no later save may take the stored one for its own.
   */
  #adopt(stored: NotebookDocument, mine: NotebookDocument, conflicts: readonly SaveConflict[]): void {
    const merged = mergeEdits(mine, stored, this.#pending);
    const other: OtherTab = { document: merged.document, conflicts: [...conflicts, ...merged.conflicts] };
    if (other.conflicts.length === 0 && same(this.#last, other.document)) return;
    this.#adopting = true;
    try {
      this.#options.onOtherTab?.(other);
    } finally {
      this.#adopting = false;
      this.#last = this.#notebook.document;
      if (same(this.#last, other.document)) this.#pending = [...merged.edits];
      else this.#revision = APART;
    }
  }

  #heard(message: unknown): void {
    if (typeof message !== 'object' || message === null) return;
    const { id, revision } = message as { id?: unknown; revision?: unknown };
    if (id !== this.#last.id || revision === this.#revision) return;
    // With edits of our own to save, the next save brings the two together.
    if (this.#isBusy()) return;
    const known = this.#revision;
    this.#options.store.load(this.#last.id).then(
      (stored) => {
        if (stored === null || this.#isBusy() || this.#disposed) return;
        if (this.#revision !== known || stored.revision === known) return;
        this.#revision = stored.revision;
        this.#adopt(stored.document, this.#last, []);
        this.#show({ kind: 'kept', at: new Date(stored.savedAt) });
      },
      // Not read now: the next save reads it anyway, and says so if it cannot.
      () => undefined,
    );
  }

  #isBusy(): boolean {
    return this.#dirty || this.#saving !== null;
  }

  #show(state: KeeperState): void {
    this.#state = state;
    for (const listener of [...this.#listeners]) listener(state);
  }
}

function ownChannel(): TabChannel | null {
  return typeof BroadcastChannel === 'undefined' ? null : (new BroadcastChannel(CHANNEL_NAME) as TabChannel);
}

function waitWithTimer(milliseconds: number, then: () => void): () => void {
  const timer = setTimeout(then, milliseconds);
  return () => clearTimeout(timer);
}
