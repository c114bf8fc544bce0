import {
  type CallsCell,
  type Cell,
  type EnteredColumn,
  isNamed,
  type NamedCell,
  type NotebookDocument,
  type TableCell,
  type TableColumn,
  type WorkedColumn,
} from './document.ts';

/** Cells by id, for each document that was asked: every card asks at every edit. */
const byId = new WeakMap<NotebookDocument, ReadonlyMap<string, Cell>>();

export function findCell(document: NotebookDocument, cellId: string): Cell | null {
  let cells = byId.get(document);
  if (cells === undefined) {
    cells = new Map(document.cells.map((cell) => [cell.id, cell]));
    byId.set(document, cells);
  }
  return cells.get(cellId) ?? null;
}

/** Place of the cell in the list, counted from 0; -1 when there is none. */
export function placeOfCell(document: NotebookDocument, cellId: string): number {
  return document.cells.findIndex((cell) => cell.id === cellId);
}

export function cellNamed(document: NotebookDocument, name: string): NamedCell | null {
  for (const cell of document.cells) if (isNamed(cell) && cell.name === name) return cell;
  return null;
}

/** Columns of a table or a pairing; none for other cells. */
export function columnsOf(cell: Cell): readonly TableColumn[] {
  return cell.kind === 'table' || cell.kind === 'pairing' ? cell.columns : [];
}

export function findColumn(cell: Cell, columnId: string): TableColumn | null {
  return columnsOf(cell).find((column) => column.id === columnId) ?? null;
}

export function columnNamed(cell: Cell, name: string): TableColumn | null {
  return columnsOf(cell).find((column) => column.name === name) ?? null;
}

export function isEntered(column: TableColumn): column is EnteredColumn {
  return column.kind !== 'worked';
}

export function isWorked(column: TableColumn): column is WorkedColumn {
  return column.kind === 'worked';
}

/** Rows of a table: the length of its entered columns, 0 when it has none. */
export function rowCount(table: TableCell): number {
  return table.columns.find(isEntered)?.entries.length ?? 0;
}

/** What the reader sees as the head of a column: its title, or its name with spaces. */
export function columnHead(column: TableColumn): string {
  return column.title ?? column.name.replaceAll('_', ' ');
}

/** What the reader sees as the head of a card. */
export function cellHead(cell: Cell): string {
  if (cell.title !== '') return cell.title;
  return isNamed(cell) ? cell.name.replaceAll('_', ' ') : cell.kind;
}

/** Names of the calls that are ruled out by hand for a part; none for a part that has none. */
export function forbiddenOf({ forbidden }: Pick<CallsCell, 'forbidden'>, part: string): readonly string[] {
  return forbidden !== undefined && Object.hasOwn(forbidden, part) ? forbidden[part]! : [];
}

/** Changes when a call is set or ruled out by hand, and with nothing else. */
export const byHandStamp = ({ pins, forbidden = {} }: CallsCell): string => JSON.stringify([pins, forbidden]);
