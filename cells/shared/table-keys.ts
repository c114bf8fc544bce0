/** A place in the grid: row -1 is the head, columns are counted as shown. */
export interface GridPlace {
  readonly row: number;
  readonly column: number;
}

export interface GridExtent {
  readonly rows: number;
  readonly columns: number;
  /** Rows that one Page key moves by. */
  readonly pageRows: number;
}

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey?: boolean;
}

const clamp = (x: number, low: number, high: number): number => Math.min(high, Math.max(low, x));

/**
 * Where a key moves the focus to; null when the key does not move it.
 *
 * @example gridMove({ row: 0, column: 2 }, { key: 'ArrowUp', ... }, extent) // { row: -1, column: 2 }
 */
export function gridMove(from: GridPlace, press: KeyPress, extent: GridExtent): GridPlace | null {
  if (press.altKey) return null;
  const far = press.ctrlKey || press.metaKey;
  const lastRow = extent.rows - 1;
  const lastColumn = extent.columns - 1;
  const to = (row: number, column: number): GridPlace => ({
    row: clamp(row, -1, lastRow),
    column: clamp(column, 0, lastColumn),
  });
  switch (press.key) {
    case 'ArrowUp':
      return far ? to(0, from.column) : to(from.row - 1, from.column);
    case 'ArrowDown':
      return far ? to(lastRow, from.column) : to(from.row + 1, from.column);
    case 'ArrowLeft':
      return far ? to(from.row, 0) : to(from.row, from.column - 1);
    case 'ArrowRight':
      return far ? to(from.row, lastColumn) : to(from.row, from.column + 1);
    case 'Home':
      return far ? to(0, 0) : to(from.row, 0);
    case 'End':
      return far ? to(lastRow, lastColumn) : to(from.row, lastColumn);
    case 'PageUp':
      return to(Math.max(0, from.row - extent.pageRows), from.column);
    case 'PageDown':
      return to(from.row + extent.pageRows, from.column);
    default:
      return null;
  }
}

/**
 * Where the focus goes after Tab kept an entry: one to the right, and from the end of a row to the start of
 * the next. Backwards with Shift.
 *
 * @example tabMove({ row: 0, column: 3 }, false, { rows: 2, columns: 4, pageRows: 10 }) // { row: 1, column: 0 }
 */
export function tabMove(from: GridPlace, backwards: boolean, extent: GridExtent): GridPlace {
  const step = backwards ? -1 : 1;
  const flat = from.row * extent.columns + from.column + step;
  const place = clamp(flat, 0, Math.max(0, extent.rows * extent.columns - 1));
  return { row: Math.floor(place / extent.columns), column: place % extent.columns };
}

/**
 * Whether a key pressed on a figure begins to write there: for numbers and dates what a figure can begin
 * with, for text any single sign. Letters over a number stay free for the page's own keys.
 *
 * @example beginsWriting({ key: '7', ... }, 'number') // true
 */
export function beginsWriting(press: KeyPress, kind: string): boolean {
  if (press.ctrlKey || press.metaKey || press.altKey || press.key.length !== 1) return false;
  if (kind === 'number' || kind === 'date') return /[\d+\-−.,]/.test(press.key);
  return kind === 'text' ? press.key !== ' ' : false;
}

/** `rows`, `columns`, `all` mark more; the others do something with what is marked. */
export type BlockCommand = 'rows' | 'columns' | 'all' | 'clear' | 'fill-down' | 'fill-across' | 'find';

/**
 * What a key does with a block of figures; null when it does nothing. Shift and Space mark whole rows, Control
 * and Space whole columns, as in every grid that follows the ARIA practices.
 *
 * @param marked whether a block is marked: Delete and the filling keys belong to single figures otherwise
 * @example blockCommand({ key: ' ', shiftKey: true, ... }, false) // 'rows'
 */
export function blockCommand(press: KeyPress, marked: boolean): BlockCommand | null {
  if (press.altKey) return null;
  const control = press.ctrlKey || press.metaKey;
  switch (press.key.toLowerCase()) {
    case ' ':
      if (control) return 'columns';
      return press.shiftKey ? 'rows' : null;
    case 'a':
      return control ? 'all' : null;
    case 'f':
      return control && !press.shiftKey ? 'find' : null;
    case 'd':
      if (!control) return null;
      return press.shiftKey ? 'fill-across' : 'fill-down';
    case 'delete':
    case 'backspace':
      return marked ? 'clear' : null;
    default:
      return null;
  }
}

/**
 * The answer that one letter gives over a yes/no figure; null for other keys and kinds.
 *
 * @example answerOf({ key: 'y', ... }, 'yes_no') // true
 */
export function answerOf(press: KeyPress, kind: string): boolean | null {
  if (kind !== 'yes_no' || press.ctrlKey || press.metaKey || press.altKey) return null;
  const letter = press.key.toLowerCase();
  if (letter === 'y') return true;
  return letter === 'n' ? false : null;
}
