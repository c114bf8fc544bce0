import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PairingCell, TableCell } from '../../src/notebook/document.ts';
import { addColumn } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { baseStyles } from './base-styles.ts';
import { says } from './cell-events.ts';
import { controlStyles } from './control-styles.ts';
import type { KeepDetail } from './formula-line.ts';
import { closeIcon } from './icons.ts';
import { columnSettingsStyles } from './table-column-settings.styles.ts';
import { KIND_WORDS } from './table-column-settings.ts';
import { type NewColumn, newColumn } from './table-new-column.ts';

/**
 * Asks for a new column: its head, and whether its figures are entered by hand or worked out by one formula,
 * which shows what it would give before it is kept. A pairing's columns are all worked out.
 *
 * @prop notebook  @prop cellId id of the table or pairing
 * @fires sw-close no detail: the column was added, or not; does not leave the card
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 */
export class ColumnForm extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    kind: { state: true },
  };

  static override styles = [baseStyles, controlStyles, columnSettingsStyles];

  declare notebook: LiveNotebook;
  declare cellId: string;
  declare private kind: NewColumn['kind'];

  constructor() {
    super();
    this.cellId = '';
    this.kind = 'number';
  }

  get #cell(): TableCell | PairingCell | undefined {
    const cell = this.notebook.document.cells.find((each) => each.id === this.cellId);
    return cell?.kind === 'table' || cell?.kind === 'pairing' ? cell : undefined;
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  override render(): unknown {
    const cell = this.#cell;
    if (cell === undefined) return nothing;
    const worked = cell.kind === 'pairing' || this.kind === 'worked';
    return html`<section class="slip" aria-label="New column" @keydown=${this.#onKey}>
      <div class="top"><h3>New column</h3><span class="acts">
        <button type="button" class="x" aria-label="Close without adding a column" @click=${this.#close}>${closeIcon()}</button>
      </span></div>
      <div class="fields">
        <div><label class="label" for="title">Head</label>
          <input id="title" class="blank" autocomplete="off" placeholder="New column" @keydown=${this.#onHeadKey} /></div>
        ${cell.kind === 'pairing' ? nothing : this.#kinds()}
        ${worked ? this.#formula() : this.#add()}
      </div>
    </section>`;
  }

  #kinds(): TemplateResult {
    const kinds: readonly (readonly [NewColumn['kind'], string])[] = [
      ...KIND_WORDS,
      ['worked', 'worked out by a formula'],
    ];
    return html`<label><span class="label">Figures</span><span class="pick"><select @change=${(
      event: Event,
    ) => {
      this.kind = (event.target as HTMLSelectElement).value as NewColumn['kind'];
    }}>${kinds.map(([kind, words]) => html`<option value=${kind} ?selected=${kind === this.kind}>${words}</option>`)}</select></span></label>`;
  }

  #add(): TemplateResult {
    return html`<div><span class="label">&nbsp;</span>
      <button type="button" class="btn solid" @click=${() => this.#keep('')}>Add the column</button></div>`;
  }

  #formula(): TemplateResult {
    return html`<div class="wide"><span class="label">Formula, for every row</span>
      <sw-formula-line .notebook=${this.notebook} .cell=${this.cellId} .column=${''} .formula=${''} .label=${'Formula of the new column'} .quiet=${true}
        @sw-keep=${this.#onFormula} @sw-leave=${this.#close}></sw-formula-line></div>`;
  }

  #onHeadKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.isComposing) return;
    event.preventDefault();
    if (this.#cell?.kind === 'pairing' || this.kind === 'worked') {
      this.renderRoot.querySelector('sw-formula-line')?.focus();
    } else this.#keep('');
  };

  #onFormula = (event: CustomEvent<KeepDetail>): void => {
    event.stopPropagation();
    this.#keep(event.detail.formula);
  };

  #keep(formula: string): void {
    const cell = this.#cell;
    if (cell === undefined) return;
    const title = this.renderRoot.querySelector<HTMLInputElement>('#title')?.value ?? '';
    const kind = cell.kind === 'pairing' ? 'worked' : this.kind;
    const column = newColumn(cell, { title, kind, formula }, this.notebook.rowsOf(cell.name));
    this.notebook.apply(addColumn(this.notebook.document, cell.id, column, cell.columns.length));
    says(this, `Column ${column.title} added`);
    this.#close();
  }

  #close = (event?: Event): void => {
    event?.stopPropagation();
    this.dispatchEvent(new CustomEvent('sw-close', { bubbles: true }));
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.preventDefault();
    this.#close(event);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-column-form': ColumnForm;
  }
}
