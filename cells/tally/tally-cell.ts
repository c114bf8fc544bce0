import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { TallyCell, TallyFigure } from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { CellElement } from '../shared/cell-element.ts';
import { pick } from '../shared/cell-events.ts';
import type { EntryDetail } from '../shared/figure-field.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { gauge, gaugeStyles } from './gauge.ts';
import { singleFigures } from './single-figures.ts';
import { tallyCellStyles } from './tally-cell.styles.ts';
import { figuresOf, readTally, type TallyReading } from './tally-reading.ts';

/**
 * The figures kept in sight, with their limits: the first tally of a notebook fills the strip at the top of
 * the page. On its card, figures are added, relabelled, given a limit and taken out.
 *
 * No slots. Parts: sheet, head.
 *
 * @fires sw-pick {PickDetail} the name of a figure was clicked
 */
export class TallyCellElement extends CellElement<TallyCell> {
  static override properties: PropertyDeclarations = { adding: { state: true } };
  static override styles = [CellElement.styles, tableStyles, gaugeStyles, tallyCellStyles];

  declare private adding: boolean;

  constructor() {
    super();
    this.adding = false;
  }

  protected override concerns(change: NotebookChange): boolean {
    if (super.concerns(change)) return true;
    return figuresOf(this.cell).some((figure) => change.nodes.has(figure));
  }

  protected override get figures(): readonly string[] {
    return figuresOf(this.cell);
  }

  protected override body(cell: TallyCell): TemplateResult {
    return html`${cell.figures.length === 0 ? nothing : this.#table(cell)}
      <div class="more">
        ${cell.figures.length === 0 ? html`<span>No figure is kept in sight yet.</span>` : nothing}
        ${
          this.adding
            ? this.#adder(cell)
            : html`<span class="grow"><button class="plain" @click=${() => {
                this.adding = true;
              }}>Add a figure</button></span>`
        }
      </div>`;
  }

  #table(cell: TallyCell): TemplateResult {
    return html`<div class="scroll">
      <table>
        <caption class="sr">${cell.title}</caption>
        <thead>
          <tr>
            <th scope="col">Label</th>
            <th scope="col" class="of">Figure</th>
            <th scope="col" class="num worked">Now</th>
            <th scope="col" class="num of">Limit</th>
            <th scope="col" class="g">Used</th>
            <th scope="col" class="room"><span class="sr">What is left</span></th>
            <th scope="col"><span class="sr">Remove</span></th>
          </tr>
        </thead>
        <tbody>
          ${cell.figures.map((figure, at) => this.#row(cell, figure, at))}
        </tbody>
      </table>
    </div>`;
  }

  #row(cell: TallyCell, figure: TallyFigure, at: number): TemplateResult {
    const reading = readTally(this.notebook, figure);
    return html`<tr>
      <td class="lbl">
        <sw-figure-field
          size="line"
          .label=${`Label of figure ${at + 1}`}
          .entry=${figure.label}
          .shown=${figure.label}
          .column=${{ kind: 'text' }}
          @sw-entry=${(event: CustomEvent<EntryDetail>) => this.#replace(cell, at, { ...figure, label: String(event.detail.entry ?? '') || figure.figure })}
        ></sw-figure-field>
      </td>
      <td class="of"><button class="name" @click=${() => this.#pick(cell, figure)}>${figure.figure}</button></td>
      <td class="num worked"><span class="big-fig">${reading.shown}</span> ${reading.unit}</td>
      <td class="num of">${this.#limitPicker(cell, figure, at)}</td>
      <td class="g">${reading.limit ? gauge(reading) : nothing}</td>
      <td class="room ${reading.limit?.level ?? ''}">${roomOrState(reading)}</td>
      <td class="acts"><button class="plain" @click=${() => this.#replace(cell, at, null)}>Remove<span class="sr"> ${figure.label}</span></button></td>
    </tr>`;
  }

  #limitPicker(cell: TallyCell, figure: TallyFigure, at: number): TemplateResult {
    return html`<sw-figure-field
      size="line"
      .label=${`Limit of ${figure.label}`}
      .entry=${figure.limit ?? null}
      .column=${{ kind: 'choice', options: singleFigures(this.notebook).filter((name) => name !== figure.figure) }}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => {
        const { limit: _before, ...rest } = figure;
        const { entry } = event.detail;
        this.#replace(cell, at, entry === null ? rest : { ...rest, limit: String(entry) });
      }}
    ></sw-figure-field>`;
  }

  #adder(cell: TallyCell): TemplateResult {
    const taken = new Set(cell.figures.map((one) => one.figure));
    const free = singleFigures(this.notebook).filter((name) => !taken.has(name));
    return html`<span class="adder">
      <label for="which">Figure to keep in sight</label>
      <span class="pick"><select id="which">${free.map((name) => html`<option>${name}</option>`)}</select></span>
      <button class="btn slim solid" ?disabled=${free.length === 0} @click=${() => this.#add(cell)}>Add</button>
      <button class="plain" @click=${() => {
        this.adding = false;
      }}>Leave</button>
    </span>`;
  }

  #add(cell: TallyCell): void {
    const figure = this.renderRoot.querySelector('select#which') as HTMLSelectElement | null;
    if (!figure?.value) return;
    this.adding = false;
    const named = this.notebook.document.cells.find((one) => 'name' in one && one.name === figure.value);
    this.#keep(cell, [...cell.figures, { label: named?.title ?? figure.value, figure: figure.value }]);
  }

  #replace(cell: TallyCell, at: number, after: TallyFigure | null): void {
    this.#keep(
      cell,
      cell.figures.flatMap((one, place) => (place !== at ? [one] : after ? [after] : [])),
    );
  }

  #keep(cell: TallyCell, figures: readonly TallyFigure[]): void {
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, { ...cell, figures }));
  }

  #pick(cell: TallyCell, figure: TallyFigure): void {
    pick(this, { node: figure.figure, row: null, cell: cell.id });
  }
}

function roomOrState(reading: TallyReading): string {
  if (reading.state === 'fault') return 'has a fault';
  return reading.state || reading.room;
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-tally-cell': TallyCellElement;
  }
}
