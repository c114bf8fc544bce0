import type { Separator } from '../tables/csv-layout.ts';

/** The sign that holds a field together; 'none': quotes are signs like any other. */
export type Quote = '"' | "'" | 'none';

/** A run of whole records, cut from a text and put right so that any CSV parser reads it. */
export interface Piece {
  /** Records parted by \n, every quoted field after RFC 4180; no break after the last record. */
  readonly text: string;
  /** Place in the whole text just past the piece. */
  readonly end: number;
  /** It stands in the whole text as it is, but for the break behind it. */
  readonly isAsIs: boolean;
  /** A quoted field in it holds a line break. */
  readonly hasBreaks: boolean;
  /** Places of quotes that are not as they should be, and were read as they stand. */
  readonly strayAt: readonly number[];
}

export type Broken =
  | { readonly broken: 'open-quote'; readonly at: number }
  | { readonly broken: 'long-line'; readonly at: number };

/** Most signs of one record: a longer one is no row of a price list. */
export const MOST_LINE = 1_000_000;

export interface Cutter {
  readonly text: string;
  readonly separator: Separator;
  readonly quote: Quote;
  /** Signs after which a piece ends with its record. */
  readonly pieceLength: number;
}

/**
 * Cuts the next whole records from a text, from `from` on. Outside quotes any kind of line break (CR CR LF,
 * which some programs write, among them) becomes \n. A quote opens a field only at its beginning. A quote
 * inside a quoted field that should have been doubled is kept as it stands when the field is closed on the
 * same line; otherwise the field's first quote is taken as an ordinary sign. One that is never closed would
 * swallow the rest of the file: it is returned as broken, with its place.
 */
export function cutPiece(cutter: Cutter, from: number): Piece | Broken {
  const { text, separator, quote, pieceLength } = cutter;
  const out: string[] = [];
  const strayAt: number[] = [];
  let hasBreaks = false;
  let copied = from;
  let at = from;
  let end = 0;
  for (;;) {
    const opening = quote === 'none' ? -1 : text.indexOf(quote, at);
    const goal = Math.max(at, from + pieceLength);
    if (opening === -1 || opening >= goal) {
      const stop = breakAfter(text, goal);
      if (stop - goal > MOST_LINE) return { broken: 'long-line', at: goal };
      if (opening === -1 || stop <= opening) {
        end = stop;
        break;
      }
    }
    const start = fieldStart(text, opening, from, separator);
    if (start === -1) {
      at = opening + 1;
      continue;
    }
    const field = readQuoted(text, opening, quote, separator);
    if (field === null) {
      if (start === opening) return { broken: 'open-quote', at: opening };
      at = opening + 1;
      continue;
    }
    if (start !== opening && !text.slice(opening, field.end).includes(separator)) {
      // A space before the quote belongs to the field (RFC 4180, section 2, 4), unless the quotes hold it together.
      at = opening + 1;
      continue;
    }
    if (field.end - opening > MOST_LINE) return { broken: 'long-line', at: opening };
    if (field.stray || start !== opening || field.end !== field.closing + 1) {
      // Written anew: the spaces around the quotes go, and what should have been doubled is.
      out.push(oneBreak(text.slice(copied, start)), quoted(fieldValue(text, opening, field, quote), quote));
      copied = field.end;
      if (field.stray) strayAt.push(opening);
    } else if (field.hasBreak) {
      out.push(oneBreak(text.slice(copied, opening)), text.slice(opening, field.end));
      copied = field.end;
    }
    hasBreaks ||= field.hasBreak;
    at = field.end;
  }
  out.push(oneBreak(text.slice(copied, end)));
  const whole = out.length === 1 ? out[0]! : out.join('');
  const isAsIs = out.length === 1 && whole.length === end - from;
  return { text: whole.endsWith('\n') ? whole.slice(0, -1) : whole, end, isAsIs, hasBreaks, strayAt };
}

/** Just past the first line break at or after `from`; the text's end when there is none. */
function breakAfter(text: string, from: number): number {
  if (from >= text.length) return text.length;
  const feed = text.indexOf('\n', from);
  if (feed !== -1) return feed + 1;
  const back = text.indexOf('\r', from);
  return back === -1 ? text.length : back + 1;
}

function oneBreak(text: string): string {
  return text.includes('\r') ? text.replace(/\r+\n|\r/g, '\n') : text;
}

function quoted(value: string, quote: string): string {
  return `${quote}${value.replaceAll(quote, quote + quote)}${quote}`;
}

/** Where the field of a quote begins: at the quote or some spaces before it; -1 when it stands inside one. */
function fieldStart(text: string, opening: number, from: number, separator: Separator): number {
  let at = opening;
  while (at > from && text.charCodeAt(at - 1) === 32) at -= 1;
  if (at === from) return at;
  const before = text[at - 1];
  return before === separator || before === '\n' || before === '\r' ? at : -1;
}

interface QuotedField {
  /** Place of the closing quote; -1: the field is read without quotes. */
  readonly closing: number;
  /** Just past the field: the place of the separator or the break. */
  readonly end: number;
  readonly hasBreak: boolean;
  readonly stray: boolean;
}

/** The quoted field that opens at `opening`; null when it is never closed. */
function readQuoted(text: string, opening: number, quote: string, separator: Separator): QuotedField | null {
  let at = opening + 1;
  let isStray = false;
  let lineEnd = -1;
  for (;;) {
    const mark = text.indexOf(quote, at);
    if (isStray) {
      // After a stray quote only the same line may close the field: else it would swallow rows in silence.
      if (mark === -1 || mark > lineEnd) return ordinary(text, opening, separator, lineEnd);
    } else if (mark === -1) return null;
    if (text[mark + 1] === quote) {
      at = mark + 2;
      continue;
    }
    const end = fieldEnd(text, mark + 1, separator);
    if (end !== -1) return { closing: mark, end, hasBreak: breakBefore(text, opening, mark), stray: isStray };
    if (!isStray) {
      isStray = true;
      lineEnd = endOfLine(text, mark);
    }
    at = mark + 1;
  }
}

/** What a field is to hold that is written anew. */
function fieldValue(text: string, opening: number, field: QuotedField, quote: string): string {
  return field.closing === -1
    ? text.slice(opening, field.end)
    : text.slice(opening + 1, field.closing).replaceAll(quote + quote, quote);
}

/** The field read without quotes, up to its separator or the line's end. */
function ordinary(text: string, opening: number, separator: Separator, lineEnd: number): QuotedField {
  const next = text.indexOf(separator, opening);
  const end = next === -1 || next > lineEnd ? lineEnd : next;
  return { closing: -1, end, hasBreak: false, stray: true };
}

/** Place of the separator, break or end that follows a closing quote, spaces passed over; -1: none does. */
function fieldEnd(text: string, from: number, separator: Separator): number {
  let at = from;
  while (text.charCodeAt(at) === 32) at += 1;
  if (at >= text.length) return text.length;
  const sign = text[at];
  return sign === separator || sign === '\n' || sign === '\r' ? at : -1;
}

/** Is there a line break between the two places? Fields are short: each sign is looked at. */
function breakBefore(text: string, from: number, to: number): boolean {
  for (let at = from; at < to; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return true;
  }
  return false;
}

function endOfLine(text: string, from: number): number {
  const end = /[\r\n]/g;
  end.lastIndex = from;
  return end.exec(text)?.index ?? text.length;
}
