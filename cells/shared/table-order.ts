/**
 * In which order the rows of a grid are shown, and which of them: a view, kept apart from the data. Rows are
 * counted as they stand in the table; places as they are shown.
 */
export class RowOrder {
  #rows: Int32Array | null = null;
  #places: Map<number, number> | null = null;

  /** Whether the rows are shown otherwise than they stand. */
  get isOwn(): boolean {
    return this.#rows !== null;
  }

  /** Show these rows, in this order; null for all rows as they stand. */
  show(rows: Int32Array | null): void {
    this.#rows = rows;
    this.#places = null;
  }

  /** How many of `rowCount` rows are shown. */
  countOf(rowCount: number): number {
    return this.#rows === null ? rowCount : this.#rows.length;
  }

  /** The row shown at a place; -1 for a place that shows none, the head among them. */
  rowAt(place: number): number {
    if (this.#rows === null || place < 0) return place;
    return this.#rows[place] ?? -1;
  }

  /** The place of a row; -1 when it is not shown. */
  placeOf(row: number): number {
    if (this.#rows === null) return row;
    this.#places ??= new Map(Array.from(this.#rows, (shown, place) => [shown, place]));
    return this.#places.get(row) ?? -1;
  }
}
