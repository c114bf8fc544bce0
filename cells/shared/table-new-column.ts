import type {
  EnteredColumn,
  PairingCell,
  TableCell,
  TableColumn,
  WorkedColumn,
} from '../../src/notebook/document.ts';
import { freshId } from '../../src/notebook/fresh-id.ts';
import { freeName } from '../../src/tables/plain-name.ts';

/** What a new column is asked for. */
export interface NewColumn {
  /** Its head; its name is made from it. */
  readonly title: string;
  /** How it gets its figures. */
  readonly kind: EnteredColumn['kind'] | 'worked';
  readonly formula: string;
}

/**
 * A new column for a table or pairing, with an id of its own and a name that no other column there has.
 *
 * @example newColumn(table, { title: 'Front pads (mm)', kind: 'number', formula: '' }, 2).name // 'front_pads_mm'
 */
export function newColumn(cell: TableCell | PairingCell, asked: NewColumn, rowCount: number): TableColumn {
  const title = asked.title.trim() === '' ? 'New column' : asked.title.trim();
  const name = freeName(title, new Set(cell.columns.map((column) => column.name)));
  const shared = { id: freshId('column'), name, title };
  if (asked.kind === 'worked') {
    const worked: WorkedColumn = { ...shared, kind: 'worked', formula: asked.formula };
    return worked;
  }
  const entries = Array.from({ length: rowCount }, () => null);
  return asked.kind === 'choice'
    ? { ...shared, kind: 'choice', options: ['one', 'other'], entries }
    : { ...shared, kind: asked.kind, entries };
}
