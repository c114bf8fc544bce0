import { freeName } from '../../tables/plain-name.ts';
import { applyEdit } from '../apply-edit.ts';
import {
  type Cell,
  isNamed,
  type NotebookDocument,
  type PlanCell,
  type TableColumn,
  type WorkedColumn,
} from '../document.ts';
import type { Edit } from '../edit.ts';
import { addCell, addColumn, replaceColumn, valueEdit } from '../edits.ts';
import { findCell, rowCount } from '../lookup.ts';
import type { TrialFigure } from './trial.ts';

/** A column that is multiplied on trial: by a share in each row, or by one share throughout. */
interface Scaled {
  readonly cellId: string;
  /** Entered: its own entries are multiplied. Worked: the column or value of shares that its formula got. */
  readonly by:
    | { readonly kind: 'entries'; readonly column: TableColumn }
    | { readonly kind: 'shares'; readonly column: TableColumn }
    | { readonly kind: 'value'; readonly valueId: string };
}

/** The notebook made ready for trials: every figure stands as it did, and can be multiplied by one edit. */
export interface TrialDocument {
  readonly document: NotebookDocument;
  readonly scaled: Readonly<Record<TrialFigure, readonly Scaled[]>>;
}

/** Cards that no figure is read from. */
const UNREAD: ReadonlySet<Cell['kind']> = new Set<Cell['kind']>(['note', 'tally', 'picture', 'prep']);

/**
 * Puts a share of 1 into the formula of each column that a plan's calls may turn on: a worked price becomes
 * `(price) * share`, with the share an entered column beside it, so that a trial edits data alone and nothing
 * is checked anew. A figure whose column is not there, or cannot be multiplied, has no places to scale.
 */
export function trialDocument(document: NotebookDocument, plan: PlanCell): TrialDocument {
  const making = new Making({ ...document, cells: document.cells.filter((cell) => !UNREAD.has(cell.kind)) });
  const { offer_price, rate, recovery, waiting } = plan.reads;
  const scaled = {
    price: making.byRow(offer_price),
    rate: making.byRow(rate),
    stranding: [...making.throughout(recovery), ...making.throughout(waiting)],
  };
  return { document: making.document, scaled };
}

class Making {
  document: NotebookDocument;
  readonly #share: string;

  constructor(document: NotebookDocument) {
    this.document = document;
    const taken = new Set<string>();
    for (const cell of document.cells) {
      if (isNamed(cell)) taken.add(cell.name);
      if ('columns' in cell) for (const column of cell.columns) taken.add(column.name);
    }
    this.#share = freeName('share_on_trial', taken);
  }

  /** A column of a table, multiplied row by row. */
  byRow(written: string): Scaled[] {
    const found = this.#find(written);
    if (found?.cell.kind !== 'table') return [];
    const { cell, column } = found;
    if (column.kind === 'number') return [{ cellId: cell.id, by: { kind: 'entries', column } }];
    if (column.kind !== 'worked') return [];
    const shares: TableColumn = {
      id: `${this.#share}_${column.id}`,
      name: this.#share,
      kind: 'number',
      entries: new Array<number>(rowCount(cell)).fill(1),
    };
    this.#take(addColumn(this.document, cell.id, shares, cell.columns.length));
    this.#wrap(cell.id, column, this.#share);
    return [{ cellId: cell.id, by: { kind: 'shares', column: shares } }];
  }

  /** A column multiplied by the same share in every row. */
  throughout(written: string): Scaled[] {
    const found = this.#find(written);
    if (found === null) return [];
    const { cell, column } = found;
    if (column.kind === 'number') return [{ cellId: cell.id, by: { kind: 'entries', column } }];
    if (column.kind !== 'worked') return [];
    const valueId = `${this.#share}_everywhere`;
    const name = `${this.#share}_everywhere`;
    if (findCell(this.document, valueId) === null) {
      const content = { type: 'number', unit: '', value: 1, control: 'field' } as const;
      this.#take(addCell(this.document, { kind: 'value', id: valueId, title: name, name, content }, 0));
    }
    this.#wrap(cell.id, column, name);
    return [{ cellId: cell.id, by: { kind: 'value', valueId } }];
  }

  #wrap(cellId: string, column: WorkedColumn, share: string): void {
    const formula = `(${column.formula}) * ${share}`;
    this.#take(replaceColumn(this.document, cellId, column.id, { ...column, formula }));
  }

  #find(
    written: string,
  ): { readonly cell: Extract<Cell, { columns: unknown }>; readonly column: TableColumn } | null {
    const [table, name] = written.split('.');
    const cell = this.document.cells.find((one) => 'columns' in one && one.name === table);
    if (cell === undefined || !('columns' in cell)) return null;
    const column = (cell.columns as readonly TableColumn[]).find((one) => one.name === name);
    return column === undefined ? null : { cell, column };
  }

  #take(edit: Edit): void {
    this.document = applyEdit(this.document, edit);
  }
}

/**
 * The edits that multiply a figure by a share.
 * @param isOwn which rows of a table are about the part
 */
export function scalingEdits(
  { document, scaled }: TrialDocument,
  figure: TrialFigure,
  share: number,
  isOwn: (cellId: string, row: number) => boolean,
): readonly Edit[] {
  const edits: Edit[] = [];
  for (const { cellId, by } of scaled[figure]) {
    if (by.kind === 'value') {
      // Recovery and waiting may hang on one and the same value.
      if (edits.some((edit) => edit.kind === 'value' && edit.cell === by.valueId)) continue;
      const content = { type: 'number', unit: '', value: share, control: 'field' } as const;
      edits.push(valueEdit(document, by.valueId, content));
      continue;
    }
    if (by.column.kind === 'worked') continue;
    const entries = by.column.entries.map((entry, row) => {
      const here = figure === 'stranding' || isOwn(cellId, row) ? share : 1;
      if (by.kind === 'shares') return here;
      return typeof entry === 'number' ? entry * here : entry;
    });
    edits.push(replaceColumn(document, cellId, by.column.id, { ...by.column, entries }));
  }
  return edits;
}
