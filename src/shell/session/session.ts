import { figuresSeen } from '../../../cells/shared/notebook-controller.ts';
import { differenceEdit } from '../../notebook/difference-edit.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { Planner } from '../../notebook/graph/planner.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { Keeper, type OtherTab } from '../../notebook/storage/keeper.ts';
import type { NotebookStore } from '../../notebook/storage/notebook-store.ts';
import { afterPaint } from '../after-paint.ts';
import { breath, painted } from '../first-paint.ts';
import { EffectLog } from './effect-log.ts';
import type { PastKeeper } from './past-keeper.ts';
import { type SavedLast, withPast } from './with-past.ts';

/** How long after its storage was taken away the notebook is kept again, ms. */
const AFTER_LOSS_MS = 500;

/** One notebook open on the page: live, kept on this device, with its road log. */
export class Session {
  readonly notebook: LiveNotebook;
  readonly keeper: Keeper;
  readonly log: EffectLog;
  /** A sentence for the user about how this notebook was opened; '' for none. */
  readonly notice: string;
  /** What helps against what the notice says, or null. */
  readonly mend: 'open' | 'save-file' | null;
  readonly #stopWatching: () => void;
  readonly #opened: { readonly document: NotebookDocument; readonly revision: number };
  readonly #savedLast: SavedLast = { revision: null };
  #past: PastKeeper | null = null;
  #planner: (Planner & { dispose(): void }) | null = null;

  /**
   * @param stored revision and time of what is kept under the document's id; null for a notebook that is to
   *   be kept for the first time
   * @param start figures are worked out from then on; null for at once
   */
  constructor(
    document: NotebookDocument,
    store: NotebookStore,
    stored: { readonly revision: number; readonly savedAt: string } | null,
    notice = '',
    mend: 'open' | 'save-file' | null = null,
    start: Promise<void> | null = null,
  ) {
    this.notice = notice;
    this.mend = mend;
    this.notebook = LiveNotebook.open(document, null, start);
    this.notebook.useSight({ seen: () => figuresSeen(this.notebook), painted, breath });
    this.log = new EffectLog(this.notebook);
    this.#opened = { document, revision: stored?.revision ?? 0 };
    this.keeper = new Keeper(this.notebook, {
      store: withPast(store, () => this.#past, this.#savedLast),
      stored,
      painted: afterPaint(),
      onOtherTab: (other) => this.#adopt(other),
    });
    this.#stopWatching = store.onLost(() => {
      // Not at once: the browser may still be clearing, and would take this away too.
      setTimeout(() => this.keeper.saveAgain(), AFTER_LOSS_MS);
    });
  }

  /** Has its plans found from now on; let go of with the session. */
  usePlanner(planner: Planner & { dispose(): void }): void {
    this.#planner = planner;
    this.notebook.usePlanner(planner);
  }

  /** Has undo and redo go on from the visit before, and into the next. */
  async usePast(
    begin: (notebook: LiveNotebook, opened: NotebookDocument, revision: number) => Promise<PastKeeper>,
  ): Promise<void> {
    this.#past = await begin(this.notebook, this.#opened.document, this.#opened.revision);
    if (this.#savedLast.revision !== null) this.#past.note(this.#savedLast.revision);
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
    this.#stopWatching();
    this.keeper.dispose();
    this.log.dispose();
    this.notebook.dispose();
    this.#planner?.dispose();
  }

  /** Another tab's edits come in as one edit, so that they can be seen in the log and undone here. */
  #adopt(other: OtherTab): void {
    this.notebook.apply(differenceEdit(this.notebook.document, other.document, 'Edits from another tab'));
  }
}
