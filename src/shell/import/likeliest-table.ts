import type { ImportClient } from '../../import/import-client.ts';
import type { NotebookDocument, TableCell } from '../../notebook/document.ts';
import { isEntered } from '../../notebook/lookup.ts';
import { wantedColumns } from './table-list.ts';

/** A column of the file that surely fills one of the table. */
const SURE = 0.7;

function isMeasured(cell: TableCell, name: string): boolean {
  const column = cell.columns.find((held) => held.name === name);
  return column?.kind === 'number' && (column.unit ?? '') !== '';
}

/**
 * The table whose columns a file fills best: by how many of them are sure, and by how much of the table that
 * is. null when no table is told by it.
 */
export async function likeliestTable(
  client: ImportClient,
  document: NotebookDocument,
): Promise<TableCell | null> {
  let best: { readonly cell: TableCell; readonly score: number } | null = null;
  for (const cell of document.cells) {
    if (cell.kind !== 'table' || !cell.columns.some(isEntered)) continue;
    const wanted = wantedColumns(cell);
    const { columns } = await client.call('matchTable', [wanted]);
    const sure = columns.filter(({ score }) => score >= SURE);
    const sum =
      sure.reduce((total, { score }) => total + Math.min(score, 1.5), 0) + sure.length / wanted.length;
    // One column of a kind that few tables have (a distance) tells as much as two words.
    const isTold = sure.length >= 2 || sure.some(({ name }) => isMeasured(cell, name));
    if (isTold && (best === null || sum > best.score)) best = { cell, score: sum };
  }
  return best?.cell ?? null;
}
