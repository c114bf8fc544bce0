import { unitWords } from '../../../cells/shared/figure-words.ts';
import { decimalsOf } from '../../../cells/shared/table-model.ts';
import type { Column } from '../../formula/column.ts';
import { columnDecimals, showFigure } from '../../formula/show.ts';
import type { Cell } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import { rowName } from './row-name.ts';

export interface ColumnFigures {
  readonly count: number;
  readonly unit: string;
  readonly shown: readonly { readonly row: number; readonly name: string; readonly figure: string }[];
}

/** The figures of a column, row by row, or of these rows of it; at most `most` of them. */
export function columnFigures(
  notebook: LiveNotebook,
  node: string,
  rows: readonly number[] | null = null,
  most = Number.POSITIVE_INFINITY,
): ColumnFigures {
  const read = notebook.read(node);
  const held = read.state === 'settled' ? read : read.state === 'working' ? read.last : null;
  if (!held) return { count: 0, unit: '', shown: [] };
  const table = node.slice(0, node.indexOf('.'));
  const cell = notebook.document.cells.find((one) => 'name' in one && one.name === table);
  const count = rows?.length ?? held.column.values.length;
  const decimals = decimalsAs(held.column, cell, node.slice(table.length + 1));
  const shown = Array.from({ length: Math.min(count, most) }, (_nothing, at) => {
    const row = rows?.[at] ?? at;
    return {
      row,
      name: cell ? rowName(notebook, cell, row) : `row ${row + 1}`,
      figure: showFigure(held.column, row, held.type, decimals),
    };
  });
  return { count, unit: unitWords(held.type), shown };
}

/** As many decimals all down as the card of the column shows. */
function decimalsAs(column: Column, cell: Cell | undefined, name: string): number | undefined {
  const columns = cell?.kind === 'table' || cell?.kind === 'pairing' ? cell.columns : [];
  const settings = columns.find((one) => one.name === name);
  return settings ? decimalsOf(column, settings, null) : columnDecimals(column);
}
