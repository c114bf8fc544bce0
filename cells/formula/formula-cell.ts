import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { showFigure } from '../../src/formula/show.ts';
import type { Entry, FormulaCell } from '../../src/notebook/document.ts';
import { formulaEdit, rename } from '../../src/notebook/edits.ts';
import { cellNames, nameRefusal } from '../../src/notebook/names.ts';
import { readShown, shownAs } from '../../src/notebook/shown-units.ts';
import type { CardState } from '../shared/card-state.ts';
import { CellElement } from '../shared/cell-element.ts';
import { pick } from '../shared/cell-events.ts';
import { faultBox } from '../shared/fault-box.ts';
import type { EntryDetail } from '../shared/figure-field.ts';
import { unitWords } from '../shared/figure-words.ts';
import type { KeepDetail } from '../shared/formula-line.ts';
import { inkRule } from '../shared/ink-rule.ts';
import { nameInType, typeset } from '../shared/typeset.ts';
import { typesetStyles } from '../shared/typeset-styles.ts';
import { formulaCellStyles } from './formula-cell.styles.ts';
import { unitCheck } from './unit-check.ts';

/**
 * One named formula: set in type, with the check of its units, its result and its state. Clicked, it is
 * written in place with a live preview; a fault shows in the card with its mend.
 *
 * No slots. Parts: sheet, head, fault (one box a fault).
 *
 * @fires sw-pick {PickDetail} the result was clicked
 * @fires sw-says {SaysDetail} a name was refused
 */
export class FormulaCellElement extends CellElement<FormulaCell> {
  static override properties: PropertyDeclarations = { writing: { state: true } };
  static override styles = [CellElement.styles, typesetStyles, formulaCellStyles];

  declare private writing: boolean;
  #shown = '';

  constructor() {
    super();
    this.writing = false;
  }

  /** Begin writing the formula. */
  override enter(): void {
    this.#write();
  }

  override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const result = this.renderRoot.querySelector('.res');
    const shown = result?.textContent ?? '';
    if (this.#shown !== '' && shown !== this.#shown && changed.size === 0) inkRule(result);
    this.#shown = shown;
  }

  protected override head(cell: FormulaCell, state: CardState): TemplateResult {
    return html`<div class="fcard" part="head">
      <div class="what">
        <div class="label"><h2 id="name">${cell.title}</h2>${cell.gist ? html`<span class="gist">${cell.gist}</span>` : nothing}${this.linkNote()}</div>
        ${this.writing ? nothing : this.#line(cell)}
      </div>
      ${this.#result(cell)} ${this.stateNote(state)}
    </div>`;
  }

  protected override body(cell: FormulaCell): unknown {
    if (this.writing) return this.#writing(cell);
    return this.notebook.faultsOf(cell.id).map((fault) =>
      faultBox(fault, {
        fix: (formula) => this.#keep(cell, formula),
        edit: () => this.#write(),
      }),
    );
  }

  #line(cell: FormulaCell): TemplateResult {
    const fault = this.notebook.faultsOf(cell.id)[0];
    const units = unitCheck(this.notebook, cell);
    return html`<div class="line">
      <span class="fx" @click=${this.#write}>${nameInType(cell.name)}<span class="op">=</span>${typeset(cell.formula, { mark: fault?.place })}</span>
      ${units ? html`<span class="unit">${units}</span>` : nothing}
    </div>`;
  }

  #result(cell: FormulaCell): TemplateResult {
    const read = readShown(this.notebook, cell.name);
    const show = (): void => pick(this, { node: cell.name, row: null, cell: cell.id });
    const known = read.state === 'settled' ? read : read.state === 'working' ? read.last : null;
    if (!known) {
      const words = read.state === 'waiting' ? 'waits' : read.state === 'working' ? 'working' : 'no figure';
      return html`<button class="res none" @click=${show}><span class="sr">${cell.title}: </span>${words}</button>`;
    }
    const unit = unitWords(known.type);
    const figure = showFigure(known.column, 0, known.type, this.#decimals(cell));
    return html`<button class="res ${read.state === 'working' ? 'old' : ''}" @click=${show}><span class="sr">${cell.title}: </span>${figure}${unit ? html` <small>${unit}</small>` : nothing}<span class="sr">, show how it is worked out</span></button>`;
  }

  /** A unit that is shown instead of the formula’s own may need more decimals to say as much. */
  #decimals(cell: FormulaCell): number | undefined {
    const as = shownAs(this.notebook.document, this.notebook.typeOf(cell.name)?.unit?.text ?? '');
    return cell.decimals === undefined ? undefined : Math.max(0, cell.decimals + (as?.extraDecimals ?? 0));
  }

  #writing(cell: FormulaCell): TemplateResult {
    return html`<div class="write">
      <div class="nameline">
        <sw-figure-field
          size="line"
          .label=${'Name in formulas'}
          .entry=${cell.name}
          .shown=${cell.name}
          .column=${{ kind: 'text' }}
          .check=${(entry: Entry) => this.#nameRefused(cell, entry)}
          @sw-entry=${(event: CustomEvent<EntryDetail>) => this.#rename(cell, String(event.detail.entry))}
        ></sw-figure-field>
        <span>is worked out from</span>
      </div>
      <sw-formula-line
        .notebook=${this.notebook}
        .cell=${cell.id}
        .formula=${cell.formula}
        .unit=${cell.unit ?? ''}
        .label=${`Formula of ${cell.title}`}
        @sw-keep=${(event: CustomEvent<KeepDetail>) => this.#keep(cell, event.detail.formula)}
        @sw-leave=${this.#leave}
      ></sw-formula-line>
    </div>`;
  }

  #write(): void {
    this.writing = true;
  }

  #leave(): void {
    this.writing = false;
    this.rest();
  }

  #keep(cell: FormulaCell, formula: string): void {
    this.#leave();
    this.notebook.apply(formulaEdit(this.notebook.document, cell.id, undefined, formula));
  }

  #nameRefused(cell: FormulaCell, entry: Entry): { reason: string; mend: string } | null {
    const name = String(entry ?? '');
    const refusal = nameRefusal(name);
    if (refusal) return { reason: `${refusal}.`, mend: '' };
    if (name !== cell.name && cellNames(this.notebook.document).has(name)) {
      return { reason: `Another cell is already called ${name}.`, mend: 'Choose a name no other cell has.' };
    }
    return null;
  }

  #rename(cell: FormulaCell, name: string): void {
    this.notebook.apply(rename(this.notebook.document, cell.id, undefined, name));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-formula-cell': FormulaCellElement;
  }
}
