import { type CSSResultGroup, html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { showCount } from '../../src/formula/show.ts';
import type { Cell } from '../../src/notebook/document.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { findCell } from '../../src/notebook/lookup.ts';
import { baseStyles } from './base-styles.ts';
import { type CardState, cardState, nodesOf } from './card-state.ts';
import { controlStyles } from './control-styles.ts';
import { firstFocusable } from './focusable.ts';
import { canFold, folds } from './folds.ts';
import { fedByIcon, feedsIcon } from './icons.ts';
import { NotebookController } from './notebook-controller.ts';
import { NotebookElement } from './notebook-element.ts';
import { firstTurn } from './out-of-sight.ts';
import { sheetStyles } from './sheet-styles.ts';

/** How a card is joined to the card that is selected: `feeds Calls`, `fed by Calls`. */
export interface CardLink {
  readonly way: 'feeds' | 'fed-by';
  /** Name of the selected card. */
  readonly to: string;
}

/**
 * What all cells share: a card with its head (name, gist, link note, state word) and a body of its own.
 *
 * A subclass writes `body(cell)`, and may override `headNote` (words before the state), `headTitle`, `gistOf`,
 * `concerns` and `enter`. It keeps its edits in `this.notebook.apply(...)`. While it is being written in, it
 * stops Escape (`event.preventDefault()`), so that Escape leaves the card only from rest.
 *
 * No slots. Parts: sheet (the card), head.
 *
 * @fires sw-pick {PickDetail} a figure, row or the card was selected
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 * @fires sw-rest writing has ended: the keyboard goes back to the card
 */
export abstract class CellElement<C extends Cell> extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    selected: { type: Boolean, reflect: true },
    link: { attribute: false },
  };

  static override styles: CSSResultGroup = [baseStyles, controlStyles, sheetStyles];

  /** Id of the cell in the document. */
  declare cellId: string;
  /** Is this the selected card? */
  declare selected: boolean;
  declare link: CardLink | null;

  #drawn: Cell | undefined;

  constructor() {
    super();
    this.cellId = '';
    this.selected = false;
    this.link = null;
    new NotebookController(
      this,
      () => this.notebook,
      (change) => this.concerns(change),
      () => this.figures,
    );
  }

  protected get cell(): C | undefined {
    return this.notebook && ((findCell(this.notebook.document, this.cellId) ?? undefined) as C | undefined);
  }

  /** All cells on this card; more than one only where values share a form. */
  protected get cells(): readonly Cell[] {
    const cell = this.cell;
    return cell ? [cell] : [];
  }

  /** Names of the figures that the card shows: on a card that is seen they are worked out before others. */
  protected get figures(): readonly string[] {
    return this.cells.flatMap(nodesOf);
  }

  /** Does a change concern this card? Its cell was edited, or one of its own figures has a new state. */
  protected concerns(change: NotebookChange): boolean {
    if (change.document && this.cell !== this.#drawn) return true;
    return this.cells.some((cell) => 'name' in cell && touches(change.nodes, cell.name));
  }

  /** Put the keyboard inside the card. */
  enter(): void {
    firstFocusable(this.renderRoot)?.focus();
  }

  /** Writing has ended: give the keyboard back to the card as a whole. */
  protected rest(): void {
    this.dispatchEvent(new CustomEvent('sw-rest', { bubbles: true, composed: true }));
  }

  protected headTitle(cell: C): string {
    return cell.title;
  }

  protected gistOf(cell: C): unknown {
    return cell.gist ?? nothing;
  }

  /** Words or buttons between the gist and the state word. */
  protected headNote(_cell: C): unknown {
    return nothing;
  }

  protected stateOf(_cell: C): CardState {
    return cardState(this.notebook, this.cells);
  }

  protected abstract body(cell: C, state: CardState): unknown;

  protected linkNote(): TemplateResult | typeof nothing {
    if (!this.link) return nothing;
    const feeds = this.link.way === 'feeds';
    return html`<span class="link">${feeds ? feedsIcon() : fedByIcon()}${feeds ? 'feeds' : 'fed by'} ${this.link.to}</span>`;
  }

  protected stateNote(state: CardState, before: unknown = nothing): TemplateResult {
    const tone = { settled: 'calm', working: 'busy', fault: 'bad', waiting: 'busy' }[state.state];
    return html`<span class="state">${before}<span class=${tone}>${state.words}</span></span>`;
  }

  protected head(cell: C, state: CardState): TemplateResult {
    const gist = this.gistOf(cell);
    return html`<header part="head">
      <h2 id="name">${this.headTitle(cell)}</h2>
      ${gist === nothing ? nothing : html`<span class="gist">${gist}</span>`}
      ${this.linkNote()}
      ${this.folded ? this.stateNote(state, html`<span>${this.foldedNote(cell)}</span>`) : this.stateNote(state, this.headNote(cell))}
      ${this.foldButton(cell, this.folded)}
    </header>`;
  }

  /** Whether this viewer has the card folded to its head. */
  get folded(): boolean {
    const cell = this.cell;
    return cell !== undefined && folds.isFolded(this.notebook.document.id, cell);
  }

  /** Folds the card to its head, or opens it. */
  fold(folded: boolean): void {
    const cell = this.cell;
    if (!cell || folded === this.folded) return;
    folds.set(this.notebook.document.id, cell, folded);
    this.requestUpdate();
  }

  protected foldButton(cell: C, folded: boolean): TemplateResult | typeof nothing {
    if (!canFold(cell)) return nothing;
    return html`<button class="plain fold" aria-expanded=${folded ? 'false' : 'true'} @click=${(
      event: Event,
    ) => {
      event.stopPropagation();
      this.fold(!folded);
    }}>${folded ? 'Open' : 'Fold'}<span class="sr"> ${cell.title}</span></button>`;
  }

  /** What a folded card still tells beside its gist. */
  protected foldedNote(cell: C): string {
    if (cell.kind !== 'table' && cell.kind !== 'pairing') return '';
    const rows = this.notebook.rowsOf(cell.name);
    return rows === 1 ? '1 row' : `${showCount(rows)} rows`;
  }

  /** More class names for the sheet. */
  protected sheetClass(_cell: C): string {
    return '';
  }

  /** The first drawing waits its turn; those after it are not held up. */
  protected override async scheduleUpdate(): Promise<void> {
    const turn = this.hasUpdated ? null : firstTurn(this);
    if (turn) await turn;
    await super.scheduleUpdate();
  }

  override render(): unknown {
    const cell = this.cell;
    this.#drawn = cell;
    if (!cell) return nothing;
    const state = this.stateOf(cell);
    const fault = state.state === 'fault' ? 'is-fault' : '';
    const folded = this.folded;
    return html`<article class="sheet ${fault} ${this.sheetClass(cell)} ${folded ? 'folded' : ''}" aria-labelledby="name" part="sheet">
      ${this.head(cell, state)}${folded ? nothing : this.body(cell, state)}
    </article>`;
  }
}

/** Is a figure of the cell with this name among the changed ones? 'wear' touches 'wear' and 'wear.rate'. */
export function touches(nodes: ReadonlySet<string>, name: string): boolean {
  let names = touched.get(nodes);
  if (names === undefined) {
    names = new Set([...nodes].map((node) => node.split('.', 1)[0] as string));
    touched.set(nodes, names);
  }
  return names.has(name);
}

/** Names of the cells that the figures of a change belong to: every card asks for them. */
const touched = new WeakMap<ReadonlySet<string>, ReadonlySet<string>>();

declare global {
  interface HTMLElementEventMap {
    'sw-rest': CustomEvent;
  }
}
