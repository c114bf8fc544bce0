import type { Column, ColumnType } from '../../src/formula/column.ts';
import { showFigure } from '../../src/formula/show.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { readShown } from '../../src/notebook/shown-units.ts';
import { unitWords } from './figure-words.ts';
import { shownOf } from './table-model.ts';

export type ReadNotebook = Pick<LiveNotebook, 'document' | 'read'>;

interface Shown {
  readonly column: Column;
  readonly type: ColumnType;
}

/**
 * Reads figures by role, as they are shown now; each column is looked up once. A role that the cell does not
 * name, or whose figures are not there, reads as empty: '' for texts, NaN for numbers.
 *
 * @example new ColumnReader(notebook, { mass: 'calls.pack_kg' }).number('mass', 3) // 1.7
 */
export class ColumnReader<R extends string> {
  readonly #notebook: ReadNotebook;
  readonly #reads: Readonly<Partial<Record<R, string>>>;
  readonly #known = new Map<R, Shown | null>();

  constructor(notebook: ReadNotebook, reads: Readonly<Partial<Record<R, string>>>) {
    this.#notebook = notebook;
    this.#reads = reads;
  }

  #shown(role: R): Shown | null {
    let shown = this.#known.get(role);
    if (shown === undefined) {
      const name = this.#reads[role];
      shown = name === undefined || name === '' ? null : shownOf(readShown(this.#notebook, name));
      this.#known.set(role, shown);
    }
    return shown;
  }

  /** Whether there are figures for this role. */
  has(role: R): boolean {
    return this.#shown(role) !== null;
  }

  rows(role: R): number {
    return this.#shown(role)?.column.values.length ?? 0;
  }

  text(role: R, row = 0): string {
    const column = this.#shown(role)?.column;
    return column?.kind === 'text' ? (column.values[row] ?? '') : '';
  }

  /** The figure in the unit of its column; a date in days since 1970-01-01, a yes as 1. */
  number(role: R, row = 0): number {
    const column = this.#shown(role)?.column;
    return column === undefined || column.kind === 'text' ? Number.NaN : (column.values[row] ?? Number.NaN);
  }

  yes(role: R, row = 0): boolean {
    return this.number(role, row) === 1;
  }

  /** The figure as it is shown in its column, without its unit. */
  words(role: R, row = 0, decimals?: number): string {
    const shown = this.#shown(role);
    return shown === null ? '' : showFigure(shown.column, row, shown.type, decimals);
  }

  unit(role: R): string {
    const shown = this.#shown(role);
    return shown === null ? '' : unitWords(shown.type);
  }
}
