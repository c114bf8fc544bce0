import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { showCount } from '../../src/formula/show.ts';
import { baseStyles } from './base-styles.ts';
import { controlStyles } from './control-styles.ts';
import type { Refusal } from './table-column-change.ts';
import { asksText, CLEAR_LENS, kindOf, type Lens, type Test, testsFor, type Where } from './table-lens.ts';
import { lensLineStyles } from './table-lens-line.styles.ts';
import type { Grid, GridColumn } from './table-model.ts';

/** `sw-lens`: the lens to lay on the grid from now on. */
export interface LensDetail {
  readonly lens: Lens;
}

/** `sw-find`: go to the next figure that holds this text, or to the one before. */
export interface FindDetail {
  readonly text: string;
  readonly backwards: boolean;
}

/** Conditions that may be asked at once. */
const MOST_WHERES = 6;

/**
 * Over a table: find a figure, sort the rows by a column, show only rows that fulfil conditions. It is a way of
 * looking: the table stays as it is, and Undo has nothing to do with it.
 *
 * @prop grid  @prop lens what is laid on the grid now  @prop placeCount rows shown
 * @prop stale rows would now be shown otherwise  @prop refusal why a condition cannot be read
 * @fires sw-lens {LensDetail}  @fires sw-find {FindDetail}  @fires sw-lens-close no detail; none leaves the card
 */
export class LensLine extends LitElement {
  static override properties: PropertyDeclarations = {
    grid: { attribute: false },
    lens: { attribute: false },
    placeCount: { attribute: false },
    stale: { attribute: false },
    refusal: { attribute: false },
  };

  static override styles = [baseStyles, controlStyles, lensLineStyles];

  declare grid: Grid;
  declare lens: Lens;
  declare placeCount: number;
  declare stale: boolean;
  declare refusal: Refusal | null;

  constructor() {
    super();
    this.lens = CLEAR_LENS;
    this.placeCount = 0;
    this.stale = false;
    this.refusal = null;
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  override render(): unknown {
    if (this.grid === undefined) return nothing;
    const { sorting, wheres } = this.lens;
    const isLaid = sorting !== null || wheres.length > 0;
    return html`<form role="search" aria-label="Find and sort in ${this.grid.title}"
      @submit=${(event: Event) => event.preventDefault()} @keydown=${this.#onKey}>
      <div class="line">
        ${this.#find()} ${this.#sort()}
        ${wheres.length < MOST_WHERES ? html`<button type="button" class="btn slim" @click=${this.#addWhere}>${wheres.length === 0 ? 'Show only rows…' : 'And…'}</button>` : nothing}
        <span class="end">
          ${isLaid ? html`<button type="button" class="plain" @click=${() => this.#lay(CLEAR_LENS)}>As the table stands</button>` : nothing}
          <button type="button" class="plain" @click=${this.#close}>Close</button>
        </span>
      </div>
      ${wheres.map((where, at) => this.#where(where, at))}
      <div role="status">${this.#says(isLaid)}</div>
    </form>`;
  }

  #says(isLaid: boolean): TemplateResult | typeof nothing {
    if (this.refusal !== null) {
      return html`<span class="says bad">${this.refusal.reason}. ${this.refusal.mend}</span>`;
    }
    if (!isLaid) return nothing;
    const rows = `${showCount(this.placeCount)} of ${showCount(this.grid.rowCount)} rows shown.`;
    return html`<span class="says">${rows} The table itself stays in its own order.</span>
      ${
        this.stale
          ? html` <span class="says">Figures have changed since.</span>
              <button type="button" class="plain" @click=${() => this.#lay(this.lens)}>Look again</button>`
          : nothing
      }`;
  }

  #find(): TemplateResult {
    return html`<label class="field"><span class="label">Find</span>
        <input id="find" type="search" enterkeyhint="search" autocomplete="off" spellcheck="false" @keydown=${this.#onFindKey} /></label>
      <button type="button" class="btn slim" @click=${() => this.#go(false)}>Next</button>
      <button type="button" class="btn slim" @click=${() => this.#go(true)}>Before</button>`;
  }

  #sort(): TemplateResult {
    const { sorting } = this.lens;
    const column = this.grid.columns.find((each) => each.id === sorting?.column);
    return html`<label class="field"><span class="label">Sorted by</span>
        <span class="pick"><select @change=${(event: Event) => this.#sortBy((event.target as HTMLSelectElement).value)}>
          <option value="" .selected=${live(sorting === null)}>the table’s own order</option>
          ${this.#columnOptions(sorting?.column ?? '')}
        </select></span></label>
      ${
        column === undefined || sorting === null
          ? nothing
          : html`<button type="button" class="btn slim" @click=${() => this.#lay({ ...this.lens, sorting: { ...sorting, falling: !sorting.falling } })}>${wayWords(column, sorting.falling)}<span class="sr">, turn round</span></button>`
      }`;
  }

  #columnOptions(now: string): unknown {
    return this.grid.columns.map(
      (column) =>
        html`<option value=${column.id} .selected=${live(column.id === now)}>${column.title}</option>`,
    );
  }

  #where(where: Where, at: number): TemplateResult {
    const column = this.grid.columns.find((each) => each.id === where.column) ?? this.grid.columns[0]!;
    const change = (after: Partial<Where>): void => this.#changeWhere(at, { ...where, ...after });
    const unit = asksText(where.test) ? column.unit : '';
    const value = (event: Event): string => (event.target as HTMLInputElement | HTMLSelectElement).value;
    return html`<div class="line" role="group" aria-label="Condition ${at + 1}">
      <span class="pick"><select aria-label="Column" @change=${(event: Event) => change({ column: value(event), test: 'filled', text: '' })}>
        ${this.#columnOptions(where.column)}</select></span>
      <span class="pick"><select aria-label="Test" @change=${(event: Event) => change({ test: value(event) as Test })}>
        ${testsFor(column).map(([test, words]) => html`<option value=${test} .selected=${live(test === where.test)}>${words}</option>`)}
      </select></span>
      ${
        // Not live: rows of a long table come while the next words are being typed, which must stay.
        asksText(where.test)
          ? html`<input aria-label="What ${column.title} is compared with" autocomplete="off" spellcheck="false"
              inputmode=${kindOf(column) === 'number' ? 'decimal' : 'text'}
              aria-invalid=${this.refusal === null ? 'false' : 'true'}
              .value=${where.text} @change=${(event: Event) => change({ text: value(event) })} />`
          : nothing
      }
      ${unit === '' ? nothing : html`<span class="says">${unit}</span>`}
      <button type="button" class="plain" @click=${() => this.#lay({ ...this.lens, wheres: this.lens.wheres.filter((_, i) => i !== at) })}>Take off</button>
    </div>`;
  }

  #addWhere = (): void => {
    const column = this.grid.columns[0];
    if (column === undefined) return;
    const test = testsFor(column)[0]![0];
    this.#lay({ ...this.lens, wheres: [...this.lens.wheres, { column: column.id, test, text: '' }] });
  };

  #changeWhere(at: number, where: Where): void {
    this.#lay({ ...this.lens, wheres: this.lens.wheres.with(at, where) });
  }

  #sortBy(column: string): void {
    this.#lay({ ...this.lens, sorting: column === '' ? null : { column, falling: false } });
  }

  #lay(lens: Lens): void {
    this.dispatchEvent(new CustomEvent<LensDetail>('sw-lens', { detail: { lens } }));
  }

  #go(backwards: boolean): void {
    const text = this.renderRoot.querySelector<HTMLInputElement>('#find')?.value ?? '';
    if (text.trim() === '') return;
    this.dispatchEvent(new CustomEvent<FindDetail>('sw-find', { detail: { text, backwards } }));
  }

  #onFindKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.isComposing) return;
    event.preventDefault();
    this.#go(event.shiftKey);
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.preventDefault();
    event.stopPropagation();
    this.#close();
  };

  #close = (): void => {
    this.dispatchEvent(new CustomEvent('sw-lens-close'));
  };
}

function wayWords(column: GridColumn, falling: boolean): string {
  const kind = kindOf(column);
  if (kind === 'text') return falling ? 'last letter first' : 'first letter first';
  if (kind === 'date') return falling ? 'latest first' : 'earliest first';
  if (kind === 'yes_no') return falling ? 'yes first' : 'no first';
  return falling ? 'largest first' : 'smallest first';
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-table-lens': LensLine;
  }
  interface HTMLElementEventMap {
    'sw-lens': CustomEvent<LensDetail>;
    'sw-find': CustomEvent<FindDetail>;
    'sw-lens-close': CustomEvent;
  }
}
