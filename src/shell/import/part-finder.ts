import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import type { FoundRow } from '../../import/import-session.ts';
import type { PriceRow } from '../../import/price-row.ts';
import { countWords, offerWords, priceWords } from './offer-words.ts';
import { partFinderStyles } from './part-finder.styles.ts';
import type { Candidate, PriceList } from './price-list.ts';

/**
 * Finds the row of a price list for one part: the likely ones are there at once, others are searched for as one
 * types.
 *
 * @prop list  @prop partName name of the part  @prop candidates likely rows, best first
 * @fires sw-found {PriceRow} a row was chosen for the part
 */
export class PartFinder extends LitElement {
  static override properties: PropertyDeclarations = {
    list: { attribute: false },
    partName: {},
    candidates: { attribute: false },
    found: { state: true },
    words: { state: true },
  };

  static override styles = [baseStyles, controlStyles, partFinderStyles];

  declare list: PriceList;
  declare partName: string;
  declare candidates: readonly Candidate[];
  declare private found: readonly FoundRow[] | null;
  declare private words: string;

  constructor() {
    super();
    this.candidates = [];
    this.found = null;
    this.words = '';
  }

  override focus(): void {
    this.renderRoot.querySelector('input')?.focus();
  }

  override render(): TemplateResult {
    const rows = this.found?.map(({ row }) => row) ?? this.candidates.map(({ offer }) => offer);
    return html`<label class="search">
        <span>Search the file for ${this.partName}</span>
        <input type="search" autocomplete="off" spellcheck="false" maxlength="120" @input=${this.#onInput} />
      </label>
      <p class="sr" role="status">${this.found ? `${countWords(rows.length, 'row', 'rows')} found` : ''}</p>
      ${
        rows.length === 0
          ? html`<p class="none">${this.words ? `No row of the file has “${this.words}”.` : 'Nothing in the file has its words. Type others.'}</p>`
          : html`<ul>${rows.map((row) => this.#row(row))}</ul>`
      }`;
  }

  #row(row: PriceRow): TemplateResult {
    const held = this.list.partOf(row.record);
    return html`<li>
      <span class="ln">line ${row.line}</span>
      <span class="what">${offerWords(row)}${held === null ? nothing : html` <em>taken for ${held || 'no part'}</em>`}</span>
      <span class="num">${priceWords(row)}</span>
      <button class="btn slim" aria-label="Take line ${row.line} for ${this.partName}" @click=${() => this.#take(row)}>Take</button>
    </li>`;
  }

  async #onInput(event: Event): Promise<void> {
    const words = (event.target as HTMLInputElement).value.trim();
    this.words = words;
    if (words === '') {
      this.found = null;
      return;
    }
    const found = await this.list.find(words);
    // Answers to what was typed before are out of date.
    if (words === this.words) this.found = found;
  }

  #take(row: PriceRow): void {
    this.dispatchEvent(new CustomEvent<PriceRow>('sw-found', { detail: row }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-part-finder': PartFinder;
  }
  interface HTMLElementEventMap {
    'sw-found': CustomEvent<PriceRow>;
  }
}
