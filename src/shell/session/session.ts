import { differenceEdit } from '../../notebook/difference-edit.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { Keeper, type OtherTab } from '../../notebook/storage/keeper.ts';
import type { NotebookStore } from '../../notebook/storage/notebook-store.ts';
import { EffectLog } from './effect-log.ts';

/** One notebook open on the page: live, kept on this device, with its road log. */
export class Session {
  readonly notebook: LiveNotebook;
  readonly keeper: Keeper;
  readonly log: EffectLog;
  /** A sentence for the user about how this notebook was opened; '' for none. */
  readonly notice: string;

  /**
   * @param stored revision and time of what is kept under the document's id; null for a notebook that is to
   *   be kept for the first time
   */
  constructor(
    document: NotebookDocument,
    store: NotebookStore,
    stored: { readonly revision: number; readonly savedAt: string } | null,
    notice = '',
  ) {
    this.notice = notice;
    this.notebook = LiveNotebook.open(document);
    this.log = new EffectLog(this.notebook);
    this.keeper = new Keeper(this.notebook, { store, stored, onOtherTab: (other) => this.#adopt(other) });
  }

  undo(): boolean {
    this.log.mark('undo');
    return this.notebook.undo() !== null;
  }

  redo(): boolean {
    this.log.mark('redo');
    return this.notebook.redo() !== null;
  }

  /** Keeps what is not kept yet and lets go of everything. */
  async close(): Promise<void> {
    await this.keeper.flush();
    this.keeper.dispose();
    this.log.dispose();
    this.notebook.dispose();
  }

  /** Another tab's edits come in as one edit, so that they can be seen in the log and undone here. */
  #adopt(other: OtherTab): void {
    this.notebook.apply(differenceEdit(this.notebook.document, other.document, 'Edits from another tab'));
  }
}
