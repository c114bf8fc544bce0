/** `sw-column`: the head of a column was pressed; its settings are to be opened or closed. */
export interface ColumnDetail {
  readonly columnId: string;
}

/** `sw-row`: the keyboard or the pointer went to another row, counted from 0; null for the head. */
export interface RowDetail {
  readonly row: number | null;
}

declare global {
  interface HTMLElementEventMap {
    'sw-column': CustomEvent<ColumnDetail>;
    'sw-row': CustomEvent<RowDetail>;
  }
}
