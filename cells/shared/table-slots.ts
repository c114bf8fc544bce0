/**
 * Which row of the page stands for which row of a long table. A row that stays in view keeps its own; one that
 * comes into view takes over one that has gone out of it, so that scrolling makes and drops no elements.
 */
export class RowSlots {
  #slots = new Map<number, number>();
  #made = 0;
  #renewed: ReadonlySet<number> = new Set();

  /** Rows that have taken over the element of another since the drawing before. */
  get renewed(): ReadonlySet<number> {
    return this.#renewed;
  }

  /**
   * The slots of the rows that are drawn, in their order.
   *
   * @example
   * slots.take([0, 1, 2]) // [0, 1, 2]
   * slots.take([1, 2, 3]) // [1, 2, 0]: row 3 takes over from row 0
   */
  take(rows: readonly number[]): number[] {
    const before = this.#slots;
    const drawn = new Set(rows);
    const free: number[] = [];
    for (const [row, slot] of before) if (!drawn.has(row)) free.push(slot);
    const renewed = new Set<number>();
    let used = 0;
    // A map keeps the order in which rows were drawn: after a leap the first new row takes the first that is free.
    this.#slots = new Map(
      rows.map((row) => {
        const own = before.get(row);
        if (own !== undefined) return [row, own];
        if (used === free.length) return [row, this.#made++];
        renewed.add(row);
        return [row, free[used++]!];
      }),
    );
    this.#renewed = renewed;
    return [...this.#slots.values()];
  }
}
