import type { Cell } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';

/**
 * Is the part of this row safety-critical, so that the panel carries the caution strip? Told by the yes/no
 * column that the table or the calls cell names.
 */
export function isCritical(notebook: LiveNotebook, cell: Cell, row: number | null): boolean {
  if (row === null) return false;
  if (cell.kind === 'table')
    return cell.caution_column !== undefined && isYes(notebook, `${cell.name}.${cell.caution_column}`, row);
  if (cell.kind !== 'calls') return false;
  const part = notebook.read(`${cell.name}.part`);
  const parts = notebook.read(`${cell.pairing}.${cell.part}`);
  if (
    part.state !== 'settled' ||
    parts.state !== 'settled' ||
    part.column.kind !== 'text' ||
    parts.column.kind !== 'text'
  )
    return false;
  const name = part.column.values[row];
  const at = parts.column.values.indexOf(name ?? null);
  return at >= 0 && isYes(notebook, `${cell.pairing}.${cell.critical}`, at);
}

function isYes(notebook: LiveNotebook, node: string, row: number): boolean {
  const read = notebook.read(node);
  return read.state === 'settled' && read.column.kind !== 'text' && read.column.values[row] === 1;
}
