import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import { columnNode } from '../../src/formula/scope.ts';
import type { EnteredColumn, PairingCell, TableCell, TableColumn } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { EditError } from '../../src/notebook/edit-error.ts';
import { formulaEdit, moveColumn, removeColumn, rename, replaceColumn } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { baseStyles } from './base-styles.ts';
import { says } from './cell-events.ts';
import { controlStyles } from './control-styles.ts';
import type { KeepDetail } from './formula-line.ts';
import { isCountedPer } from './gauge-unit.ts';
import { closeIcon } from './icons.ts';
import {
  type ColumnChange,
  canConvert,
  changeDecimals,
  changeDrawing,
  changeKind,
  changeOptions,
  changeUnit,
  changeUnitColumn,
  type Drawing,
  type Refusal,
} from './table-column-change.ts';
import { columnSettingsStyles } from './table-column-settings.styles.ts';
import { columnTitle } from './table-model.ts';
import { typeset } from './typeset.ts';
import { typesetStyles } from './typeset-styles.ts';

/** Kinds of entered columns, in plain words. */
export const KIND_WORDS: readonly (readonly [EnteredColumn['kind'], string])[] = [
  ['number', 'number'],
  ['text', 'text'],
  ['choice', 'one of a list'],
  ['date', 'date'],
  ['yes_no', 'yes or no'],
];

const DRAWINGS: readonly (readonly [Drawing, string])[] = [
  ['figure', 'as it is'],
  ['share', 'with a bar, 0 to 1'],
  ['surface', 'with the surface as a line'],
];

type Field = 'title' | 'name' | 'unit' | 'decimals' | 'options';

/**
 * The settings of one column, between the card's head and its table: head, name in formulas, unit, decimals,
 * kind and choices of an entered column, the formula of a worked one, and its place among the others. Each
 * is an edit of its own, kept with Enter or on leaving the field.
 *
 * @prop notebook  @prop cellId id of the table or pairing  @prop columnId id of the column
 * @fires sw-close no detail: the settings are done with, or the column is gone; does not leave the card
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 */
export class ColumnSettings extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    columnId: { attribute: false },
    refused: { state: true },
    keepsFigures: { state: true },
    writesFormula: { state: true },
  };

  static override styles = [baseStyles, controlStyles, typesetStyles, columnSettingsStyles];

  declare notebook: LiveNotebook;
  declare cellId: string;
  declare columnId: string;
  declare private refused: (Refusal & { readonly field: Field; readonly text: string }) | null;
  /** Another unit leaves the figures as they were typed, instead of turning them into it. */
  declare private keepsFigures: boolean;
  declare private writesFormula: boolean;

  constructor() {
    super();
    this.cellId = '';
    this.columnId = '';
    this.refused = null;
    this.keepsFigures = false;
    this.writesFormula = false;
  }

  get #cell(): TableCell | PairingCell | undefined {
    const cell = this.notebook.document.cells.find((each) => each.id === this.cellId);
    return cell?.kind === 'table' || cell?.kind === 'pairing' ? cell : undefined;
  }

  get #column(): TableColumn | undefined {
    return this.#cell?.columns.find((column) => column.id === this.columnId);
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('columnId')) return;
    this.refused = null;
    this.writesFormula = false;
  }

  override firstUpdated(): void {
    this.renderRoot.querySelector<HTMLElement>('#title')?.focus();
  }

  override render(): unknown {
    const cell = this.#cell;
    const column = this.#column;
    if (cell === undefined || column === undefined) return nothing;
    return html`<section class="slip" aria-label="Column ${columnTitle(column)}" @keydown=${this.#onKey}>
      ${this.#top(cell, column)}
      <div class="fields">
        ${this.#text('title', 'Head', columnTitle(column))}
        ${this.#text('name', 'Name in formulas', column.name, true)}
        ${this.#unit(column)}
        ${this.#text('decimals', 'Decimals', column.decimals === undefined ? '' : String(column.decimals))}
        ${column.kind === 'worked' ? nothing : this.#kind(column)}
        ${this.#drawing(column)}
        ${this.#folded(column)}
        ${column.kind === 'choice' ? html`<div class="wide">${this.#text('options', 'Choices', (column.options ?? []).join(', '))}</div>` : nothing}
        ${column.kind === 'worked' ? html`<div class="wide">${this.#formula(column.formula, column)}</div>` : nothing}
      </div>
    </section>`;
  }

  #top(cell: TableCell | PairingCell, column: TableColumn): TemplateResult {
    const place = cell.columns.findIndex((each) => each.id === column.id);
    const word = column.kind === 'worked' ? 'worked out' : 'entered by hand';
    return html`<div class="top">
      <h3>${columnTitle(column)} <span>column, ${word}</span></h3>
      <span class="acts">
        <button type="button" class="plain" ?disabled=${place <= 0} @click=${() => this.#move(place - 1)}>Move left</button>
        <button type="button" class="plain" ?disabled=${place >= cell.columns.length - 1} @click=${() => this.#move(place + 1)}>Move right</button>
        <button type="button" class="plain" @click=${() => this.#remove(column)}>Remove the column</button>
        <button type="button" class="x" aria-label="Close the column's settings" @click=${this.#close}>${closeIcon()}</button>
      </span>
    </div>`;
  }

  #text(field: Field, label: string, value: string, isName = false): TemplateResult {
    const refused = this.refused?.field === field ? this.refused : null;
    return html`<div>
      <label class="label" for=${field}>${label}</label>
      <input id=${field} class="blank ${isName ? 'mono' : ''}" autocomplete="off" spellcheck="false"
        inputmode=${field === 'decimals' ? 'numeric' : 'text'}
        aria-invalid=${refused === null ? 'false' : 'true'} aria-describedby="${field}-note"
        .value=${live(refused?.text ?? value)}
        @change=${(event: Event) => this.#keep(field, (event.target as HTMLInputElement).value)} />
      <p class="note ${refused === null ? '' : 'bad'}" id="${field}-note" aria-live="polite">
        ${refused === null ? nothing : html`${refused.reason}. ${refused.mend}`}
      </p>
    </div>`;
  }

  #unit(column: TableColumn): TemplateResult | typeof nothing {
    if (column.kind !== 'number' && column.kind !== 'worked') return nothing;
    const field = this.#text('unit', 'Unit', column.unit ?? '');
    if (column.kind === 'worked') return field;
    if ((column.unit ?? '') === '') return html`${field}${this.#rowUnits(column)}`;
    const rowUnits = isCountedPer(column.unit) ? this.#rowUnits(column) : nothing;
    return html`<div>${field}${rowUnits}
      <label class="tick"><input type="checkbox" .checked=${this.keepsFigures}
        @change=${(event: Event) => {
          this.keepsFigures = (event.target as HTMLInputElement).checked;
        }} />another unit leaves the figures as typed</label></div>`;
  }

  /** Where each row has a unit of its own, as readings by different gauges have. */
  #rowUnits(column: EnteredColumn): TemplateResult | typeof nothing {
    const texts = (this.#cell?.columns ?? []).filter(
      (each) => this.notebook.typeOf(columnNode(this.#cell!.name, each.name))?.kind === 'text',
    );
    if (texts.length === 0 && column.unit_column === undefined) return nothing;
    const options = texts.map((each): [string, string] => [
      each.name,
      `each row’s, from ${columnTitle(each)}`,
    ]);
    return this.#select('Unit by row', column.unit_column ?? '', [['', 'one for all'], ...options], (name) =>
      this.#replace(changeUnitColumn(column, name)),
    );
  }

  #select(
    label: string,
    now: string,
    options: readonly (readonly [string, string])[],
    keep: (value: string) => void,
  ): TemplateResult {
    return html`<label><span class="label">${label}</span>
      <span class="pick"><select @change=${(event: Event) => keep((event.target as HTMLSelectElement).value)}>
        ${options.map(([value, words]) => html`<option value=${value} .selected=${live(value === now)}>${words}</option>`)}
      </select></span></label>`;
  }

  #kind(column: EnteredColumn): TemplateResult {
    return this.#select('Kind', column.kind, KIND_WORDS, (kind) =>
      this.#replace(changeKind(column, kind as EnteredColumn['kind'])),
    );
  }

  #drawing(column: TableColumn): TemplateResult {
    return this.#select('Shown', column.draw ?? 'figure', DRAWINGS, (drawing) =>
      this.#replace(changeDrawing(column, drawing as Drawing)),
    );
  }

  #folded(column: TableColumn): TemplateResult {
    return html`<label class="tick"><input type="checkbox" .checked=${live(column.folded === true)}
      @change=${(event: Event) => {
        const folded = (event.target as HTMLInputElement).checked;
        this.#replace({ ...column, folded: folded ? true : undefined });
      }} />folded away with the working</label>`;
  }

  #formula(formula: string, column: TableColumn): TemplateResult {
    if (!this.writesFormula) {
      return html`<span class="label">Formula, for every row</span>
        <div class="written"><span class="fx">${typeset(formula)}</span>
          <button type="button" class="plain" @click=${() => {
            this.writesFormula = true;
          }}>Edit<span class="sr"> the formula</span></button></div>`;
    }
    return html`<span class="label">Formula, for every row</span>
      <sw-formula-line .notebook=${this.notebook} .cell=${this.cellId} .column=${column.id}
        .formula=${formula} .unit=${column.unit ?? ''} .label=${`Formula of ${columnTitle(column)}`}
        @sw-keep=${this.#onFormula} @sw-leave=${this.#onLeave}></sw-formula-line>`;
  }

  #onFormula = (event: CustomEvent<KeepDetail>): void => {
    event.stopPropagation();
    this.writesFormula = false;
    this.#apply(formulaEdit(this.notebook.document, this.cellId, this.columnId, event.detail.formula));
  };

  #onLeave = (event: Event): void => {
    event.stopPropagation();
    this.writesFormula = false;
  };

  #keep(field: Field, text: string): void {
    const column = this.#column;
    if (column === undefined) return;
    this.refused = null;
    if (field === 'title') {
      this.#replace({ ...column, title: text.trim() === '' ? undefined : text.trim() });
    } else if (field === 'name') this.#rename(column, text);
    else {
      const change = this.#changeOf(field, column, text);
      if ('column' in change) this.#replace(change.column);
      else this.refused = { ...change, field, text };
    }
  }

  #changeOf(field: Field, column: TableColumn, text: string): ColumnChange {
    if (field === 'decimals') return changeDecimals(column, text);
    if (field === 'options' && column.kind !== 'worked') return changeOptions(column, text);
    return changeUnit(column, text, !this.keepsFigures && canConvert(column.unit, text));
  }

  #rename(column: TableColumn, text: string): void {
    const name = text.trim();
    if (name === column.name) return;
    try {
      this.#apply(rename(this.notebook.document, this.cellId, column.id, name));
    } catch (error) {
      if (!(error instanceof EditError)) throw error;
      const mend = 'Formulas know the column by this name; choose another.';
      this.refused = { reason: error.message.replace(/\.$/, ''), mend, field: 'name', text };
    }
  }

  #replace(after: TableColumn): void {
    this.#apply(replaceColumn(this.notebook.document, this.cellId, this.columnId, after));
  }

  #apply(edit: Edit): void {
    this.notebook.apply(edit);
    this.requestUpdate();
  }

  #move(to: number): void {
    this.#apply(moveColumn(this.notebook.document, this.cellId, this.columnId, to));
  }

  #remove(column: TableColumn): void {
    says(this, `Column ${columnTitle(column)} removed. Undo brings it back.`);
    this.#apply(removeColumn(this.notebook.document, this.cellId, this.columnId));
    this.#close();
  }

  #close = (): void => {
    this.dispatchEvent(new CustomEvent('sw-close', { bubbles: true }));
  };

  #onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.preventDefault();
    event.stopPropagation();
    this.#close();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-column-settings': ColumnSettings;
  }
  interface HTMLElementEventMap {
    'sw-close': CustomEvent;
  }
}
