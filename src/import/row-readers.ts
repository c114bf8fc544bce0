import { CURRENCY_CODES } from '../formula/currencies.ts';
import type { DecimalMark } from '../tables/number-policy.ts';
import { bareText } from '../tables/safe-text.ts';
import { moneyOf } from './currency-signs.ts';
import { foldWords } from './fold-words.ts';
import { columnsOf, type Match } from './match-columns.ts';
import { readLeadDays, readPack, readShare, readStock } from './read-quantities.ts';
import type { Reading } from './reading.ts';
import { remembered } from './remembered.ts';
import type { Role } from './roles.ts';

type Fields = readonly string[];

/** Reads one field of a row; a remark on it, if any, is added to `remarks`. */
type FieldReader<Value> = (fields: Fields, remarks: string[]) => Value | null;

/** What is read of one field's text. */
interface FieldRead<Value> {
  readonly value: Value | null;
  readonly remark: string | null;
}

/** How the fields of a row are read, column by column, as the match says. */
export interface RowReaders {
  readonly priceColumn: number;
  readonly priceDecimal: DecimalMark | null;
  readonly hasPartNumbers: boolean;
  readonly partNumber: (fields: Fields) => string;
  readonly description: (fields: Fields) => string;
  readonly price: (fields: Fields) => string;
  readonly currency: FieldReader<string>;
  readonly pack: FieldReader<number>;
  readonly discount: FieldReader<number>;
  readonly tax: FieldReader<number>;
  readonly lead: FieldReader<number>;
  readonly supplier: FieldReader<string>;
  readonly fits: (fields: Fields) => string;
  readonly stock: FieldReader<number | string>;
  readonly unit: FieldReader<string>;
  readonly priceFor: FieldReader<number>;
  readonly fromQuantity: FieldReader<number>;
}

const BLANK = { value: null, remark: null } as const;
const DASH = /^[-–—]$/;

/** The readers for a file whose columns are matched. */
export function rowReaders(reading: Reading, match: Match): RowReaders {
  const first = (role: Role): number => columnsOf(match, role)[0] ?? -1;
  const title = (column: number): string => reading.heads[column]?.title ?? '';
  const mark = (column: number): DecimalMark | null => reading.decimalByColumn[column] ?? null;
  const price = first('price');
  const unit = first('unit');
  const lead = first('lead_time');
  const leadWords = foldWords(title(lead));
  const isByMeasure = unit !== -1 && countUnits(reading, unit) > 1;
  const count = (role: Role, words: string): FieldReader<number> => {
    const column = first(role);
    return fieldReader(column, (text) => readCount(text, mark(column), words, !isByMeasure));
  };
  const share = (role: Role, words: string): FieldReader<number> => {
    const column = first(role);
    return fieldReader(column, (text) => readRate(text, mark(column), title(column).includes('%'), words));
  };
  return {
    priceColumn: price,
    priceDecimal: mark(price),
    hasPartNumbers: first('part_number') !== -1,
    partNumber: textReader([first('part_number')]),
    description: textReader(columnsOf(match, 'description')),
    price: textReader([price]),
    currency: fieldReader(first('currency'), readCurrency),
    pack: count('pack_quantity', 'Its pack quantity'),
    discount: share('discount', 'discount'),
    tax: share('tax', 'tax'),
    lead: fieldReader(lead, (text) => readLead(text, leadWords, mark(lead))),
    supplier: fieldReader(first('supplier'), (value) => ({ value, remark: null })),
    fits: textReader(columnsOf(match, 'fits')),
    stock: fieldReader(first('stock'), (text) => ({
      value: readStock(text, mark(first('stock'))) ?? text,
      remark: null,
    })),
    unit: fieldReader(unit, (value) => ({
      value,
      // One unit throughout the file needs no remark on every row.
      remark: isByMeasure && !isPiece(value) ? unitRemark(value) : null,
    })),
    priceFor: count('price_for', 'The number that the price is for'),
    fromQuantity: count('from_quantity', 'The quantity it holds from'),
  };
}

export function unitRemark(unit: string): string {
  return `Its price is for ${unit}, which may not be one piece.`;
}

export function isPiece(unit: string): boolean {
  return /^(?:pcs?|pces?|pce|piece|pieces|ea|each|st|stk|stck|stuck|stück|szt|шт|un|u|ud|pz|kpl|ks|c62|h87|item|1|)\.?$/i.test(
    unit,
  );
}

/** The text of one column, or of several joined by a space. */
function textReader(columns: readonly number[]): (fields: Fields) => string {
  const [only] = columns;
  if (only === undefined || only === -1) return () => '';
  if (columns.length === 1) return (fields) => bareField(fields, only);
  return (fields) =>
    columns
      .map((column) => bareField(fields, column))
      .filter((text) => text !== '')
      .join(' ');
}

function bareField(fields: Fields, column: number): string {
  const text = fields[column];
  return text === undefined || text === '' ? '' : bareText(text).trim();
}

function fieldReader<Value>(column: number, read: (text: string) => FieldRead<Value>): FieldReader<Value> {
  if (column === -1) return () => null;
  const recall = remembered((raw): FieldRead<Value> => {
    const text = bareText(raw).trim();
    return text === '' ? BLANK : read(text);
  });
  return (fields, remarks) => {
    const raw = fields[column];
    if (raw === undefined || raw === '') return null;
    const { value, remark } = recall(raw);
    if (remark !== null) remarks.push(remark);
    return value;
  };
}

function readCurrency(text: string): FieldRead<string> {
  const upper = text.toUpperCase();
  const code = CURRENCY_CODES.has(upper) ? upper : (moneyOf(text)?.code ?? null);
  return code === null
    ? { value: null, remark: `Its currency '${text.slice(0, 20)}' is not known.` }
    : { value: code, remark: null };
}

function readCount(
  text: string,
  decimal: DecimalMark | null,
  words: string,
  isInPieces: boolean,
): FieldRead<number> {
  if (text === '0') return { value: 0, remark: null };
  if (DASH.test(text)) return BLANK;
  const read = readPack(text, decimal);
  if (read === null) return { value: null, remark: `${words} cannot be read: '${text.slice(0, 30)}'.` };
  // Where prices are by the metre or the kilogram, so are the packs.
  return { value: read.figure, remark: isInPieces ? (read.remark ?? null) : null };
}

function readRate(
  text: string,
  decimal: DecimalMark | null,
  isPercent: boolean,
  words: string,
): FieldRead<number> {
  if (DASH.test(text)) return BLANK;
  const read = readShare(text, decimal, isPercent);
  if (read !== null) return { value: read.figure, remark: null };
  return { value: null, remark: `Its ${words} cannot be read as a share: '${text.slice(0, 30)}'.` };
}

function readLead(text: string, headWords: string, decimal: DecimalMark | null): FieldRead<number> {
  if (DASH.test(text)) return BLANK;
  const read = readLeadDays(text, headWords, decimal);
  if (read !== null) return { value: read.figure, remark: read.remark ?? null };
  return { value: null, remark: `Its lead time cannot be read as days: '${text.slice(0, 30)}'.` };
}

/** Different units in a column. */
function countUnits(reading: Reading, column: number): number {
  const found = new Set<string>();
  const step = Math.max(1, Math.floor(reading.records.length / 3000));
  for (let at = reading.bodyFrom; at < reading.records.length && found.size < 3; at += step) {
    const unit = reading.records.field(at, column).trim().toLowerCase();
    if (unit !== '') found.add(unit);
  }
  return found.size;
}
