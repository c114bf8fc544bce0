import { showCount } from '../../formula/show.ts';
import type { ImportClient } from '../../import/import-client.ts';
import type { TableChoices, TableMatch, WantedColumn } from '../../import/match-table.ts';
import type { LostMend } from '../../import/mends.ts';
import type { ReadTable } from '../../import/read-table.ts';
import type { NotebookDocument, TableCell } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { columnHead, findCell, isEntered, rowCount } from '../../notebook/lookup.ts';
import { dayWords } from './source-note.ts';
import { keyColumn, rowsInCommon, type TableWay, tableEdit } from './table-edit.ts';

/** A file as rows of any table with entered columns: legs, wear, readings. */
export class TableList {
  readonly fileName: string;
  readonly #client: ImportClient;
  cell: TableCell;
  match: TableMatch | null = null;
  rows: ReadTable | null = null;
  /** What was typed in place and does not hold for the file as it is read now. */
  lostMends: readonly LostMend[] = [];
  /** null: the likeliest for what the file has in common with the table. */
  #way: TableWay | null = null;
  #choices: TableChoices = {};

  constructor(client: ImportClient, cell: TableCell, fileName: string) {
    this.#client = client;
    this.cell = cell;
    this.fileName = fileName;
  }

  async read(): Promise<void> {
    this.match = await this.#client.call('matchTable', [wantedColumns(this.cell), this.#choices]);
    const { lostMends, ...rows } = await this.#client.call('readTable', [this.match]);
    this.rows = rows;
    this.lostMends = lostMends;
  }

  /** Names of the columns that the file fills. */
  get filled(): readonly string[] {
    return (this.match?.columns ?? []).filter(({ column }) => column !== null).map(({ name }) => name);
  }

  get key(): string | null {
    return keyColumn(this.cell, this.filled);
  }

  /** Rows of the file whose name stands in the table. */
  get inCommon(): number {
    return this.rows === null ? 0 : rowsInCommon(this.cell, this.rows, this.key);
  }

  get way(): TableWay {
    if (this.#way !== null) return this.#way;
    return this.inCommon > 0 ? 'update' : 'replace';
  }

  setWay(way: TableWay): void {
    this.#way = way;
  }

  /** Which column of the table a column of the file fills; null: none. */
  setColumn(column: number, name: string | null): void {
    const columns: Record<string, number | null> = { ...this.#choices.columns };
    for (const held of this.match?.columns ?? []) if (held.column === column) columns[held.name] = null;
    if (name !== null) columns[name] = column;
    this.#choices = { ...this.#choices, columns };
  }

  setUnit(name: string, unit: string): void {
    this.#choices = { ...this.#choices, units: { ...this.#choices.units, [name]: unit } };
  }

  /** Takes a record as a row, with what was typed for it by the names of the table's columns. */
  mend(record: number, fields: Readonly<Record<string, string>>): Promise<void> {
    return this.#client.call('mendTable', [record, fields]);
  }

  asideCsv(): Promise<string> {
    return this.#client.call('asideCsv', []);
  }

  obstacle(): string {
    if (this.filled.length === 0)
      return 'No column of the file fills a column of the table: choose one above.';
    return (this.rows?.rows ?? 0) === 0 ? 'The file has no row for this table.' : '';
  }

  /** What comes of it, in words: `24 rows in the place of the 26 there`. */
  get words(): string {
    const count = this.rows?.rows ?? 0;
    if (this.way === 'replace') return `in the place of the ${showCount(rowCount(this.cell))} there`;
    if (this.way === 'below') return `below the ${showCount(rowCount(this.cell))} there`;
    return `${showCount(this.inCommon)} over rows of the same name, ${showCount(count - this.inCommon)} added`;
  }

  edit(document: NotebookDocument, at: Date): Edit {
    const { rows, filled, way, key, fileName } = this;
    const cell = findCell(document, this.cell.id);
    if (rows === null || cell?.kind !== 'table') throw new Error('The table is no longer in the notebook.');
    return tableEdit(document, cell.id, { read: rows, filled, way, key, fileName, date: dayWords(at) });
  }
}

/** The entered columns of a table, as a file is matched to them. */
export function wantedColumns(cell: TableCell): readonly WantedColumn[] {
  return cell.columns.filter(isEntered).map((column) => ({
    name: column.name,
    title: columnHead(column),
    kind: column.kind,
    unit: column.unit,
    options: column.options,
  }));
}
