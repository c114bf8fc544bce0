import type { NotebookDocument } from '../../notebook/document.ts';
import { notebookEdit } from '../../notebook/edits.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import type { Moment } from '../../notebook/moments.ts';
import { CHANNEL_NAME } from '../../notebook/storage/keeper.ts';
import type { NotebookStore } from '../../notebook/storage/notebook-store.ts';
import { pastStore } from '../session/begin-past.ts';
import { readFile } from '../session/notebook-files.ts';
import { sessionOfKept } from '../session/open-session.ts';
import { forgetNotebooks } from '../session/remembered.ts';
import type { Session } from '../session/session.ts';
import { MomentsDialog } from './moments-dialog.ts';
import { NotebookShelf } from './notebook-shelf.ts';
import { type NotebookDetail, NotebooksDialog } from './notebooks-dialog.ts';

/** What the desk needs of the page. */
export interface DeskPage {
  readonly renderRoot: ParentNode & Node;
  readonly session: Session | null;
  readonly store: NotebookStore;
  notice: string;
  /** Opens a document as another notebook; false when the one open now could not be kept. */
  openDocument(document: NotebookDocument): Promise<boolean>;
  /** Opens what `make` gives, once what is open is kept; false when it could not be. */
  change(make: () => Promise<Session>): Promise<boolean>;
  act(action: 'open' | 'new'): void;
  makeDefault(): Promise<NotebookDocument>;
}

/** The desk on which notebooks are taken from the shelf, put back, and come in as files. */
export class NotebookDesk {
  readonly #page: DeskPage;
  readonly #shelf: NotebookShelf;
  #dialog: NotebooksDialog | null = null;
  #moments: MomentsDialog | null = null;

  constructor(page: DeskPage) {
    this.#page = page;
    this.#shelf = new NotebookShelf(page.store, { saved: tellTabs, removed: (id) => forgetNotebooks([id]) });
  }

  /** Shows the list of notebooks. */
  async show(): Promise<void> {
    if (this.#dialog === null) {
      if (customElements.get('sw-notebooks') === undefined)
        customElements.define('sw-notebooks', NotebooksDialog);
      this.#dialog = document.createElement('sw-notebooks');
      this.#dialog.shelf = this.#shelf;
      this.#dialog.addEventListener('sw-notebook', (event) => void this.#onAsk(event.detail));
      this.#page.renderRoot.append(this.#dialog);
    }
    // What is on the page is kept first, so that the list shows it as it is.
    await this.#page.session?.keeper.flush();
    this.#dialog.openId = this.#openId;
    await this.#dialog.show();
  }

  /** Shows the moments of the notebook on the page. */
  async showMoments(): Promise<void> {
    const { session } = this.#page;
    if (session === null) return;
    if (customElements.get('sw-moments') === undefined) customElements.define('sw-moments', MomentsDialog);
    const { PagePlanner } = await import('../planning/page-planner.ts');
    const dialog = document.createElement('sw-moments');
    dialog.notebook = session.notebook;
    dialog.store = pastStore;
    dialog.planned = ({ document: state }: Moment) => {
      const planner = new PagePlanner();
      const live = LiveNotebook.open(state, planner);
      return {
        live,
        dispose: () => {
          live.dispose();
          planner.dispose();
        },
      };
    };
    this.#moments?.remove();
    this.#moments = dialog;
    this.#page.renderRoot.append(dialog);
    await dialog.show();
  }

  get #openId(): string {
    return this.#page.session?.notebook.document.id ?? '';
  }

  async #onAsk({ act, id, title }: NotebookDetail): Promise<void> {
    const page = this.#page;
    if (act === 'rename') {
      const { notebook } = page.session!;
      notebook.apply(notebookEdit(notebook.document, 'title', title ?? ''));
    } else if (act === 'remove') await this.#removeOpen(id);
    else {
      this.#dialog?.close();
      if (act === 'own-trip') await this.startOwnTrip();
      else if (act === 'open') await this.openKept(id);
      else if (act === 'copy') await this.#openCopy(id);
      else page.act(act === 'new' ? 'new' : 'open');
    }
  }

  /** Shows what a partner's file has otherwise than the notebook on the page. */
  async showMerge(): Promise<void> {
    const { session, renderRoot } = this.#page;
    if (session === null) return;
    const { MergeDialog } = await import('./merge-dialog.ts');
    if (customElements.get('sw-merge') === undefined) customElements.define('sw-merge', MergeDialog);
    const dialog = fresh(renderRoot, 'sw-merge', session.notebook);
    dialog.moments = await pastStore.moments(session.notebook.document.id).catch(() => []);
    await dialog.show();
  }

  /** Shows the choice of measures and money. */
  async showUnits(): Promise<void> {
    const { session, renderRoot } = this.#page;
    if (session === null) return;
    const { UnitsDialog } = await import('./units-dialog.ts');
    if (customElements.get('sw-units') === undefined) customElements.define('sw-units', UnitsDialog);
    await fresh(renderRoot, 'sw-units', session.notebook).show();
  }

  /** Shows the steps to a notebook of one's own. */
  async startOwnTrip(): Promise<void> {
    try {
      const { openOwnTrip } = await import('../own-trip/open-own-trip.ts');
      await openOwnTrip(this.#page);
    } catch (error) {
      const why = error instanceof Error && error.message !== '' ? error.message : 'Load the page again.';
      this.#page.notice = `Your own trip could not be begun: ${why}`;
    }
  }

  /** Opens a notebook that is kept here; what is open stays open when it cannot be read. */
  async openKept(id: string): Promise<void> {
    await this.#orSay(() => this.#page.change(() => sessionOfKept(this.#page.store, id)));
  }

  async #openCopy(id: string): Promise<void> {
    await this.#orSay(async () => {
      if (id === this.#openId) await this.#page.session?.keeper.flush();
      const copy = await this.#shelf.copyOf(id);
      if (copy !== null) await this.#page.openDocument(copy);
    });
  }

  /** The notebook on the page is removed once another is open: the one kept last, or the worked example. */
  async #removeOpen(id: string): Promise<void> {
    await this.#orSay(async () => {
      const others = (await this.#shelf.lines()).filter((line) => line.id !== id);
      const next = others[0];
      const opened =
        next === undefined
          ? await this.#page.openDocument(await this.#page.makeDefault())
          : await this.#page.change(() => sessionOfKept(this.#page.store, next.id));
      if (!opened || this.#openId === id) return;
      if (this.#dialog !== null) this.#dialog.openId = this.#openId;
      await this.#page.session?.keeper.flush();
      await this.#dialog?.takeOff(id);
    });
  }

  /** Opens a file that was chosen or dropped; one that cannot be read is refused with a sentence. */
  async openFile(file: File): Promise<void> {
    const opened = await readFile(file);
    if ('refusal' in opened) this.#page.notice = `${file.name}: ${opened.refusal} What was open stays open.`;
    else await this.#page.openDocument(opened.document);
  }

  async #orSay(work: () => Promise<unknown>): Promise<void> {
    try {
      await work();
    } catch (error) {
      const why =
        error instanceof Error && error.message !== '' ? error.message : 'The browser did not say why.';
      this.#page.notice = `That notebook could not be opened: ${why}`;
    }
  }
}

/** A new dialog about the notebook, in the place of the one that was there. */
function fresh<T extends 'sw-merge' | 'sw-units'>(
  root: ParentNode & Node,
  tag: T,
  notebook: LiveNotebook,
): HTMLElementTagNameMap[T] {
  root.querySelector(tag)?.remove();
  const dialog = document.createElement(tag);
  dialog.notebook = notebook;
  root.append(dialog);
  return dialog;
}

/** Other tabs that have this notebook open take in what was saved. */
function tellTabs(id: string, revision: number): void {
  if (typeof BroadcastChannel === 'undefined') return;
  const channel = new BroadcastChannel(CHANNEL_NAME);
  channel.postMessage({ id, revision });
  channel.close();
}
