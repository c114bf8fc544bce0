import { numberLocale, plainNumber } from '../../src/formula/show.ts';
import { tryUnit } from '../../src/formula/unit-text.ts';
import type { EnteredColumn, Entry, NotebookDocument } from '../../src/notebook/document.ts';
import { type ShownAs, shownAs, worthOfMoney } from '../../src/notebook/shown-units.ts';
import { type EntryRead, type EntryRefusal, readEntry } from '../../src/tables/read-entry.ts';

/** What sort of entry a field takes, and in which unit it is shown. */
export interface TypedColumn {
  readonly kind: EnteredColumn['kind'];
  /** Unit in which a number is kept; typed text in another unit of the same kind is turned into it. */
  readonly unit?: string;
  /** The same with the unit of the row's own gauge, in which a figure may be typed as well: `mm/(1000 km)`. */
  readonly withGauge?: string;
  readonly options?: readonly string[];
  /** Head of the column in which the row's own unit stands, where it has one. */
  readonly unitsIn?: string;
  /** How it is shown in another unit: a bare number that is typed is in that one. */
  readonly as?: ShownAs | null;
  /** The notebook's own money, and what one of another is worth in it; null where nobody says. */
  readonly money?: string;
  readonly worth?: (code: string) => number | null;
}

/** What a field of this unit needs to know of its notebook. */
export function typedIn(
  document: NotebookDocument,
  unit: string | undefined,
): Pick<TypedColumn, 'as' | 'money' | 'worth'> {
  return {
    as: shownAs(document, unit ?? ''),
    money: document.money,
    worth: (code) => worthOfMoney(document, code),
  };
}

/** A unit or a sign of money stands in the text. */
const HAS_UNIT = /[^\d\s.,'’+\-−–/eE]/;

/**
 * Reads what was typed into a field, in the locale's numbers: a bare number is in the unit that is shown, one
 * with a unit or a money of its own is turned into the unit that is kept.
 *
 * @example readTyped('62 mi', { kind: 'number', unit: 'km' }) // { entry: 99.779328 }
 */
export function readTyped(text: string, column: TypedColumn): EntryRead {
  const read = (words: string, unit = column.unit): EntryRead =>
    readEntry(words, { ...column, unit }, numberLocale());
  const { as } = column;
  if (column.kind !== 'number') return read(text);
  if (HAS_UNIT.test(text)) {
    const kept = read(text);
    if ('entry' in kept) return kept;
    if (column.withGauge !== undefined) return read(text, column.withGauge);
    return exchanged(text, column, read) ?? withoutUnit(kept, column);
  }
  if (as === null || as === undefined) return read(text);
  const shown = read(text, as.unit);
  return 'entry' in shown && typeof shown.entry === 'number'
    ? { entry: exact(as.toKept(shown.entry)) }
    : shown;
}

/** A row that has no unit yet is told where to get one. */
function withoutUnit(refusal: EntryRefusal, { unit, unitsIn }: TypedColumn): EntryRefusal {
  if (unitsIn === undefined || unit !== '') return refusal;
  return {
    reason: refusal.reason.replace(/this field has no unit$/, 'this row has no unit yet'),
    mend: `Write its unit under ${unitsIn} first, or type the number alone.`,
  };
}

const CODE = /\b[A-Z]{3}\b|[€£]/;
const SIGNS: Readonly<Record<string, string>> = { '€': 'EUR', '£': 'GBP' };

/** A sum in another money, at the notebook's own rate; null where it is none or has no rate. */
function exchanged(
  text: string,
  { unit = '', money = '', worth }: TypedColumn,
  read: (words: string) => EntryRead,
): EntryRead | null {
  const code = CODE.exec(text)?.[0] ?? '';
  const rate = worth?.(SIGNS[code] ?? code) ?? null;
  if (code === '' || rate === null || tryUnit(unit)?.currencies[money] !== 1) return null;
  const own = read(text.replace(code, money));
  if (!('entry' in own)) return null;
  return typeof own.entry === 'number' ? { entry: exact(own.entry * rate) } : own;
}

/** Digits that survive there and back. */
const exact = (figure: number): number => Number(figure.toPrecision(15));

/** What stands in a field while it is written: the entry in full, with the unit it is kept in where another is shown. */
export function typedText(entry: Entry | undefined, column: Pick<TypedColumn, 'unit' | 'as'> = {}): string {
  if (entry === null || entry === undefined) return '';
  if (typeof entry === 'boolean') return entry ? 'yes' : 'no';
  if (typeof entry === 'string') return entry;
  const { as = null, unit } = column;
  return as === null ? plainNumber(entry) : `${plainNumber(entry)} ${unit}`;
}
