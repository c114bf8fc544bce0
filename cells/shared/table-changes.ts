import type { Column } from '../../src/formula/column.ts';
import { inkRule } from './ink-rule.ts';
import type { Grid } from './table-model.ts';

/** Figures that have a new value, by column (its place in the grid). */
export interface ChangedColumn {
  readonly place: number;
  readonly before: Column;
  readonly after: Column;
}

/** Remembers what a grid showed, to tell which figures an edit has changed. */
export class ShownFigures {
  #columns = new Map<string, Column>();

  /** The columns that show other figures than the last time; columns new to the grid have not changed. */
  changedIn(grid: Grid): ChangedColumn[] {
    const now = new Map<string, Column>();
    const changed: ChangedColumn[] = [];
    grid.columns.forEach((column, place) => {
      const after = column.shown?.column;
      if (after === undefined) return;
      now.set(column.node, after);
      const before = this.#columns.get(column.node);
      // Rows that were added or removed shift the others: nothing can be said of single figures then.
      if (before !== undefined && before !== after && before.values.length === after.values.length) {
        changed.push({ place, before, after });
      }
    });
    this.#columns = now;
    return changed;
  }
}

/** Whether the figure of one row is another than before; missing and missing are the same. */
function differsIn(changed: ChangedColumn, row: number): boolean {
  return !Object.is(changed.before.values[row], changed.after.values[row]);
}

/** Rules the figures in the page that an edit has changed. `rowAt` gives the row shown at a place. */
export function inkChanges(
  root: ParentNode,
  changed: readonly ChangedColumn[],
  rowAt: (place: number) => number,
): void {
  if (changed.length === 0) return;
  const at = new Map(changed.map((column) => [String(column.place), column]));
  for (const figure of root.querySelectorAll<HTMLElement>('tbody [data-col]')) {
    const column = at.get(figure.dataset.col ?? '');
    if (column && differsIn(column, rowAt(Number(figure.dataset.row)))) inkRule(figure);
  }
}
