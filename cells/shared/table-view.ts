import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Entry, PairingCell, TableCell } from '../../src/notebook/document.ts';
import { entryEdit, formulaEdit } from '../../src/notebook/edits.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { baseStyles } from './base-styles.ts';
import { touches } from './cell-element.ts';
import { type PickDetail, pick, says } from './cell-events.ts';
import { controlStyles } from './control-styles.ts';
import { NotebookController } from './notebook-controller.ts';
import { NotebookElement } from './notebook-element.ts';
import { plainTableStyles, sheetStyles } from './sheet-styles.ts';
import { type Block, blockBetween } from './table-block.ts';
import type { BlockDetail } from './table-block-bar.ts';
import { type ChangedColumn, inkChanges, ShownFigures } from './table-changes.ts';
import { GridClipboard } from './table-clipboard.ts';
import { type CursorHost, GridCursor } from './table-cursor.ts';
import { faultList, tableFoot } from './table-foot.ts';
import { GridLens } from './table-grid-lens.ts';
import type { BlockAct, HandsHost } from './table-hands.ts';
import type { GridExtent, GridPlace } from './table-keys.ts';
import type { FindDetail, LensDetail } from './table-lens-line.ts';
import { GridMarks } from './table-marks.ts';
import { type Grid, type GridColumn, gridOf } from './table-model.ts';
import { faultAt, type GridUse, gridRows, headCell } from './table-rows.ts';
import { GridScroll } from './table-scroll.ts';
import { gridStyles } from './table-styles.ts';
import { TableTip } from './table-tip.ts';
import type { Segment } from './table-window.ts';

/** Rows shown until all are asked for. */
const ROWS_AT_FIRST = 10;
/** Rows beyond which only those in view are in the page. */
const ROWS_DRAWN_WHOLE = 200;

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
 * the old figure back). A block is marked with Shift, by dragging or by taps; it is copied, cut, pasted over,
 * filled and emptied as one. A lens sorts and sifts the rows shown, and leaves the table as it is.
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
export class TableView extends NotebookElement implements CursorHost, HandsHost {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    openColumnId: { attribute: false },
    picked: { attribute: false },
    showsAll: { state: true },
    showsFolded: { state: true },
    lensOpen: { state: true },
  };

  static override styles = [baseStyles, controlStyles, sheetStyles, plainTableStyles, gridStyles];

  declare cellId: string;
  declare openColumnId: string;
  declare picked: PickDetail | null;
  declare private showsAll: boolean;
  declare private showsFolded: boolean;
  declare private lensOpen: boolean;

  readonly marks = new GridMarks();
  #grid: Grid | null = null;
  #drawn: TableCell | PairingCell | undefined;
  #changed: readonly ChangedColumn[] = [];
  #toldRow: number | null = 0;
  #hadFocus = false;
  readonly #shown = new ShownFigures();
  readonly #cursor = new GridCursor(this);
  readonly #scroll = new GridScroll(this);
  readonly #lens = new GridLens(() => this.#scroll.refresh(this.#isLong ? this.#rowsOffered : 0));
  readonly #clipboard = new GridClipboard(this, () => this.#cursor.writing !== null);
  readonly #tip = new TableTip(() => this.renderRoot.querySelector('.tip'));

  constructor() {
    super();
    this.cellId = '';
    this.openColumnId = '';
    this.picked = null;
    this.showsAll = false;
    this.showsFolded = false;
    this.lensOpen = false;
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
    if (this.#grid !== null && row < this.#grid.rowCount && this.#lens.order.placeOf(row) < 0) {
      await this.#lens.lay(this.#grid, { ...this.#lens.lens, wheres: [] });
      says(this, 'Conditions taken off: the row was not shown');
    }
    const place = this.#lens.order.placeOf(row);
    if (place >= ROWS_AT_FIRST) this.showsAll = true;
    if (this.#grid?.columns.some((column) => column.id === columnId) === false) this.showsFolded = true;
    await this.updateComplete;
    const column = this.#grid?.columns.findIndex((each) => each.id === columnId) ?? -1;
    if (column >= 0) await this.#cursor.go({ row: place, column });
  }

  /** Put the keyboard where it was last, or on the head of a column whose settings were closed. */
  async enter(headOf: string | null = null): Promise<void> {
    await this.updateComplete;
    const column = this.#grid?.columns.findIndex((each) => each.id === headOf) ?? -1;
    await this.#cursor.go(column >= 0 ? { row: -1, column } : this.#cursor.entry);
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
    const { placeCount } = this;
    return this.showsAll ? placeCount : Math.min(placeCount, ROWS_AT_FIRST);
  }

  get #isLong(): boolean {
    return this.#rowsOffered > ROWS_DRAWN_WHOLE;
  }

  // --- for the cursor and the hands ---

  get grid(): Grid | null {
    return this.#grid;
  }

  get placeCount(): number {
    return this.#lens.order.countOf(this.#grid?.rowCount ?? 0);
  }

  get isViewed(): boolean {
    return this.#lens.order.isOwn;
  }

  rowAt(place: number): number {
    return this.#lens.order.rowAt(place);
  }

  get target(): Block | null {
    const { at } = this.#cursor;
    return this.marks.block ?? (at.row < 0 || at.row >= this.placeCount ? null : blockBetween(at, at));
  }

  markBlock(block: Block): void {
    if (block.bottom >= ROWS_AT_FIRST) this.showsAll = true;
    this.marks.markBlock(block);
    this.requestUpdate();
  }

  command(command: BlockAct | 'find'): void {
    if (command === 'find') this.#openLens();
    else void this.#clipboard.act(command);
  }

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
    pick(this, { node: column.node, row: this.rowAt(place.row), cell: this.cellId });
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
    if (this.#grid !== null) this.#lens.follow(this.#grid, this.#changed.length > 0);
    this.#cursor.clamp();
    this.marks.keepWithin(this.extent);
  }

  override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.#isLong) this.#scroll.measure();
    // Rows that move in the page lose the focus; the keyboard stays where it was all the same.
    if (this.#hadFocus && this.shadowRoot?.activeElement === null && this.#cursor.writing === null) {
      this.#cursor.element(this.#cursor.at)?.focus({ preventScroll: true });
    }
    inkChanges(this.renderRoot, this.#changed, (place) => this.rowAt(place));
    this.#changed = [];
    const row = this.#cursor.at.row < 0 ? null : this.rowAt(this.#cursor.at.row);
    if (row === this.#toldRow) return;
    this.#toldRow = row;
    this.dispatchEvent(new CustomEvent<RowDetail>('sw-row', { detail: { row }, bubbles: true }));
  }

  override render(): unknown {
    const grid = this.#grid;
    if (grid === null) return nothing;
    return html`${this.#lensLine(grid)}${grid.columns.length === 0 ? nothing : this.#table(grid)}
      ${this.#blockBar(grid)}
      <div class="tip" popover="manual" role="status"></div>
      ${faultList(grid, {
        fix: (columnId, formula) =>
          this.notebook.apply(formulaEdit(this.notebook.document, this.cellId, columnId, formula)),
        openColumn: (columnId) => this.openColumn(columnId),
        goTo: (columnId, row) => void this.goTo(columnId, row),
      })}
      ${tableFoot({
        rowCount: grid.rowCount,
        placeCount: this.placeCount,
        rowsShown: this.#rowsOffered,
        rowsAtFirst: ROWS_AT_FIRST,
        showsAll: this.showsAll,
        foldedCount: grid.foldedCount,
        showsFolded: this.showsFolded,
        toggleAll: this.#toggleAll,
        toggleFolded: this.#toggleFolded,
        lensOpen: this.lensOpen,
        openLens: this.#openLens,
        marking: this.marks.tapping,
        toggleMarking: this.#toggleMarking,
      })}`;
  }

  #lensLine(grid: Grid): TemplateResult | typeof nothing {
    if (!this.lensOpen) return nothing;
    const { lens, stale, refusal } = this.#lens;
    return html`<sw-table-lens .grid=${grid} .lens=${lens} .stale=${stale} .refusal=${refusal}
      .placeCount=${this.placeCount}
      @sw-lens=${(event: CustomEvent<LensDetail>) => {
        this.marks.clear();
        void this.#lens.lay(grid, event.detail.lens);
      }}
      @sw-find=${(event: CustomEvent<FindDetail>) => this.#find(event.detail)}
      @sw-lens-close=${this.#closeLens}></sw-table-lens>`;
  }

  #blockBar(grid: Grid): TemplateResult | typeof nothing {
    const { block, tapping } = this.marks;
    if (block === null && !tapping) return nothing;
    return html`<sw-block-bar .grid=${grid} .block=${block} .extent=${this.extent} .viewed=${this.isViewed}
      @sw-block=${(event: CustomEvent<BlockDetail>) => this.#onBlock(event.detail)}></sw-block-bar>`;
  }

  #table(grid: Grid): TemplateResult {
    const use: GridUse = {
      at: this.#cursor.at,
      writing: this.#cursor.writing,
      pickedRow: this.picked?.cell === this.cellId ? this.picked.row : null,
      block: this.marks.block,
      sorted: this.#lens.lens.sorting,
      openColumn: this.openColumnId === '' ? null : this.openColumnId,
    };
    return html`<div class="scroll ${this.#isLong ? 'tall' : ''}" part="scroll" @scroll=${this.#onScroll}>
      <table role="grid" aria-label=${grid.title}
        aria-multiselectable="true" aria-rowcount=${this.placeCount + 1} aria-colcount=${grid.columns.length}
        @click=${this.#cursor.onClick} @dblclick=${this.#cursor.onDoubleClick} @keydown=${this.#cursor.onKey}
        @pointerdown=${this.#cursor.onPointerDown} @mousedown=${this.#cursor.onMouseDown}
        @pointerup=${() => this.marks.released()} @contextmenu=${this.#cursor.onContextMenu}
        @focusin=${this.#onFocus} @pointerover=${this.#onPointerOver} @pointerleave=${() => this.#tip.hide()}
        @copy=${this.#clipboard.onCopy} @cut=${this.#clipboard.onCut} @paste=${this.#clipboard.onPaste}
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
    const segments: readonly Segment[] = this.#isLong
      ? this.#scroll.segments(this.#rowsOffered, this.#cursor.at.row)
      : [{ kind: 'rows', from: 0, to: this.#rowsOffered }];
    return gridRows(grid, segments, { use, order: this.#lens.order, rowPx: this.#scroll.rowPx });
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
    void this.#clipboard.fetch();
    if (place === null) return;
    if (place.row !== this.#cursor.at.row || place.column !== this.#cursor.at.column) {
      this.#cursor.at = place;
      this.requestUpdate();
    }
    this.#showTip(place);
  };

  #onPointerOver = (event: PointerEvent): void => {
    this.#cursor.onPointerOver(event);
    const place = this.#cursor.placeOf(event);
    if (place !== null) this.#showTip(place);
  };

  // --- the lens and the marked block ---

  #openLens = (): void => {
    if (this.lensOpen) this.#closeLens();
    else this.lensOpen = true;
  };

  /** The line goes; what it set stays, and is said in the foot. */
  #closeLens = (): void => {
    this.lensOpen = false;
    void this.enter();
  };

  async #find({ text, backwards }: FindDetail): Promise<void> {
    const grid = this.#grid;
    if (grid === null) return;
    const place = await this.#lens.find(grid, text, this.#cursor.at, backwards);
    if (place === null) {
      says(this, `No figure shown here holds ${text}`);
      return;
    }
    if (place.row >= ROWS_AT_FIRST) this.showsAll = true;
    await this.updateComplete;
    await this.#cursor.show(place);
    says(this, `Found in row ${place.row + 1}, ${grid.columns[place.column]?.title ?? ''}`);
  }

  #toggleMarking = (): void => {
    this.marks.startTapping(!this.marks.tapping);
    this.requestUpdate();
  };

  #onBlock({ act }: BlockDetail): void {
    if (act === 'done') {
      this.marks.clear();
      void this.#cursor.go(this.#cursor.at);
    } else if (act === 'rows' || act === 'columns') this.marks.whole(act, this.#cursor.at, this.extent);
    else void this.#clipboard.act(act);
    this.requestUpdate();
  }

  #showTip(place: GridPlace): void {
    const column = this.columnAt(place.column);
    const anchor = this.#cursor.element(place);
    const fault = column === undefined || place.row < 0 ? null : faultAt(column, this.rowAt(place.row));
    this.#tip.showFault(this.#cursor.writing === null ? anchor : null, fault);
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
