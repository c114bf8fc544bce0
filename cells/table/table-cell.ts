import { html, nothing, type TemplateResult } from 'lit';
import type { TableCell } from '../../src/notebook/document.ts';
import { addRows, removeRows } from '../../src/notebook/edits.ts';
import { CellElement } from '../shared/cell-element.ts';
import { says } from '../shared/cell-events.ts';
import { TableCard } from '../shared/table-card.ts';
import { rowName } from '../shared/table-faults.ts';
import { gridOf } from '../shared/table-model.ts';
import { tableCellStyles } from './table-cell.styles.ts';

/**
 * A table on its card: entered columns in pen, worked columns of one formula each; rows and columns are
 * added, changed and removed in place.
 *
 * @prop notebook  @prop cellId id of a table cell
 * @fires sw-pick {PickDetail} a figure or a row was selected
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 * @csspart sheet the card  @csspart head its head  @csspart scroll, faults, foot of the grid
 */
export class TableCellElement extends TableCard<TableCell> {
  static override styles = [CellElement.styles, tableCellStyles];

  protected override actions(cell: TableCell): TemplateResult {
    const rowCount = this.notebook.rowsOf(cell.name);
    const row = this.atRow;
    const canRemove = row !== null && row < rowCount;
    return html`${
      canRemove
        ? html`<button type="button" class="plain" @click=${() => this.#removeRow(cell, row)}>Remove ${this.#nameOf(cell, row)}</button>`
        : nothing
    }<button type="button" class="plain" @click=${() => this.#addRow(cell)}>Add a row</button>`;
  }

  protected override above(cell: TableCell): TemplateResult | typeof nothing {
    if (cell.columns.length > 0) return nothing;
    return html`<p class="hint">An empty table. Add a column for each thing to be written down, then rows.</p>`;
  }

  #nameOf(cell: TableCell, row: number): string {
    return rowName(gridOf(this.notebook, cell, false), row);
  }

  /** A new row comes after the last, with the keyboard on its first field. */
  async #addRow(cell: TableCell): Promise<void> {
    const row = this.notebook.rowsOf(cell.name);
    this.notebook.apply(addRows(this.notebook.document, cell.id, row, [{}]));
    await this.notebook.settled();
    const first = cell.columns.find((column) => column.kind !== 'worked');
    if (first !== undefined) await this.table?.goTo(first.id, row);
  }

  #removeRow(cell: TableCell, row: number): void {
    says(this, `${this.#nameOf(cell, row)} removed. Undo brings it back.`);
    this.notebook.apply(removeRows(this.notebook.document, cell.id, row, 1));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-table-cell': TableCellElement;
  }
}
