import type { Entry } from '../../src/notebook/document.ts';
import type { DoneDetail, EntryDetail, FigureField } from './figure-field.ts';
import {
  answerOf,
  type BlockCommand,
  beginsWriting,
  blockCommand,
  type GridExtent,
  type GridPlace,
  gridMove,
  tabMove,
} from './table-keys.ts';
import type { GridMarks } from './table-marks.ts';
import type { GridColumn } from './table-model.ts';

/** What the cursor needs of the grid it moves in. */
export interface CursorHost {
  readonly renderRoot: ParentNode & Node;
  readonly updateComplete: Promise<boolean>;
  requestUpdate(): void;
  readonly extent: GridExtent;
  columnAt(place: number): GridColumn | undefined;
  /** The row of the table that is shown at a place. */
  rowAt(place: number): number;
  readonly marks: GridMarks;
  /** Do something with the marked block, or with the figure at hand. */
  command(command: Exclude<BlockCommand, 'rows' | 'columns' | 'all'>): void;
  /** Bring a row into the page before it is focused. */
  reveal(place: GridPlace): void;
  focused(place: GridPlace, figure: HTMLElement): void;
  pick(place: GridPlace): void;
  openColumn(columnId: string): void;
  /** Keep an entry; `row` as it stands in the table. */
  keep(columnId: string, row: number, entry: Entry): void;
}

/** Wide enough for the panel to stand beside the table instead of over it. */
const PANEL_BESIDE = '(min-width: 1241px)';

/**
 * The keyboard and the pointer in a grid: one place at a time has the focus, and one figure at a time is
 * written. Every key that it uses is kept from the page, whose own keys are single letters.
 */
export class GridCursor {
  at: GridPlace = { row: 0, column: 0 };
  writing: GridPlace | null = null;
  readonly #host: CursorHost;
  /** What was typed since writing began and before its field was there; null once it is. */
  #typedAhead: string | null = null;

  constructor(host: CursorHost) {
    this.#host = host;
  }

  /** Where the keyboard comes in: where it was last, and never on a head while there are figures. */
  get entry(): GridPlace {
    const { rows } = this.#host.extent;
    return { row: rows > 0 ? Math.max(0, this.at.row) : -1, column: this.at.column };
  }

  element(place: GridPlace): HTMLElement | null {
    return this.#host.renderRoot.querySelector(`[data-row="${place.row}"][data-col="${place.column}"]`);
  }

  /** The place in the grid that an event comes from. */
  placeOf(event: Event): GridPlace | null {
    for (const target of event.composedPath()) {
      if (target === this.#host.renderRoot) return null;
      if (target instanceof HTMLElement && target.dataset.row !== undefined) {
        return { row: Number(target.dataset.row), column: Number(target.dataset.col) };
      }
    }
    return null;
  }

  /** Stay inside a grid that has become smaller. */
  clamp(): void {
    const { rows, columns } = this.#host.extent;
    if (this.at.row < rows && this.at.column < columns) return;
    this.at = {
      row: Math.max(-1, Math.min(this.at.row, rows - 1)),
      column: Math.max(0, Math.min(this.at.column, columns - 1)),
    };
  }

  async go(place: GridPlace): Promise<void> {
    this.at = place;
    this.#host.reveal(place);
    this.#host.requestUpdate();
    await this.#host.updateComplete;
    const figure = this.element(place);
    if (figure === null) return;
    figure.focus();
    this.#host.focused(place, figure);
  }

  /** Bring a place into sight without taking the keyboard there: someone is writing elsewhere. */
  async show(place: GridPlace): Promise<void> {
    this.at = place;
    this.#host.reveal(place);
    this.#host.requestUpdate();
    await this.#host.updateComplete;
    const figure = this.element(place);
    if (figure === null) return;
    figure.scrollIntoView({ block: 'nearest', inline: 'nearest' });
    this.#host.focused(place, figure);
  }

  /** Write over a figure, beginning with the key that was typed or with the whole entry selected. */
  async write(place: GridPlace, typed?: string): Promise<void> {
    const entered = this.#host.columnAt(place.column)?.entered;
    if (entered === undefined || entered === null) return;
    this.at = place;
    this.writing = place;
    this.#typedAhead = typed ?? '';
    this.#host.requestUpdate();
    await this.#host.updateComplete;
    const field = this.element(place)?.querySelector<FigureField>('sw-figure-field');
    await field?.updateComplete;
    const ahead = this.#typedAhead;
    this.#typedAhead = null;
    await field?.begin(ahead === '' ? undefined : (ahead ?? undefined));
  }

  readonly onClick = (event: MouseEvent): void => {
    const { marks } = this.#host;
    const place = this.placeOf(event);
    const column = place === null ? undefined : this.#host.columnAt(place.column);
    if (marks.tookClick() || place === null || column === undefined || cameFromField(event)) return;
    if (event.shiftKey || marks.tapping) {
      this.#markTo(place, marks.tapping);
      return;
    }
    if (marks.clear()) this.#host.requestUpdate();
    if (place.row < 0) {
      if (column.own) this.#host.openColumn(column.id);
      return;
    }
    // A row without its name yet has nothing to open the panel on: a tap begins it, with no second one.
    const entry = column.entered?.entries[this.#host.rowAt(place.row)];
    const writes = entry !== undefined && (place.column > 0 || entry === null || entry === '');
    // Where the panel covers the table, writing comes first; a row's name still opens the panel.
    if (!writes || matchMedia(PANEL_BESIDE).matches) this.#host.pick(place);
    if (writes) void this.write(place);
  };

  /** With Shift, or while corners are tapped, a press marks a block; on a head, the whole column. */
  #markTo(place: GridPlace, tapped: boolean): void {
    const { marks, extent } = this.#host;
    if (place.row < 0) {
      const first = marks.block?.left ?? this.at.column;
      marks.mark({ row: 0, column: first }, { row: extent.rows - 1, column: place.column });
    } else if (tapped) marks.tap(place);
    else marks.extend(this.at, place);
    this.#host.requestUpdate();
  }

  readonly onPointerDown = (event: PointerEvent): void => {
    if (event.button !== 0 || event.pointerType === 'touch' || cameFromField(event)) return;
    const place = this.placeOf(event);
    if (place === null || place.row < 0 || event.shiftKey) {
      // The keyboard stays where it is, and no text between the two is selected.
      if (event.shiftKey) event.preventDefault();
      return;
    }
    this.#host.marks.pressed(place);
  };

  readonly onMouseDown = (event: MouseEvent): void => {
    if (event.shiftKey && !cameFromField(event)) event.preventDefault();
  };

  readonly onPointerOver = (event: PointerEvent): void => {
    const { marks } = this.#host;
    if ((event.buttons & 1) === 0) {
      marks.released();
      return;
    }
    const place = this.placeOf(event);
    if (place === null || !marks.draggedTo(place)) return;
    getSelection()?.removeAllRanges();
    this.#host.requestUpdate();
  };

  /** A long press by touch marks the first corner; taps then mark the other. */
  readonly onContextMenu = (event: PointerEvent): void => {
    const place = this.placeOf(event);
    if (event.pointerType !== 'touch' || place === null || place.row < 0 || this.writing !== null) return;
    event.preventDefault();
    this.#host.marks.startTapping();
    this.#host.marks.tap(place);
    this.#host.requestUpdate();
  };

  /** A row's name is picked by one click and written by two. */
  readonly onDoubleClick = (event: MouseEvent): void => {
    const place = this.placeOf(event);
    if (place !== null && place.row >= 0 && place.column === 0 && !cameFromField(event))
      void this.write(place);
  };

  readonly onEntry = (event: CustomEvent<EntryDetail>): void => {
    event.stopPropagation();
    const place = this.writing;
    const column = place === null ? undefined : this.#host.columnAt(place.column);
    if (place !== null && column !== undefined)
      this.#host.keep(column.id, this.#host.rowAt(place.row), event.detail.entry);
  };

  readonly onDone = (event: CustomEvent<DoneDetail>): void => {
    event.stopPropagation();
    const from = this.writing;
    if (from === null) return;
    this.writing = null;
    this.#host.requestUpdate();
    const { move } = event.detail;
    const { extent } = this.#host;
    if (move === 'down') void this.#goDown(from);
    else if (move === 'back') void this.go(from);
    else if (move !== 'none') void this.go(tabMove(from, move === 'left', extent));
  };

  /** On to the next row; by touch it is written at once, so that the keyboard on the screen stays. */
  async #goDown(from: GridPlace): Promise<void> {
    const to = { row: Math.min(from.row + 1, this.#host.extent.rows - 1), column: from.column };
    // The field that was left goes first: as it goes, it ends whatever is being written.
    await this.go(to);
    if (to.row !== from.row && matchMedia('(pointer: coarse)').matches) await this.write(to);
  }

  readonly onKey = (event: KeyboardEvent): void => {
    if (this.writing !== null) {
      this.#typeAhead(event);
      return;
    }
    const place = this.placeOf(event);
    const column = place === null ? undefined : this.#host.columnAt(place.column);
    if (place === null || column === undefined) return;
    const to = gridMove(event.shiftKey ? this.#host.marks.corner(place) : place, event, this.#host.extent);
    const used =
      to !== null ||
      this.#onBlockKey(event, place) ||
      (place.row >= 0 && this.#onFigureKey(event, place, column));
    if (!used) return;
    event.preventDefault();
    event.stopPropagation();
    if (to !== null && event.shiftKey) void this.#extend(place, to);
    else if (to !== null) {
      this.#host.marks.clear();
      void this.go(to);
    }
  };

  /** A quick hand types on before the field is there: nothing of it is lost. */
  #typeAhead(event: KeyboardEvent): void {
    if (this.#typedAhead === null || event.key.length !== 1 || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    event.stopPropagation();
    this.#typedAhead += event.key;
  }

  /** The second corner goes there, and takes the keyboard along in the direction it moved. */
  async #extend(place: GridPlace, to: GridPlace): Promise<void> {
    const { marks } = this.#host;
    const corner = marks.corner(place);
    const end = { row: Math.max(0, to.row), column: to.column };
    marks.extend(place, end);
    await this.go({
      row: end.row === corner.row ? Math.max(0, place.row) : end.row,
      column: end.column === corner.column ? place.column : end.column,
    });
  }

  #onBlockKey(event: KeyboardEvent, place: GridPlace): boolean {
    const { marks, extent } = this.#host;
    if (event.key === 'Escape') {
      if (!marks.clear()) return false;
    } else {
      const command = blockCommand(event, marks.block !== null);
      if (command === null || (place.row < 0 && command !== 'columns' && command !== 'find')) return false;
      if (command === 'rows' || command === 'columns' || command === 'all')
        marks.whole(command, place, extent);
      else this.#host.command(command);
    }
    this.#host.requestUpdate();
    return true;
  }

  #onFigureKey(event: KeyboardEvent, place: GridPlace, column: GridColumn): boolean {
    const { entered } = column;
    const row = this.#host.rowAt(place.row);
    const answer = entered === null ? null : answerOf(event, entered.kind);
    if (event.key === ' ') this.#host.pick(place);
    else if (event.key === 'Enter' || event.key === 'F2') {
      if (entered === null) this.#host.pick(place);
      else void this.write(place);
    } else if (entered !== null && (event.key === 'Delete' || event.key === 'Backspace')) {
      if (entered.entries[row] !== null) this.#host.keep(column.id, row, null);
    } else if (answer !== null) {
      if (entered?.entries[row] !== answer) this.#host.keep(column.id, row, answer);
    } else if (entered !== null && beginsWriting(event, entered.kind)) void this.write(place, event.key);
    else return false;
    return true;
  }
}

function cameFromField(event: Event): boolean {
  return event.composedPath().some((each) => each instanceof Element && each.localName === 'sw-figure-field');
}
