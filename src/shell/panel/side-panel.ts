import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import type { PickDetail } from '../../../cells/shared/cell-events.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { closeIcon } from '../../../cells/shared/icons.ts';
import { concernsAll, NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { sheetStyles } from '../../../cells/shared/sheet-styles.ts';
import type { Cell } from '../../notebook/document.ts';
import { linksOf, type Stop, stopOf, stopsOf } from '../road/stops.ts';
import { firstTally, type LogEntry, mainFigure } from '../session/effect-log.ts';
import { cautionStrip } from './caution-strip.ts';
import type { FigureAt, GoDetail } from './figure-slip.ts';
import { isCritical } from './is-critical.ts';
import { panelStyles } from './panel-styles.ts';
import { rowName } from './row-name.ts';
import { sidePanelStyles } from './side-panel.styles.ts';

/**
 * The panel beside the road (a bottom sheet on narrow screens): what was picked, where it comes from, the
 * calls of a part, the card it stands on; below it the road log. With nothing picked, how to read a card.
 *
 * @prop notebook  @prop picked what was picked, or null  @prop entries the road log, newest first
 * @attr shut on narrow screens: hidden
 * @fires sw-close the panel was closed
 * @fires sw-go {GoDetail} (from the figure) handled here, and passed on so that the road can follow
 * @fires sw-card {CardAction} (from the card)  @fires sw-pick {PickDetail} a link to another card was clicked
 */
export class SidePanel extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    picked: { attribute: false },
    entries: { attribute: false },
    shut: { type: Boolean, reflect: true },
    trail: { state: true },
    less: { state: true },
  };

  static override styles = [baseStyles, controlStyles, sheetStyles, panelStyles, sidePanelStyles];

  declare picked: PickDetail | null;
  declare entries: readonly LogEntry[];
  declare shut: boolean;
  /** Figures gone into from the picked one, the last of them shown. */
  declare private trail: readonly FigureAt[];
  declare private less: boolean;

  constructor() {
    super();
    this.picked = null;
    this.entries = [];
    this.shut = true;
    this.trail = [];
    this.less = false;
    new NotebookController(this, () => this.notebook, concernsAll);
    this.addEventListener('sw-go', (event) => this.#gone(event));
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('picked')) {
      this.trail = [];
      this.less = false;
    }
  }

  override render(): unknown {
    if (!this.notebook) return nothing;
    const main = mainFigure(firstTally(this.notebook.document));
    return html`<aside class="panel ${this.less ? 'less' : ''}" aria-label="Panel" tabindex="-1">
      ${this.#slip()}
      <sw-road-log class="log" .entries=${this.entries} .main=${main?.figure ?? ''} .label=${main?.label ?? ''}></sw-road-log>
    </aside>`;
  }

  /** Put the keyboard in the panel. */
  override focus(): void {
    this.renderRoot.querySelector<HTMLElement>('.panel')?.focus();
  }

  /** The figure shown: the last gone into, or the picked one. */
  get #at(): FigureAt | null {
    const last = this.trail.at(-1);
    if (last) return last;
    const { picked } = this;
    if (picked?.node) return { node: picked.node, row: picked.row };
    // A card of one figure stands for its figure.
    const cell = this.notebook.document.cells.find((one) => one.id === picked?.cell);
    const single = cell?.kind === 'formula' || (cell?.kind === 'value' && cell.form === undefined);
    return single ? { node: cell.name, row: null } : null;
  }

  #slip(): TemplateResult {
    const { picked } = this;
    const cell = picked && this.#cellOf(picked, this.#at);
    if (!picked || !cell) return html`<sw-card-key></sw-card-key>`;
    const at = this.#at;
    const row = at ? at.row : picked.row;
    return html`<div class="slip">
      ${this.#header(cell, at, row)}
      ${this.trail.length > 0 ? html`<div class="crumbs"><button class="plain" @click=${this.#back}>Back to ${this.#backTo()}</button></div>` : nothing}
      <div class="working">${this.#callChoices(cell, row)} ${this.#figure(cell, at)}</div>
      <div class="card">
        ${this.#links(cell)} ${isCritical(this.notebook, cell, row) ? cautionStrip() : nothing}
        <sw-card-slip .notebook=${this.notebook} .cellId=${cell.id}></sw-card-slip>
      </div>
    </div>`;
  }

  #header(cell: Cell, at: FigureAt | null, row: number | null): TemplateResult {
    const { title, where } = this.#names(cell, at, row);
    return html`<header>
      <div>
        <h2>${title}</h2>
        <div class="where">${where}</div>
      </div>
      <div class="head-acts">
        <button class="plain fold" aria-expanded=${this.less ? 'false' : 'true'} @click=${() => {
          this.less = !this.less;
        }}>${this.less ? 'more' : 'less'}</button>
        <button class="x" aria-label="Close" @click=${this.#close}>${closeIcon()}</button>
      </div>
    </header>`;
  }

  #names(
    cell: Cell,
    at: FigureAt | null,
    row: number | null,
  ): { readonly title: string; readonly where: string } {
    const stop = stopOf(stopsOf(this.notebook.document), cell.id);
    const card = stop?.title ?? cell.title;
    if (cell.kind === 'calls' && row !== null)
      return { title: rowName(this.notebook, cell, row), where: `in ${card}` };
    if (!at) return { title: card, where: cell.gist ?? KIND_WORDS[cell.kind] };
    if (!at.node.includes('.'))
      return {
        title: cell.title,
        where: cell.title === card ? `${KIND_WORDS[cell.kind]}, ${at.node}` : `in ${card}, ${at.node}`,
      };
    const column = at.node.slice(at.node.indexOf('.') + 1);
    const known = 'columns' in cell ? cell.columns.find((one) => one.name === column) : undefined;
    const head = known?.title ?? column.replaceAll('_', ' ');
    if (row === null) return { title: head, where: `column of ${card}, ${at.node}` };
    return { title: `${rowName(this.notebook, cell, row)}: ${head}`, where: `in ${card}, ${at.node}` };
  }

  #callChoices(cell: Cell, row: number | null): TemplateResult | typeof nothing {
    if (cell.kind !== 'calls' || row === null) return nothing;
    const part = this.notebook.read(`${cell.name}.part`);
    const name = part.state === 'settled' && part.column.kind === 'text' ? part.column.values[row] : null;
    if (!name) return nothing;
    return html`<section><sw-call-choices .notebook=${this.notebook} .cellId=${cell.id} .partName=${name}></sw-call-choices></section>`;
  }

  /** The working of a figure; a part's call is told by its choices, not by the word that was chosen. */
  #figure(cell: Cell, at: FigureAt | null): TemplateResult | typeof nothing {
    const toldByChoices = cell.kind === 'calls' && at?.row !== null && this.trail.length === 0;
    if (!at || toldByChoices) return nothing;
    return html`<sw-figure-slip .notebook=${this.notebook} .at=${at}></sw-figure-slip>`;
  }

  #links(cell: Cell): TemplateResult | typeof nothing {
    const stops = stopsOf(this.notebook.document);
    const stop = stopOf(stops, cell.id);
    if (!stop) return nothing;
    const links = linksOf(stops, stop, (id) => this.notebook.links(id));
    if (links.fedBy.length + links.feeds.length === 0) return nothing;
    const list = (ids: readonly string[]): TemplateResult =>
      ids.length === 0
        ? html`<span class="quiet">nothing</span>`
        : html`<ul class="list">${ids.map((id) => this.#link(stops, id))}</ul>`;
    return html`<section class="two">
      <div><h3>Fed by</h3>${list(links.fedBy)}</div>
      <div><h3>Feeds</h3>${list(links.feeds)}</div>
    </section>`;
  }

  #link(stops: readonly Stop[], id: string): TemplateResult {
    const stop = stops.find((one) => one.id === id);
    const go = (): boolean => {
      const detail: PickDetail = { cell: id, node: null, row: null };
      return this.dispatchEvent(new CustomEvent('sw-visit', { detail, bubbles: true, composed: true }));
    };
    return html`<li><button class="go" @click=${go}>${stop?.title ?? id}</button></li>`;
  }

  #cellOf(picked: PickDetail, at: FigureAt | null): Cell | undefined {
    const { cells } = this.notebook.document;
    if (!at) return cells.find((cell) => cell.id === picked.cell);
    const name = at.node.includes('.') ? at.node.slice(0, at.node.indexOf('.')) : at.node;
    return cells.find((cell) => 'name' in cell && cell.name === name);
  }

  #gone(event: CustomEvent<GoDetail>): void {
    const { node, row, rows } = event.detail;
    this.trail = [...this.trail, { node, row, rows }];
    this.renderRoot.querySelector('.panel')?.scrollTo({ top: 0 });
  }

  #back(): void {
    this.trail = this.trail.slice(0, -1);
  }

  #backTo(): string {
    const before = this.trail.at(-2) ?? (this.picked?.node ? { node: this.picked.node } : null);
    return before ? before.node.replaceAll('_', ' ') : 'the card';
  }

  #close(): void {
    this.dispatchEvent(new CustomEvent('sw-close', { bubbles: true, composed: true }));
  }
}

const KIND_WORDS: Readonly<Record<Cell['kind'], string>> = {
  note: 'a note',
  value: 'a value',
  formula: 'a formula',
  table: 'a table',
  pairing: 'a pairing',
  tally: 'figures kept in sight',
  calls: 'one call for each part',
  plan: 'the best calls and purchases within all limits',
  picture: 'columns of a table, drawn',
  prep: 'shopping, jobs, pack and checks, for paper',
};

declare global {
  interface HTMLElementTagNameMap {
    'sw-side-panel': SidePanel;
  }
  interface HTMLElementEventMap {
    'sw-close': CustomEvent;
    'sw-visit': CustomEvent<PickDetail>;
  }
}
