import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { formulaEdit } from '../../src/notebook/edits.ts';
import { baseStyles } from './base-styles.ts';
import { controlStyles } from './control-styles.ts';
import { liftRule } from './ink-rule.ts';
import { sheetStyles } from './sheet-styles.ts';
import { plainTableStyles } from './sheet-table-styles.ts';
import type { BlockDetail } from './table-block-bar.ts';
import { type ChangedColumn, inkChanges, ShownFigures } from './table-changes.ts';
import type { RowDetail } from './table-events.ts';
import { faultList, tableFoot } from './table-foot.ts';
import { gridElement } from './table-grid.ts';
import type { GridPlace } from './table-keys.ts';
import type { FindDetail, LensDetail } from './table-lens-line.ts';
import { type Grid, gridOf } from './table-model.ts';
import { faultAt, type GridUse, gridRows } from './table-rows.ts';
import { RowSlots } from './table-slots.ts';
import { GridState, ROWS_AT_FIRST } from './table-state.ts';
import { gridStyles } from './table-styles.ts';
import { TableTip } from './table-tip.ts';
import type { Segment } from './table-window.ts';

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
export class TableView extends GridState {
  static override styles = [baseStyles, controlStyles, sheetStyles, plainTableStyles, gridStyles];

  #changed: readonly ChangedColumn[] = [];
  #toldRow: number | null = 0;
  #hadFocus = false;
  readonly #shown = new ShownFigures();
  readonly #slots = new RowSlots();
  readonly #tip = new TableTip(() => this.renderRoot.querySelector('.tip'));

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#tip.hide();
  }

  override willUpdate(): void {
    this.#hadFocus = this.shadowRoot?.activeElement?.matches('[data-row]') ?? false;
    const cell = this.cell;
    this.drawn = cell;
    this.grid = cell === undefined ? null : gridOf(this.notebook, cell, this.showsFolded);
    this.#changed = this.grid === null ? [] : this.#shown.changedIn(this.grid);
    if (this.grid !== null) this.lens.follow(this.grid, this.#changed.length > 0);
    this.cursor.clamp();
    this.marks.keepWithin(this.extent);
  }

  override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.isLong) this.scroller.measureOnce();
    // Rows that move in the page lose the focus; the keyboard stays where it was all the same.
    if (this.#hadFocus && this.shadowRoot?.activeElement === null && this.cursor.writing === null) {
      this.cursor.element(this.cursor.at)?.focus({ preventScroll: true });
    }
    if (this.isLong) this.#liftRules();
    inkChanges(this.renderRoot, this.#changed, (place) => this.rowAt(place));
    this.#changed = [];
    const row = this.cursor.at.row < 0 ? null : this.rowAt(this.cursor.at.row);
    if (row === this.#toldRow) return;
    this.#toldRow = row;
    this.dispatchEvent(new CustomEvent<RowDetail>('sw-row', { detail: { row }, bubbles: true }));
  }

  override render(): unknown {
    const grid = this.grid;
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
        rowsShown: this.rowsOffered,
        rowsAtFirst: ROWS_AT_FIRST,
        showsAll: this.showsAll,
        foldedCount: grid.foldedCount,
        showsFolded: this.showsFolded,
        toggleAll: this.#toggleAll,
        toggleFolded: this.#toggleFolded,
        lensOpen: this.lensOpen,
        openLens: this.openLens,
        marking: this.marks.tapping,
        toggleMarking: this.toggleMarking,
      })}`;
  }

  #lensLine(grid: Grid): TemplateResult | typeof nothing {
    if (!this.lensOpen) return nothing;
    const { lens, stale, refusal } = this.lens;
    return html`<sw-table-lens .grid=${grid} .lens=${lens} .stale=${stale} .refusal=${refusal}
      .placeCount=${this.placeCount}
      @sw-lens=${(event: CustomEvent<LensDetail>) => {
        this.marks.clear();
        void this.lens.lay(grid, event.detail.lens);
        // The conditions follow at once, the rows when they are known: the next choice builds on this one.
        this.requestUpdate();
      }}
      @sw-find=${(event: CustomEvent<FindDetail>) => this.find(event.detail)}
      @sw-lens-close=${this.closeLens}></sw-table-lens>`;
  }

  #blockBar(grid: Grid): TemplateResult | typeof nothing {
    const { block, tapping } = this.marks;
    if (block === null && !tapping) return nothing;
    return html`<sw-block-bar .grid=${grid} .block=${block} .extent=${this.extent} .viewed=${this.isViewed}
      @sw-block=${(event: CustomEvent<BlockDetail>) => this.onBlock(event.detail)}></sw-block-bar>`;
  }

  #table(grid: Grid): TemplateResult {
    const use: GridUse = {
      at: this.cursor.at,
      writing: this.cursor.writing,
      pickedRow: this.picked?.cell === this.cellId ? this.picked.row : null,
      block: this.marks.block,
      sorted: this.lens.lens.sorting,
      openColumn: this.openColumnId === '' ? null : this.openColumnId,
    };
    return gridElement(grid, {
      use,
      placeCount: this.placeCount,
      isLong: this.isLong,
      rows: this.#rows(grid, use),
      cursor: this.cursor,
      clipboard: this.clipboard,
      released: this.#onReleased,
      scrolled: this.#onScroll,
      focused: this.#onFocus,
      pointed: this.#onPointerOver,
      left: this.#onPointerLeave,
    });
  }

  #rows(grid: Grid, use: GridUse): unknown {
    const segments: readonly Segment[] = this.isLong
      ? this.scroller.segments(this.rowsOffered, this.cursor.at.row)
      : [{ kind: 'rows', from: 0, to: this.rowsOffered }];
    const slots = this.isLong ? this.#slots : null;
    return gridRows(grid, segments, { use, order: this.lens.order, rowPx: this.scroller.rowPx, slots });
  }

  /** A row of the page that now stands for another shows no change of the one before. */
  #liftRules(): void {
    if (this.#slots.renewed.size === 0) return;
    for (const figure of this.renderRoot.querySelectorAll<HTMLElement>('tbody [data-row]'))
      if (this.#slots.renewed.has(this.rowAt(Number(figure.dataset.row)))) liftRule(figure);
  }

  #toggleAll = (): void => {
    this.showsAll = !this.showsAll;
    this.scroller.toTop();
  };

  #toggleFolded = (): void => {
    this.showsFolded = !this.showsFolded;
  };

  #onScroll = (): void => {
    this.scroller.markScrolled();
    this.#tip.hide();
    if (this.isLong) this.scroller.look(this.rowsOffered);
  };

  #onFocus = (event: FocusEvent): void => {
    const place = this.cursor.placeOf(event);
    this.clipboard.prepare();
    if (place === null) return;
    if (place.row !== this.cursor.at.row || place.column !== this.cursor.at.column) {
      this.cursor.at = place;
      this.requestUpdate();
    }
    this.#showTip(place);
  };

  #onPointerOver = (event: PointerEvent): void => {
    this.cursor.onPointerOver(event);
    const place = this.cursor.placeOf(event);
    if (place !== null) this.#showTip(place);
  };

  #onPointerLeave = (): void => this.#tip.hide();

  #onReleased = (): void => this.marks.released();

  #showTip(place: GridPlace): void {
    const column = this.columnAt(place.column);
    const anchor = this.cursor.element(place);
    const fault = column === undefined || place.row < 0 ? null : faultAt(column, this.rowAt(place.row));
    this.#tip.showFault(this.cursor.writing === null ? anchor : null, fault);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-table-view': TableView;
  }
}
