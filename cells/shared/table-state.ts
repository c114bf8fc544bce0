import type { PropertyDeclarations } from 'lit';
import type { Entry, PairingCell, TableCell } from '../../src/notebook/document.ts';
import { entryEdit } from '../../src/notebook/edits.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { findCell } from '../../src/notebook/lookup.ts';
import { touches } from './cell-element.ts';
import { type PickDetail, pick, says } from './cell-events.ts';
import { NotebookController } from './notebook-controller.ts';
import { NotebookElement } from './notebook-element.ts';
import { type Block, blockBetween } from './table-block.ts';
import type { BlockDetail } from './table-block-bar.ts';
import { GridClipboard } from './table-clipboard.ts';
import { type CursorHost, GridCursor } from './table-cursor.ts';
import type { ColumnDetail } from './table-events.ts';
import { GridLens } from './table-grid-lens.ts';
import type { BlockAct, HandsHost } from './table-hands.ts';
import type { GridExtent, GridPlace } from './table-keys.ts';
import type { FindDetail } from './table-lens-line.ts';
import { GridMarks } from './table-marks.ts';
import type { Grid, GridColumn } from './table-model.ts';
import { GridScroll } from './table-scroll.ts';

/** Rows shown until all are asked for. */
export const ROWS_AT_FIRST = 10;
/** Rows beyond which only those in view are in the page. */
const ROWS_DRAWN_WHOLE = 200;

/**
 * What a grid is before it is drawn: which rows it offers and in which order, where the keyboard is, what is
 * marked, and what the cursor, the hands on a block and the lens do to it. `TableView` draws it.
 */
export abstract class GridState extends NotebookElement implements CursorHost, HandsHost {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    openColumnId: { attribute: false },
    picked: { attribute: false },
    showsAll: { state: true },
    showsFolded: { state: true },
    lensOpen: { state: true },
  };

  declare cellId: string;
  declare openColumnId: string;
  declare picked: PickDetail | null;
  declare protected showsAll: boolean;
  declare protected showsFolded: boolean;
  declare protected lensOpen: boolean;

  readonly marks = new GridMarks();
  /** The grid as it was drawn last; null before that, and when its cell is gone. */
  grid: Grid | null = null;
  protected drawn: TableCell | PairingCell | undefined;
  protected readonly cursor = new GridCursor(this);
  protected readonly scroller = new GridScroll(this);
  protected readonly lens = new GridLens(() => {
    if (this.isLong) this.scroller.look(this.rowsOffered);
    this.requestUpdate();
  });
  protected readonly clipboard = new GridClipboard(this, () => this.cursor.writing !== null);

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
      () => this.grid?.columns.map((column) => column.node) ?? [],
    );
  }

  /** Put the keyboard on a figure, opening what is folded away around it. */
  async goTo(columnId: string, row: number): Promise<void> {
    if (this.grid !== null && row < this.grid.rowCount && this.lens.order.placeOf(row) < 0) {
      await this.lens.lay(this.grid, { ...this.lens.lens, wheres: [] });
      says(this, 'Conditions taken off: the row was not shown');
    }
    const place = this.lens.order.placeOf(row);
    if (place >= ROWS_AT_FIRST) this.showsAll = true;
    if (this.grid?.columns.some((column) => column.id === columnId) === false) this.showsFolded = true;
    await this.updateComplete;
    const column = this.grid?.columns.findIndex((each) => each.id === columnId) ?? -1;
    if (column >= 0) await this.cursor.go({ row: place, column });
  }

  /** Put the keyboard where it was last, or on the head of a column whose settings were closed. */
  async enter(headOf: string | null = null): Promise<void> {
    await this.updateComplete;
    const column = this.grid?.columns.findIndex((each) => each.id === headOf) ?? -1;
    await this.cursor.go(column >= 0 ? { row: -1, column } : this.cursor.entry);
  }

  protected get cell(): TableCell | PairingCell | undefined {
    const cell = this.notebook && findCell(this.notebook.document, this.cellId);
    return cell?.kind === 'table' || cell?.kind === 'pairing' ? cell : undefined;
  }

  #concerns(change: NotebookChange): boolean {
    const cell = this.cell;
    if (change.document && cell !== this.drawn) return true;
    if (cell === undefined) return false;
    const names = cell.kind === 'pairing' ? [cell.name, cell.left, cell.right] : [cell.name];
    return names.some((name) => touches(change.nodes, name));
  }

  /** Rows that can be reached now: the first ten, or all. */
  protected get rowsOffered(): number {
    const { placeCount } = this;
    return this.showsAll ? placeCount : Math.min(placeCount, ROWS_AT_FIRST);
  }

  protected get isLong(): boolean {
    return this.rowsOffered > ROWS_DRAWN_WHOLE;
  }

  // --- for the cursor and the hands ---

  get placeCount(): number {
    return this.lens.order.countOf(this.grid?.rowCount ?? 0);
  }

  get isViewed(): boolean {
    return this.lens.order.isOwn;
  }

  rowAt(place: number): number {
    return this.lens.order.rowAt(place);
  }

  get target(): Block | null {
    const { at } = this.cursor;
    return this.marks.block ?? (at.row < 0 || at.row >= this.placeCount ? null : blockBetween(at, at));
  }

  markBlock(block: Block): void {
    if (block.bottom >= ROWS_AT_FIRST) this.showsAll = true;
    this.marks.markBlock(block);
    this.requestUpdate();
  }

  command(command: BlockAct | 'find'): void {
    if (command === 'find') this.openLens();
    else void this.clipboard.act(command);
  }

  get extent(): GridExtent {
    return {
      rows: this.rowsOffered,
      columns: this.grid?.columns.length ?? 0,
      pageRows: this.isLong ? this.scroller.rowsInWindow : ROWS_AT_FIRST,
    };
  }

  columnAt(place: number): GridColumn | undefined {
    return this.grid?.columns[place];
  }

  reveal(place: GridPlace): void {
    if (this.isLong && place.row >= 0) this.scroller.toRow(place.row, this.rowsOffered);
  }

  focused(place: GridPlace, figure: HTMLElement): void {
    if (place.column > 0) this.scroller.showWhole(figure);
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

  // --- the lens and the marked block ---

  protected openLens = (): void => {
    if (this.lensOpen) this.closeLens();
    else this.lensOpen = true;
  };

  /** The line goes; what it set stays, and is said in the foot. */
  protected closeLens = (): void => {
    this.lensOpen = false;
    void this.enter();
  };

  protected async find({ text, backwards }: FindDetail): Promise<void> {
    const grid = this.grid;
    if (grid === null) return;
    const place = await this.lens.find(grid, text, this.cursor.at, backwards);
    if (place === null) {
      says(this, `No figure shown here holds ${text}`);
      return;
    }
    if (place.row >= ROWS_AT_FIRST) this.showsAll = true;
    await this.updateComplete;
    await this.cursor.show(place);
    says(this, `Found in row ${place.row + 1}, ${grid.columns[place.column]?.title ?? ''}`);
  }

  protected toggleMarking = (): void => {
    this.marks.startTapping(!this.marks.tapping);
    this.requestUpdate();
  };

  protected onBlock({ act }: BlockDetail): void {
    if (act === 'done') {
      this.marks.clear();
      void this.cursor.go(this.cursor.at);
    } else if (act === 'rows' || act === 'columns') this.marks.whole(act, this.cursor.at, this.extent);
    else void this.clipboard.act(act);
    this.requestUpdate();
  }
}
