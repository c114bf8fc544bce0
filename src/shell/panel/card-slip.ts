import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { says } from '../../../cells/shared/cell-events.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { settingLine, settingStyles } from '../../../cells/shared/setting-line.ts';
import { type Cell, isNamed, type PairingCell, type TableCell } from '../../notebook/document.ts';
import { rename, replaceCell } from '../../notebook/edits.ts';
import { cellNames, nameRefusal } from '../../notebook/names.ts';
import { panelStyles } from './panel-styles.ts';

/** What the buttons of a card ask of the page. */
export type CardAction = 'move-up' | 'move-down' | 'remove' | 'add-below';

/**
 * The card that a cell stands on, as a card: its heading, gist and name, the source note, moving and removing.
 *
 * @prop notebook  @prop cellId
 * @fires sw-card {CardAction} a button was pressed
 */
export class CardSlip extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    noting: { state: true },
  };

  static override styles = [baseStyles, controlStyles, settingStyles, panelStyles];

  declare cellId: string;
  declare private noting: boolean;

  constructor() {
    super();
    this.cellId = '';
    this.noting = false;
    new NotebookController(
      this,
      () => this.notebook,
      (change) => change.document,
    );
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('cellId')) this.noting = false;
  }

  override render(): unknown {
    const cell = this.notebook?.document.cells.find((one) => one.id === this.cellId);
    if (!cell) return nothing;
    return html`${this.#source(cell)} ${this.#settings(cell)}`;
  }

  #source(cell: Cell): TemplateResult {
    const edit = this.noting
      ? nothing
      : html`<button class="plain" @click=${this.#write}>${cell.source ? 'Edit' : 'Write'}<span class="sr"> the source note</span></button>`;
    return html`<section>
      <h3>Source note ${edit}</h3>
      ${
        this.noting
          ? html`<textarea class="source" aria-label="Source note of ${cell.title}" .value=${cell.source ?? ''} @keydown=${this.#noteKey} @blur=${() => this.#keepNote(cell)}></textarea>`
          : html`<p class="handnote ${cell.source ? '' : 'none'}">${cell.source ?? 'Where these figures come from is not written yet.'}</p>`
      }
    </section>`;
  }

  #settings(cell: Cell): TemplateResult {
    return html`<section>
      <h3>This card</h3>
      <div class="settings">
        ${settingLine({
          label: cell.kind === 'value' ? 'Label' : 'Heading',
          entry: cell.title,
          check: (entry) =>
            entry === null ? { reason: 'A card has a heading', mend: 'Write a few words.' } : null,
          keep: (entry) => this.#replace({ ...cell, title: String(entry) }),
        })}
        ${settingLine({
          label: 'Few words',
          entry: cell.gist ?? null,
          keep: (entry) => this.#replace({ ...cell, gist: entry === null ? undefined : String(entry) }),
        })}
        ${isNamed(cell) ? this.#name(cell.id, cell.name) : nothing}
      </div>
      ${cell.kind === 'value' ? html`<sw-value-settings .notebook=${this.notebook} .cellId=${cell.id}></sw-value-settings>` : nothing}
      <div class="acts">
        ${this.#act('add-below', 'Add below')} ${this.#act('move-up', 'Move up')} ${this.#act('move-down', 'Move down')}
        ${this.#act('remove', 'Remove')}
        ${cell.kind === 'table' || cell.kind === 'pairing' ? html`<button class="btn slim" @click=${() => void this.#saveCsv(cell)}>Save as CSV</button>` : nothing}
      </div>
    </section>`;
  }

  #name(cellId: string, name: string): TemplateResult {
    return settingLine({
      label: 'Name',
      entry: name,
      check: (entry) => {
        const wanted = String(entry ?? '');
        const refusal = nameRefusal(wanted);
        if (refusal) return { reason: refusal, mend: '' };
        const taken = wanted !== name && cellNames(this.notebook.document).has(wanted);
        return taken
          ? { reason: `another cell is already called ${wanted}`, mend: 'Choose a name no other cell has.' }
          : null;
      },
      keep: (entry) => {
        this.notebook.apply(rename(this.notebook.document, cellId, undefined, String(entry)));
        says(this, `${name} is now called ${entry}, in every formula that reads it`);
      },
    });
  }

  async #saveCsv(cell: TableCell | PairingCell): Promise<void> {
    const [{ tableCsv }, { fileWord, saveText }] = await Promise.all([
      import('../../notebook/table-csv.ts'),
      import('../../../cells/shared/save-text.ts'),
    ]);
    saveText(`${fileWord(cell.title)}.csv`, 'text/csv', tableCsv(this.notebook, cell));
    says(this, `${cell.title} saved as a CSV file`);
  }

  #act(action: CardAction, words: string): TemplateResult {
    const act = (): boolean =>
      this.dispatchEvent(
        new CustomEvent<CardAction>('sw-card', { detail: action, bubbles: true, composed: true }),
      );
    return html`<button class="btn slim" @click=${act}>${words}</button>`;
  }

  async #write(): Promise<void> {
    this.noting = true;
    await this.updateComplete;
    this.renderRoot.querySelector('textarea')?.focus();
  }

  #noteKey(event: KeyboardEvent): void {
    if (event.key === 'Enter' && (event.ctrlKey || event.metaKey)) {
      (event.target as HTMLElement).blur();
    } else if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      this.noting = false;
    }
  }

  #keepNote(cell: Cell): void {
    if (!this.noting) return;
    const text = this.renderRoot.querySelector('textarea')?.value.trim() ?? '';
    this.noting = false;
    if (text !== (cell.source ?? '')) this.#replace({ ...cell, source: text === '' ? undefined : text });
  }

  #replace(after: Cell): void {
    this.notebook.apply(replaceCell(this.notebook.document, after.id, after));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-card-slip': CardSlip;
  }
  interface HTMLElementEventMap {
    'sw-card': CustomEvent<CardAction>;
  }
}
