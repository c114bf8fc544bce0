import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Entry, PairingCell, TableCell } from '../../src/notebook/document.ts';
import { entryEdit, formulaEdit } from '../../src/notebook/edits.ts';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { readBlock } from '../../src/tables/block.ts';
import { baseStyles } from './base-styles.ts';
import { touches } from './cell-element.ts';
import { type PickDetail, pick, says } from './cell-events.ts';
import { controlStyles } from './control-styles.ts';
import { inkRule } from './ink-rule.ts';
import { NotebookController } from './notebook-controller.ts';
import { setProperty } from './set-property.ts';
import { sheetStyles, tableStyles } from './sheet-styles.ts';
import { type ChangedColumn, differsIn, ShownFigures } from './table-changes.ts';
import { type CursorHost, GridCursor } from './table-cursor.ts';
import { waitsFor } from './table-faults.ts';
import { entryText, figureText } from './table-figure.ts';
import { faultList, tableFoot } from './table-foot.ts';
import type { GridExtent, GridPlace } from './table-keys.ts';
import { type Grid, type GridColumn, gridOf } from './table-model.ts';
import { pasteBlock, pasteInWords } from './table-paste.ts';
import { faultAt, type GridUse, gridRow, headCell } from './table-rows.ts';
import { GridScroll } from './table-scroll.ts';
import { gridStyles } from './table-styles.ts';
import { TableTip } from './table-tip.ts';
import type { Segment } from './table-window.ts';

/** Rows shown until all are asked for. */
const ROWS_AT_FIRST = 10;
/** Rows beyond which only those in view are in the page. */
const ROWS_DRAWN_WHOLE = 200;

type GapRow = Extract<Segment, { kind: 'gap' }>;

/** `sw-column`: the head of a column was pressed; its settings are to be opened or closed. */
export interface ColumnDetail {
  readonly columnId: string;
}

/** `sw-row`: the keyboard or the pointer went to another row, counted from 0; null for the head. */
export interface RowDetail {
  readonly row: number | null;
}

/**
 * The grid of a table or a pairing: heads with units, entered figures in pen, worked columns, faults in
 * their place and in a list, folded columns, the rows beyond the first ten, and the keyboard of a grid
 * (arrows move, Enter or typing writes, Enter keeps and moves down, Tab keeps and moves right, Escape puts
 * the old figure back; a block pasted from a sheet is read field by field).
 *
 * @prop notebook the live notebook  @prop cellId id of a table or pairing cell
 * @prop picked what was picked last, on any card, or null
 * @prop openColumnId id of the column whose settings are open, '' for none
 * @fires sw-pick {PickDetail} a figure or a row was selected
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 * @fires sw-column {ColumnDetail} the head of a column was pressed; does not leave the card
 * @fires sw-row {RowDetail} another row has the keyboard; does not leave the card
 * @slot actions plain actions at the end of the last line
 * @csspart scroll what scrolls sideways  @csspart faults the list of faults  @csspart foot the last line
 */
export class TableView extends LitElement implements CursorHost {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    openColumnId: { attribute: false },
    picked: { attribute: false },
    showsAll: { state: true },
    showsFolded: { state: true },
  };

  static override styles = [baseStyles, controlStyles, sheetStyles, tableStyles, gridStyles];

  declare notebook: LiveNotebook;
  declare cellId: string;
  declare openColumnId: string;
  declare picked: PickDetail | null;
  declare private showsAll: boolean;
  declare private showsFolded: boolean;

  #grid: Grid | null = null;
  #drawn: TableCell | PairingCell | undefined;
  #changed: readonly ChangedColumn[] = [];
  #toldRow: number | null = 0;
  #hadFocus = false;
  readonly #shown = new ShownFigures();
  readonly #cursor = new GridCursor(this);
  readonly #scroll = new GridScroll(this);
  readonly #tip = new TableTip(() => this.renderRoot.querySelector('.tip'));

  constructor() {
    super();
    this.cellId = '';
    this.openColumnId = '';
    this.picked = null;
    this.showsAll = false;
    this.showsFolded = false;
    new NotebookController(
      this,
      () => this.notebook,
      (change) => this.#concerns(change),
    );
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#tip.hide();
  }

  /** Put the keyboard on a figure, opening what is folded away around it. */
  async goTo(columnId: string, row: number): Promise<void> {
    if (row >= ROWS_AT_FIRST) this.showsAll = true;
    if (this.#grid?.columns.some((column) => column.id === columnId) === false) this.showsFolded = true;
    await this.updateComplete;
    const column = this.#grid?.columns.findIndex((each) => each.id === columnId) ?? -1;
    if (column >= 0) await this.#cursor.go({ row, column });
  }

  /** Put the keyboard where it was last, or on the head of a column whose settings were closed. */
  async enter(headOf: string | null = null): Promise<void> {
    await this.updateComplete;
    const column = this.#grid?.columns.findIndex((each) => each.id === headOf) ?? -1;
    await this.#cursor.go(column >= 0 ? { row: -1, column } : this.#cursor.at);
  }

  get #cell(): TableCell | PairingCell | undefined {
    const cell = this.notebook?.document.cells.find((each) => each.id === this.cellId);
    return cell?.kind === 'table' || cell?.kind === 'pairing' ? cell : undefined;
  }

  #concerns(change: NotebookChange): boolean {
    const cell = this.#cell;
    if (change.document && cell !== this.#drawn) return true;
    if (cell === undefined) return false;
    const names = cell.kind === 'pairing' ? [cell.name, cell.left, cell.right] : [cell.name];
    return names.some((name) => touches(change.nodes, name));
  }

  /** Rows that can be reached now: the first ten, or all. */
  get #rowsOffered(): number {
    const rowCount = this.#grid?.rowCount ?? 0;
    return this.showsAll ? rowCount : Math.min(rowCount, ROWS_AT_FIRST);
  }

  get #isLong(): boolean {
    return this.#rowsOffered > ROWS_DRAWN_WHOLE;
  }

  // --- for the cursor ---

  get extent(): GridExtent {
    return {
      rows: this.#rowsOffered,
      columns: this.#grid?.columns.length ?? 0,
      pageRows: this.#isLong ? this.#scroll.rowsInWindow : ROWS_AT_FIRST,
    };
  }

  columnAt(place: number): GridColumn | undefined {
    return this.#grid?.columns[place];
  }

  reveal(place: GridPlace): void {
    if (this.#isLong && place.row >= 0) this.#scroll.toRow(place.row, this.#rowsOffered);
  }

  focused(place: GridPlace, figure: HTMLElement): void {
    if (place.column > 0) this.#scroll.showWhole(figure);
  }

  pick(place: GridPlace): void {
    const column = this.columnAt(place.column);
    if (column === undefined) return;
    pick(this, { node: column.node, row: place.row, cell: this.cellId });
  }

  keep(columnId: string, row: number, entry: Entry): void {
    this.notebook.apply(entryEdit(this.notebook.document, this.cellId, columnId, row, entry));
    if (entry === null) says(this, 'Emptied');
  }

  openColumn(columnId: string): void {
    this.dispatchEvent(new CustomEvent<ColumnDetail>('sw-column', { detail: { columnId }, bubbles: true }));
  }

  // --- drawing ---

  override willUpdate(): void {
    this.#hadFocus = this.shadowRoot?.activeElement?.matches('[data-row]') ?? false;
    const cell = this.#cell;
    this.#drawn = cell;
    this.#grid = cell === undefined ? null : gridOf(this.notebook, cell, this.showsFolded);
    this.#changed = this.#grid === null ? [] : this.#shown.changedIn(this.#grid);
    this.#cursor.clamp();
  }

  override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.#isLong) this.#scroll.measure();
    // Rows that move in the page lose the focus; the keyboard stays where it was all the same.
    if (this.#hadFocus && this.shadowRoot?.activeElement === null && this.#cursor.writing === null) {
      this.#cursor.element(this.#cursor.at)?.focus({ preventScroll: true });
    }
    for (const column of this.#changed) {
      for (const figure of this.renderRoot.querySelectorAll<HTMLElement>(
        `tbody [data-col="${column.place}"]`,
      )) {
        if (differsIn(column, Number(figure.dataset.row))) inkRule(figure);
      }
    }
    this.#changed = [];
    const row = this.#cursor.at.row < 0 ? null : this.#cursor.at.row;
    if (row === this.#toldRow) return;
    this.#toldRow = row;
    this.dispatchEvent(new CustomEvent<RowDetail>('sw-row', { detail: { row }, bubbles: true }));
  }

  override render(): unknown {
    const grid = this.#grid;
    if (grid === null) return nothing;
    return html`${grid.columns.length === 0 ? nothing : this.#table(grid)}
      <div class="tip" popover="manual" role="status"></div>
      ${faultList(grid, {
        fix: (columnId, formula) =>
          this.notebook.apply(formulaEdit(this.notebook.document, this.cellId, columnId, formula)),
        openColumn: (columnId) => this.openColumn(columnId),
        goTo: (columnId, row) => void this.goTo(columnId, row),
      })}
      ${tableFoot({
        rowCount: grid.rowCount,
        rowsShown: this.#rowsOffered,
        rowsAtFirst: ROWS_AT_FIRST,
        showsAll: this.showsAll,
        foldedCount: grid.foldedCount,
        showsFolded: this.showsFolded,
        toggleAll: this.#toggleAll,
        toggleFolded: this.#toggleFolded,
      })}`;
  }

  #table(grid: Grid): TemplateResult {
    const use: GridUse = {
      at: this.#cursor.at,
      writing: this.#cursor.writing,
      pickedRow: this.picked?.cell === this.cellId ? this.picked.row : null,
      openColumn: this.openColumnId === '' ? null : this.openColumnId,
    };
    return html`<div class="scroll ${this.#isLong ? 'tall' : ''}" part="scroll" @scroll=${this.#onScroll}>
      <table role="grid" aria-label=${grid.title}
        aria-rowcount=${grid.rowCount + 1} aria-colcount=${grid.columns.length}
        @click=${this.#cursor.onClick} @dblclick=${this.#cursor.onDoubleClick} @keydown=${this.#cursor.onKey}
        @focusin=${this.#onFocus} @pointerover=${this.#onPointerOver} @pointerleave=${() => this.#tip.hide()}
        @copy=${this.#onCopy} @paste=${this.#onPaste}
        @sw-entry=${this.#cursor.onEntry} @sw-done=${this.#cursor.onDone}>
        <thead role="rowgroup"><tr role="row" aria-rowindex="1">
          ${repeat(
            grid.columns,
            (column) => column.id,
            (column, place) => headCell(column, place, use),
          )}
        </tr></thead>
        <tbody role="rowgroup">${this.#rows(grid, use)}</tbody>
      </table>
    </div>`;
  }

  #rows(grid: Grid, use: GridUse): unknown {
    const rows = (from: number, to: number): number[] =>
      Array.from({ length: to - from }, (_, i) => from + i);
    if (!this.#isLong) return rows(0, this.#rowsOffered).map((row) => gridRow(grid, row, use));
    const segments = this.#scroll.segments(this.#rowsOffered, this.#cursor.at.row);
    const drawn = segments.flatMap((segment): (number | GapRow)[] =>
      segment.kind === 'rows' ? rows(segment.from, segment.to) : [segment],
    );
    // Keyed by row, so that the row with the keyboard stays the element that has the focus.
    return repeat(
      drawn,
      (each, i) =>
        typeof each === 'number'
          ? each
          : `gap ${i === 0 ? 'above' : i === drawn.length - 1 ? 'below' : 'between'}`,
      (each) => (typeof each === 'number' ? gridRow(grid, each, use) : this.#gap(each)),
    );
  }

  #gap(gap: GapRow): TemplateResult {
    const heightPx = `${gap.rows * this.#scroll.rowPx}px`;
    return html`<tr class="gap" aria-hidden="true" ${setProperty('--gap-px', heightPx)}><td></td></tr>`;
  }

  #toggleAll = (): void => {
    this.showsAll = !this.showsAll;
    this.#scroll.toTop();
  };

  #toggleFolded = (): void => {
    this.showsFolded = !this.showsFolded;
  };

  #onScroll = (): void => {
    this.#scroll.markScrolled();
    this.#tip.hide();
    if (this.#isLong) this.#scroll.look(this.#rowsOffered);
  };

  #onFocus = (event: FocusEvent): void => {
    const place = this.#cursor.placeOf(event);
    if (place === null) return;
    if (place.row !== this.#cursor.at.row || place.column !== this.#cursor.at.column) {
      this.#cursor.at = place;
      this.requestUpdate();
    }
    this.#showTip(place);
  };

  #onPointerOver = (event: PointerEvent): void => {
    const place = this.#cursor.placeOf(event);
    if (place !== null) this.#showTip(place);
  };

  #onCopy = (event: ClipboardEvent): void => {
    const column = this.columnAt(this.#cursor.at.column);
    if (column === undefined || this.#cursor.writing !== null || this.#cursor.at.row < 0) return;
    const { row } = this.#cursor.at;
    const text = column.entered === null ? figureText(column, row) : entryText(column.entered.entries[row]);
    event.clipboardData?.setData('text/plain', text);
    event.preventDefault();
  };

  #onPaste = (event: ClipboardEvent): void => {
    const text = event.clipboardData?.getData('text/plain') ?? '';
    if (this.#grid === null || text === '' || this.#cursor.writing !== null || this.#cursor.at.row < 0)
      return;
    event.preventDefault();
    const paste = pasteBlock(this.notebook.document, this.#grid, this.#cursor.at, readBlock(text));
    if (paste === null) {
      says(this, 'Nothing pasted: these figures are worked out');
      return;
    }
    this.notebook.apply(paste.edit);
    says(this, pasteInWords(paste));
  };

  #showTip(place: GridPlace): void {
    const column = this.columnAt(place.column);
    const anchor = this.#cursor.element(place);
    const fault = column === undefined || place.row < 0 ? null : faultAt(column, place.row);
    if (fault === null || anchor === null || this.#cursor.writing !== null) this.#tip.hide();
    else if (fault.kind === 'waits') this.#tip.show(anchor, `This figure ${waitsFor(fault)}.`);
    else this.#tip.show(anchor, fault.mend === undefined ? fault.message : `${fault.message}\n${fault.mend}`);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-table-view': TableView;
  }
  interface HTMLElementEventMap {
    'sw-column': CustomEvent<ColumnDetail>;
    'sw-row': CustomEvent<RowDetail>;
  }
}
