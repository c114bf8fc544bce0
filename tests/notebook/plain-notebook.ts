import type { Entry, NotebookDocument, ValueContent } from '../../src/notebook/document.ts';
import { smallTrip } from './small-notebook.ts';

/**
 * A notebook kept the plainest way: objects that are changed in place, and formulas that point at what they
 * read by id. It shares no code with the notebook's own edits, and says what they must come to.
 */

/** Words of a formula, or what it points at with the name it had when it was last there. */
export type Piece = string | Pointer;

export interface Pointer {
  readonly cell: string;
  readonly column?: string;
  /** Name of the table, where the formula writes it. */
  table?: string;
  name: string;
}

export interface PlainColumn {
  readonly id: string;
  name: string;
  title?: string;
  unit?: string;
  /** Points at the column that says the units of the rows. */
  unit_column?: Piece[];
  readonly kind: string;
  entries?: Entry[];
  formula?: Piece[];
}

export interface PlainCell {
  readonly id: string;
  readonly kind: string;
  title: string;
  name?: string;
  text?: string;
  unit?: string;
  content?: ValueContent;
  formula?: Piece[];
  columns?: PlainColumn[];
  left?: Piece[];
  right?: Piece[];
  pins?: Record<string, string>;
  forbidden?: Record<string, string[]>;
}

export interface Plain {
  title: string;
  gist: string;
  measures?: string;
  shown_money?: string;
  cells: PlainCell[];
}

const pieceText = (piece: Piece): string =>
  typeof piece === 'string' ? piece : piece.table === undefined ? piece.name : `${piece.table}.${piece.name}`;

export const textOf = (pieces: readonly Piece[]): string => pieces.map(pieceText).join('');

const POINTING = new Set(['formula', 'left', 'right', 'unit_column']);

/** The document that the notebook must hold. */
export function documentOf(plain: Plain): unknown {
  return JSON.parse(
    JSON.stringify(plain, (key, value) => (POINTING.has(key) ? textOf(value as Piece[]) : value)),
  );
}

/**
 * Pieces of a formula written with what it points at in brackets: [cell], [cell.column] as written with its
 * table, [:cell.column] as written without. Names are the ids, as they are before the first rename.
 */
function piecesOf(template: string): Piece[] {
  return template
    .split(/(\[[^\]]*\])/)
    .filter((part) => part !== '')
    .map((part) => {
      const [, bare, cell, column] = /^\[(:?)(\w+)(?:\.(\w+))?\]$/.exec(part) ?? [];
      if (cell === undefined) return part;
      if (column === undefined) return { cell, name: cell };
      return bare === ':' ? { cell, column, name: column } : { cell, column, table: cell, name: column };
    });
}

const START: Readonly<Record<string, string>> = {
  'route hard_km': '[:route.km] * [:route.harshness]',
  'ride reach': 'running([:route.hard_km], [:wear.part])',
  'ride worn': '[:wear.rate] * [:ride.reach]',
  'ride left': '[wear]',
  'ride right': '[route]',
  trip_km: 'sum([route.km])',
  most_worn: 'most([ride.worn])',
  waiting_cost: '[trip_km] / (500 km/day) * [day_value]',
};

/**
 * A notebook with a cell of each kind that edits treat differently. The column `km` of its legs is called like
 * a unit, which no formula may come to mean when the column is gone.
 */
export function startDocument(): NotebookDocument {
  const trip = smallTrip();
  return {
    ...trip,
    cells: [
      ...trip.cells,
      { id: 'note', kind: 'note', title: 'Note', text: 'Before the second order.' },
      {
        id: 'decision',
        kind: 'calls',
        name: 'decision',
        title: 'Calls',
        pairing: 'nowhere',
        part: 'part',
        call: 'call',
        cost: 'cost',
        allowed: 'allowed',
        reason: 'reason',
        critical: 'critical',
        pins: { chain: 'replace' },
      },
    ],
  };
}

export function startPlain(): Plain {
  const plain = JSON.parse(JSON.stringify(startDocument())) as Plain;
  for (const cell of plain.cells) {
    if (cell.formula !== undefined) cell.formula = piecesOf(START[cell.id]!);
    if (cell.left !== undefined) cell.left = piecesOf(START[`${cell.id} left`]!);
    if (cell.right !== undefined) cell.right = piecesOf(START[`${cell.id} right`]!);
    for (const column of cell.columns ?? [])
      if (column.formula !== undefined) column.formula = piecesOf(START[`${cell.id} ${column.id}`]!);
  }
  return plain;
}

/** Every formula of a notebook with the figure it works out, and the parents of its pairings. */
export function formulasOf(plain: Plain): readonly { readonly node: string; readonly pieces: Piece[] }[] {
  return plain.cells.flatMap((cell) => [
    ...[cell.formula, cell.left, cell.right].flatMap((pieces) =>
      pieces === undefined ? [] : [{ node: cell.name!, pieces }],
    ),
    ...(cell.columns ?? []).flatMap(({ name, formula }) =>
      formula === undefined ? [] : [{ node: `${cell.name}.${name}`, pieces: formula }],
    ),
  ]);
}

/** Whether what a formula points at is still in the notebook. */
export function isThere(plain: Plain, pointer: Pointer): boolean {
  const cell = plain.cells.find(({ id }) => id === pointer.cell);
  if (cell === undefined) return false;
  return pointer.column === undefined || cell.columns!.some(({ id }) => id === pointer.column);
}

/** Gives a cell or a column another name; all that points at it follows. */
export function renamePlain(plain: Plain, cellId: string, columnId: string | undefined, name: string): void {
  const units = plain.cells.flatMap(({ columns = [] }) => columns.flatMap((each) => each.unit_column ?? []));
  for (const pieces of [...formulasOf(plain).map((each) => each.pieces), units])
    for (const piece of pieces) {
      if (typeof piece === 'string' || piece.cell !== cellId) continue;
      if (columnId === undefined) {
        if (piece.column === undefined) piece.name = name;
        else if (piece.table !== undefined) piece.table = name;
      } else if (piece.column === columnId) piece.name = name;
    }
  const cell = plain.cells.find(({ id }) => id === cellId)!;
  if (columnId === undefined) cell.name = name;
  else cell.columns!.find(({ id }) => id === columnId)!.name = name;
}
