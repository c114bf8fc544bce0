import type { Column } from '../formula/column.ts';
import type { Entry } from '../tables/entry.ts';
import { type WrittenColumn, writeCsv } from '../tables/write-csv.ts';
import type { PairingCell, TableCell } from './document.ts';
import type { LiveNotebook } from './live-notebook.ts';
import { isEntered } from './lookup.ts';

const DAY_MS = 86_400_000;

/**
 * A table or pairing as a CSV text (RFC 4180): what is entered as it was entered, what is worked out as it
 * stands, in the units that the notebook keeps; figures with a fault are empty. A pairing begins with the first
 * column of each table that it pairs, which tells its rows apart.
 */
export function tableCsv(notebook: LiveNotebook, cell: TableCell | PairingCell): string {
  const keys =
    cell.kind === 'table' ? [] : [cell.left, cell.right].flatMap((of) => keyOf(notebook, cell, of));
  const columns = cell.columns.map((column): WrittenColumn => {
    if (isEntered(column)) {
      const unit = column.kind === 'number' ? column.unit : undefined;
      return { name: column.name, ...(unit ? { unit } : {}), entries: column.entries };
    }
    return worked(notebook, `${cell.name}.${column.name}`, column.name);
  });
  return writeCsv([...keys, ...columns]);
}

function keyOf(notebook: LiveNotebook, pairing: PairingCell, parent: string): WrittenColumn[] {
  const cell = notebook.document.cells.find((one) => 'name' in one && one.name === parent);
  const first = cell?.kind === 'table' || cell?.kind === 'pairing' ? cell.columns[0] : undefined;
  return first === undefined
    ? []
    : [worked(notebook, `${pairing.name}.${parent}.${first.name}`, `${parent}.${first.name}`)];
}

function worked(notebook: LiveNotebook, node: string, name: string): WrittenColumn {
  const read = notebook.read(node);
  if (read.state !== 'settled') return { name, entries: [] };
  const unit = read.type.unit?.text;
  return { name, ...(unit ? { unit } : {}), entries: entriesOf(read.column) };
}

function entriesOf(column: Column): Entry[] {
  if (column.kind === 'text') return [...column.values];
  const { kind } = column;
  return Array.from(column.values, (figure): Entry => {
    if (Number.isNaN(figure)) return null;
    if (kind === 'yes_no') return figure === 1;
    return kind === 'date' ? new Date(figure * DAY_MS).toISOString().slice(0, 10) : figure;
  });
}
