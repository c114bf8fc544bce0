import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { NoteCell } from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import { CellElement } from '../shared/cell-element.ts';
import { noteCellStyles } from './note-cell.styles.ts';
import { noteProse } from './note-prose.ts';

/**
 * A note: text in Markdown, read as prose, written in place (Ctrl+Enter keeps, Escape leaves). With `caution`
 * it carries the caution hatch.
 *
 * No slots. Parts: sheet, head, prose (the set text).
 *
 * @fires sw-pick {PickDetail} never for a figure; notes have none
 */
export class NoteCellElement extends CellElement<NoteCell> {
  static override properties: PropertyDeclarations = { writing: { state: true } };
  static override styles = [CellElement.styles, noteCellStyles];

  declare private writing: boolean;

  constructor() {
    super();
    this.writing = false;
  }

  override enter(): void {
    this.#write();
  }

  protected override sheetClass(cell: NoteCell): string {
    return cell.caution ? 'is-caution' : '';
  }

  protected override headNote(_cell: NoteCell): unknown {
    return this.writing
      ? nothing
      : html`<button class="plain" @click=${this.#write}>Edit<span class="sr"> this note</span></button>`;
  }

  /** A note has no figures, so it has no state either. */
  protected override stateNote(_state: unknown, before: unknown = nothing): TemplateResult {
    return html`<span class="state">${before}</span>`;
  }

  protected override body(cell: NoteCell): TemplateResult {
    if (this.writing) return this.#writing(cell);
    const prose = html`<div class="prose" part="prose" @dblclick=${this.#write}>${this.#prose(cell.text)}</div>`;
    return cell.caution ? html`<div class="caution">${prose}</div>` : prose;
  }

  #prose(text: string): unknown {
    if (text.trim() === '') return html`<p class="empty">Nothing written yet.</p>`;
    const set = noteProse(text, () => this.requestUpdate());
    return set === null ? html`<p class="plain-text">${text}</p>` : unsafeHTML(set);
  }

  #writing(cell: NoteCell): TemplateResult {
    return html`<div class="write">
      <textarea aria-label="Text of ${cell.title}" .value=${cell.text} @keydown=${this.#onKey}></textarea>
      <div class="foot">
        <label><input type="checkbox" name="caution" .checked=${cell.caution ?? false} /> set as a caution</label>
        <span>Markdown: *stress*, **strong**, - list, # heading. Ctrl+Enter keeps, Escape leaves.</span>
        <span class="acts">
          <button class="plain" @click=${this.#leave}>Leave</button>
          <button class="btn slim solid" @click=${this.#keep}>Keep</button>
        </span>
      </div>
    </div>`;
  }

  async #write(): Promise<void> {
    this.writing = true;
    await this.updateComplete;
    this.renderRoot.querySelector('textarea')?.focus();
  }

  #onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
      event.preventDefault();
      event.stopPropagation();
      this.#keep();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      this.#leave();
    }
  }

  #keep(): void {
    const cell = this.cell;
    const text = this.renderRoot.querySelector('textarea')?.value ?? '';
    const caution = this.renderRoot.querySelector<HTMLInputElement>('input[name=caution]')?.checked ?? false;
    this.#leave();
    if (!cell || (text === cell.text && caution === (cell.caution ?? false))) return;
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, { ...cell, text, caution }));
  }

  #leave(): void {
    this.writing = false;
    this.rest();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-note-cell': NoteCellElement;
  }
}
