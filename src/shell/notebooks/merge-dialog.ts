import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { faultIcon } from '../../../cells/shared/icons.ts';
import { showCount } from '../../formula/show.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import { EditError } from '../../notebook/edit-error.ts';
import { type Difference, partnerDifferences } from '../../notebook/merge-partner.ts';
import { takeEdit } from '../../notebook/merge-take.ts';
import type { Moment } from '../../notebook/moments.ts';
import { readFile } from '../session/notebook-files.ts';
import { mergeDialogStyles } from './merge-dialog.styles.ts';
import { NotebookDialog } from './notebook-dialog.ts';
import { notebooksDialogStyles } from './notebooks-dialog.styles.ts';

/** Differences that are listed; more are counted, and taken with all. */
const MOST_LISTED = 300;

/** The partner's file, read. */
interface Partner {
  readonly file: string;
  readonly document: NotebookDocument;
}

/**
 * What a notebook file sent back by the riding partner has otherwise than the notebook on the page, one by one.
 * Each is taken as one edit, which Undo takes back; nothing changes before.
 *
 * @prop notebook  @prop moments states that both may have begun from
 */
export class MergeDialog extends NotebookDialog {
  static override properties: PropertyDeclarations = {
    ...NotebookDialog.properties,
    moments: { attribute: false },
    partner: { state: true },
    base: { state: true },
    refusal: { state: true },
    said: { state: true },
  };

  static override styles = [baseStyles, controlStyles, notebooksDialogStyles, mergeDialogStyles];

  declare moments: readonly Moment[];
  declare private partner: Partner | null;
  /** Id of the moment that both began from; '' for none known. */
  declare private base: string;
  declare private refusal: string;
  declare private said: string;

  constructor() {
    super();
    this.moments = [];
    this.partner = null;
    this.base = '';
    this.refusal = '';
    this.said = '';
  }

  /** Reads the partner's file; one that cannot be read is refused with a sentence. */
  async open(file: File): Promise<void> {
    this.said = '';
    const opened = await readFile(file);
    this.partner = 'refusal' in opened ? null : { file: file.name, document: opened.document };
    this.refusal = 'refusal' in opened ? `${file.name}: ${opened.refusal} Nothing was changed.` : '';
  }

  override render(): TemplateResult {
    return this.frame(
      'A partner’s file',
      html`<p>A notebook file that was sent back is compared with ${this.notebook.document.title}. What you take comes in as one step of undo; the rest stays as you have it.</p>
        <p><button type="button" class="btn ${this.partner ? '' : 'solid'}" @click=${this.#choose}>Choose the file</button></p>
        <input type="file" hidden accept=".json,application/json" aria-label="The partner’s file" @change=${this.#onChosen} />
        <div role="status">
          ${this.refusal === '' ? nothing : html`<p class="bad">${faultIcon()}<span>${this.refusal}</span></p>`}
          ${this.said === '' ? nothing : html`<p>${this.said}</p>`}
        </div>
        ${this.partner === null ? nothing : this.#comparison(this.partner)}
`,
    );
  }

  #comparison({ file, document }: Partner): TemplateResult {
    const mine = this.notebook.document;
    const differences = this.#differences(document);
    return html`${
      document.id === mine.id
        ? nothing
        : html`<p class="other"><b>${file} is another notebook,</b> ${document.title}, or a copy of this one. Cells are compared where they have the same origin; look at each before you take it.</p>`
    }
      ${this.moments.length === 0 ? nothing : this.#since()}
      ${
        differences.length === 0
          ? html`<p class="none">${file} has nothing that differs.</p>`
          : html`<div class="all"><b>${showCount(differences.length)} ${differences.length === 1 ? 'thing differs' : 'things differ'}</b>
              <button type="button" class="btn" @click=${() => this.#take(differences, file)}>Take all</button></div>
            <ul>${differences.slice(0, MOST_LISTED).map((one) => this.#line(one, file))}</ul>
            ${differences.length > MOST_LISTED ? html`<p class="none">and ${showCount(differences.length - MOST_LISTED)} more</p>` : nothing}`
      }`;
  }

  #differences(theirs: NotebookDocument): readonly Difference[] {
    const common = this.moments.find(({ id }) => id === this.base)?.document ?? null;
    return partnerDifferences(this.notebook.document, theirs, common);
  }

  #since(): TemplateResult {
    return html`<label class="since"><span>Both began from</span>
      <span class="pick"><select @change=${(event: Event) => {
        this.base = (event.target as HTMLSelectElement).value;
      }}><option value="">no moment that is known</option>
        ${this.moments.map(({ id, name }) => html`<option value=${id} ?selected=${id === this.base}>${name}</option>`)}</select></span></label>`;
  }

  #line(one: Difference, file: string): TemplateResult {
    const { what, change } = one.words;
    return html`<li>
      <div class="what"><b>${what}</b><span>${one.of}: ${change}</span>
        ${one.by === 'both' ? html`<span class="both">You have changed this too: taking it gives up yours.</span>` : nothing}</div>
      <button type="button" class="plain" @click=${() => this.#take([one], file)}>Take<span class="sr"> ${what}, ${change}</span></button>
    </li>`;
  }

  #take(differences: readonly Difference[], file: string): void {
    if (this.partner === null) return;
    const [only] = differences;
    const what = differences.length === 1 ? only!.words.what : `${differences.length} differences`;
    const slots = differences.map(({ slot }) => slot);
    this.said = '';
    this.refusal = '';
    try {
      this.notebook.apply(
        takeEdit(this.notebook.document, this.partner.document, slots, `${what}, taken from ${file}`),
      );
      this.said = `${what} taken; Undo puts yours back.`;
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      this.refusal = `${what} cannot be taken by itself: ${error.message} Take what it needs first, or all.`;
    }
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('.all .btn, .body .btn')?.focus(),
    );
  }

  readonly #choose = (): void => {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  };

  #onChosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    // The same file may be chosen again.
    input.value = '';
    if (file) void this.open(file);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-merge': MergeDialog;
  }
}
