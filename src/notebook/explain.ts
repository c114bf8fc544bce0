import { FormulaFault } from '../formula/fault.ts';
import { parseFormula } from '../formula/parse.ts';
import { showFigure, withUnit } from '../formula/show.ts';
import { walkTerms } from '../formula/term.ts';
import type { Cell, TableColumn } from './document.ts';
import type { Program } from './graph/program.ts';
import { cellNameOf } from './graph/structure.ts';
import { cellHead, columnHead, columnNamed } from './lookup.ts';
import type { NodeState } from './node-state.ts';

/** One name in a formula with the figure it has in the row looked at. */
export interface ExplainedTerm {
  readonly text: string;
  readonly node: string;
  /** Row of that figure in its own table; null for a single figure or a whole column. */
  readonly row: number | null;
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
  const cell = program.document.cells.find((held) => 'name' in held && held.name === cellNameOf(node));
  const column =
    cell !== undefined && node.includes('.') ? columnNamed(cell, node.slice(node.indexOf('.') + 1)) : null;
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
    figure: figureAt(reader, node, row),
    terms:
      formula === null
        ? []
        : termsOf(reader, program, formula, column === null ? null : cellNameOf(node), row),
    source: cell?.source,
  };
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
    walkTerms(parseFormula(formula), (term) => {
      if (term.type !== 'name' && term.type !== 'member') return;
      const meaning =
        term.type === 'name' ? scope.plain(term.name)[0] : scope.member(term.table, term.column);
      if (meaning === undefined || meaning === null) return;
      const inRow = meaning.table !== null && meaning.table === here;
      const at = meaning.table === null ? 0 : inRow ? row : null;
      const figure = at === null ? 'whole column' : figureAt(reader, meaning.node, at);
      terms.push({
        text: formula.slice(term.span.from, term.span.to),
        node: meaning.node,
        row: meaning.table === null ? null : at,
        figure,
        ...term.span,
      });
    });
  } catch (error) {
    if (!(error instanceof FormulaFault)) throw error;
  }
  return terms.sort((a, b) => a.from - b.from);
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

function figureAt(reader: Reader, node: string, row: number): string {
  const state = reader.read(node);
  if (state.state === 'fault' || state.state === 'waiting') return state.fault.message;
  if (state.state === 'working') return 'working';
  const fault = state.column.faults?.get(row);
  if (fault !== undefined) return fault.message;
  return withUnit(showFigure(state.column, row, state.type), state.type.unit);
}
