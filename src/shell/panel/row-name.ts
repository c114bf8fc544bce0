import type { Cell, NotebookDocument, TableCell } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';

/**
 * What a row is called: its first text, `Clutch cable`; in a pairing both parents' rows, `Clutch cable, leg
 * 4`; its number where it has no text.
 *
 * @param row counted from 0
 * @example rowName(notebook, wearCell, 3) // 'Clutch cable'
 */
export function rowName(notebook: LiveNotebook, cell: Cell, row: number): string {
  const number = `row ${row + 1}`;
  if (cell.kind === 'table') return firstText(cell, row) ?? number;
  if (cell.kind === 'calls') return textAt(notebook, `${cell.name}.part`, row) ?? number;
  if (cell.kind !== 'pairing') return number;
  const names = [cell.left, cell.right].map((parent) => {
    const column = nameColumn(notebook.document, parent);
    return column === null ? null : textAt(notebook, `${cell.name}.${column}`, row);
  });
  return names.every((name) => name === null) ? number : names.map((name) => name ?? '–').join(', ');
}

function firstText(table: TableCell, row: number): string | null {
  for (const column of table.columns) {
    if (column.kind !== 'text' && column.kind !== 'choice') continue;
    const entry = column.entries[row];
    if (typeof entry === 'string' && entry !== '') return entry;
  }
  return null;
}

/** The column that names the rows of a table. */
function nameColumn(document: NotebookDocument, name: string): string | null {
  const table = document.cells.find((cell) => cell.kind === 'table' && cell.name === name);
  return table?.kind === 'table'
    ? (table.columns.find((column) => column.kind === 'text')?.name ?? null)
    : null;
}

function textAt(notebook: LiveNotebook, node: string, row: number): string | null {
  const read = notebook.read(node);
  if (read.state !== 'settled') return null;
  if (read.column.kind === 'text') return read.column.values[row] ?? null;
  const value = read.column.values[row];
  return value === undefined || Number.isNaN(value) ? null : String(value);
}
