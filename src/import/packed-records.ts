import type { Quote } from './cut-piece.ts';
import { GrowingNumbers } from './growing.ts';

/** The sign of a quote as a code; -1: quotes are signs like any other. */
const codeOf = (quote: Quote): number => (quote === 'none' ? -1 : quote.charCodeAt(0));

/**
 * The records of a file, held as one text and the places in it where fields begin. Eight hundred thousand
 * strings would take ten times the memory, and moving them about more time than parsing: a field becomes a
 * string when it is asked for.
 */
export class PackedRecords {
  readonly length: number;
  /** All records, parted by \n, quoted fields after RFC 4180. */
  readonly text: string;
  private readonly quoteCode: number;
  private readonly quote: string;
  /** Where each field begins; behind the last field of a record one place more, past its end and break. */
  private readonly starts: Uint32Array;
  /** For each record, the place of its first field in `starts`; one more at the end. */
  private readonly firsts: Uint32Array;
  /** Records that were set anew by hand. */
  private readonly mended: ReadonlyMap<number, readonly string[]>;

  constructor(
    held: {
      readonly text: string;
      readonly quote: Quote;
      readonly starts: Uint32Array;
      readonly firsts: Uint32Array;
    },
    mended: ReadonlyMap<number, readonly string[]> = new Map(),
  ) {
    this.text = held.text;
    this.quote = held.quote === 'none' ? '' : held.quote;
    this.quoteCode = codeOf(held.quote);
    this.starts = held.starts;
    this.firsts = held.firsts;
    this.mended = mended;
    this.length = held.firsts.length - 1;
  }

  /** Fields of a record; none beyond the last record. */
  at(record: number): readonly string[] {
    const mended = this.mended.size === 0 ? undefined : this.mended.get(record);
    if (mended !== undefined) return mended;
    if (record < 0 || record >= this.length) return [];
    const { starts } = this;
    const from = this.firsts[record]!;
    const width = this.firsts[record + 1]! - 1 - from;
    const fields = new Array<string>(width);
    for (let column = 0; column < width; column += 1) {
      fields[column] = this.value(starts[from + column]!, starts[from + column + 1]! - 1);
    }
    return fields;
  }

  /** One field; '' where the record is shorter. */
  field(record: number, column: number): string {
    if (this.mended.size > 0 && this.mended.has(record)) return this.mended.get(record)![column] ?? '';
    const place = this.firsts[record]! + column;
    if (column < 0 || place >= this.firsts[record + 1]! - 1) return '';
    return this.value(this.starts[place]!, this.starts[place + 1]! - 1);
  }

  /** How many fields a record has. */
  width(record: number): number {
    const mended = this.mended.size === 0 ? undefined : this.mended.get(record);
    return mended?.length ?? this.firsts[record + 1]! - 1 - this.firsts[record]!;
  }

  /** Is a field this very text? Undefined: is it missing? */
  isField(record: number, column: number, wanted: string | undefined): boolean {
    if (column >= this.width(record)) return wanted === undefined;
    if (wanted === undefined) return false;
    if (this.mended.size === 0 && wanted !== '') {
      const code = this.text.charCodeAt(this.starts[this.firsts[record]! + column]!);
      if (code !== wanted.charCodeAt(0) && code !== this.quoteCode) return false;
    }
    return this.field(record, column) === wanted;
  }

  /** Does a field have one of two signs in it? Signs by their codes. */
  hasSign(record: number, column: number, one: number, other: number): boolean {
    if (this.mended.size > 0 && this.mended.has(record)) {
      const field = this.field(record, column);
      return field.includes(String.fromCharCode(one)) || field.includes(String.fromCharCode(other));
    }
    const place = this.firsts[record]! + column;
    if (place >= this.firsts[record + 1]! - 1) return false;
    for (let at = this.starts[place]!; at < this.starts[place + 1]! - 1; at += 1) {
      const code = this.text.charCodeAt(at);
      if (code === one || code === other) return true;
    }
    return false;
  }

  /** How many fields of a record hold more than spaces. */
  filled(record: number): number {
    if (this.mended.size > 0 && this.mended.has(record)) {
      return this.mended.get(record)!.filter((field) => field.trim() !== '').length;
    }
    const { starts, text } = this;
    let filled = 0;
    for (let place = this.firsts[record]!; place < this.firsts[record + 1]! - 1; place += 1) {
      const start = starts[place]!;
      const end = starts[place + 1]! - 1;
      if (start === end) continue;
      const code = text.charCodeAt(start);
      // Most fields begin with a sign that is no space and no quote: the quick way.
      const isPlain = code > 32 && code < 0x80 && code !== this.quoteCode;
      if (isPlain || this.value(start, end).trim() !== '') filled += 1;
    }
    return filled;
  }

  /** The text of a record as the file has it, with its marks and quotes, whatever was set anew. */
  raw(record: number): string {
    const [from, to] = [this.firsts[record]!, this.firsts[record + 1]! - 1];
    return this.text.slice(this.starts[from]!, this.starts[to]! - 1);
  }

  /** Notes where a field stands in `text`, its quotes with it; the record's beginning or end where it has none. */
  putSpan(record: number, column: number, starts: Uint32Array, ends: Uint32Array, at: number): void {
    const place = this.firsts[record]! + column;
    const last = this.firsts[record + 1]! - 1;
    if (column >= 0 && place < last) {
      starts[at] = this.starts[place]!;
      ends[at] = this.starts[place + 1]! - 1;
    } else {
      starts[at] = column < 0 ? this.starts[this.firsts[record]!]! : this.starts[last]! - 1;
      ends[at] = starts[at]!;
    }
  }

  /** Has any record been set anew? */
  get isMended(): boolean {
    return this.mended.size > 0;
  }

  /** The same with the fields of one record set anew; all else is shared. */
  withRecord(record: number, fields: readonly string[]): PackedRecords {
    return new PackedRecords(this.held(), new Map(this.mended).set(record, fields));
  }

  /** The same without the first record. */
  withoutFirst(): PackedRecords {
    return new PackedRecords({ ...this.held(), firsts: this.firsts.subarray(1) });
  }

  private held(): { text: string; quote: Quote; starts: Uint32Array; firsts: Uint32Array } {
    const quote = (this.quote === '' ? 'none' : this.quote) as Quote;
    return { text: this.text, quote, starts: this.starts, firsts: this.firsts };
  }

  private value(start: number, end: number): string {
    if (start === end) return '';
    if (this.text.charCodeAt(start) !== this.quoteCode) return this.text.slice(start, end);
    const inside = this.text.slice(start + 1, end - 1);
    return inside.includes(this.quote) ? inside.replaceAll(this.quote + this.quote, this.quote) : inside;
  }
}

/** Packs the records of a text as they are parsed, piece by piece. */
export class RecordPacker {
  private readonly pieces: string[] = [];
  private readonly starts = new GrowingNumbers();
  private readonly firsts = new GrowingNumbers();
  private readonly quote: Quote;
  private readonly quoteCode: number;
  private readonly whole: string;
  private isAsIs = true;
  private base = 0;
  private at = 0;

  /** @param whole the text of which the pieces are cut, in their order */
  constructor(whole: string, quote: Quote) {
    this.whole = whole;
    this.quote = quote;
    this.quoteCode = codeOf(quote);
  }

  /** How many records are packed. */
  get length(): number {
    return this.firsts.length;
  }

  /**
   * Begins a piece of text, whose records are then added in their order.
   *
   * @param isAsIs it stands so in the whole text: as long as all pieces do, no other text need be kept
   */
  beginPiece(text: string, isAsIs: boolean): void {
    this.isAsIs &&= isAsIs;
    if (this.pieces.length > 0) this.base += this.pieces.at(-1)!.length + 1;
    this.pieces.push(text);
    this.at = 0;
  }

  /**
   * Adds the next record of the piece, or passes over it.
   *
   * @throws Error when its fields do not lie in the text one behind the other
   */
  add(record: readonly string[], isKept: boolean): void {
    const text = this.pieces.at(-1)!;
    if (isKept) this.firsts.push(this.starts.length);
    let { at } = this;
    for (const field of record) {
      if (isKept) this.starts.push(this.base + at);
      at += field.length;
      if (text.charCodeAt(at - field.length) === this.quoteCode) at += 2 + this.quotesIn(field);
      at += 1;
    }
    if (at <= text.length && text.charCodeAt(at - 1) !== 10) {
      throw new Error('A record does not end where its line does.');
    }
    if (isKept) this.starts.push(this.base + at);
    this.at = at;
  }

  finish(): PackedRecords {
    this.firsts.push(this.starts.length);
    return new PackedRecords({
      text: this.isAsIs ? this.whole : this.pieces.join('\n'),
      quote: this.quote,
      starts: this.starts.toArray(),
      firsts: this.firsts.toArray(),
    });
  }

  private quotesIn(field: string): number {
    if (this.quote === 'none') return 0;
    let count = 0;
    for (let at = field.indexOf(this.quote); at !== -1; at = field.indexOf(this.quote, at + 1)) count += 1;
    return count;
  }
}
