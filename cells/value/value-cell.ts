import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { weekdayWord } from '../../src/formula/day-words.ts';
import { showUnit } from '../../src/formula/show.ts';
import type { Entry, NotebookDocument, ValueCell, ValueContent } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import { addCell, valueEdit } from '../../src/notebook/edits.ts';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { same } from '../../src/notebook/same.ts';
import { shownAs } from '../../src/notebook/shown-units.ts';
import { isUnfilled } from '../shared/card-state.ts';
import { CellElement, touches } from '../shared/cell-element.ts';
import { pick } from '../shared/cell-events.ts';
import type { EntryColumn, EntryDetail, FigureField } from '../shared/figure-field.ts';
import { firstFocusable } from '../shared/focusable.ts';
import { setProperty } from '../shared/set-property.ts';
import { typedIn } from '../shared/typed-entry.ts';
import { formRun } from './form-run.ts';
import { newValueOnForm } from './new-value.ts';
import { shownAmount, shownValue } from './shown-value.ts';
import { valueCellStyles } from './value-cell.styles.ts';
import { outsideLimits } from './value-limits.ts';

/**
 * Values as blanks on a form: each a label, a figure in pen on its ruled line (or a slider, a choice, a date,
 * yes or no), its unit, and the name formulas know it by. Values that follow one another under the same form
 * share the card; the element is given the id of the first.
 *
 * No slots. Parts: sheet, head.
 *
 * @prop picked the figure shown in the panel, or null
 * @fires sw-pick {PickDetail} a value's name was clicked, or its field took the keyboard on a wide screen
 */
export class ValueCellElement extends CellElement<ValueCell> {
  static override properties: PropertyDeclarations = {
    picked: { attribute: false },
    sliding: { state: true },
  };
  static override styles = [CellElement.styles, valueCellStyles];

  declare picked: { readonly node: string | null } | null;
  /** The figure under a slider that is being dragged, before it is let go. */
  declare private sliding: { readonly cell: string; readonly value: number } | null;

  /** What the values of this card were before the last edit of the notebook; struck beside the new ones. */
  #was = new Map<string, string>();

  #drawnCells: readonly ValueCell[] = [];
  #drawnConverted = false;

  constructor() {
    super();
    this.picked = null;
    this.sliding = null;
  }

  protected override get cells(): readonly ValueCell[] {
    return this.notebook ? formRun(this.notebook.document.cells, this.cellId) : [];
  }

  protected override concerns(change: NotebookChange): boolean {
    if (change.edit) {
      const before = this.#was.size;
      this.#was = wasBefore(this.notebook, change.edit);
      if (before > 0) return true;
    }
    const { cells } = this;
    if (change.document && (this.#convertsShown() || !same(cells, this.#drawnCells))) return true;
    return cells.some((cell) => touches(change.nodes, cell.name));
  }

  /** In measures or money of the notebook's own choice, now or when last drawn: rates change what is shown. */
  #convertsShown(): boolean {
    return this.#drawnConverted || converts(this.notebook.document);
  }

  /** Put the keyboard in the first blank. */
  override enter(): void {
    firstFocusable(this.renderRoot.querySelector('.blanks') ?? this.renderRoot)?.focus();
  }

  protected override headTitle(cell: ValueCell): string {
    return cell.form ?? cell.title;
  }

  protected override gistOf(cell: ValueCell): unknown {
    if (cell.form === undefined) return cell.gist ?? nothing;
    return this.cells.length === 1
      ? 'one figure, yours to change'
      : `${this.cells.length} figures, all yours to change`;
  }

  protected override headNote(cell: ValueCell): unknown {
    if (cell.form === undefined) return nothing;
    return html`<button class="plain" @click=${this.#add}>Add a value</button>`;
  }

  protected override body(_cell: ValueCell): TemplateResult {
    this.#drawnCells = this.cells;
    this.#drawnConverted = converts(this.notebook.document);
    return html`<div class="blanks">
      ${repeat(
        this.cells,
        (one) => one.id,
        (one) => this.#blank(one),
      )}
    </div>`;
  }

  #blank(cell: ValueCell): TemplateResult {
    const picked = this.picked?.node === cell.name;
    const alone = cell.form === undefined;
    return html`<div class="blank ${picked ? 'picked' : ''}">
      ${alone ? nothing : html`<span class="label" title=${cell.gist ?? cell.title}>${cell.title}</span>`}
      ${this.#control(cell)}
      <button class="name" @click=${() => this.#pick(cell)}><span class="sr">${cell.title}, name in formulas: </span>${cell.name}</button>
    </div>`;
  }

  #control(cell: ValueCell): TemplateResult {
    const { content } = cell;
    if (content.type === 'yes_no') return this.#yesNo(cell, content.value);
    const field = this.#field(cell);
    if (content.type !== 'number' || content.control !== 'slider') return field;
    const { low = 0, high = 100 } = content;
    const step = content.step ?? (high - low) / 100;
    const value = this.sliding?.cell === cell.id ? this.sliding.value : Number(content.value ?? low);
    return html`${field}<input
        class="slide"
        type="range"
        aria-label="${cell.title}, slider"
        min=${low}
        max=${high}
        step=${step}
        .value=${String(value)}
        ${setProperty('--at', `${shareOf(value, low, high)}%`)}
        @input=${(event: Event) => {
          this.sliding = { cell: cell.id, value: Number((event.target as HTMLInputElement).value) };
        }}
        @change=${(event: Event) => this.#write(cell, Number((event.target as HTMLInputElement).value))}
      />`;
  }

  #field(cell: ValueCell): TemplateResult {
    const { content } = cell;
    const sliding = this.sliding?.cell === cell.id ? this.sliding.value : null;
    const fault = this.notebook.faultsOf(cell.id).find((one) => !isUnfilled(one));
    const shown =
      sliding === null || content.type !== 'number'
        ? shownValue(this.notebook, cell)
        : shownAmount(this.notebook, content, sliding);
    return html`<sw-figure-field
      size="blank"
      .label=${cell.title}
      .column=${entryColumn(this.notebook, content)}
      .entry=${content.value}
      .shown=${shown}
      .unit=${unitNote(this.notebook, content)}
      .fault=${fault?.message ?? ''}
      .was=${this.#was.get(cell.id) ?? ''}
      .check=${(entry: Entry) => outsideLimits(content, entry)}
      @focusin=${() => {
        if (matchMedia('(min-width: 1241px)').matches) this.#pick(cell);
      }}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => this.#write(cell, event.detail.entry)}
      @sw-done=${(event: CustomEvent) => {
        if (event.detail.move === 'down') this.#next(event.target as FigureField);
      }}
    ></sw-figure-field>`;
  }

  #yesNo(cell: ValueCell, value: boolean | null): TemplateResult {
    const button = (answer: boolean): TemplateResult =>
      html`<button aria-pressed=${value === answer ? 'true' : 'false'} @click=${() => this.#write(cell, answer)}>${answer ? 'yes' : 'no'}</button>`;
    return html`<div class="yesno" role="group" aria-label=${cell.title}>${button(true)}${button(false)}</div>`;
  }

  #write(cell: ValueCell, entry: Entry): void {
    this.sliding = null;
    if (entry === cell.content.value) return;
    const after = { ...cell.content, value: entry } as ValueContent;
    this.notebook.apply(valueEdit(this.notebook.document, cell.id, after));
  }

  /** Enter keeps and moves on to the next blank; from the last one the keyboard stays. */
  #next(field: FigureField): void {
    const fields = [...this.renderRoot.querySelectorAll('sw-figure-field')];
    fields[fields.indexOf(field) + 1]?.focus();
  }

  #pick(cell: ValueCell): void {
    if (this.picked?.node !== cell.name) pick(this, { node: cell.name, row: null, cell: cell.id });
  }

  #add(): void {
    const run = this.cells;
    const last = run.at(-1);
    if (!last) return;
    const { document } = this.notebook;
    const cell = newValueOnForm(document, last.form);
    this.notebook.apply(addCell(document, cell, document.cells.indexOf(last) + 1));
    pick(this, { node: cell.name, row: null, cell: cell.id });
  }
}

function entryColumn({ document }: LiveNotebook, content: ValueContent): EntryColumn {
  switch (content.type) {
    case 'number':
      return { kind: 'number', unit: content.unit, ...typedIn(document, content.unit) };
    case 'choice':
      return { kind: 'choice', options: content.options };
    default:
      return { kind: content.type };
  }
}

/** What stands after the figure: its unit, or the day of the week of a date. */
function unitNote({ document }: LiveNotebook, content: ValueContent): string {
  if (content.type === 'number') return showUnit(shownAs(document, content.unit)?.unit ?? content.unit);
  if (content.type !== 'date' || content.value === null) return '';
  return weekdayWord(Date.parse(`${content.value}T00:00Z`) / 86_400_000);
}

/** What the edited values were, by cell id. */
function wasBefore(notebook: LiveNotebook, edit: Edit): Map<string, string> {
  const was = new Map<string, string>();
  const visit = (one: Edit): void => {
    if (one.kind === 'group') one.edits.forEach(visit);
    else if (one.kind === 'value' && one.before.value !== one.after.value && one.before.value !== null) {
      const { before } = one;
      const isFigure = before.type === 'number' && typeof before.value === 'number';
      was.set(
        one.cell,
        isFigure ? shownAmount(notebook, before, Number(before.value)) : String(before.value),
      );
    }
  };
  visit(edit);
  return was;
}

const converts = ({ measures, shown_money }: NotebookDocument): boolean =>
  measures !== undefined || shown_money !== undefined;

/** How far along a slider a value stands, in percent. */
function shareOf(value: number, low: number, high: number): number {
  if (!(high > low)) return 0;
  return Math.round(10_000 * Math.min(1, Math.max(0, (value - low) / (high - low)))) / 100;
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-value-cell': ValueCellElement;
  }
}
