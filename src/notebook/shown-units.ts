import type { Column, ColumnType } from '../formula/column.ts';
import type { Unit } from '../formula/unit.ts';
import { tryUnit } from '../formula/unit-text.ts';
import { convertFigure } from '../tables/convert-figure.ts';
import { otherMeasure } from './convert-units.ts';
import type { NotebookDocument } from './document.ts';
import { columnNamed, isEntered } from './lookup.ts';
import type { NodeState } from './node-state.ts';

/** How figures of one unit are shown in a notebook that shows another. */
export interface ShownAs {
  /** The unit that is shown. */
  readonly unit: string;
  /** More decimals that it needs to say as much; below 0 for fewer. */
  readonly extraDecimals: number;
  toShown(kept: number): number;
  toKept(shown: number): number;
}

const known = new WeakMap<NotebookDocument, Map<string, ShownAs | null>>();

/**
 * How the notebook shows figures that are kept in a unit: in the measures and the money of its own choice.
 * null where they are shown as they are kept: nothing is chosen, the unit has no counterpart, or the money has
 * no rate of exchange. What is kept, and every formula, stays as it is.
 *
 * @example shownAs({ ...document, measures: 'imperial' }, 'km')?.toShown(1.609344) // 1
 */
export function shownAs(document: NotebookDocument, unit: string): ShownAs | null {
  if (unit === '' || (document.measures === undefined && document.shown_money === undefined)) return null;
  let units = known.get(document);
  if (units === undefined) {
    units = new Map();
    known.set(document, units);
  }
  const held = units.get(unit);
  if (held !== undefined) return held;
  const found = findShown(document, unit);
  units.set(unit, found);
  return found;
}

function findShown(document: NotebookDocument, text: string): ShownAs | null {
  const measured = document.measures === undefined ? null : otherMeasure(text, document.measures);
  const kept = tryUnit(text);
  const between = tryUnit(measured?.unit ?? text);
  if (kept === null || between === null) return null;
  const rate = moneyRate(document, between);
  if (measured === null && rate === null) return null;
  const factor = rate?.factor ?? 1;
  return {
    unit: rate?.unit ?? between.text,
    extraDecimals: measured?.extraDecimals ?? 0,
    toShown: (figure) => convertFigure(figure, kept, between) * factor,
    toKept: (figure) => convertFigure(figure / factor, between, kept),
  };
}

/** What a sum in the notebook's own money is multiplied by, and the unit it then has; null for no sum. */
function moneyRate(
  document: NotebookDocument,
  unit: Unit,
): { readonly unit: string; readonly factor: number } | null {
  const { money, shown_money: shown } = document;
  const power = unit.currencies[money] ?? 0;
  if (shown === undefined || shown === money || power === 0) return null;
  const worth = worthOfMoney(document, shown);
  if (worth === null) return null;
  const text = unit.text.replace(new RegExp(`\\b${money}\\b`, 'g'), shown);
  return { unit: text, factor: worth ** -power };
}

/**
 * What one of a money is worth in the notebook's own, by its `rates_of_exchange`; null where it does not say.
 *
 * @example worthOfMoney(document, 'USD') // 0.92 in a notebook in EUR
 */
export function worthOfMoney(document: NotebookDocument, code: string): number | null {
  if (code === document.money) return 1;
  return ratesOf(document).get(code) ?? null;
}

/** The moneys in which sums can be shown, the notebook's own first. */
export function moneysToShow(document: NotebookDocument): readonly string[] {
  return [...new Set([document.money, ...ratesOf(document).keys()])];
}

function ratesOf(document: NotebookDocument): ReadonlyMap<string, number> {
  const rates = new Map<string, number>();
  for (const cell of document.cells) {
    if (cell.kind !== 'table' || cell.name !== 'rates_of_exchange') continue;
    const [codes, worths] = [columnNamed(cell, 'currency'), columnNamed(cell, 'worth')];
    if (codes === null || worths === null || !isEntered(codes) || !isEntered(worths)) continue;
    codes.entries.forEach((code, row) => {
      const worth = worths.entries[row];
      if (typeof code === 'string' && typeof worth === 'number' && worth > 0) rates.set(code, worth);
    });
  }
  return rates;
}

interface Figures {
  readonly column: Column;
  readonly type: ColumnType;
}

const turned = new WeakMap<Column, { readonly by: ShownAs; readonly column: Column }>();

/** Figures in the unit in which the notebook shows them; the same ones where that is the unit they have. */
export function shownFigures(document: NotebookDocument, figures: Figures): Figures {
  const { column, type } = figures;
  const as = type.kind === 'number' && type.unit !== null ? shownAs(document, type.unit.text) : null;
  const unit = as === null ? null : tryUnit(as.unit);
  if (as === null || unit === null || column.kind !== 'number') return figures;
  return { column: turnedBy(as, column), type: { ...type, unit } };
}

/** Turned once for the same figures: a column of 50,000 rows is drawn again at every scroll. */
function turnedBy(as: ShownAs, column: Extract<Column, { kind: 'number' | 'yes_no' | 'date' }>): Column {
  const held = turned.get(column);
  if (held?.by === as || (held !== undefined && sameTurn(held.by, as))) return held.column;
  const made = { ...column, values: column.values.map((figure) => as.toShown(figure)) };
  turned.set(column, { by: as, column: made });
  return made;
}

/** The way of turning is found anew for each state of the notebook; it is the same unless a rate has changed. */
function sameTurn(a: ShownAs, b: ShownAs): boolean {
  return a.unit === b.unit && a.toShown(1) === b.toShown(1);
}

/** What a notebook can be read through: a live one, or one that a test makes. */
export interface Readable {
  readonly document: NotebookDocument;
  read(written: string): NodeState;
}

/**
 * The figure of a cell or column as the notebook shows it. For the page alone: what is reckoned further is
 * read as it is kept.
 */
export function readShown(notebook: Readable, written: string): NodeState {
  const state = notebook.read(written);
  if (state.state === 'settled') return { state: 'settled', ...shownFigures(notebook.document, state) };
  if (state.state !== 'working' || state.last === null) return state;
  return { state: 'working', last: shownFigures(notebook.document, state.last) };
}

/** What a notebook shows its figures in, to be compared: another key, and all of them are drawn anew. */
export function shownKey(document: NotebookDocument): string {
  const { measures = '', shown_money: money } = document;
  return money === undefined ? measures : `${measures} ${money} ${worthOfMoney(document, money)}`;
}
