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
import type { FormulaEditor } from './formula-editor.ts';
import type { TakeDetail } from './formula-editor-reference.ts';
import { formulaLineStyles } from './formula-line.styles.ts';
import { type EditorTools, fetchEditorTools } from './formula-line-tools.ts';
import { faultIcon } from './icons.ts';

/** `sw-keep`: the formula as the user wants it kept; the host makes the edit. */
export interface KeepDetail {
  readonly formula: string;
}

type Outcome = ReturnType<LiveNotebook['preview']>;

/** Longest that working a formula out may take before it waits for a pause in the typing, in ms. */
const QUICK_MS = 25;
/** How long such a pause is, in ms. */
const PAUSE_MS = 180;

/**
 * A formula being written: while it is typed, the line below says what it would give, in which unit, or what
 * is at fault, with the stretch marked. Enter keeps, Shift+Enter breaks the line, Escape leaves it as it was.
 * A formula with a fault may be kept too: it then stands in its cell with its fault.
 *
 * It is a plain field until the editor has been fetched, and stays one where it cannot be; the editor completes
 * names, columns, functions and units, and tells of the function whose call is being written.
 *
 * @prop notebook  @prop cell id of the cell  @prop column id of the worked column, '' for a formula cell or
 *   a new column  @prop formula what stands there now  @prop unit the declared unit, '' for the formula's own
 * @prop label name for screen readers  @prop quiet leaves the keyboard where it is when it comes
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
    quiet: { attribute: false },
    draft: { state: true },
    place: { state: true },
    tools: { state: true },
    referring: { state: true },
  };

  static override styles = [baseStyles, controlStyles, formulaLineStyles];

  declare notebook: LiveNotebook;
  declare cell: string;
  declare column: string;
  declare formula: string;
  declare unit: string;
  declare label: string;
  declare quiet: boolean;
  declare private draft: string;
  /** Where the cursor is in the draft. */
  declare private place: number;
  declare private tools: EditorTools | null;
  declare private referring: boolean;

  #editor: FormulaEditor | null = null;
  #outcome: Outcome | null = null;
  #tookMs = 0;
  #waits: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.cell = '';
    this.column = '';
    this.formula = '';
    this.unit = '';
    this.label = 'Formula';
    this.quiet = false;
    this.draft = '';
    this.place = 0;
    this.tools = null;
    this.referring = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#waits);
    this.#editor?.close();
    this.#editor = null;
    this.tools = null;
  }

  /** Put the keyboard in the formula. */
  override focus(): void {
    if (this.#editor !== null) this.#editor.focus();
    else this.#area?.focus();
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('formula')) {
      this.draft = this.formula;
      this.place = this.draft.length;
      if (this.#editor !== null && this.#editor.text !== this.draft) this.#editor.write(this.draft);
    }
    if (changed.has('formula') || changed.has('draft' as never) || changed.has('unit')) this.#workOut();
  }

  override firstUpdated(): void {
    const area = this.#area;
    if (!this.quiet) area?.focus();
    area?.setSelectionRange(area.value.length, area.value.length);
    this.#fit();
    void this.#open();
  }

  override updated(): void {
    const fault = this.#fault;
    const { from, to } = fault?.place ?? {};
    this.#editor?.mark(from === undefined || to === undefined ? null : { from, to });
  }

  get #area(): HTMLTextAreaElement | null {
    return this.renderRoot.querySelector('textarea');
  }

  get #fault(): Fault | null {
    return this.#outcome !== null && 'fault' in this.#outcome ? this.#outcome.fault : null;
  }

  /** The editor takes the place of the plain field, with what has been written there meanwhile. */
  async #open(): Promise<void> {
    let tools: EditorTools;
    try {
      tools = await fetchEditorTools();
    } catch {
      // Without the editor the plain field serves: it lacks only what completes and explains.
      return;
    }
    const area = this.#area;
    const parent = this.renderRoot.querySelector<HTMLElement>('.editor');
    if (!this.isConnected || area === null || parent === null || this.#editor !== null) return;
    const hadFocus = this.shadowRoot?.activeElement === area;
    this.#editor = tools.openFormulaEditor({
      parent,
      root: this.renderRoot as ShadowRoot,
      text: this.draft,
      selection: { from: area.selectionStart, to: area.selectionEnd },
      label: this.label,
      describedBy: 'outcome',
      offers: (formula, place, asked) =>
        tools.offersAt(formula, place, this.notebook.scopeOf(this.cell), asked),
      changed: (text, place) => {
        this.draft = text;
        this.place = place;
      },
      keep: () => this.#keep(),
      leave: () => this.#leave(),
    });
    this.tools = tools;
    if (hadFocus) this.#editor.focus();
  }

  override render(): unknown {
    const fault = this.#fault;
    return html`<div class="paper" @keydown=${this.#onEditorKey}>
        <div class="editor"></div>
        ${this.tools === null ? this.#plainField(fault) : nothing}
      </div>
      ${this.tools === null ? nothing : this.tools.callHelp(this.draft, this.place)}
      <div class="outcome">
        <span class="says" id="outcome" aria-live="polite">${this.#words()}</span>
        <span class="acts">
          ${fault?.fix ? html`<button class="btn slim fix" @click=${() => this.#write(fault.fix?.formula ?? this.draft)}>${fault.fix.label}</button>` : nothing}
          ${this.tools === null ? nothing : html`<button class="plain" @click=${this.#refer}>Functions</button>`}
          <button class="plain" @click=${this.#leave}>Leave</button>
          <button class="btn slim solid" @click=${this.#keep}>${fault ? 'Keep with its fault' : 'Keep'}</button>
        </span>
      </div>
      ${
        this.referring
          ? html`<sw-function-reference @sw-take=${(event: CustomEvent<TakeDetail>) => this.#take(event.detail.name)}></sw-function-reference>`
          : nothing
      }`;
  }

  #plainField(fault: Fault | null): TemplateResult {
    return html`<div class="mirror" aria-hidden="true">${this.#mirror(fault)}</div>
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
      ></textarea>`;
  }

  /** Works the draft out at once; where that takes long, in the next pause of the typing. */
  #workOut(): void {
    clearTimeout(this.#waits);
    if (this.#tookMs <= QUICK_MS) this.#preview();
    else
      this.#waits = setTimeout(() => {
        this.#preview();
        this.requestUpdate();
      }, PAUSE_MS);
  }

  #preview(): void {
    const began = performance.now();
    this.#outcome =
      this.draft.trim() === ''
        ? null
        : this.notebook.preview(this.draft, {
            cell: this.cell,
            column: this.column || undefined,
            unit: this.unit || undefined,
          });
    this.#tookMs = performance.now() - began;
  }

  #mirror(fault: Fault | null): unknown {
    const { from, to } = fault?.place ?? {};
    if (from === undefined || to === undefined) return this.draft;
    return html`${this.draft.slice(0, from)}<mark>${this.draft.slice(from, to)}</mark>${this.draft.slice(to)}`;
  }

  #words(): TemplateResult | string {
    const outcome = this.#outcome;
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
    if (this.#editor !== null) {
      this.#editor.write(text);
      return;
    }
    this.#area?.focus();
    void this.updateComplete.then(() => this.#fit());
  }

  #refer = async (): Promise<void> => {
    await import('./formula-editor-register.ts');
    this.referring = true;
    await this.updateComplete;
    this.renderRoot.querySelector('sw-function-reference')?.show();
  };

  #take(name: string): void {
    this.#editor?.insert(`${name}(`);
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

  /** What the editor used is no key of the card around it. */
  #onEditorKey(event: KeyboardEvent): void {
    if (event.defaultPrevented && (event.key === 'Enter' || event.key === 'Escape')) event.stopPropagation();
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
