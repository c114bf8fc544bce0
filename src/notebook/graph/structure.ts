import { columnNode } from '../../formula/scope.ts';
import type {
  CallsCell,
  Cell,
  FormulaCell,
  NotebookDocument,
  PairingCell,
  PlanCell,
  TableCell,
  ValueCell,
} from '../document.ts';
import { CALLS_COLUMNS, PLAN_COLUMNS, PLAN_FIGURES } from '../references.ts';

export type RowsCell = TableCell | PairingCell | CallsCell | PlanCell;

/** A column as it is met under a table's name. */
export interface PlacedColumn {
  /** Node that holds it. */
  readonly node: string;
  /** For a parent's column seen through a pairing: the node it is gathered from, and by which side. */
  readonly through?: { readonly source: string; readonly side: 'left' | 'right' };
  readonly words: string;
  /** One figure under the table's name, not a column: `plan.cash`. */
  readonly single?: boolean;
}

/** Names of a notebook and what they stand for; nothing is computed or checked here. */
export class Structure {
  readonly tables = new Map<string, RowsCell>();
  readonly figures = new Map<string, ValueCell | FormulaCell>();
  private readonly seen: Map<string, ReadonlyMap<string, readonly PlacedColumn[]>>;

  constructor(
    document: NotebookDocument,
    seen = new Map<string, ReadonlyMap<string, readonly PlacedColumn[]>>(),
  ) {
    this.seen = seen;
    for (const cell of document.cells) {
      if (cell.kind === 'table' || cell.kind === 'pairing' || cell.kind === 'calls' || cell.kind === 'plan')
        this.tables.set(cell.name, cell);
      else if (cell.kind === 'value' || cell.kind === 'formula') this.figures.set(cell.name, cell);
    }
  }

  /** The same names over a document that only differs in figures and formulas. */
  withCells(document: NotebookDocument): Structure {
    return new Structure(document, this.seen);
  }

  /** Every column readable under a table's name, its own first, then its parents'. */
  columns(table: string): ReadonlyMap<string, readonly PlacedColumn[]> {
    const held = this.seen.get(table);
    if (held !== undefined) return held;
    // Set before going on, so that pairings that name one another end.
    this.seen.set(table, new Map());
    const cell = this.tables.get(table);
    const made = cell === undefined ? new Map<string, PlacedColumn[]>() : this.place(cell);
    this.seen.set(table, made);
    return made;
  }

  private place(cell: RowsCell): Map<string, PlacedColumn[]> {
    const placed = new Map<string, PlacedColumn[]>();
    const add = (name: string, column: PlacedColumn): void => {
      const there = placed.get(name);
      if (there === undefined) placed.set(name, [column]);
      else there.push(column);
    };
    const own = ownColumns(cell);
    for (const name of own)
      add(name, { node: columnNode(cell.name, name), words: `column ${name} of ${cell.name}` });
    if (cell.kind === 'plan') {
      for (const name of PLAN_FIGURES)
        add(name, {
          node: columnNode(cell.name, name),
          words: `figure ${name} of ${cell.name}`,
          single: true,
        });
    }
    if (cell.kind === 'pairing') {
      for (const side of ['left', 'right'] as const) {
        for (const [name, columns] of this.columns(cell[side])) {
          const source = columns[0];
          if (source === undefined) continue;
          add(name, {
            node: `${cell.name}.${cell[side]}.${name}`,
            through: { source: source.node, side },
            words: `column ${name} of ${cell[side]}`,
          });
        }
      }
    }
    return placed;
  }

  /** The column meant by `table.column` in a formula of `here`: a parent's column follows the pairing's rows. */
  member(here: string | null, table: string, column: string): { column: PlacedColumn; table: string } | null {
    const pairing = here === null ? undefined : this.tables.get(here);
    if (
      pairing?.kind === 'pairing' &&
      here !== null &&
      table !== here &&
      (pairing.left === table || pairing.right === table)
    ) {
      const node = `${here}.${table}.${column}`;
      for (const placed of this.columns(here).get(column) ?? [])
        if (placed.node === node) return { column: placed, table: here };
      return null;
    }
    const placed = this.columns(table).get(column)?.[0];
    return placed === undefined ? null : { column: placed, table };
  }

  /** The node behind a name as it is written: `budget`, `wear.rate`, `ride.part`. */
  nodeOf(written: string): string {
    const point = written.indexOf('.');
    if (point < 0) return written;
    return this.columns(written.slice(0, point)).get(written.slice(point + 1))?.[0]?.node ?? written;
  }
}

function ownColumns(cell: RowsCell): readonly string[] {
  if (cell.kind === 'calls') return CALLS_COLUMNS;
  return cell.kind === 'plan' ? PLAN_COLUMNS : cell.columns.map((column) => column.name);
}

/** Name of the cell that a node belongs to. */
export function cellNameOf(node: string): string {
  const point = node.indexOf('.');
  return point < 0 ? node : node.slice(0, point);
}

/** A key that changes when any name, kind of cell or parent changes. */
export function structureKey(cells: readonly Cell[]): string {
  return cells
    .map((cell) => {
      if (cell.kind === 'table') return `t ${cell.name}(${cell.columns.map((column) => column.name).join()})`;
      if (cell.kind === 'pairing')
        return `p ${cell.name} ${cell.left} ${cell.right}(${cell.columns.map((column) => column.name).join()})`;
      if (cell.kind === 'calls') return `c ${cell.name} ${cell.pairing} ${cell.plan ?? ''}`;
      if (cell.kind === 'plan') return `l ${cell.name} ${cell.calls} ${Object.values(cell.reads).join()}`;
      return cell.kind === 'value' || cell.kind === 'formula' ? `f ${cell.name}` : '';
    })
    .join('\n');
}
