import {
  html,
  LitElement,
  noChange,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import type { Entry } from '../../src/notebook/document.ts';
import { readEntry } from '../../src/tables/read-entry.ts';
import { baseStyles } from './base-styles.ts';
import { figureFieldStyles } from './figure-field.styles.ts';
import { readTyped, type TypedColumn, typedText } from './typed-entry.ts';

/** What sort of entry the field takes. */
export type EntryColumn = TypedColumn;

/** `sw-entry`: a new, readable entry was written. */
export interface EntryDetail {
  readonly entry: Entry;
}

/** `sw-done`: writing has ended, and where the keyboard goes next; 'back' after Escape. */
export interface DoneDetail {
  readonly move: 'down' | 'right' | 'left' | 'none' | 'back';
}

/** `sw-step`: undo or redo was asked for in a field in which nothing is written. */
export interface StepDetail {
  readonly way: 'undo' | 'redo';
}

function stepOf(event: KeyboardEvent): StepDetail['way'] | null {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return null;
  if (event.key.toLowerCase() === 'z') return event.shiftKey ? 'redo' : 'undo';
  return event.key.toLowerCase() === 'y' ? 'redo' : null;
}

/**
 * A figure in pen, changed where it stands. Typing writes; Enter keeps and moves on; Tab keeps and moves
 * right (in a table; on a form it goes on as usual); Escape puts the old figure back. Text that cannot be
 * read is refused in place with its reason, and what was there stays.
 *
 * No slots. Parts: line (the ruled line with the figure), refusal (why an entry was refused).
 *
 * @prop entry the stored entry  @prop shown how it reads at rest  @prop column kind, unit and choices
 * @prop label name for screen readers  @prop unit words after the figure  @prop fault short reason why the
 *   stored entry cannot be used  @prop check refuses entries that can be read but may not stand  @prop was the figure before the last edit, struck through
 * @attr size 'blank' on a form (always a field), 'line' a small one in the panel, 'cell' inside a table cell
 *   that is being written
 * @attr align 'right' for figures
 * @fires sw-entry {EntryDetail} a new entry, only after a change made by the user
 * @fires sw-step {StepDetail} undo or redo, while nothing is written
 * @fires sw-done {DoneDetail} writing has ended (after sw-entry)
 */
export class FigureField extends LitElement {
  static override properties: PropertyDeclarations = {
    entry: { attribute: false },
    shown: {},
    column: { attribute: false },
    label: {},
    unit: {},
    fault: {},
    check: { attribute: false },
    was: {},
    size: { reflect: true },
    align: { reflect: true },
    writing: { state: true },
    refusal: { state: true },
  };

  static override styles = [baseStyles, figureFieldStyles];

  declare entry: Entry;
  declare shown: string;
  declare column: EntryColumn;
  declare label: string;
  declare unit: string;
  declare fault: string;
  declare check: ((entry: Entry) => { readonly reason: string; readonly mend: string } | null) | null;
  declare was: string;
  declare size: 'blank' | 'line' | 'cell';
  declare align: 'left' | 'right';
  declare private writing: boolean;
  declare private refusal: { reason: string; mend: string } | null;

  /** What stood in the field when writing began, to tell a change from a visit. */
  #began = '';
  /** Whether the next click in the field selects all of it: nothing was done in it since it was come to. */
  #isFresh = false;

  constructor() {
    super();
    this.entry = null;
    this.shown = '';
    this.column = { kind: 'text' };
    this.label = '';
    this.unit = '';
    this.fault = '';
    this.check = null;
    this.was = '';
    this.size = 'blank';
    this.align = 'left';
    this.writing = false;
    this.refusal = null;
  }

  /** Put the keyboard in the field. */
  override focus(): void {
    this.#control?.focus();
  }

  /** Begin writing, in a table: with the first key typed, or with the whole entry selected. */
  async begin(typed?: string): Promise<void> {
    await this.updateComplete;
    const control = this.#control;
    control?.focus();
    if (!(control instanceof HTMLInputElement)) return;
    if (typed === undefined) control.select();
    else if (control.type !== 'date') control.value = typed;
  }

  get #control(): HTMLInputElement | HTMLSelectElement | null {
    return this.renderRoot.querySelector('input, select');
  }

  override render(): unknown {
    const bad = Boolean(this.refusal || this.fault);
    return html`<div class="line ${bad ? 'bad' : ''}" part="line">
        ${this.#field(bad)}
        ${this.was && !this.writing ? html`<span class="was"><span class="sr">was </span>${this.was}</span>` : nothing}
        ${this.unit ? html`<span class="unit">${this.unit}</span>` : nothing}
      </div>
      <div id="refusal" aria-live="polite">${this.#refusalNote()}</div>`;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const control = this.#control;
    if (
      changed.has('entry') &&
      this.writing &&
      control instanceof HTMLInputElement &&
      control.value === this.#began
    ) {
      // The entry was changed from elsewhere (undo) under a field in which nothing is being written.
      this.#began = typedText(this.entry, this.column);
      control.value = this.#began;
    }
  }

  override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    if (this.size === 'cell' && this.refusal) {
      const box = this.getBoundingClientRect();
      this.style.setProperty('--refusal-x', `${Math.max(12, Math.min(box.left, innerWidth - 332))}px`);
      this.style.setProperty('--refusal-y', `${box.bottom + 4}px`);
    }
  }

  #refusalNote(): TemplateResult | typeof nothing {
    if (this.refusal) {
      return html`<div class="refusal" part="refusal">${sentence(this.refusal.reason)} <span>${this.refusal.mend}</span></div>`;
    }
    return this.fault ? html`<div class="refusal" part="refusal">${this.fault}</div>` : nothing;
  }

  #field(bad: boolean): TemplateResult {
    const { kind, options = [] } = this.column;
    if (kind === 'choice') return this.#select(['', ...options], typedText(this.entry, this.column), bad);
    if (kind === 'yes_no') return this.#select(['', 'yes', 'no'], typedText(this.entry, this.column), bad);
    // By touch a date is picked with the device's own calendar; with keys it is typed, or stepped by the arrows.
    const picks = kind === 'date' && matchMedia('(pointer: coarse)').matches;
    return html`<input
      type=${picks ? 'date' : 'text'}
      class=${kind === 'number' ? '' : 'text'}
      inputmode=${kind === 'number' ? 'decimal' : 'text'}
      placeholder=${kind === 'date' ? 'YYYY-MM-DD' : ''}
      autocomplete="off"
      spellcheck="false"
      enterkeyhint="next"
      aria-label=${this.label}
      aria-invalid=${bad ? 'true' : 'false'}
      aria-describedby="refusal"
      .value=${this.writing ? noChange : live((picks ? '' : this.shown) || typedText(this.entry, this.column))}
      @focus=${this.#start}
      @input=${() => {
        this.#isFresh = false;
        if (this.refusal) this.refusal = null;
      }}
      @click=${this.#onClick}
      @keydown=${this.#onKey}
      @blur=${() => this.#finish('none')}
    />`;
  }

  #select(options: readonly string[], current: string, bad: boolean): TemplateResult {
    const known = options.includes(current) ? options : [...options, current];
    return html`<select
      aria-label=${this.label}
      aria-invalid=${bad ? 'true' : 'false'}
      aria-describedby="refusal"
      @focus=${() => {
        this.writing = true;
      }}
      @keydown=${this.#onKey}
      @change=${(event: Event) => this.#keep((event.target as HTMLSelectElement).value)}
      @blur=${() => {
        this.writing = false;
      }}
    >
      ${known.map((option) => html`<option value=${option} ?selected=${option === current} .selected=${option === current}>${option || '–'}</option>`)}
    </select>`;
  }

  #start(event: FocusEvent): void {
    if (this.writing) return;
    const input = event.target as HTMLInputElement;
    this.#began = typedText(this.entry, this.column);
    input.value = this.#began;
    this.writing = true;
    this.#isFresh = true;
    input.select();
  }

  /** The first click selects all, as the first key writes over it; a second one puts the caret where it is. */
  #onClick(event: MouseEvent): void {
    const input = event.target as HTMLInputElement;
    if (this.#isFresh && input.selectionStart === input.selectionEnd) input.select();
    this.#isFresh = false;
  }

  #onKey(event: KeyboardEvent): void {
    const input = event.target as HTMLInputElement | HTMLSelectElement;
    if (event.isComposing) return;
    const step = stepOf(event);
    const days = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    const stepped =
      days !== 0 && this.column.kind === 'date' && input.type === 'text' ? dayAfter(input.value, days) : null;
    if (stepped !== null) {
      event.preventDefault();
      event.stopPropagation();
      input.value = stepped;
    } else if (step && input.value === this.#began) {
      // Nothing is written here to take back: undo means the notebook's last edit.
      event.preventDefault();
      this.dispatchEvent(
        new CustomEvent<StepDetail>('sw-step', { detail: { way: step }, bubbles: true, composed: true }),
      );
    } else if (event.key === 'Escape') {
      const changed = this.writing && input.value !== this.#began;
      if (this.size !== 'cell' && !changed && !this.refusal) return;
      event.preventDefault();
      event.stopPropagation();
      this.#back(input);
    } else if (event.key === 'Enter' && !(input instanceof HTMLSelectElement && this.size !== 'cell')) {
      event.preventDefault();
      event.stopPropagation();
      this.#finish('down');
    } else if (event.key === 'Tab' && this.size === 'cell') {
      event.preventDefault();
      event.stopPropagation();
      this.#finish(event.shiftKey ? 'left' : 'right');
    }
  }

  #back(input: HTMLInputElement | HTMLSelectElement): void {
    input.value = typedText(this.entry, this.column);
    this.#began = input.value;
    this.refusal = null;
    if (input instanceof HTMLInputElement) input.select();
    this.#isFresh = true;
    this.#done('back');
  }

  /** Keep what was written and go on; if it cannot be read, stay, unless the field is being left anyway. */
  #finish(move: DoneDetail['move']): void {
    if (!this.writing) return;
    const input = this.#control;
    if (!input) return;
    const changed = input.value !== this.#began;
    if (changed && !this.#keep(input.value) && move !== 'none') return;
    if (move === 'none') this.writing = false;
    this.#began = typedText(this.entry, this.column);
    // From the last blank of a form the keyboard goes nowhere: what is typed next writes over the figure again.
    if (move !== 'none' && this.size !== 'cell' && input instanceof HTMLInputElement) input.select();
    this.#done(move);
  }

  /** Read the text; true when it was kept. */
  #keep(text: string): boolean {
    const read = this.#read(text);
    if ('reason' in read) {
      this.refusal = { reason: read.reason, mend: read.mend };
      return false;
    }
    this.refusal = null;
    if (read.entry !== this.entry) {
      this.entry = read.entry;
      this.dispatchEvent(
        new CustomEvent<EntryDetail>('sw-entry', {
          detail: { entry: read.entry },
          bubbles: true,
          composed: true,
        }),
      );
    }
    return true;
  }

  #read(text: string): { readonly entry: Entry } | { readonly reason: string; readonly mend: string } {
    const read = readTyped(text, this.column);
    return 'reason' in read ? read : (this.check?.(read.entry) ?? read);
  }

  #done(move: DoneDetail['move']): void {
    this.dispatchEvent(
      new CustomEvent<DoneDetail>('sw-done', { detail: { move }, bubbles: true, composed: true }),
    );
  }
}

/**
 * The date so many days later; null for text that is no date.
 *
 * @example dayAfter('2026-02-28', 1) // '2026-03-01'
 */
export function dayAfter(text: string, days: number): string | null {
  const read = readEntry(text, { kind: 'date' });
  if ('reason' in read || typeof read.entry !== 'string') return null;
  const at = new Date(`${read.entry}T00:00:00Z`);
  at.setUTCDate(at.getUTCDate() + days);
  return at.toISOString().slice(0, 10);
}

/** A reason as a sentence of its own. */
function sentence(reason: string): string {
  const whole = `${reason.charAt(0).toUpperCase()}${reason.slice(1)}`;
  return /[.!?]$/.test(whole) ? whole : `${whole}.`;
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-figure-field': FigureField;
  }
  interface HTMLElementEventMap {
    'sw-entry': CustomEvent<EntryDetail>;
    'sw-done': CustomEvent<DoneDetail>;
    'sw-step': CustomEvent<StepDetail>;
  }
}
