import { html, nothing, type TemplateResult } from 'lit';
import { showCount } from '../../src/formula/show.ts';
import type { PairingCell } from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import { CellElement } from '../shared/cell-element.ts';
import { TableCard } from '../shared/table-card.ts';
import { nameInWords } from '../shared/table-model.ts';
import { pairingCellStyles } from './pairing-cell.styles.ts';

/**
 * A pairing on its card: every row of one table met with every row of another; all its columns are worked
 * out, and may read the columns of both.
 *
 * @prop notebook  @prop cellId id of a pairing cell
 * @fires sw-pick {PickDetail} a figure or a row was selected
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 * @csspart sheet the card  @csspart head its head  @csspart scroll, faults, foot of the grid
 */
export class PairingCellElement extends TableCard<PairingCell> {
  static override styles = [CellElement.styles, pairingCellStyles];

  protected override headNote(cell: PairingCell): TemplateResult {
    const rows = showCount(this.notebook.rowsOf(cell.name));
    const met = `${nameInWords(cell.left)} × ${nameInWords(cell.right)}`;
    return html`<span class="met">${met}, ${rows} ${rows === '1' ? 'row' : 'rows'}</span>`;
  }

  /** Parents are asked for while the pairing has none; later they are changed in the last line. */
  protected override above(cell: PairingCell): TemplateResult | typeof nothing {
    if (this.#isMet(cell)) return nothing;
    return html`<p class="hint">A pairing puts every row of one table beside every row of another.
      ${this.#parents(cell)}</p>`;
  }

  protected override actions(cell: PairingCell): TemplateResult | typeof nothing {
    return this.#isMet(cell) ? this.#parents(cell) : nothing;
  }

  #isMet(cell: PairingCell): boolean {
    const names = this.#tables(cell);
    return names.includes(cell.left) && names.includes(cell.right);
  }

  #tables(cell: PairingCell): readonly string[] {
    return this.notebook.document.cells
      .filter((each) => (each.kind === 'table' || each.kind === 'pairing') && each.id !== cell.id)
      .map((each) => ('name' in each ? each.name : ''));
  }

  #parents(cell: PairingCell): TemplateResult {
    return html`<span class="parents">${this.#parent(cell, 'left')}<span aria-hidden="true">×</span>${this.#parent(cell, 'right')}</span>`;
  }

  #parent(cell: PairingCell, side: 'left' | 'right'): TemplateResult {
    const names = this.#tables(cell);
    const now = cell[side];
    const offered = names.includes(now) ? names : ['', ...names];
    return html`<span class="pick"><select aria-label=${side === 'left' ? 'First table' : 'Second table'}
      @change=${(event: Event) => this.#choose(cell, side, (event.target as HTMLSelectElement).value)}>
      ${offered.map(
        (
          name,
        ) => html`<option value=${name} .selected=${name === now || (name === '' && !names.includes(now))}>
          ${name === '' ? 'choose a table' : nameInWords(name)}</option>`,
      )}
    </select></span>`;
  }

  #choose(cell: PairingCell, side: 'left' | 'right', table: string): void {
    if (table === '' || table === cell[side]) return;
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, { ...cell, [side]: table }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-pairing-cell': PairingCellElement;
  }
}
