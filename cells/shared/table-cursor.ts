import type { Entry } from '../../src/notebook/document.ts';
import type { DoneDetail, EntryDetail, FigureField } from './figure-field.ts';
import { beginsWriting, type GridExtent, type GridPlace, gridMove, tabMove } from './table-keys.ts';
import type { GridColumn } from './table-model.ts';

/** What the cursor needs of the grid it moves in. */
export interface CursorHost {
  readonly renderRoot: ParentNode & Node;
  readonly updateComplete: Promise<boolean>;
  requestUpdate(): void;
  readonly extent: GridExtent;
  columnAt(place: number): GridColumn | undefined;
  /** Bring a row into the page before it is focused. */
  reveal(place: GridPlace): void;
  focused(place: GridPlace, figure: HTMLElement): void;
  pick(place: GridPlace): void;
  openColumn(columnId: string): void;
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

  constructor(host: CursorHost) {
    this.#host = host;
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

  /** Write over a figure, beginning with the key that was typed or with the whole entry selected. */
  async write(place: GridPlace, typed?: string): Promise<void> {
    const entered = this.#host.columnAt(place.column)?.entered;
    if (entered === undefined || entered === null) return;
    this.at = place;
    this.writing = place;
    this.#host.requestUpdate();
    await this.#host.updateComplete;
    await this.element(place)?.querySelector<FigureField>('sw-figure-field')?.begin(typed);
  }

  readonly onClick = (event: MouseEvent): void => {
    if (cameFromField(event)) return;
    const place = this.placeOf(event);
    const column = place === null ? undefined : this.#host.columnAt(place.column);
    if (place === null || column === undefined) return;
    if (place.row < 0) {
      if (column.own) this.#host.openColumn(column.id);
      return;
    }
    const writes = column.entered !== null && place.column > 0;
    // Where the panel covers the table, writing comes first; a row's name still opens the panel.
    if (!writes || matchMedia(PANEL_BESIDE).matches) this.#host.pick(place);
    if (writes) void this.write(place);
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
    if (place !== null && column !== undefined) this.#host.keep(column.id, place.row, event.detail.entry);
  };

  readonly onDone = (event: CustomEvent<DoneDetail>): void => {
    event.stopPropagation();
    const from = this.writing;
    if (from === null) return;
    this.writing = null;
    this.#host.requestUpdate();
    const { move } = event.detail;
    const { extent } = this.#host;
    if (move === 'down') void this.go({ row: Math.min(from.row + 1, extent.rows - 1), column: from.column });
    else if (move === 'back') void this.go(from);
    else if (move !== 'none') void this.go(tabMove(from, move === 'left', extent));
  };

  readonly onKey = (event: KeyboardEvent): void => {
    if (this.writing !== null) return;
    const place = this.placeOf(event);
    const column = place === null ? undefined : this.#host.columnAt(place.column);
    if (place === null || column === undefined) return;
    const to = gridMove(place, event, this.#host.extent);
    const used = to !== null || (place.row >= 0 && this.#onFigureKey(event, place, column));
    if (!used) return;
    event.preventDefault();
    event.stopPropagation();
    if (to !== null) void this.go(to);
  };

  #onFigureKey(event: KeyboardEvent, place: GridPlace, column: GridColumn): boolean {
    const { entered } = column;
    if (event.key === ' ') this.#host.pick(place);
    else if (event.key === 'Enter' || event.key === 'F2') {
      if (entered === null) this.#host.pick(place);
      else void this.write(place);
    } else if (entered !== null && (event.key === 'Delete' || event.key === 'Backspace')) {
      if (entered.entries[place.row] !== null) this.#host.keep(column.id, place.row, null);
    } else if (entered !== null && beginsWriting(event, entered.kind)) void this.write(place, event.key);
    else return false;
    return true;
  }
}

function cameFromField(event: Event): boolean {
  return event.composedPath().some((each) => each instanceof Element && each.localName === 'sw-figure-field');
}
