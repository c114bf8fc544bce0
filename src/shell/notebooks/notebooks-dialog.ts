import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { closeIcon, faultIcon } from '../../../cells/shared/icons.ts';
import { sizeWords } from '../size-words.ts';
import {
  changedWords,
  inPlace,
  type NotebookShelf,
  type ShelfLine,
  type TakenOff,
} from './notebook-shelf.ts';
import { notebooksDialogStyles } from './notebooks-dialog.styles.ts';

/** `sw-notebook`: what the page is asked to do; the list does the rest itself. */
export interface NotebookDetail {
  readonly act: 'open' | 'copy' | 'rename' | 'remove' | 'new' | 'open-file' | 'own-trip';
  /** The notebook concerned; '' for `new`, `open-file` and `own-trip`. */
  readonly id: string;
  /** The new title, for `rename` of the notebook that is open. */
  readonly title?: string;
}

/**
 * All notebooks on this device: open, copy, rename, remove (and put back), begin a new one, open a file.
 *
 * @prop shelf  @prop openId id of the notebook on the page
 * @fires sw-notebook {NotebookDetail}
 */
export class NotebooksDialog extends LitElement {
  static override properties: PropertyDeclarations = {
    shelf: { attribute: false },
    openId: { attribute: false },
    lines: { state: true },
    renaming: { state: true },
    taken: { state: true },
    trouble: { state: true },
  };

  static override styles = [baseStyles, controlStyles, notebooksDialogStyles];

  declare shelf: NotebookShelf;
  declare openId: string;
  declare private lines: readonly ShelfLine[] | null;
  declare private renaming: string | null;
  declare private taken: readonly TakenOff[];
  declare private trouble: string;

  constructor() {
    super();
    this.openId = '';
    this.lines = null;
    this.renaming = null;
    this.taken = [];
    this.trouble = '';
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  async show(): Promise<void> {
    await this.updateComplete;
    if (this.#dialog?.open === false) {
      // What was shown the last time may be gone or called otherwise by now.
      this.lines = null;
      await this.updateComplete;
      this.#dialog.showModal();
    }
    await this.refresh();
  }

  close(): void {
    this.#dialog?.close();
  }

  /** Reads the list again, and then what is inside each notebook. */
  async refresh(): Promise<void> {
    try {
      const lines = await this.shelf.lines();
      this.lines = this.lines === null ? lines : inPlace(this.lines, lines);
    } catch (error) {
      this.lines = [];
      this.trouble = wordsOf(error);
      return;
    }
    for (const line of this.lines) {
      const { inside } = await this.shelf.lookInto(line);
      // The line itself may have been renamed meanwhile, or the list closed and shown anew.
      this.lines = this.lines?.map((each) => (each.id === line.id ? { ...each, inside } : each)) ?? null;
    }
  }

  override render(): TemplateResult {
    return html`<dialog aria-labelledby="heading" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <header role="none">
        <h2 id="heading">Notebooks on this device</h2>
        <button type="button" class="x" aria-label="Close the list" @click=${this.close}>${closeIcon()}</button>
      </header>
      ${this.lines === null ? html`<p class="none" role="status">Looking…</p>` : this.#list(this.lines)}
      <div role="status">
        ${this.taken.map((each) => html`<p class="taken">${each.document.title} was removed. <button type="button" class="plain" @click=${() => this.#putBack(each)}>Put it back</button></p>`)}
        ${this.trouble === '' ? nothing : html`<p class="bad">${faultIcon()}${this.trouble}</p>`}
      </div>
      <footer>
        <button type="button" class="btn" @click=${() => this.#ask({ act: 'open-file', id: '' })}>Open a file</button>
        <button type="button" class="btn" @click=${() => this.#ask({ act: 'own-trip', id: '' })}>Start your own trip</button>
        <button type="button" class="btn solid" @click=${() => this.#ask({ act: 'new', id: '' })}>New notebook</button>
      </footer>
    </dialog>`;
  }

  #list(lines: readonly ShelfLine[]): TemplateResult {
    if (lines.length === 0) return html`<p class="none">No notebook is kept here.</p>`;
    // By notebook: a press that began on a line ends on it.
    return html`<ul>${repeat(
      lines,
      ({ id }) => id,
      (line) => this.#line(line),
    )}</ul>`;
  }

  #line(line: ShelfLine): TemplateResult {
    const { inside } = line;
    const isOpen = line.id === this.openId;
    const isBad = inside !== null && 'refusal' in inside;
    const size =
      inside === null || 'refusal' in inside
        ? ''
        : `, ${inside.cards} ${inside.cards === 1 ? 'card' : 'cards'}, ${sizeWords(inside.bytes)}`;
    return html`<li>
      <div class="what">
        ${this.renaming === line.id ? this.#renamer(line) : html`<b>${line.title}</b>`}
        <span>${isOpen ? 'open now, ' : ''}changed ${changedWords(line.savedAt, new Date())}${size}</span>
        ${isBad ? html`<span class="bad">${faultIcon()}${inside.refusal}</span>` : nothing}
      </div>
      <div class="acts">
        ${isOpen || isBad ? nothing : this.#button(line, 'Open', () => this.#ask({ act: 'open', id: line.id }))}
        ${isBad ? nothing : this.#button(line, 'Rename', () => this.#rename(line))}
        ${isBad ? nothing : this.#button(line, 'Copy', () => this.#ask({ act: 'copy', id: line.id }))}
        ${this.#button(line, isBad ? 'Remove for good' : 'Remove', () => this.#remove(line))}
      </div>
    </li>`;
  }

  #button(line: ShelfLine, word: string, press: () => void): TemplateResult {
    return html`<button type="button" class="plain" @click=${press}>${word}<span class="sr"> ${line.title}</span></button>`;
  }

  #renamer(line: ShelfLine): TemplateResult {
    return html`<input aria-label="New name of ${line.title}" .value=${line.title} autocomplete="off" spellcheck="false"
      @keydown=${(event: KeyboardEvent) => this.#onRenameKey(event, line)}
      @blur=${(event: FocusEvent) => this.#keepName(line, event.target as HTMLInputElement)} />`;
  }

  #rename(line: ShelfLine): void {
    this.renaming = line.id;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLInputElement>('li input')?.select(),
    );
  }

  #onRenameKey(event: KeyboardEvent, line: ShelfLine): void {
    if (event.isComposing) return;
    if (event.key === 'Enter') (event.target as HTMLInputElement).blur();
    if (event.key !== 'Escape') return;
    event.preventDefault();
    (event.target as HTMLInputElement).value = line.title;
    this.renaming = null;
  }

  async #keepName(line: ShelfLine, input: HTMLInputElement): Promise<void> {
    if (this.renaming !== line.id) return;
    this.renaming = null;
    const title = input.value.trim();
    if (title === '' || title === line.title) return;
    await this.#try(async () => {
      if (line.id === this.openId) this.#ask({ act: 'rename', id: line.id, title });
      else await this.shelf.rename(line.id, title);
      this.lines = this.lines?.map((each) => (each.id === line.id ? { ...each, title } : each)) ?? null;
    });
  }

  async #remove(line: ShelfLine): Promise<void> {
    if (line.id === this.openId) {
      this.#ask({ act: 'remove', id: line.id });
      return;
    }
    await this.takeOff(line.id);
  }

  /** Takes a notebook off the shelf and offers to put it back. */
  async takeOff(id: string): Promise<void> {
    await this.#try(async () => {
      const taken = await this.shelf.takeOff(id);
      if (taken !== null) this.taken = [...this.taken, taken];
      await this.refresh();
    });
  }

  async #putBack(taken: TakenOff): Promise<void> {
    await this.#try(async () => {
      await this.shelf.putBack(taken);
      this.taken = this.taken.filter((each) => each !== taken);
      await this.refresh();
    });
  }

  async #try(work: () => Promise<void>): Promise<void> {
    this.trouble = '';
    try {
      await work();
    } catch (error) {
      this.trouble = wordsOf(error);
    }
  }

  #ask(detail: NotebookDetail): void {
    this.dispatchEvent(new CustomEvent<NotebookDetail>('sw-notebook', { detail }));
  }
}

function wordsOf(error: unknown): string {
  return error instanceof Error && error.message !== '' ? error.message : 'The browser did not say why.';
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-notebooks': NotebooksDialog;
  }
  interface HTMLElementEventMap {
    'sw-notebook': CustomEvent<NotebookDetail>;
  }
}
