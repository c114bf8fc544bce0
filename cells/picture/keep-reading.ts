import type { Column } from '../../src/formula/column.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { shownKey } from '../../src/notebook/shown-units.ts';
import type { ReadNotebook } from '../shared/column-reader.ts';
import { shownOf } from '../shared/table-model.ts';

/**
 * Reads what a picture shows, and gives the same again until its cell, one of the columns it reads, or the
 * units that figures are shown in have changed: a pointer that moves over a picture reads nothing.
 *
 * @param read reads the figures; `how` is what it depends on besides
 * @example const reading = keepReading(readBand); // reading(notebook, cell) === reading(notebook, cell)
 */
export function keepReading<T, H = undefined>(
  read: (notebook: ReadNotebook, cell: PictureCell, how: H) => T,
): (notebook: ReadNotebook, cell: PictureCell, how: H) => T {
  let kept: { readonly of: readonly unknown[]; readonly what: T } | null = null;
  return (notebook, cell, how) => {
    const of = [cell, how, shownKey(notebook.document), ...columnsOf(notebook, cell)];
    if (kept?.of.length === of.length && kept.of.every((one, at) => one === of[at])) return kept.what;
    kept = { of, what: read(notebook, cell, how) };
    return kept.what;
  };
}

/** A column that comes out as it was is the same object. */
const columnsOf = (notebook: ReadNotebook, { reads }: PictureCell): (Column | null)[] =>
  Object.values(reads).map((name) => (name === '' ? null : (shownOf(notebook.read(name))?.column ?? null)));
