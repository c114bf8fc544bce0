import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PrepCell } from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { readsOf } from '../../src/notebook/reads-of.ts';
import { callStyles } from '../calls/call-styles.ts';
import { CellElement } from '../shared/cell-element.ts';
import { drawWhenSeen } from '../shared/out-of-sight.ts';
import { readsSettings, readsStyles, setupFold } from '../shared/reads-settings.ts';
import { fileWord, saveText } from '../shared/save-text.ts';
import { settingStyles } from '../shared/setting-line.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { prepCellStyles } from './prep-cell.styles.ts';
import { prepCsv, prepMarkdown } from './prep-files.ts';
import { prepPaperStyles } from './prep-paper.styles.ts';
import { prepPhoneStyles } from './prep-phone.styles.ts';
import { type PrepReading, readPrep } from './prep-reading.ts';
import { PREP_SETTINGS } from './prep-roles.ts';
import { prepSheet } from './prep-sheet.ts';

/**
 * The prep sheet: what to order from whom and by when, what to fit in which turn, what to pack, where to look
 * on the road, and the figures in sight; made for a printer in black and white, saved as CSV and Markdown too.
 *
 * No slots. Parts: sheet, head.
 *
 * @fires sw-print the sheet is to be printed; the shell prints this card alone
 */
export class PrepCellElement extends CellElement<PrepCell> {
  static override properties: PropertyDeclarations = { setup: { state: true } };

  static override styles = [
    CellElement.styles,
    tableStyles,
    callStyles,
    settingStyles,
    readsStyles,
    prepCellStyles,
    prepPhoneStyles,
    prepPaperStyles,
  ];

  /** Whether the settings are open. */
  declare private setup: boolean;

  #reads: ReadonlySet<string> = new Set();

  constructor() {
    super();
    this.setup = false;
  }

  protected override concerns(change: NotebookChange): boolean {
    // It reads titles and settings from all over the notebook, and is seldom in sight.
    if (change.document) drawWhenSeen(this);
    for (const node of change.nodes) if (this.#reads.has(node)) return true;
    return false;
  }

  protected override sheetClass(): string {
    return 'prep';
  }

  protected override headNote(): TemplateResult {
    return html`<span class="acts">
      <button class="plain" @click=${this.#print}>Print</button>
      <button class="plain" @click=${() => this.#save('csv')}>CSV<span class="sr"> file</span></button>
      <button class="plain" @click=${() => this.#save('md')}>Markdown<span class="sr"> file</span></button>
    </span>`;
  }

  protected override body(cell: PrepCell): TemplateResult {
    this.#reads = new Set([...readsOf(cell), ...figuresInSight(this.notebook.document.cells)]);
    const prep = readPrep(this.notebook, cell);
    return html`${prepSheet(prep)}${setupFold(
      'What this sheet reads',
      this.setup,
      (open) => {
        this.setup = open;
      },
      () =>
        readsSettings(PREP_SETTINGS, cell.reads, this.notebook.document, (role, name) => {
          const { [role]: _before, ...rest } = cell.reads;
          this.#keep({ ...cell, reads: name === '' ? rest : { ...rest, [role]: name } });
        }),
    )}`;
  }

  #keep(cell: PrepCell): void {
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, cell));
  }

  #print(): void {
    this.dispatchEvent(new CustomEvent('sw-print', { bubbles: true, composed: true }));
  }

  #save(kind: 'csv' | 'md'): void {
    const cell = this.cell;
    if (!cell) return;
    const prep: PrepReading = readPrep(this.notebook, cell);
    const name = `${fileWord(prep.notebook)}-${fileWord(prep.title)}.${kind}`;
    if (kind === 'csv') saveText(name, 'text/csv', prepCsv(prep));
    else saveText(name, 'text/markdown', prepMarkdown(prep));
  }

  override render(): unknown {
    return this.notebook ? super.render() : nothing;
  }
}

/** Names of the figures that the first tally keeps in sight, and of their limits. */
function figuresInSight(cells: readonly { readonly kind: string }[]): readonly string[] {
  const tally = cells.find((cell) => cell.kind === 'tally') as
    | { figures: readonly { figure: string; limit?: string }[] }
    | undefined;
  return (
    tally?.figures.flatMap(({ figure, limit }) => (limit === undefined ? [figure] : [figure, limit])) ?? []
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-prep-cell': PrepCellElement;
  }
  interface HTMLElementEventMap {
    'sw-print': CustomEvent;
  }
}
