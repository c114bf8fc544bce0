import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import type { Fault } from '../../src/formula/fault.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { baseStyles } from './base-styles.ts';
import { controlStyles } from './control-styles.ts';
import { firstFigures, unitWords } from './figure-words.ts';
import { formulaLineStyles } from './formula-line.styles.ts';
import { faultIcon } from './icons.ts';

/** `sw-keep`: the formula as the user wants it kept; the host makes the edit. */
export interface KeepDetail {
  readonly formula: string;
}

/**
 * A formula being written: while it is typed, the line below says what it would give, in which unit, or what
 * is at fault, with the stretch marked. Enter keeps, Shift+Enter breaks the line, Escape leaves it as it was.
 * A formula with a fault may be kept too: it then stands in its cell with its fault.
 *
 * @prop notebook  @prop cell id of the cell  @prop column id of the worked column, '' for a formula cell or
 *   a new column  @prop formula what stands there now  @prop unit the declared unit, '' for the formula's own
 * @prop label name for screen readers
 * @fires sw-keep {KeepDetail}
 * @fires sw-leave no detail: writing has ended without a change
 */
export class FormulaLine extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cell: { attribute: false },
    column: { attribute: false },
    formula: { attribute: false },
    unit: { attribute: false },
    label: {},
    draft: { state: true },
  };

  static override styles = [baseStyles, controlStyles, formulaLineStyles];

  declare notebook: LiveNotebook;
  declare cell: string;
  declare column: string;
  declare formula: string;
  declare unit: string;
  declare label: string;
  declare private draft: string;

  constructor() {
    super();
    this.cell = '';
    this.column = '';
    this.formula = '';
    this.unit = '';
    this.label = 'Formula';
    this.draft = '';
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('formula')) this.draft = this.formula;
  }

  override firstUpdated(): void {
    const area = this.#area;
    area?.focus();
    area?.setSelectionRange(area.value.length, area.value.length);
    this.#fit();
  }

  get #area(): HTMLTextAreaElement | null {
    return this.renderRoot.querySelector('textarea');
  }

  override render(): unknown {
    const outcome = this.#outcome();
    const fault = outcome && 'fault' in outcome ? outcome.fault : null;
    return html`<div class="paper">
        <div class="mirror" aria-hidden="true">${this.#mirror(fault)}</div>
        <textarea
          rows="1"
          spellcheck="false"
          autocomplete="off"
          autocapitalize="off"
          aria-label=${this.label}
          aria-describedby="outcome"
          aria-invalid=${fault ? 'true' : 'false'}
          .value=${this.draft}
          @input=${this.#onInput}
          @keydown=${this.#onKey}
        ></textarea>
      </div>
      <div class="outcome">
        <span class="says" id="outcome" aria-live="polite">${this.#words(outcome)}</span>
        <span class="acts">
          ${fault?.fix ? html`<button class="btn slim fix" @click=${() => this.#write(fault.fix?.formula ?? this.draft)}>${fault.fix.label}</button>` : nothing}
          <button class="plain" @click=${this.#leave}>Leave</button>
          <button class="btn slim solid" @click=${this.#keep}>${fault ? 'Keep with its fault' : 'Keep'}</button>
        </span>
      </div>`;
  }

  #outcome(): ReturnType<LiveNotebook['preview']> | null {
    if (this.draft.trim() === '') return null;
    return this.notebook.preview(this.draft, {
      cell: this.cell,
      column: this.column || undefined,
      unit: this.unit || undefined,
    });
  }

  #mirror(fault: Fault | null): unknown {
    const { from, to } = fault?.place ?? {};
    if (from === undefined || to === undefined) return this.draft;
    return html`${this.draft.slice(0, from)}<mark>${this.draft.slice(from, to)}</mark>${this.draft.slice(to)}`;
  }

  #words(outcome: ReturnType<LiveNotebook['preview']> | null): TemplateResult | string {
    if (!outcome) return 'Write what the figure is worked out from. Names of cells and columns can be read.';
    if ('fault' in outcome) {
      return html`<span class="bad">${faultIcon()}${outcome.fault.message}</span> ${outcome.fault.mend ?? ''}`;
    }
    const unit = unitWords(outcome.type);
    return html`would give <span class="would">${firstFigures(outcome.column, outcome.type)}</span>${
      outcome.type.kind === 'number' ? `, ${unit ? `in ${unit}` : 'a plain number'}, units agree` : ''
    }`;
  }

  #write(text: string): void {
    this.draft = text;
    this.#area?.focus();
    void this.updateComplete.then(() => this.#fit());
  }

  #onInput(event: Event): void {
    this.draft = (event.target as HTMLTextAreaElement).value;
    this.#fit();
  }

  /** Grow with the text, where the browser does not do so by itself. */
  #fit(): void {
    const area = this.#area;
    if (!area || CSS.supports('field-sizing', 'content')) return;
    area.rows = Math.max(
      1,
      Math.round((area.scrollHeight - 15) / (parseFloat(getComputedStyle(area).lineHeight) || 22)),
    );
  }

  #onKey(event: KeyboardEvent): void {
    if (event.isComposing) return;
    if (event.key === 'Enter' && !event.shiftKey) {
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
    const formula = this.draft.trim();
    if (formula === '' || formula === this.formula) this.#leave();
    else
      this.dispatchEvent(
        new CustomEvent<KeepDetail>('sw-keep', { detail: { formula }, bubbles: true, composed: true }),
      );
  }

  #leave(): void {
    this.draft = this.formula;
    this.dispatchEvent(new CustomEvent('sw-leave', { bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-formula-line': FormulaLine;
  }
  interface HTMLElementEventMap {
    'sw-keep': CustomEvent<KeepDetail>;
    'sw-leave': CustomEvent;
  }
}
