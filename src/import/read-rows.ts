import { showAmount, showCount, showNumber } from '../formula/show.ts';
import { ENTRY_LENGTH } from '../tables/entry.ts';
import { asideSentence } from './aside-words.ts';
import { foldWords } from './fold-words.ts';
import { KINDS, kindCode } from './frame.ts';
import { likelyRole } from './head-words.ts';
import { finish, type Steps } from './in-steps.ts';
import type { Match } from './match-columns.ts';
import type { AsideReason, AsideRow, PriceRow, SortedRows } from './price-row.ts';
import { type PriceRows, RowCollector, type RowName } from './price-rows.ts';
import { chooseFromScales } from './quantity-scale.ts';
import { barePrice, type PriceRead, quickPrice, readPrice } from './read-price.ts';
import { type Reading, rawText } from './reading.ts';
import { remembered } from './remembered.ts';
import { isPiece, type RowReaders, rowReaders, unitRemark } from './row-readers.ts';

export interface RowOptions {
  /** Pieces that are wanted, where a list has prices by quantity; left out, such rows are set aside. */
  readonly pieces?: number;
}

interface Context {
  readonly reading: Reading;
  readonly readers: RowReaders;
  readonly readPrice: (text: string) => PriceRead;
  /** Currency of rows that name none. */
  readonly currency: string | null;
  /** No question on the currency is open: each row should name its own. */
  readonly isMoneyKnown: boolean;
  /** Remarks of the row that is being read. */
  readonly remarks: string[];
}

const ROWS_A_STEP = 2000;
/** Shared by all rows without a remark. */
const NO_REMARKS: readonly string[] = Object.freeze([]);

/**
 * Reads the rows of a price list: each is taken, taken with a remark, or set aside with its reason. No price
 * is guessed and no row dropped: the three together are all records below the header.
 *
 * @example readRows(reading, match).aside[0]
 * // { record: 7, line: 8, reason: 'on-request', sentence: "Its price is on request: 'POA'. ...", raw: 'NG-9;Hub;POA' }
 */
export function readRows(reading: Reading, match: Match, options: RowOptions = {}): SortedRows {
  const { rows, aside } = finish(rowSteps(reading, match, options));
  const taken: PriceRow[] = [];
  const remarked: PriceRow[] = [];
  for (const row of rows) (row.remarks.length === 0 ? taken : remarked).push(row);
  return { taken, remarked, aside };
}

/** The rows of a file as they were sorted; those taken are read again when they are asked for. */
export interface FoundRows {
  readonly rows: PriceRows;
  readonly aside: readonly AsideRow[];
}

/** The steps of readRows, for a list of any length. */
export function* rowSteps(reading: Reading, match: Match, options: RowOptions = {}): Steps<FoundRows> {
  const context = contextOf(reading, match);
  const found = new RowCollector(reading.records.length - reading.bodyFrom);
  const aside: AsideRow[] = [];
  const rowCode = kindCode('row');
  const sectionCode = kindCode('section');
  for (let record = reading.bodyFrom; record < reading.records.length; record += 1) {
    const code = reading.kinds[record]!;
    if (code === rowCode) {
      const read = readRow(context, record, null);
      if ('price' in read) found.add(read);
      else {
        aside.push(read);
        if (read.reason === 'heading') found.heading(record, sectionName(reading, record));
      }
    } else {
      if (code === sectionCode) found.heading(record, sectionName(reading, record));
      aside.push(asideOf(context, record, KINDS[code] as AsideReason));
    }
    if (record % ROWS_A_STEP === 0) yield { stage: 'rows', done: record, of: reading.records.length };
  }
  const rows = found.finish({
    read: (record, section) => readRow(context, record, section) as PriceRow,
    name: (record) => nameOf(context.readers, reading.records.at(record)),
    line: (record) => reading.lines[record]!,
  });
  yield { stage: 'rows', done: reading.records.length, of: reading.records.length };
  if (!found.hasScales) return { rows: rows.withDoubles(), aside };
  const all = [...rows];
  const chosen = chooseFromScales(all, options.pieces ?? null, (row, reason) =>
    aside.push(asideOf(context, row.record, reason)),
  );
  if (chosen.length < all.length) aside.sort((a, b) => a.record - b.record);
  return { rows: rows.only(new Set(chosen.map(({ record }) => record))).withDoubles(), aside };
}

function nameOf(readers: RowReaders, fields: readonly string[]): RowName {
  return {
    partNumber: readNumber(readers.partNumber(fields), false, []),
    description: readDescription(readers.description(fields), []),
  };
}

/**
 * A reading with one record's fields set anew, for a row mended in place; the other records are shared.
 *
 * @example readRows(withRecord(reading, 7, ['NG-9', 'Hub', '48.50']), match)
 */
export function withRecord(reading: Reading, record: number, fields: readonly string[]): Reading {
  const records = reading.records.withRecord(record, fields);
  const kinds = Uint8Array.from(reading.kinds);
  kinds[record] = kindCode('row');
  return { ...reading, records, kinds };
}

function contextOf(reading: Reading, match: Match): Context {
  const readers = rowReaders(reading, match);
  const recall = remembered((text) => readPrice(text, readers.priceDecimal));
  return {
    reading,
    readers,
    readPrice: (text) => {
      const quick = quickPrice(text, readers.priceDecimal);
      return quick === null ? recall(text) : barePrice(quick, false);
    },
    currency: match.currency,
    isMoneyKnown: !match.questions.some(({ kind }) => kind === 'currency'),
    remarks: [],
  };
}

function asideOf(context: Context, record: number, reason: AsideReason): AsideRow {
  const { reading, readers } = context;
  const field = readers.priceColumn === -1 ? '' : reading.records.field(record, readers.priceColumn);
  return {
    record,
    line: reading.lines[record]!,
    reason,
    sentence: asideSentence(reason, field),
    raw: rawText(reading, record),
  };
}

function sectionName(reading: Reading, record: number): string | null {
  const words = reading.records.at(record).find((field) => field.trim() !== '');
  return words === undefined ? null : words.replace(/^[\s#*=-]+|[\s*=-]+$/g, '') || null;
}

function readRow(context: Context, record: number, section: string | null): PriceRow | AsideRow {
  const { reading, readers, remarks } = context;
  const fields = reading.records.at(record);
  const number = readers.partNumber(fields);
  const words = readers.description(fields);
  const price = context.readPrice(readers.price(fields));
  if ('none' in price) {
    return asideOf(context, record, reasonFor(context, fields, price.none, number === '' && words === ''));
  }
  if (number === '' && words === '') return asideOf(context, record, 'no-name');
  remarks.length = 0;
  const partNumber = readNumber(number, readers.hasPartNumbers, remarks);
  const description = readDescription(words, remarks);
  const currency = readMoney(context, fields, price);
  const unit = readUnit(readers, fields, price, remarks);
  const priceFor = price.perCount * (readers.priceFor(fields, remarks) || 1);
  if (priceFor !== 1)
    remarks.push(`Its price is for ${showNumber(priceFor)}${unit === null ? '' : ` ${unit}`}.`);
  const fromQuantity = readers.fromQuantity(fields, remarks);
  if (fromQuantity !== null && fromQuantity > 1)
    remarks.push(`Its price holds from ${showNumber(fromQuantity)} on.`);
  return {
    record,
    line: reading.lines[record]!,
    partNumber,
    description,
    price: price.price,
    currency,
    priceFor,
    unit,
    fromQuantity,
    packQuantity: readers.pack(fields, remarks) || null,
    discountShare: readers.discount(fields, remarks),
    taxShare: readers.tax(fields, remarks),
    leadDays: readers.lead(fields, remarks),
    supplier: readers.supplier(fields, remarks),
    fits: readers.fits(fields) || null,
    stock: readers.stock(fields, remarks),
    section,
    remarks: remarks.length === 0 ? NO_REMARKS : [...remarks],
  };
}

/** Why a row without a price is set aside: what the field says, or what the row is. */
function reasonFor(
  { readers }: Context,
  fields: readonly string[],
  none: Extract<PriceRead, { none: unknown }>['none'],
  isNameless: boolean,
): AsideReason {
  if (none === 'not-a-price' && isHeadingWord(readers.price(fields))) return 'heading';
  if (none !== 'no-price') return none;
  if (readers.priceColumn !== -1 && fields.length <= readers.priceColumn) return 'cut-off';
  return isNameless && readers.priceColumn !== -1 ? 'follows-on' : 'no-price';
}

/** 'Price' where a price should be: the row repeats a head. */
function isHeadingWord(text: string): boolean {
  return !/\d/.test(text) && (likelyRole(foldWords(text))?.score ?? 0) >= 0.7;
}

function readNumber(text: string, hasPartNumbers: boolean, remarks: string[]): string | null {
  if (text === '') {
    if (hasPartNumbers) remarks.push('It has no part number.');
    return null;
  }
  if (text.includes('E+') && /^\d+[.,]\d+E\+\d+$/.test(text)) {
    remarks.push(`Its part number was turned into ${text} by a sheet program; its digits are lost.`);
    return null;
  }
  return text;
}

function readDescription(text: string, remarks: string[]): string | null {
  if (text.length <= ENTRY_LENGTH) return text || null;
  remarks.push(
    `Its description has ${showCount(text.length)} signs; the first ${showCount(ENTRY_LENGTH)} are taken.`,
  );
  return text.slice(0, ENTRY_LENGTH);
}

/** The currency of one row: named beside the price, else in its own column, else that of the file. */
function readMoney(
  context: Context,
  fields: readonly string[],
  price: Extract<PriceRead, { price: number }>,
): string | null {
  const { readers, remarks, currency: whole } = context;
  if (price.odd) {
    remarks.push(
      `Its price ${readers.price(fields)} has another decimal mark than the rest; it is read as ${showAmount(price.price)}.`,
    );
  }
  if (price.words !== '') remarks.push(`Beside its price stands '${price.words.slice(0, 60)}'.`);
  const before = remarks.length;
  const ofColumn = readers.currency(fields, remarks);
  const isUnknown = remarks.length > before;
  if (price.currency === null) {
    const currency = ofColumn ?? (isUnknown ? null : whole);
    // Where the file has a question on its currency, that says it for all.
    if (currency === null && !isUnknown && context.isMoneyKnown) remarks.push('Its price names no currency.');
    return currency;
  }
  if (ofColumn !== null && ofColumn !== price.currency) {
    remarks.push(
      `Its price names ${price.currency}, its column ${ofColumn}; the one beside the price is taken.`,
    );
  } else if (ofColumn === null && whole !== null && whole !== price.currency) {
    remarks.push(`Its price is in ${price.currency}, the others are in ${whole}.`);
  }
  return price.currency;
}

/** What the price is for: said beside the price, else in a column of its own. */
function readUnit(
  readers: RowReaders,
  fields: readonly string[],
  price: Extract<PriceRead, { price: number }>,
  remarks: string[],
): string | null {
  if (price.per === '') return readers.unit(fields, remarks);
  if (!isPiece(price.per)) remarks.push(unitRemark(price.per));
  return price.per;
}
