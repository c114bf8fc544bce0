import type { Column, ColumnType } from '../../src/formula/column.ts';
import { columnNode } from '../../src/formula/scope.ts';
import { columnDecimals, showUnit } from '../../src/formula/show.ts';
import type { EnteredColumn, PairingCell, TableCell, TableColumn } from '../../src/notebook/document.ts';
import type { LiveNotebook, NodeState } from '../../src/notebook/live-notebook.ts';
import { readShown, type ShownAs, shownAs } from '../../src/notebook/shown-units.ts';
import { gaugeOver, isCountedPer } from './gauge-unit.ts';
import { enteredDecimals, workedDecimals } from './table-decimals.ts';
import { type TypedColumn, typedIn } from './typed-entry.ts';

/** One column as the grid shows it. */
export interface GridColumn {
  /** Id of the column; of a parent's key in a pairing: `left` or `right`. */
  readonly id: string;
  readonly name: string;
  /** Name of its figures: `wear.rate`. */
  readonly node: string;
  readonly title: string;
  /** Unit as shown in the head, '' for none. */
  readonly unit: string;
  /** How its figures are turned into that unit; null where they are kept in it. */
  readonly as: ShownAs | null;
  /** In which unit the figure of each row is kept, where the rows have units of their own; null for one unit. */
  readonly rowUnits: RowUnits | null;
  /** The units that the gauges of the rows have, where the column's own says what they are counted per; or null. */
  readonly gauges: RowUnits | null;
  /** The column to write into; null when its figures are worked out. */
  readonly entered: EnteredColumn | null;
  /** Whether its head opens the column's own settings: not so for a parent's key. */
  readonly own: boolean;
  readonly align: 'left' | 'right';
  readonly draw: 'share' | 'surface' | null;
  readonly state: NodeState;
  /** What is shown now: the settled figures, or the last ones while new ones are worked out. */
  readonly shown: { readonly column: Column; readonly type: ColumnType } | null;
  /** Decimals of every figure in the column; undefined when each shows as many as it needs. */
  readonly decimals: number | undefined;
}

export interface RowUnits {
  /** Head of the column that says so. */
  readonly title: string;
  /** The unit of a row, '' where it has none. */
  at(row: number): string;
}

export interface Grid {
  readonly cellId: string;
  readonly name: string;
  readonly title: string;
  readonly columns: readonly GridColumn[];
  /** Columns of working that are folded away now. */
  readonly folded: readonly GridColumn[];
  readonly rowCount: number;
  /** How many columns of working are folded away, or could be. */
  readonly foldedCount: number;
  /** Yes/no column that marks the rows with a caution triangle. */
  readonly caution: Column | null;
  /** What a field of a unit needs to know of the notebook, for figures that are typed. */
  readonly typedIn: (unit: string | undefined) => Pick<TypedColumn, 'as' | 'money' | 'worth'>;
}

/** What the grid needs of a live notebook. */
export type GridNotebook = Pick<LiveNotebook, 'document' | 'read' | 'typeOf' | 'rowsOf'>;

const decimalsByColumn = new WeakMap<Column, { readonly of: TableColumn; readonly decimals?: number }>();

/** Decimals of a column as it is shown; worked out once for the same figures under the same settings. */
export function decimalsOf(column: Column, settings: TableColumn, as: ShownAs | null): number | undefined {
  if (column.kind !== 'number') return 0;
  // In units of their own the rows have nothing in common: each figure stands as it was typed.
  const hasRowUnits =
    settings.kind !== 'worked' && settings.unit_column !== undefined && !isCountedPer(settings.unit);
  if (hasRowUnits && settings.decimals === undefined) return undefined;
  if (as !== null && settings.decimals !== undefined)
    return Math.max(0, settings.decimals + as.extraDecimals);
  // Figures that are turned are as broken as the factor: four of their digits are enough.
  if (as !== null) return columnDecimals(column);
  if (settings.kind === 'worked' && settings.decimals !== undefined) return settings.decimals;
  const known = decimalsByColumn.get(column);
  if (known?.of === settings) return known.decimals;
  const decimals =
    settings.kind === 'worked'
      ? workedDecimals(column.values)
      : enteredDecimals(column.values, settings.decimals);
  decimalsByColumn.set(column, { of: settings, decimals });
  return decimals;
}

/**
 * A name as words: 'road_price' is shown as 'road price'.
 *
 * @example nameInWords('road_price') // 'road price'
 */
export function nameInWords(name: string): string {
  return name.replaceAll('_', ' ');
}

/**
 * Head of a column: its title, or its name in words with a capital, since it stands as a heading.
 *
 * @example columnTitle({ name: 'road_price' }) // 'Road price'
 */
export function columnTitle(column: Pick<TableColumn, 'name' | 'title'>): string {
  if (column.title !== undefined && column.title !== '') return column.title;
  const words = nameInWords(column.name);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

export function shownOf(state: NodeState): GridColumn['shown'] {
  if (state.state === 'settled') return { column: state.column, type: state.type };
  return state.state === 'working' ? state.last : null;
}

function gridColumn(notebook: GridNotebook, table: string, column: TableColumn, own: boolean): GridColumn {
  const node = columnNode(table, column.name);
  const state = readShown(notebook, node);
  const shown = shownOf(state);
  const type = shown?.type ?? notebook.typeOf(node);
  const kept = column.unit ?? (type?.kind === 'number' ? (type.unit?.text ?? '') : '');
  const as = shownAs(notebook.document, kept);
  const unit = as?.unit ?? kept;
  const isText = type === null ? column.kind === 'text' || column.kind === 'choice' : type.kind === 'text';
  return {
    id: column.id,
    name: column.name,
    node,
    title: columnTitle(column),
    unit: unit === '' ? '' : showUnit(unit),
    as,
    ...rowUnitsOf(notebook, table, column),
    entered: own && column.kind !== 'worked' ? column : null,
    own,
    align: isText || type?.kind === 'yes_no' ? 'left' : 'right',
    draw: column.draw ?? null,
    state,
    shown,
    decimals: shown === null ? 0 : decimalsOf(shown.column, column, as),
  };
}

/** The units of the rows, where another column of the table says them: instead of the column's, or over it. */
function rowUnitsOf(
  notebook: GridNotebook,
  table: string,
  column: TableColumn,
): Pick<GridColumn, 'rowUnits' | 'gauges'> {
  const none = { rowUnits: null, gauges: null };
  if (column.kind === 'worked' || column.unit_column === undefined) return none;
  const name = column.unit_column;
  const cell = tableNamed(notebook, table);
  const by = cell?.columns.find((each) => each.name === name);
  if (by === undefined) return none;
  const units = shownOf(notebook.read(columnNode(table, name)))?.column;
  const found: RowUnits = {
    title: columnTitle(by),
    at: (row) => (units?.kind === 'text' ? (units.values[row] ?? '') : '').trim(),
  };
  return isCountedPer(column.unit) ? { rowUnits: null, gauges: found } : { rowUnits: found, gauges: null };
}

/**
 * What a field of a column takes in a row: a number in the column's unit, or in the row's own.
 *
 * @param rowUnit the row's unit, where it is not the one that stands there: it is being pasted as well
 */
export function typedColumn(
  grid: Grid,
  column: GridColumn,
  row: number,
  rowUnit = (column.rowUnits ?? column.gauges)?.at(row) ?? '',
): TypedColumn {
  const { kind, unit, options } = column.entered!;
  if (column.rowUnits === null) {
    const withGauge = column.gauges === null || rowUnit === '' ? undefined : gaugeOver(rowUnit, unit ?? '');
    return { kind, unit, withGauge, options, ...grid.typedIn(unit) };
  }
  // As it is kept, whatever measures the notebook shows: the gauge is read in its own unit.
  return { kind, options, ...grid.typedIn(rowUnit), as: null, unit: rowUnit, unitsIn: column.rowUnits.title };
}

/** The column that names the rows of a table: its first text or choice column, or else its first. */
function keyColumn(cell: TableCell | PairingCell): TableColumn | undefined {
  return cell.columns.find((column) => column.kind === 'text' || column.kind === 'choice') ?? cell.columns[0];
}

function tableNamed(notebook: GridNotebook, name: string): TableCell | PairingCell | undefined {
  return notebook.document.cells.find(
    (cell): cell is TableCell | PairingCell =>
      (cell.kind === 'table' || cell.kind === 'pairing') && cell.name === name,
  );
}

/** In a pairing the rows are named by both parents: the part, and the leg or call it is met with. */
function keysOfPairing(notebook: GridNotebook, cell: PairingCell): GridColumn[] {
  const keys: GridColumn[] = [];
  for (const [id, parent] of [
    ['left', cell.left],
    ['right', cell.right],
  ] as const) {
    const table = tableNamed(notebook, parent);
    const key = table === undefined ? undefined : keyColumn(table);
    if (key === undefined || cell.columns.some((column) => column.name === key.name)) continue;
    keys.push({ ...gridColumn(notebook, cell.name, key, false), id });
  }
  return keys;
}

function cautionOf(notebook: GridNotebook, cell: TableCell | PairingCell): Column | null {
  if (cell.kind !== 'table' || cell.caution_column === undefined) return null;
  return shownOf(notebook.read(columnNode(cell.name, cell.caution_column)))?.column ?? null;
}

/**
 * A table or pairing as the grid shows it.
 *
 * @param withFolded whether the columns of working that are folded away are among those shown
 */
export function gridOf(notebook: GridNotebook, cell: TableCell | PairingCell, withFolded: boolean): Grid {
  const own = (column: TableColumn): GridColumn => gridColumn(notebook, cell.name, column, true);
  const isShown = (column: TableColumn): boolean => withFolded || column.folded !== true;
  const keys = cell.kind === 'pairing' ? keysOfPairing(notebook, cell) : [];
  return {
    cellId: cell.id,
    name: cell.name,
    title: cell.title,
    columns: [...keys, ...cell.columns.filter(isShown).map(own)],
    folded: cell.columns.filter((column) => !isShown(column)).map(own),
    rowCount: notebook.rowsOf(cell.name),
    foldedCount: cell.columns.filter((column) => column.folded === true).length,
    caution: cautionOf(notebook, cell),
    typedIn: (unit) => typedIn(notebook.document, unit),
  };
}

/** Whether the caution column says yes in a row. */
export function needsCaution(caution: Column | null, row: number): boolean {
  return caution !== null && caution.kind !== 'text' && caution.values[row] === 1;
}
