import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../cells/shared/base-styles.ts';
import type { PickDetail } from '../../cells/shared/cell-events.ts';
import { controlStyles } from '../../cells/shared/control-styles.ts';
import type { NotebookDocument } from '../notebook/document.ts';
import type { KeeperState } from '../notebook/storage/keeper.ts';
import { type NotebookStore, openNotebookStore } from '../notebook/storage/notebook-store.ts';
import type { Beginning } from './empty-notebook.ts';
import { painted } from './first-paint.ts';
import type { HeadAction } from './head/head-bar.ts';
import { makeDefault } from './make-default.ts';
import type { NewFrom } from './new-notebook-dialog.ts';
import type { DeskPage, NotebookDesk } from './notebooks/notebook-desk.ts';
import type { StandBy } from './offline/stand-by.ts';
import { PageGuards } from './page-guards.ts';
import { type Page, PageKeyboard } from './page-keyboard.ts';
import { stillThere } from './page-moves.ts';
import { PagePicks } from './page-picks.ts';
import type { CardAction } from './panel/card-slip.ts';
import { printFirstSheet, printSheet } from './print/print-sheet.ts';
import type { RoadEdits } from './road/road-edits.ts';
import type { AddDetail, MoveDetail, RoadView } from './road/road-view.ts';
import { type Stop, stopOf, stopsOf } from './road/stops.ts';
import { changeWords } from './session/change-words.ts';
import { emptyNotebook } from './session/new-notebook.ts';
import { chooseNotebookFile, saveNotebookFile } from './session/notebook-files.ts';
import { freshCopy, openSession, sessionOn } from './session/open-session.ts';
import type { Session } from './session/session.ts';
import { sparewellAppStyles } from './sparewell-app.styles.ts';
import { Walk } from './walk/walk.ts';

const NOT_FETCHED = 'A part of the page could not be fetched. Load the page again when there is a network.';
/** How long a notebook is read before the page says that it is being opened, ms. */
const SAY_OPENING_MS = 400;
/** How long figures rest before their change is read out, in ms: one sentence for one edit. */
const SAY_AFTER_MS = 700;

/**
 * The page: head bar, tally, road and panel round one open notebook, the keyboard, and what is read out.
 */
export class SparewellApp extends LitElement implements DeskPage, Page {
  static override properties: PropertyDeclarations = {
    session: { state: true },
    picked: { state: true },
    shut: { state: true },
    opening: { state: true },
    beside: { state: true },
    kept: { state: true },
    notice: { state: true },
    trouble: { state: true },
    said: { state: true },
    file: { state: true },
  };

  static override styles = [baseStyles, controlStyles, sparewellAppStyles];

  declare session: Session | null;
  declare picked: PickDetail | null;
  declare shut: boolean;
  /** Until the figures of the first notebook are there. */
  declare private opening: boolean;
  /** Whether what stands beside the road is drawn: from the second frame on. */
  declare private beside: boolean;
  declare private kept: KeeperState;
  declare notice: string;
  /** Why there is no notebook at all, as a sentence; '' while there is one or it is being opened. */
  declare private trouble: string;
  declare private said: string;
  /** Name of the file on disk that is kept current; '' for none. */
  declare private file: string;

  readonly store: NotebookStore = openNotebookStore();
  /** Until it is worth drawing the page: the notebook is there, or takes so long that the reader is told. */
  readonly read: Promise<void>;
  readonly makeDefault = makeDefault;
  readonly #measured = new ResizeObserver((entries) => this.#measure(entries));
  #standBy: StandBy | null = null;
  #desk: NotebookDesk | null = null;
  #stopDrops: (() => void) | null = null;
  readonly #walk = new Walk(this);
  readonly #picks = new PagePicks(this);
  #edits: RoadEdits | null = null;
  #sayLater: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.session = null;
    this.picked = null;
    this.shut = true;
    this.opening = true;
    this.beside = false;
    this.kept = { kind: 'keeping' };
    this.notice = '';
    this.trouble = '';
    this.said = '';
    this.file = '';
    new PageKeyboard(this);
    new PageGuards(this);
    // Begun here, and not when the page is drawn: the notebook is read while the faces of the first screen come.
    let start = (): void => undefined;
    const started = new Promise<void>((resolve) => {
      start = resolve;
    });
    const reading = openSession(this.store, makeDefault, started)
      .then((session) => {
        this.#take(session);
        void this.#open(session, start);
      })
      .catch((error: unknown) => {
        this.trouble = error instanceof Error ? error.message : NOT_FETCHED;
      });
    this.read = Promise.race([reading, new Promise<void>((resolve) => setTimeout(resolve, SAY_OPENING_MS))]);
  }

  /** The first cards are there to be read and written in before the figures are worked out, which takes longer. */
  async #open(session: Session, startFigures: () => void): Promise<void> {
    await this.updateComplete;
    await painted();
    this.beside = true;
    await this.updateComplete;
    await painted();
    startFigures();
    await session.notebook.settled();
    // Once the totals are seen.
    await painted();
    this.opening = false;
    await this.updateComplete;
    void this.#loadRest();
  }

  /** What the notebook can be read and edited without. */
  async #loadRest(): Promise<void> {
    try {
      await import('./register-later.ts');
      const { RoadEdits } = await import('./road/road-edits.ts');
      this.#edits ??= new RoadEdits(this);
      const { StandBy } = await import('./offline/stand-by.ts');
      const { doorOf } = await import('./import/import-door.ts');
      const { NotebookDesk } = await import('./notebooks/notebook-desk.ts');
      const { watchDrops } = await import('./notebooks/file-drop.ts');
      if (!this.session || this.#standBy) return;
      doorOf(this);
      const desk = new NotebookDesk(this);
      this.#desk = desk;
      this.#stopDrops = watchDrops(this, (file) => void desk.openFile(file));
      this.#standBy = new StandBy(this.session, (name) => {
        this.file = name;
      });
    } catch {
      this.notice = NOT_FETCHED;
    }
  }

  /** Adds, moves or removes cards: what does it is fetched with the rest, or when it is wanted before that. */
  #onRoad(act: (edits: RoadEdits) => void): void {
    if (this.#edits) {
      act(this.#edits);
      return;
    }
    import('./road/road-edits.ts').then(
      ({ RoadEdits }) => {
        this.#edits ??= new RoadEdits(this);
        act(this.#edits);
      },
      () => {
        this.notice = NOT_FETCHED;
      },
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#measured.disconnect();
    this.#stopDrops?.();
  }

  get road(): RoadView | null {
    return this.renderRoot.querySelector('sw-road');
  }

  get stops(): readonly Stop[] {
    return this.session ? stopsOf(this.session.notebook.document) : [];
  }

  /** The card that is selected, or that holds the keyboard. */
  get stop(): Stop | undefined {
    return stopOf(this.stops, this.picked?.cell ?? this.road?.focused()?.id ?? null);
  }

  override render(): unknown {
    const { session } = this;
    if (!session) return this.#noNotebook();
    const { notebook } = session;
    const empty = notebook.document.cells.length === 0;
    return html`<sw-head-bar .notebook=${notebook} .kept=${this.kept} .file=${this.file} .notice=${this.notice} .mend=${this.notice === session.notice ? session.mend : null} @sw-action=${this.#onAction}></sw-head-bar>
      <sw-tally-strip .notebook=${notebook} .last=${session.log.entries[0] ?? null} @sw-action=${this.#onAction} @sw-pick=${this.#picks.pick}></sw-tally-strip>
      <div
        class="bench ${this.shut ? '' : 'open'}"
        @sw-pick=${this.#picks.pick}
        @sw-open=${this.#picks.open}
        @sw-print=${printSheet}
        @sw-walk=${() => this.#walk.start(notebook.document)}
        @sw-visit=${this.#picks.visit}
        @sw-go=${this.#picks.go}
        @sw-step=${(event: CustomEvent<{ way: 'undo' | 'redo' }>) => this.act(event.detail.way)}
        @sw-says=${(event: CustomEvent<{ text: string }>) => this.say(event.detail.text)}
      >
        <main>${empty ? this.#empty() : html`${this.#walk.offer(notebook.document)}${this.#roadOf(session)}`}</main>
        ${this.beside ? this.#panelOf(session) : nothing}
      </div>
      <sw-new-notebook-dialog @sw-new=${(event: CustomEvent<NewFrom>) => this.#new(event.detail)}></sw-new-notebook-dialog>
      ${this.#walk.guide()}
      <div class="sr" role="status" aria-live="polite">${this.said}</div>`;
  }

  #noNotebook(): TemplateResult {
    return this.trouble
      ? html`<p class="opening" role="alert">${this.trouble} <button class="btn" @click=${() => location.reload()}>Load again</button></p>`
      : html`<p class="opening" role="status">Opening the notebook…</p>`;
  }

  override updated(): void {
    const strip = this.renderRoot.querySelector('sw-tally-strip');
    if (strip) this.#measured.observe(strip);
  }

  #empty(): TemplateResult {
    return html`<sw-empty-notebook @sw-begin=${(event: CustomEvent<Beginning>) => this.#begin(event.detail)}></sw-empty-notebook>`;
  }

  #roadOf(session: Session): TemplateResult {
    return html`<sw-road
      .notebook=${session.notebook}
      .selected=${this.picked?.cell ?? null}
      .picked=${this.picked}
      .opening=${this.opening}
      @sw-add=${(event: CustomEvent<AddDetail>) => this.#onRoad((edits) => edits.add(event.detail))}
      @sw-move=${(event: CustomEvent<MoveDetail>) => this.move(event.detail.stop, event.detail.to)}
    ></sw-road>`;
  }

  #panelOf(session: Session): TemplateResult {
    return html`<sw-side-panel
      ?shut=${this.shut}
      .notebook=${session.notebook}
      .picked=${this.picked}
      .entries=${session.log.entries}
      @sw-close=${this.#picks.close}
      @sw-card=${(event: CustomEvent<CardAction>) => this.#onRoad((edits) => edits.act(event.detail))}
    ></sw-side-panel>`;
  }

  /** The sticky tally's height, for what stands under it and for scrolling to a card. */
  #measure(entries: readonly ResizeObserverEntry[]): void {
    const height = entries.at(-1)?.target.getBoundingClientRect().height;
    if (height) document.documentElement.style.setProperty('--tally', `${Math.round(height)}px`);
  }

  #take(session: Session): void {
    const before = this.session;
    this.session = session;
    this.picked = null;
    this.shut = true;
    this.notice = session.notice;
    this.kept = session.keeper.state;
    session.keeper.subscribe((state) => {
      this.kept = state;
    });
    session.log.subscribe(() => this.#logged(session));
    this.#standBy?.watch(session);
    document.title = `${session.notebook.document.title}, Sparewell`;
    if (before) void before.close();
    void this.#plan(session);
    void this.#recall(session);
  }

  /** Has the plan worked out once the notebook stands: its figures are read meanwhile as each part's own best. */
  async #plan(session: Session): Promise<void> {
    await session.notebook.settled();
    await this.updateComplete;
    try {
      const { PagePlanner } = await import('./planning/page-planner.ts');
      if (session === this.session) session.usePlanner(new PagePlanner());
    } catch {
      this.notice = NOT_FETCHED;
    }
  }

  /** Undo goes on from the visit before; fetched later, as nothing that is seen hangs on it. */
  async #recall(session: Session): Promise<void> {
    await this.updateComplete;
    try {
      const { beginPast } = await import('./session/begin-past.ts');
      await session.usePast(beginPast);
      this.requestUpdate();
    } catch {
      this.notice = NOT_FETCHED;
    }
  }

  #logged(session: Session): void {
    this.requestUpdate();
    document.title = `${session.notebook.document.title}, Sparewell`;
    this.picked = stillThere(session.notebook.document, this.picked);
    clearTimeout(this.#sayLater);
    this.#sayLater = setTimeout(() => {
      const words = changeWords(session);
      if (words) this.say(words);
    }, SAY_AFTER_MS);
  }

  say(text: string): void {
    this.said = text;
  }

  closePanel(): void {
    this.#picks.close();
  }

  move(stopId: string, to: number): void {
    this.#onRoad((edits) => edits.move(stopId, to));
  }

  #begin(way: Beginning): void {
    if (way === 'open') this.act('open');
    else if (way === 'demo' || way === 'own-trip') void this.#new(way);
    else this.#onRoad((edits) => edits.begin(way));
  }

  // Notebook actions

  #onAction(event: CustomEvent<HeadAction>): void {
    this.act(event.detail);
  }

  act(action: HeadAction): void {
    const { session } = this;
    if (!session) return;
    if (action === 'undo') session.undo();
    else if (action === 'redo') session.redo();
    else if (action === 'retry') session.keeper.retry();
    else if (action === 'save-file') saveNotebookFile(session.notebook.document);
    else if (action === 'keep-file') this.#standBy?.chooseFile();
    else if (action === 'notebooks') void this.#desk?.show();
    else if (action === 'moments') void this.#desk?.showMoments();
    else if (action === 'units') void this.#desk?.showUnits();
    else if (action === 'merge') void this.#desk?.showMerge();
    else if (action === 'new') void this.#askForNew();
    else if (action === 'print') this.notice = printFirstSheet(session.notebook.document, this.road);
    else if (action === 'walk') this.#walk.start(session.notebook.document);
    else if (action === 'import')
      void import('./import/import-door.ts').then(({ doorOf }) => doorOf(this).show(null));
    else void this.#openFile();
  }

  async #askForNew(): Promise<void> {
    await customElements.whenDefined('sw-new-notebook-dialog');
    const dialog = this.renderRoot.querySelector('sw-new-notebook-dialog');
    await dialog?.updateComplete;
    dialog?.show();
  }

  async #openFile(): Promise<void> {
    const chosen = await chooseNotebookFile();
    if (!chosen) return;
    if ('refusal' in chosen) this.notice = chosen.refusal;
    else await this.openDocument(chosen.document);
  }

  async #new(from: NewFrom): Promise<void> {
    if (from === 'own-trip') return this.#desk?.startOwnTrip();
    await this.openDocument(from === 'demo' ? freshCopy(await makeDefault()) : emptyNotebook());
  }

  openDocument(document: NotebookDocument): Promise<boolean> {
    return this.change(() => sessionOn(this.store, document));
  }

  async change(make: () => Promise<Session>): Promise<boolean> {
    const kept = await this.session?.keeper.flush();
    if (kept?.kind === 'failed') {
      this.notice = 'The notebook open now could not be kept on this device. Save it as a file first.';
      return false;
    }
    this.#take(await make());
    scrollTo({ top: 0 });
    return true;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sparewell-app': SparewellApp;
  }
}
