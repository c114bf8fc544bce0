import { FormulaFault } from '../formula/fault.ts';
import { parseFormula } from '../formula/parse.ts';
import { showCount, showFigure, usualDecimals, withUnit } from '../formula/show.ts';
import type { Cell, FormulaCell, TableColumn } from './document.ts';
import { namesRead, type RowsRead } from './explain-rows.ts';
import type { Program } from './graph/program.ts';
import { cellNameOf } from './graph/structure.ts';
import { cellHead, columnHead, columnNamed } from './lookup.ts';
import type { NodeState } from './node-state.ts';

/** One name in a formula with the figure it has in the row looked at. */
export interface ExplainedTerm {
  readonly text: string;
  readonly node: string;
  /** Row of that figure in its own table; null for a single figure or for several rows. */
  readonly row: number | null;
  /** The rows that are read, where they are several but not all; null else. */
  readonly rows: readonly number[] | null;
  readonly figure: string;
  readonly from: number;
  readonly to: number;
}

export interface Explanation {
  readonly node: string;
  readonly row: number;
  readonly title: string;
  readonly kind: 'entered' | 'worked';
  readonly formula: string | null;
  /** The figure with its unit. */
  readonly figure: string;
  readonly terms: readonly ExplainedTerm[];
  readonly source?: string;
}

interface Reader {
  read(node: string): NodeState;
}

/** Where one figure comes from, one level deep: its formula and what stands behind each name in it. */
export function explainFigure(reader: Reader, program: Program, written: string, row: number): Explanation {
  const node = program.structure.nodeOf(written);
  const through = program.throughOf(node);
  if (through !== null) {
    const rows = parentRow(reader, program, node, row);
    return explainFigure(reader, program, through.source, rows);
  }
  const { cell, column } = holderOf(program, node);
  const formula =
    column?.kind === 'worked'
      ? column.formula
      : cell?.kind === 'formula' && column === null
        ? cell.formula
        : null;
  const title = titleOf(cell, column, node);
  return {
    node,
    row,
    title,
    kind: formula === null && cell?.kind !== 'calls' ? 'entered' : 'worked',
    formula,
    figure: figureAt(reader, program, node, row),
    terms:
      formula === null
        ? []
        : termsOf(reader, program, formula, column === null ? null : cellNameOf(node), row),
    source: cell?.source,
  };
}

/** The cell that a node stands in, and its column. */
function holderOf(
  program: Program,
  node: string,
): { readonly cell: Cell | undefined; readonly column: TableColumn | null } {
  const cell = program.document.cells.find((held) => 'name' in held && held.name === cellNameOf(node));
  const column =
    cell !== undefined && node.includes('.') ? columnNamed(cell, node.slice(node.indexOf('.') + 1)) : null;
  return { cell, column };
}

function titleOf(cell: Cell | undefined, column: TableColumn | null, node: string): string {
  if (cell === undefined) return node;
  return column === null ? cellHead(cell) : `${cellHead(cell)}, ${columnHead(column)}`;
}

function termsOf(
  reader: Reader,
  program: Program,
  formula: string,
  here: string | null,
  row: number,
): ExplainedTerm[] {
  const terms: ExplainedTerm[] = [];
  const scope = program.scope(here);
  try {
    const look = { scope, row, read: (node: string) => reader.read(node) };
    for (const { term, rows } of namesRead(parseFormula(formula), look)) {
      const meaning =
        term.type === 'name' ? scope.plain(term.name)[0] : scope.member(term.table, term.column);
      if (meaning === undefined || meaning === null) continue;
      const read: RowsRead = rows === 'own' && meaning.table !== here ? 'all' : rows;
      const text = formula.slice(term.span.from, term.span.to);
      const figures =
        meaning.table === null
          ? { row: null, rows: null, figure: figureAt(reader, program, meaning.node, 0) }
          : figuresRead(reader, program, meaning.node, read === 'own' ? [row] : read);
      terms.push({ text, node: meaning.node, ...figures, ...term.span });
    }
  } catch (error) {
    if (!(error instanceof FormulaFault)) throw error;
  }
  return terms.sort((a, b) => a.from - b.from);
}

/** What a formula reads of a column: the one figure, or how many rows. */
function figuresRead(
  reader: Reader,
  program: Program,
  node: string,
  rows: 'all' | readonly number[],
): Pick<ExplainedTerm, 'row' | 'rows' | 'figure'> {
  if (rows === 'all') return { row: null, rows: null, figure: 'whole column' };
  const [only] = rows;
  if (rows.length === 1 && only !== undefined)
    return { row: only, rows: null, figure: figureAt(reader, program, node, only) };
  return { row: null, rows, figure: rows.length === 0 ? 'no row' : `${showCount(rows.length)} rows` };
}

/** Row of the parent table behind a row of a pairing. */
function parentRow(reader: Reader, program: Program, node: string, row: number): number {
  const [pairing, parent] = node.split('.') as [string, string];
  const cell = program.structure.tables.get(pairing);
  if (cell?.kind !== 'pairing') return row;
  const count = (table: string): number => {
    const first = [...program.structure.columns(table).values()][0]?.[0];
    const state = first === undefined ? null : reader.read(first.node);
    return state?.state === 'settled' ? state.column.values.length : 0;
  };
  const right = count(cell.right);
  if (right === 0) return row;
  return parent === cell.left ? Math.floor(row / right) : row % right;
}

function figureAt(reader: Reader, program: Program, node: string, row: number): string {
  const state = reader.read(node);
  if (state.state === 'fault' || state.state === 'waiting') return state.fault.message;
  if (state.state === 'working') return 'working';
  const fault = state.column.faults?.get(row);
  if (fault !== undefined) return fault.message;
  const figure = state.column.kind === 'number' ? (state.column.values[row] ?? Number.NaN) : Number.NaN;
  const decimals = Number.isNaN(figure) ? undefined : decimalsOf(figure, program, node);
  return withUnit(showFigure(state.column, row, state.type, decimals), state.type.unit);
}

/** Most decimals of a figure that was entered: more are the last bits of a conversion. */
const MOST_ENTERED = 8;

/**
 * Decimals of a figure, at least as many as its card shows: all of an entered one, those asked for of a worked
 * one; undefined for the usual ones.
 */
function decimalsOf(figure: number, program: Program, node: string): number | undefined {
  const { cell, column } = holderOf(program, program.throughOf(node)?.source ?? node);
  if (column?.kind === 'worked' || cell?.kind === 'formula') {
    const { decimals = 0 } = column ?? (cell as FormulaCell);
    return decimals > usualDecimals(figure) ? decimals : undefined;
  }
  if (column === null && cell?.kind !== 'value') return undefined;
  const places = Number(figure.toFixed(MOST_ENTERED)).toString().split('.')[1]?.length ?? 0;
  return places === 0 && !Number.isInteger(figure) ? undefined : places;
}
