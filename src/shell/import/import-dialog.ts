import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { says } from '../../../cells/shared/cell-events.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { closeIcon, faultIcon } from '../../../cells/shared/icons.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { breath } from '../first-paint.ts';
import { changeTableStyles } from './change-table.styles.ts';
import { changeTable } from './change-table.ts';
import { dialogFoot } from './dialog-foot.ts';
import { fileSide } from './file-side.ts';
import { ImportDesk, type ImportSource } from './import-desk.ts';
import { importDialogStyles } from './import-dialog.styles.ts';
import { importPartsStyles } from './import-parts.styles.ts';
import { countWords } from './offer-words.ts';
import { partLines } from './part-lines.ts';
import { PriceList } from './price-list.ts';
import { rowsPreviewStyles } from './rows-preview.styles.ts';
import { rowsPreview } from './rows-preview.ts';
import { setAsideStyles } from './set-aside.styles.ts';
import { piecesQuestion, setAside } from './set-aside.ts';
import type { TableList } from './table-list.ts';
import { tableRows } from './table-rows.ts';

const STAGE_WORDS = {
  letters: 'reading its letters',
  records: 'parting its rows',
  figures: 'looking at its figures',
  rows: 'reading its rows',
} as const;

/** Of a list, below the file's rows: the parts, and what is set aside and changes. */
const SECTIONS = 2;

/**
 * The dialog in which a file becomes rows of a table: what was found in it, its rows under column pickers, the
 * parts they fit, what was turned away, what changes. Nothing changes in the notebook before it is accepted.
 *
 * @fires sw-says {SaysDetail} what was brought in
 */
export class ImportDialog extends LitElement {
  static override properties: PropertyDeclarations = {
    searching: { state: true },
    newSupplier: { state: true },
    over: { state: true },
  };

  static override styles = [
    baseStyles,
    controlStyles,
    importDialogStyles,
    importPartsStyles,
    rowsPreviewStyles,
    setAsideStyles,
    changeTableStyles,
  ];

  declare private searching: string | null;
  declare private newSupplier: boolean;
  declare private over: boolean;
  #desk: ImportDesk | null = null;
  /** The list whose sections are drawn, and how many of them are by now. */
  #drawn: { readonly list: ImportDesk['list']; readonly sections: number } = { list: null, sections: 0 };

  constructor() {
    super();
    this.searching = null;
    this.newSupplier = false;
    this.over = false;
  }

  /** Opens on a notebook; without a source it asks for one. */
  async show(notebook: LiveNotebook, source: ImportSource | null): Promise<void> {
    this.#desk?.dispose();
    this.#desk = new ImportDesk(notebook, () => this.requestUpdate());
    this.requestUpdate();
    await this.updateComplete;
    const dialog = this.renderRoot.querySelector('dialog');
    // A dialog that opens has the browser style all that it lays itself over: a turn of its own.
    if (!dialog?.open) await breath();
    if (!dialog?.open) dialog?.showModal();
    if (source) await this.#open(source);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#end();
  }

  #open(source: ImportSource): Promise<void> {
    this.searching = null;
    this.newSupplier = false;
    return this.#desk?.open(source) ?? Promise.resolve();
  }

  override render(): TemplateResult {
    const desk = this.#desk;
    const title = desk?.list && !(desk.list instanceof PriceList) ? 'Import rows' : 'Import prices';
    return html`<dialog
      aria-labelledby="heading"
      class=${this.over ? 'over' : ''}
      @keydown=${(event: KeyboardEvent) => event.stopPropagation()}
      @close=${this.#end}
      @dragover=${this.#onDragOver}
      @dragleave=${() => {
        this.over = false;
      }}
      @drop=${this.#onDrop}
      @paste=${this.#onPaste}
    >
      <div class="dlg">
        <div class="head">
          <h2 id="heading" tabindex="-1" autofocus>${title}</h2>
          <p>Nothing changes in the notebook until you bring the rows in.</p>
          <button class="x" aria-label="Close" @click=${this.#close}>${closeIcon()}</button>
        </div>
        ${desk ? this.#body(desk) : nothing}
      </div>
      <input type="file" hidden accept=".csv,.tsv,.txt,.gpx,text/csv,text/plain" @change=${this.#onChosen} />
    </dialog>`;
  }

  #body(desk: ImportDesk): TemplateResult {
    if (desk.phase === 'empty')
      return this.#ask('Drop a file here, paste rows, or choose one from this device.');
    if (desk.phase === 'refused') return this.#ask('', desk);
    if (desk.phase === 'reading' || desk.list === null) return this.#reading(desk);
    const { list } = desk;
    const isReading = desk.progress !== null;
    const sections = this.#drawn.list === list ? this.#drawn.sections : 0;
    return html`<div class="body" aria-busy=${isReading ? 'true' : 'false'}>
        ${fileSide(desk, {
          choose: this.#choose,
          newSupplier: this.newSupplier,
          askNewSupplier: (asked) => {
            this.newSupplier = asked;
          },
        })}
        <div class="mainpart">
          ${this.#question(desk)} ${list instanceof PriceList ? piecesQuestion(desk, list) : nothing} ${rowsPreview(desk)}
          ${sections === 0 ? nothing : list instanceof PriceList ? this.#prices(desk, list, sections) : tableRows(desk, list as TableList)}
        </div>
      </div>
      ${dialogFoot(desk, { cancel: this.#close, accept: this.#accept })}`;
  }

  /** A new list is drawn section by section, so that none holds up the page. */
  override updated(): void {
    const { list } = this.#desk ?? { list: null };
    if (this.#drawn.list !== list) this.#drawn = { list, sections: 0 };
    const { sections } = this.#drawn;
    if (list === null || sections === SECTIONS) return;
    setTimeout(() => {
      if (this.#drawn.list !== list || this.#drawn.sections !== sections) return;
      this.#drawn = { list, sections: sections + 1 };
      this.requestUpdate();
    });
  }

  #prices(desk: ImportDesk, list: PriceList, sections: number): TemplateResult {
    const parts = (): TemplateResult =>
      partLines(desk, list, {
        searching: this.searching,
        search: (part) => {
          this.searching = part;
          if (part !== null)
            void this.updateComplete.then(() => this.renderRoot.querySelector('sw-part-finder')?.focus());
        },
      });
    const changes = changeTable(desk, list);
    const two = (): TemplateResult => html`<div class="two">${setAside(desk, list)} ${changes}</div>`;
    // A newer file of a known supplier is mostly fitted already: what it changes comes first.
    const [first, second] = changes === nothing ? [parts, two] : [two, parts];
    return html`${first()} ${sections < SECTIONS ? nothing : second()}`;
  }

  /** The questions that the file leaves open, asked plainly above its rows. */
  #question(desk: ImportDesk): TemplateResult | typeof nothing {
    const question = desk.summary?.question;
    if (question) {
      return html`<div class="question" role="group" aria-label="Question about the file">
        <p>${question.sentence}</p>
        ${question.answers.map(
          ({ decimal, words }) =>
            html`<button class="btn" @click=${() => desk.rechoose({ decimal })}>${words}</button>`,
        )}
      </div>`;
    }
    const open = desk.list instanceof PriceList ? (desk.list.match?.questions ?? []) : [];
    const list = desk.list as PriceList;
    return html`${open.map(
      (one) => html`<div class="question" role="group" aria-label="Question about the file">
        <p>${one.sentence}</p>
        ${one.kind === 'price-column' ? this.#columnAnswers(desk, list, one.columns) : nothing}
        ${
          one.kind === 'currency'
            ? [...new Set([...one.candidates, desk.notebook.document.money])]
                .slice(0, 6)
                .map(
                  (code) =>
                    html`<button class="btn slim" @click=${() => desk.change(() => list.setCurrency(code), 'rows')}>${code}</button>`,
                )
            : nothing
        }
      </div>`,
    )}`;
  }

  #columnAnswers(desk: ImportDesk, list: PriceList, columns: readonly number[]): readonly TemplateResult[] {
    return columns.map(
      (column) =>
        html`<button class="btn slim" @click=${() => desk.change(() => list.setRole(column, 'price'), 'rows')}>${desk.summary?.heads[column]?.label ?? ''}</button>`,
    );
  }

  #reading({ progress, file }: ImportDesk): TemplateResult {
    const share = progress && progress.of > 0 ? progress.done / progress.of : 0;
    return html`<div class="ask-file" role="status">
      <h3>${file?.name ?? ''}</h3>
      <p>${progress ? `${STAGE_WORDS[progress.stage]}, ${Math.round(share * 100)} %` : 'being read'}</p>
      <progress max="1" .value=${share} aria-label="How far the file is read"></progress>
      <button class="btn" @click=${() => this.#desk?.stop()}>Stop</button>
    </div>`;
  }

  #ask(words: string, refused: ImportDesk | null = null): TemplateResult {
    return html`<div class="ask-file">
      ${
        refused
          ? html`<p class="refused" role="alert">${faultIcon()}<span><b>${refused.file?.name ?? ''}</b> ${refused.refusal}</span></p>
              <p>The notebook is as it was.</p>
              ${refused.plainQuotesMend ? html`<button class="btn" @click=${() => refused.openWithPlainQuotes()}>Read quotes as ordinary signs</button>` : nothing}`
          : html`<h3>Prices, legs, wear or readings</h3>`
      }
      <p>${words || 'Drop another file here, paste rows, or choose one.'}</p>
      <button class="btn solid" @click=${this.#choose}>Choose a file</button>
      <p class="quiet">CSV with any separator, decimal mark and letters, from any supplier; or a GPX track for the legs.</p>
    </div>`;
  }

  readonly #choose = (): void => {
    this.renderRoot.querySelector<HTMLInputElement>('input[type=file]')?.click();
  };

  #onChosen(event: Event): void {
    const input = event.target as HTMLInputElement;
    const file = input.files?.[0];
    // The same file may be chosen again.
    input.value = '';
    if (file) void this.#open(file);
  }

  #onDragOver(event: DragEvent): void {
    event.preventDefault();
    event.stopPropagation();
    this.over = true;
  }

  #onDrop(event: DragEvent): void {
    event.preventDefault();
    event.stopPropagation();
    this.over = false;
    const file = event.dataTransfer?.files[0];
    if (file) void this.#open(file);
  }

  #onPaste(event: ClipboardEvent): void {
    event.stopPropagation();
    if (event.composedPath()[0] instanceof HTMLInputElement) return;
    const file = event.clipboardData?.files[0];
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (file) void this.#open(file);
    else if (text.trim() !== '') void this.#open({ name: 'pasted rows', text });
  }

  readonly #accept = (): void => {
    const desk = this.#desk;
    if (!desk) return;
    const words = `${countWords(desk.count, 'row', 'rows')} brought in from ${desk.file?.name ?? 'the file'}`;
    if (!desk.accept()) return;
    this.#close();
    says(this, words);
  };

  readonly #close = (): void => {
    this.renderRoot.querySelector('dialog')?.close();
  };

  readonly #end = (): void => {
    this.#desk?.dispose();
    this.#desk = null;
    this.requestUpdate();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-import-dialog': ImportDialog;
  }
}
