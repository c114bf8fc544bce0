import { showAmount } from '../formula/show.ts';
import type { PriceRow } from './price-row.ts';
import { findDoubles, hashNumber } from './remark-doubles.ts';

/** What names a row. */
export type RowName = Pick<PriceRow, 'partNumber' | 'description'>;

/** How a row is read again. */
interface Reader {
  readonly read: (record: number, section: string | null) => PriceRow;
  readonly name: (record: number) => RowName;
  /** Line of the file, from 1. */
  readonly line: (record: number) => number;
}

/** What is kept of every row. */
interface Kept {
  readonly records: Uint32Array;
  readonly prices: Float64Array;
  /** Hash of the part number; 0 where there is none. */
  readonly hashes: Int32Array;
  /** 1: it has a remark of its own. */
  readonly remarked: Uint8Array;
}

interface Heading {
  readonly record: number;
  readonly name: string | null;
}

/**
 * The rows taken from a price list, in the file's order. Of each its record, its price and whether it has
 * remarks are kept; the whole of it is read again when it is asked for, which gives the same each time: a
 * hundred thousand objects would take longer to make and keep than the file to parse.
 */
export class PriceRows implements Iterable<PriceRow> {
  readonly length: number;
  private readonly kept: Kept;
  private readonly headings: readonly Heading[];
  private readonly reader: Reader;
  /** For rows whose part number another row has: the place of the first such other. */
  private readonly doubles: ReadonlyMap<number, number>;

  constructor(
    kept: Kept,
    headings: readonly Heading[],
    reader: Reader,
    doubles: ReadonlyMap<number, number> = new Map(),
  ) {
    this.kept = kept;
    this.headings = headings;
    this.reader = reader;
    this.doubles = doubles;
    this.length = kept.records.length;
  }

  /** The whole of a row; undefined beyond the last. */
  at(row: number): PriceRow | undefined {
    const record = this.kept.records[row];
    if (record === undefined) return undefined;
    const read = this.reader.read(record, this.sectionOf(record));
    const other = this.doubles.get(row);
    if (other === undefined) return read;
    const price = this.kept.prices[other]!;
    const prices = price === read.price ? 'with the same price' : `with the price ${showAmount(price)}`;
    const line = this.reader.line(this.kept.records[other]!);
    return { ...read, remarks: [...read.remarks, `Its part number stands on line ${line} too, ${prices}.`] };
  }

  /** What names a row: quicker than the whole of it. */
  name(row: number): RowName {
    return this.reader.name(this.kept.records[row]!);
  }

  /** Record of the file that a row is. */
  recordOf(row: number): number {
    return this.kept.records[row]!;
  }

  isRemarked(row: number): boolean {
    return this.kept.remarked[row] === 1 || this.doubles.has(row);
  }

  get remarkedCount(): number {
    let count = 0;
    for (let row = 0; row < this.length; row += 1) if (this.isRemarked(row)) count += 1;
    return count;
  }

  /** Some rows from a place on. */
  page(from: number, count: number): PriceRow[] {
    const rows: PriceRow[] = [];
    for (let row = Math.max(0, from); row < Math.min(this.length, from + count); row += 1) {
      rows.push(this.at(row)!);
    }
    return rows;
  }

  *[Symbol.iterator](): Generator<PriceRow> {
    for (let row = 0; row < this.length; row += 1) yield this.at(row)!;
  }

  /** Only the rows that are these records. */
  only(records: ReadonlySet<number>): PriceRows {
    const stays = (_: number, row: number): boolean => records.has(this.kept.records[row]!);
    const { records: held, prices, hashes, remarked } = this.kept;
    const kept = {
      records: held.filter(stays),
      prices: prices.filter(stays),
      hashes: hashes.filter(stays),
      remarked: remarked.filter(stays),
    };
    return new PriceRows(kept, this.headings, this.reader);
  }

  /** The same with a remark on each row whose part number stands on another line too. */
  withDoubles(): PriceRows {
    const doubles = findDoubles(this.kept.hashes, (row) => this.name(row).partNumber ?? '');
    return doubles.size === 0 ? this : new PriceRows(this.kept, this.headings, this.reader, doubles);
  }

  /** The heading above a record. */
  private sectionOf(record: number): string | null {
    let low = 0;
    let high = this.headings.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.headings[middle]!.record < record) low = middle + 1;
      else high = middle;
    }
    return low === 0 ? null : this.headings[low - 1]!.name;
  }
}

/** Collects what is kept of the rows as they are read. */
export class RowCollector {
  /** Has a row a price that holds from several pieces on? */
  hasScales = false;
  private readonly kept: Kept;
  private readonly headings: Heading[] = [];
  private length = 0;

  /** @param most rows at most */
  constructor(most: number) {
    this.kept = {
      records: new Uint32Array(most),
      prices: new Float64Array(most),
      hashes: new Int32Array(most),
      remarked: new Uint8Array(most),
    };
  }

  add(row: PriceRow): void {
    const { records, prices, hashes, remarked } = this.kept;
    records[this.length] = row.record;
    prices[this.length] = row.price;
    hashes[this.length] = row.partNumber === null ? 0 : hashNumber(row.partNumber);
    remarked[this.length] = row.remarks.length > 0 ? 1 : 0;
    this.length += 1;
    if (row.fromQuantity !== null && row.fromQuantity > 1) this.hasScales = true;
  }

  heading(record: number, name: string | null): void {
    this.headings.push({ record, name });
  }

  finish(reader: Reader): PriceRows {
    const { records, prices, hashes, remarked } = this.kept;
    const kept = {
      records: records.slice(0, this.length),
      prices: prices.slice(0, this.length),
      hashes: hashes.slice(0, this.length),
      remarked: remarked.slice(0, this.length),
    };
    return new PriceRows(kept, this.headings, reader);
  }
}
