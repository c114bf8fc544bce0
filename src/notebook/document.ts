import type { PrepRole } from './prep-roles.ts';

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
  /** Measures in which figures are shown and typed, whatever unit they are kept in; as kept if absent. */
  readonly measures?: Measures;
  /** ISO 4217 code in which sums are shown and typed, through `rates_of_exchange`; `money` if absent. */
  readonly shown_money?: string;
  readonly cells: readonly Cell[];
}

export type Measures = 'metric' | 'imperial' | 'imperial_uk';

export type Cell =
  | NoteCell
  | ValueCell
  | FormulaCell
  | TableCell
  | PairingCell
  | TallyCell
  | CallsCell
  | PlanCell
  | PictureCell
  | PrepCell;
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
  /**
   * Name of a text column of the same table that says in which unit the number of each row is, such as the
   * gauge's own; instead of one unit for all rows. Beside a unit it is what is counted per that, as a rate's gauge
   * is: a figure may be typed in `mm/(1000 km)` where the unit is `1/(1000 km)` and the row's gauge reads mm.
   */
  readonly unit_column?: string;
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
 * by hand, never one that is ruled out by hand. Others read it as a table: NAME.part, .call, .proposed, .cost,
 * .best_by, .by_hand.
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
  /** Calls ruled out by hand: part name to call names. */
  readonly forbidden?: Readonly<Record<string, readonly string[]>>;
  /** Name of the plan whose calls are taken over; without one each part is called for itself. */
  readonly plan?: string;
}

/** What a plan reads, each as `table.column` or as the name of a single figure; those marked optional may be ''. */
export const PLAN_ROLES = [
  // Columns of the pairing of parts and calls.
  'cost',
  'cash',
  'need',
  'mass',
  'volume',
  'hours',
  'strand',
  'kind',
  'sent_out',
  // Columns of the table of parts.
  'on_hand',
  'set',
  // What offers call it where like parts of two bikes take the same piece, and whose bike it is on.
  'stock',
  'rider',
  // What comes off for it, and the bag that its spare goes into where there is room.
  'part_job',
  'rather_bag',
  // Columns of the table of offers: price of one pack in the notebook's money without freight.
  'offer',
  'offer_supplier',
  'offer_fits',
  'offer_pieces',
  'offer_price',
  'offer_days',
  // Columns of the table of suppliers, in the notebook's money.
  'supplier',
  'freight',
  'free_from',
  // Columns of the table of kits.
  'kit',
  'kit_part',
  'kit_pieces',
  // Columns of the table of work that workshops do: an offer that fits a work is work sent out.
  'work',
  'work_part',
  // Columns of the table of jobs: what is set up once for all parts behind it.
  'job',
  'job_setup',
  // Columns of the table of bags, what is in them already counted against them.
  'bag',
  'bag_rider',
  'bag_mass',
  'bag_volume',
  'bag_packed_mass',
  'bag_packed_volume',
  // Columns of the table of riders: the limits of each one's pack, in place of the single ones.
  'pack_rider',
  'pack_mass',
  'pack_volume',
  // Single figures.
  'cash_limit',
  'mass_limit',
  'volume_limit',
  'hours_limit',
  'risk_limit',
  'days_left',
  'margin_days',
  // What an hour of work is worth: for hours that jobs share.
  'hour_value',
  // What a call may turn on: the wear rate of each part, and what a stranding costs.
  'rate',
  'recovery',
  'waiting',
] as const;
export type PlanRole = (typeof PLAN_ROLES)[number];

/** Roles a plan can do without. */
export const OPTIONAL_PLAN_ROLES: readonly PlanRole[] = [
  'sent_out',
  'work',
  'work_part',
  'stock',
  'rider',
  'part_job',
  'rather_bag',
  'job',
  'job_setup',
  'bag',
  'bag_rider',
  'bag_mass',
  'bag_volume',
  'bag_packed_mass',
  'bag_packed_volume',
  'pack_rider',
  'pack_mass',
  'pack_volume',
  'hour_value',
  'set',
  'kit',
  'kit_part',
  'kit_pieces',
  'cash_limit',
  'mass_limit',
  'volume_limit',
  'hours_limit',
  'risk_limit',
  'days_left',
  'margin_days',
  'rate',
  'recovery',
  'waiting',
];

/** Roles that no plan is worked out from: they are changed on trial, to see where its calls turn. */
export const TRIAL_PLAN_ROLES: readonly PlanRole[] = ['rate', 'recovery', 'waiting'];

/**
 * The best set of calls and purchases under all the limits. Reads the pairing of a calls cell (with its pins),
 * the offers and the limits. Others read its figures as NAME_cash, NAME_cost, NAME_hours, NAME_risk, and the
 * packs to buy as NAME.offer, NAME.packs (rows of the offers).
 */
export interface PlanCell extends CellBase {
  readonly kind: 'plan';
  readonly name: string;
  /** Name of the calls cell whose parts, calls and pins it plans. */
  readonly calls: string;
  readonly reads: Readonly<Record<PlanRole, string>>;
}

/** How a picture draws what it reads. */
export const PICTURE_SHAPES = ['reading', 'map', 'bars', 'taken', 'spending'] as const;
export type PictureShape = (typeof PICTURE_SHAPES)[number];

/**
 * What a picture reads, each a column `table.column`, all of one table, but for the plan; a shape needs some of
 * them (cells/picture/picture-roles.ts) and leaves the others out.
 */
export const PICTURE_ROLES = [
  // What each row is about: the part.
  'of',
  // Across: the distance, the leg, the day.
  'along',
  'middle',
  'low',
  'high',
  'limit',
  'unit',
  'place',
  'chance',
  'cost',
  'length',
  'far',
  // Yes/no: only these rows.
  'where',
  // A reading that was taken, beside the one expected.
  'taken',
  // Map: chance and cost with the calls as they stand.
  'chance_called',
  'cost_called',
  // Name of a plan cell.
  'plan',
] as const;
export type PictureRole = (typeof PICTURE_ROLES)[number];

/** A picture of columns of a table, with its figures as a table beside it. */
export interface PictureCell extends CellBase {
  readonly kind: 'picture';
  readonly shape: PictureShape;
  readonly reads: Readonly<Partial<Record<PictureRole, string>>>;
  /** Bars: the figures drawn, single ones or columns of the table that `of` names. */
  readonly figures: readonly string[];
  /** Reading: which of the rows' names is drawn. */
  readonly one?: string;
}

/** Shopping list, shed jobs, pack list and checks on the road, made for paper. */
export interface PrepCell extends CellBase {
  readonly kind: 'prep';
  /** Name of the calls cell whose calls it carries out. */
  readonly calls: string;
  readonly reads: Readonly<Partial<Record<PrepRole, string>>>;
}

export type NamedCell = Exclude<Cell, NoteCell | TallyCell | PictureCell | PrepCell>;

export const isNamed = (cell: Cell): cell is NamedCell => 'name' in cell;
