import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { brandIcon, faultIcon } from '../../../cells/shared/icons.ts';
import { NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { notebookEdit } from '../../notebook/edits.ts';
import type { KeeperState } from '../../notebook/storage/keeper.ts';
import { chooseTheme, currentTheme, type Theme } from '../look/theme.ts';
import { headBarStyles } from './head-bar.styles.ts';
import { keptWords } from './kept-words.ts';

/** What the buttons of the head bar ask of the page. */
export type HeadAction =
  | 'import'
  | 'notebooks'
  | 'moments'
  | 'units'
  | 'merge'
  | 'open'
  | 'save-file'
  | 'keep-file'
  | 'new'
  | 'print'
  | 'walk'
  | 'undo'
  | 'redo'
  | 'retry';

/**
 * The head bar: brand, notebook name and gist (written in place), where it is kept, undo and redo, the menu
 * of notebook actions, and the light. When keeping fails it says so under the bar, with a retry and a way to
 * save the notebook as a file.
 *
 * @prop notebook  @prop kept state of keeping  @prop file name of the file on disk that is kept current, or ''
 * @prop notice a sentence about what was found at opening  @prop mend what helps against it, or null
 * @fires sw-action {HeadAction} a button was pressed
 */
export class HeadBar extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    kept: { attribute: false },
    file: {},
    notice: {},
    mend: {},
    menu: { state: true },
  };

  static override styles = [baseStyles, controlStyles, headBarStyles];

  declare kept: KeeperState;
  declare file: string;
  declare notice: string;
  declare mend: 'open' | 'save-file' | null;
  declare private menu: boolean;
  /** What is being typed and not yet taken: a drawing meanwhile leaves it alone. */
  #typed: { readonly field: 'title' | 'gist'; readonly text: string } | null = null;

  constructor() {
    super();
    this.kept = { kind: 'keeping' };
    this.file = '';
    this.notice = '';
    this.mend = null;
    this.menu = false;
    new NotebookController(
      this,
      () => this.notebook,
      // Without figures: what can be undone has changed.
      (change) => change.document || change.nodes.size === 0,
    );
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('pointerdown', this.#closeMenu);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('pointerdown', this.#closeMenu);
  }

  readonly #closeMenu = (event: Event): void => {
    if (this.menu && !event.composedPath().includes(this.renderRoot.querySelector('.holder') as EventTarget))
      this.menu = false;
  };

  override render(): unknown {
    if (!this.notebook) return nothing;
    return html`<header class="bar">
        <div class="brand">${brandIcon()}<span>Sparewell</span></div>
        <div class="title">
          <h1>${this.#written('title', 'Notebook name', '')}</h1>
          ${this.#written('gist', 'A few words about the notebook', 'gist')}
        </div>
        <div class="right">
          <span class="kept" role="status">${keptWords(this.kept)}</span>
          ${this.file ? html`<span class="kept">and in ${this.file}</span>` : nothing}
          <button class="btn slim wide" ?disabled=${!this.notebook.canUndo} @click=${() => this.#act('undo')}>Undo</button>
          <button class="btn slim wide" ?disabled=${!this.notebook.canRedo} @click=${() => this.#act('redo')}>Redo</button>
          <button class="btn slim wide" @click=${() => this.#act('import')}>Import</button>
          <div class="holder" @keydown=${this.#menuKey}>
            <button class="btn slim" aria-expanded=${this.menu ? 'true' : 'false'} @click=${() => {
              this.menu = !this.menu;
            }}>Notebook</button>
            ${this.menu ? this.#menu() : nothing}
          </div>
          ${this.#light('')}
        </div>
      </header>
      ${this.#trouble()}`;
  }

  #written(field: 'title' | 'gist', label: string, part: string): TemplateResult {
    return html`<input
      class=${part}
      aria-label=${label}
      placeholder=${field === 'gist' ? 'add a few words' : ''}
      autocomplete="off"
      spellcheck="false"
      .value=${live(this.#typed?.field === field ? this.#typed.text : this.notebook.document[field])}
      @input=${(event: Event) => {
        this.#typed = { field, text: (event.target as HTMLInputElement).value };
      }}
      @change=${(event: Event) => this.#write(field, event.target as HTMLInputElement)}
      @keydown=${(event: KeyboardEvent) => this.#writeKey(event, field)}
    />`;
  }

  #write(field: 'title' | 'gist', input: HTMLInputElement): void {
    const text = input.value.trim();
    this.#typed = null;
    if (field === 'title' && text === '') {
      input.value = this.notebook.document.title;
    } else if (text !== this.notebook.document[field]) {
      this.notebook.apply(notebookEdit(this.notebook.document, field, text));
    }
  }

  #writeKey(event: KeyboardEvent, field: 'title' | 'gist'): void {
    const input = event.target as HTMLInputElement;
    if (event.key === 'Enter') input.blur();
    if (event.key === 'Escape') {
      event.stopPropagation();
      this.#typed = null;
      input.value = this.notebook.document[field];
      input.blur();
    }
  }

  #menu(): TemplateResult {
    const item = (action: HeadAction, words: string, disabled = false): TemplateResult =>
      html`<button ?disabled=${disabled} @click=${() => this.#act(action)}>${words}</button>`;
    return html`<div class="menu">
      ${item('import', 'Import prices or rows')} ${item('print', 'Print prep sheet')}
      <hr />${item('moments', 'Moments and what-ifs')} ${item('units', 'Units and money')} ${item('merge', 'Compare a partner’s file')}
      <hr />${item('notebooks', 'All notebooks')} ${item('new', 'New notebook')} ${item('open', 'Open file')} ${item('save-file', 'Save as file')}
      ${'showSaveFilePicker' in globalThis ? item('keep-file', this.file ? `Keep in another file than ${this.file}` : 'Keep a file too') : nothing}
      <hr />${item('undo', 'Undo', !this.notebook.canUndo)} ${item('redo', 'Redo', !this.notebook.canRedo)}
      ${item('walk', 'Show me round')}
      ${this.#light('in-menu')}
      <p class="kept-note">${keptWords(this.kept)}</p>
    </div>`;
  }

  #menuKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || !this.menu) return;
    event.stopPropagation();
    this.menu = false;
    this.renderRoot.querySelector<HTMLElement>('.holder > .btn')?.focus();
  }

  #light(part: string): TemplateResult {
    const button = (theme: Theme, word: string): TemplateResult =>
      html`<button aria-pressed=${currentTheme() === theme ? 'true' : 'false'} @click=${() => this.#choose(theme)}>${word}</button>`;
    return html`<div class="light ${part}" role="group" aria-label="Light">${button('day', 'Day')}${button('shed', 'Shed')}</div>`;
  }

  #choose(theme: Theme): void {
    chooseTheme(theme);
    this.requestUpdate();
  }

  #trouble(): TemplateResult | typeof nothing {
    if (this.kept.kind === 'failed') {
      return html`<div class="failed" role="alert">
        ${faultIcon()}<span class="says">${this.kept.message} All edits are still on this page.</span>
        <button class="btn slim" @click=${() => this.#act('retry')}>Retry</button>
        <button class="btn slim" @click=${() => this.#act('save-file')}>Save as file</button>
      </div>`;
    }
    if (this.notice === '') return nothing;
    return html`<div class="failed" role="status">
      ${faultIcon()}<span class="says">${this.notice}</span>
      ${this.mend ? html`<button class="btn slim" @click=${() => this.#act(this.mend ?? 'open')}>${this.mend === 'open' ? 'Open file' : 'Save as file'}</button>` : nothing}
      <button class="btn slim" @click=${() => {
        this.notice = '';
      }}>Understood</button>
    </div>`;
  }

  #act(action: HeadAction): void {
    this.menu = false;
    this.dispatchEvent(
      new CustomEvent<HeadAction>('sw-action', { detail: action, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-head-bar': HeadBar;
  }
  interface HTMLElementEventMap {
    'sw-action': CustomEvent<HeadAction>;
  }
}
