/**
 * The notebook as plain data: what is saved, sent and opened. Nothing here is computed; every value is
 * JSON, and every object is treated as immutable (an edit makes new ones along its path).
 */
export const FORMAT = 'sparewell-notebook';
export const VERSION = 1;

export interface NotebookDocument {
  readonly format: typeof FORMAT;
  readonly version: typeof VERSION;
  readonly id: string;
  readonly title: string;
  readonly gist: string;
  /** The notebook's own currency, an ISO 4217 code. */
  readonly money: string;
  readonly cells: readonly Cell[];
}

export type Cell = NoteCell | ValueCell | FormulaCell | TableCell | PairingCell | TallyCell | CallsCell;
export type CellKind = Cell['kind'];

interface CellBase {
  /** Never changes and is never shown; edits and history point at it. */
  readonly id: string;
  /** The heading on the card. */
  readonly title: string;
  /** A few words beside the heading. */
  readonly gist?: string;
  /** Where the figures come from, in the writer's words. */
  readonly source?: string;
}

/** Text in Markdown, without raw HTML. */
export interface NoteCell extends CellBase {
  readonly kind: 'note';
  readonly text: string;
  /** Shown with the caution hatch: for brakes, tyres, bearings and the like. */
  readonly caution?: boolean;
}

export type ValueContent =
  | {
      readonly type: 'number';
      /** Unit text, '' for a plain number. */
      readonly unit: string;
      /** A string is an entry that cannot be read as a number: kept, shown with its fault. */
      readonly value: number | string | null;
      readonly low?: number;
      readonly high?: number;
      readonly step?: number;
      readonly decimals?: number;
      readonly control: 'field' | 'slider';
    }
  | { readonly type: 'choice'; readonly options: readonly string[]; readonly value: string | null }
  /** ISO 8601 calendar date, YYYY-MM-DD. */
  | { readonly type: 'date'; readonly value: string | null }
  | { readonly type: 'yes_no'; readonly value: boolean | null };

/** One named value. Values that follow one another under the same `form` stand on one card. */
export interface ValueCell extends CellBase {
  readonly kind: 'value';
  readonly name: string;
  readonly form?: string;
  readonly content: ValueContent;
}

export interface FormulaCell extends CellBase {
  readonly kind: 'formula';
  readonly name: string;
  readonly formula: string;
  /** Unit in which the result is shown and read on; the formula's own if absent. */
  readonly unit?: string;
  readonly decimals?: number;
}

/** null = empty. A string in a number, date or yes/no column is an entry that could not be read. */
export type Entry = number | string | boolean | null;

interface ColumnBase {
  readonly id: string;
  /** Plain word joined by underscores, unique in its table. */
  readonly name: string;
  /** Column head; the name with spaces if absent. */
  readonly title?: string;
  readonly unit?: string;
  readonly decimals?: number;
  /** How a figure is drawn beside its number: a bar for a share of 0 to 1, the surface as a line. */
  readonly draw?: 'share' | 'surface';
  /** Columns of working that the card folds away until asked. */
  readonly folded?: boolean;
}

export interface EnteredColumn extends ColumnBase {
  readonly kind: 'number' | 'text' | 'choice' | 'date' | 'yes_no';
  readonly options?: readonly string[];
  readonly entries: readonly Entry[];
}

/** One formula for the whole column. */
export interface WorkedColumn extends ColumnBase {
  readonly kind: 'worked';
  readonly formula: string;
}

export type TableColumn = EnteredColumn | WorkedColumn;

export interface TableCell extends CellBase {
  readonly kind: 'table';
  readonly name: string;
  readonly columns: readonly TableColumn[];
  /** Name of a yes/no column: its rows carry the caution triangle. */
  readonly caution_column?: string;
}

/** Every row of one table met with every row of another; all its columns are worked. */
export interface PairingCell extends CellBase {
  readonly kind: 'pairing';
  readonly name: string;
  readonly left: string;
  readonly right: string;
  readonly columns: readonly WorkedColumn[];
}

export interface TallyFigure {
  readonly label: string;
  /** Name of the figure shown. */
  readonly figure: string;
  /** Name of its limit, if it has one. */
  readonly limit?: string;
  readonly decimals?: number;
  /** Show a chance of 0 to 1 as percent. */
  readonly percent?: boolean;
}

/** Figures kept in sight. */
export interface TallyCell extends CellBase {
  readonly kind: 'tally';
  readonly figures: readonly TallyFigure[];
}

/**
 * Picks one call a part from a pairing of parts and calls: the cheapest that is allowed, or the one pinned
 * by hand. Others read it as a table: NAME.part, .call, .proposed, .cost, .best_by, .by_hand.
 */
export interface CallsCell extends CellBase {
  readonly kind: 'calls';
  readonly name: string;
  /** Name of the pairing, and of its columns. */
  readonly pairing: string;
  readonly part: string;
  readonly call: string;
  readonly cost: string;
  readonly allowed: string;
  /** Text: why a call is not allowed, empty when it is. */
  readonly reason: string;
  /** Yes/no column that marks safety-critical parts. */
  readonly critical: string;
  /** Calls set by hand: part name to call name. */
  readonly pins: Readonly<Record<string, string>>;
}

export type NamedCell = Exclude<Cell, NoteCell | TallyCell>;

export function isNamed(cell: Cell): cell is NamedCell {
  return 'name' in cell;
}
