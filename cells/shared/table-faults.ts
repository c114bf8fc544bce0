import type { Fault } from '../../src/formula/fault.ts';
import { figureText } from './table-figure.ts';
import type { Grid, GridColumn } from './table-model.ts';

/** A fault of a table, with its place in the table's own words. */
export interface TableFault {
  readonly column: GridColumn;
  /** null: the whole column. */
  readonly row: number | null;
  /** 'Rear tyre, rate' */
  readonly place: string;
  /** What was entered there, when it could not be read. */
  readonly entry: string | null;
  readonly fault: Fault;
}

export interface TableFaults {
  /** Columns whose formula has a fault. */
  readonly columns: readonly TableFault[];
  /** The first faults of single rows, row by row. */
  readonly rows: readonly TableFault[];
  /** How many single rows have a fault of their own, all columns together. */
  readonly rowCount: number;
}

function textAt(grid: Grid, place: number, row: number): string {
  const column = grid.columns[place];
  const text = column === undefined || row < 0 || row >= grid.rowCount ? '' : figureText(column, row);
  return text === '–' ? '' : text;
}

/** What the row is called: its figure in the first column, and in the second where its neighbours share it. */
export function rowName(grid: Grid, row: number): string {
  const name = textAt(grid, 0, row);
  if (name === '') return `row ${row + 1}`;
  const isShared = name === textAt(grid, 0, row - 1) || name === textAt(grid, 0, row + 1);
  const second = isShared ? textAt(grid, 1, row) : '';
  return second === '' ? name : `${name}, ${second}`;
}

/** 'Landed price' within a sentence: 'landed price'; 'EUR a day' stays. */
function lowerFirst(title: string): string {
  return /^[A-Z][a-z]/.test(title) ? title.charAt(0).toLowerCase() + title.slice(1) : title;
}

function entryAt(column: GridColumn, row: number): string | null {
  const entry = column.entered?.entries[row];
  return typeof entry === 'string' ? entry : null;
}

/** Faults of a table, folded columns included: those it has itself, not those it waits for. */
export function tableFaults(grid: Grid, mostRows: number): TableFaults {
  const columns: TableFault[] = [];
  const rows: TableFault[] = [];
  let rowCount = 0;
  for (const column of [...grid.columns, ...grid.folded]) {
    if (!column.own) continue;
    if (column.state.state === 'fault') {
      columns.push({ column, row: null, place: column.title, entry: null, fault: column.state.fault });
    }
    for (const [row, fault] of column.shown?.column.faults ?? []) {
      if (fault.kind === 'waits') continue;
      rowCount++;
      rows.push({ column, row, place: '', entry: entryAt(column, row), fault });
    }
  }
  rows.sort((a, b) => (a.row ?? 0) - (b.row ?? 0));
  const first = rows.slice(0, mostRows).map((each) => ({
    ...each,
    place: `${rowName(grid, each.row ?? 0)}, ${lowerFirst(each.column.title)}`,
  }));
  return { columns, rows: first, rowCount };
}

const KIND_WORDS: Readonly<Record<string, string>> = {
  number: 'not a number',
  date: 'not a date',
  yes_no: 'not yes or no',
  choice: 'not on the list',
};

const FAULT_WORDS: Readonly<Record<Fault['kind'], string>> = {
  grammar: 'cannot be read',
  'not-in-language': 'not allowed here',
  'unknown-name': 'unknown name',
  'two-meanings': 'two meanings',
  units: 'units differ',
  kind: 'wrong kind',
  'whole-column': 'whole column',
  arguments: 'wrong count',
  circle: 'goes in a circle',
  'missing-input': 'empty',
  'unread-entry': 'cannot be read',
  domain: 'out of range',
  'not-one-match': 'no one match',
  size: 'too large',
  waits: 'waits',
};

/**
 * A fault in two or three words, for a box the size of a figure.
 *
 * @example shortReason(fault, 'number') // 'not a number', for an entry of a number column
 */
export function shortReason(fault: Fault, enteredKind?: string): string {
  if (fault.kind === 'unread-entry' && enteredKind !== undefined) {
    return KIND_WORDS[enteredKind] ?? FAULT_WORDS['unread-entry'];
  }
  return FAULT_WORDS[fault.kind];
}

/** What a waiting figure waits for: 'waits for wear.rate'. */
export function waitsFor(fault: Fault): string {
  return `waits for ${fault.root ?? 'a figure with a fault'}`;
}
