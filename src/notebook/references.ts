import type { Cell, NotebookDocument, PairingCell } from './document.ts';
import { cellNamed, columnNamed } from './lookup.ts';

/** What a name in a formula stands for. `column` is a column's id, or the name of a calls cell's own column. */
export interface Meaning {
  readonly cell: string;
  readonly column?: string;
}

/** Columns that every calls cell has, whatever its parts. */
export const CALLS_COLUMNS = [
  'part',
  'call',
  'proposed',
  'cost',
  'best_by',
  'by_hand',
  'state',
  'bag',
] as const;

/** Columns of a plan, one row an offer, and its single figures. */
export const PLAN_COLUMNS = ['offer', 'supplier', 'packs'] as const;
export const PLAN_FIGURES = ['cash', 'freight', 'mass', 'volume', 'hours', 'cost', 'risk'] as const;

export function sameMeaning(a: Meaning | null, b: Meaning | null): boolean {
  return a === null || b === null ? a === b : a.cell === b.cell && a.column === b.column;
}

/**
 * What a plain name means in a formula of `here` (the table or pairing whose worked column it is, or null for
 * a formula that stands alone), in the order of the language: a column of the same table, a parent's column
 * in a pairing, a named single figure. Null: a unit, a constant, or nothing.
 */
export function meaningOfName(document: NotebookDocument, here: Cell | null, name: string): Meaning | null {
  if (here !== null) {
    const column = meaningOfColumn(document, here, name, new Set());
    if (column !== null) return column;
  }
  const cell = cellNamed(document, name);
  return cell !== null && (cell.kind === 'value' || cell.kind === 'formula') ? { cell: cell.id } : null;
}

/** What `table.column` means: a column of the table, or, for a pairing, also one of its parents'. */
export function meaningOfMember(document: NotebookDocument, table: string, column: string): Meaning | null {
  const cell = cellNamed(document, table);
  return cell === null ? null : meaningOfColumn(document, cell, column, new Set());
}

/** `seen` keeps two pairings that name one another as parents from going round for ever. */
function meaningOfColumn(
  document: NotebookDocument,
  cell: Cell,
  name: string,
  seen: Set<string>,
): Meaning | null {
  if (seen.has(cell.id)) return null;
  seen.add(cell.id);
  const own = columnNamed(cell, name);
  if (own !== null) return { cell: cell.id, column: own.id };
  if (cell.kind === 'calls') return fixedColumn(cell, name, CALLS_COLUMNS);
  if (cell.kind === 'plan') return fixedColumn(cell, name, [...PLAN_COLUMNS, ...PLAN_FIGURES]);
  if (cell.kind !== 'pairing') return null;
  for (const parent of parentsOf(document, cell)) {
    const meaning = meaningOfColumn(document, parent, name, seen);
    if (meaning !== null) return meaning;
  }
  return null;
}

/** A column that every cell of the kind has. */
function fixedColumn(cell: Cell, name: string, columns: readonly string[]): Meaning | null {
  return columns.includes(name) ? { cell: cell.id, column: name } : null;
}

function parentsOf(document: NotebookDocument, pairing: PairingCell): Cell[] {
  return [pairing.left, pairing.right]
    .map((name) => cellNamed(document, name))
    .filter((cell) => cell !== null);
}

/** The fields of a calls cell that name columns of its pairing. */
export const CALLS_FIELDS = ['part', 'call', 'cost', 'allowed', 'reason', 'critical'] as const;
