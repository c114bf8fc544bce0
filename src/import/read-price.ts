import type { DecimalMark } from '../tables/number-policy.ts';
import { moneyIn, moneyOf } from './currency-signs.ts';
import { mendLetters } from './letter-figure.ts';
import { readMarkedNumber } from './marked-number.ts';
import { priceWord } from './price-words.ts';

/** Why a price field gives no price. */
export type NoPrice =
  | 'no-price' // empty, a dash, n/a
  | 'on-request' // POA, ask
  | 'two-prices' // 24,80/46,00
  | 'price-range' // $25-$41
  | 'from-price' // from 25
  | 'zero-price'
  | 'below-zero'
  | 'either-mark' // 1.234, and nothing tells which mark it is
  | 'spoilt-number' // 4,26E+12, #REF!
  | 'letter-in-figure' // 22,1O
  | 'not-a-price';

export type PriceRead =
  | {
      readonly price: number;
      /** ISO 4217; null when the field names none, or a sign that several share. */
      readonly currency: string | null;
      /** The sign that several currencies share, such as $. */
      readonly sharedSign: string | null;
      /** What the price is for, as the field has it: 'St.', 'm'; '' when it says nothing. */
      readonly per: string;
      /** For how many of them: 100 in '12,50 €/100 St.'; 1 when the field says nothing. */
      readonly perCount: number;
      /** Written with the other decimal mark than its column. */
      readonly odd: boolean;
      /** Words beside the price that were no unit and no currency. */
      readonly words: string;
    }
  | { readonly none: NoPrice };

/** A figure with its marks, as it stands in a text. */
const FIGURE = String.raw`\d(?:[\d.,'’\u00a0\u2007\u2009\u202f ]*\d)?(?:[.,][-–—]{1,2})?(?:[eE][+-]?\d+)?`;
const ONE_FIGURE = new RegExp(
  `^([^\\d]*?)([-+−]?(?:[.,]\\d+|${FIGURE}))([^\\d]*(?:[²³23]\\b)?[^\\d]*)$`,
  'su',
);
const PLAIN = /^\d+(?:[.,]\d{1,2})?$/;
/** A price for several pieces: '12,50 €/100 St.'. */
const FOR_MANY = /^(.*\d.*?)\s*(?:\/|\bper\b|\bpro\b|\bje\b)\s*(10|50|100|1000)\s*([\p{L}]{0,6}\.?)$/iu;

/**
 * The price of a field that is but a figure with at most two decimals after the column's own mark: what nearly
 * all fields of a long list are. Null for any other, which `readPrice` reads; where it answers, both say the same.
 *
 * @example quickPrice('12,50', ',') // 12.5
 */
export function quickPrice(text: string, decimal: DecimalMark | null): number | null {
  const { length } = text;
  if (length === 0 || length > 12) return null;
  let figure = 0;
  let decimals = -1;
  for (let at = 0; at < length; at += 1) {
    const code = text.charCodeAt(at);
    if (code >= 48 && code <= 57) {
      figure = figure * 10 + code - 48;
      if (decimals >= 0) decimals += 1;
    } else if (decimals === -1 && at > 0 && decimal !== null && code === decimal.charCodeAt(0)) decimals = 0;
    else return null;
  }
  if (decimals === 0 || decimals > 2 || figure === 0) return null;
  // A whole number below 2^53 over a power of ten is rounded once, as a written decimal is.
  return decimals === -1 ? figure : figure / (decimals === 1 ? 10 : 100);
}

/**
 * Reads a price field: a figure with its marks, and a currency, a unit or a few words about it. Nothing is
 * guessed: two prices, ranges and words have each their own reason.
 *
 * @param decimal decimal mark of the column; null when nothing tells it
 * @example readPrice('12,5 EUR/St.', ',') // { price: 12.5, currency: 'EUR', per: 'St.', ... }
 * @example readPrice('24,80/46,00', ',') // { none: 'two-prices' }
 * @example readPrice('22,1O', ',') // { none: 'letter-in-figure' }
 */
export function readPrice(text: string, decimal: DecimalMark | null): PriceRead {
  const bare = text.trim();
  if (bare === '') return { none: 'no-price' };
  if (PLAIN.test(bare)) return priced(bare, decimal, '', '');
  const word = priceWord(bare);
  if (word !== null) return { none: word === 'sheet-error' ? 'spoilt-number' : word };
  if (mendLetters(bare) !== null) return { none: 'letter-in-figure' };
  const many = FOR_MANY.exec(bare);
  if (many !== null && (many[3] !== '' || moneyIn(many[1]!).length > 0)) {
    const read = readPrice(many[1]!, decimal);
    return 'price' in read ? { ...read, per: many[3]!.replace(/\.$/, ''), perCount: Number(many[2]) } : read;
  }
  const parts = ONE_FIGURE.exec(bare);
  if (parts !== null) return readParts(parts[1]!, parts[2]!, parts[3]!, decimal);
  return { none: severalFigures(bare) };
}

/** A price that names nothing beside its figure. */
export function barePrice(price: number, odd: boolean): Extract<PriceRead, { price: number }> {
  return { price, currency: null, sharedSign: null, per: '', perCount: 1, odd, words: '' };
}

function readParts(before: string, figure: string, after: string, decimal: DecimalMark | null): PriceRead {
  const ahead = before.trim();
  // 'bis 25', 'ab 25', 'from 25': not the price of this part.
  if (
    /^(?:from|ab|bis|up to|a partir de|des|desde|da|vanaf|tot|od|do|от|до|fran|från|fra|alkaen|jusqu'?a|ca\.?|circa|approx\.?|about|~|>|<|≥|≤)/i.test(
      ahead,
    ) &&
    moneyOf(ahead) === undefined
  ) {
    return { none: 'from-price' };
  }
  // An apostrophe before a figure is a sheet's mark for text.
  const lead = ahead.replace(/^['’]/, '');
  const isBelow = /[-−–]\s*[^\w\s]*$/.test(lead) || /^\(.*$/.test(lead);
  return priced(
    isBelow ? `-${figure.replace(/^[-+−]/, '')}` : figure,
    decimal,
    lead.replace(/[-−–(]/g, ' '),
    after,
  );
}

function priced(figure: string, decimal: DecimalMark | null, before: string, after: string): PriceRead {
  const read = readMarkedNumber(figure.trim(), decimal);
  if ('trouble' in read) {
    if (read.trouble === 'either') return { none: 'either-mark' };
    return { none: read.trouble === 'exponent' ? 'spoilt-number' : severalFigures(figure) };
  }
  if (read.figure < 0) return { none: 'below-zero' };
  const about = readAround(before, after);
  if (about === null) return { none: 'not-a-price' };
  if (read.figure === 0) return { none: 'zero-price' };
  const bare = barePrice(read.figure, read.odd === true);
  return before === '' && after === '' ? bare : { ...bare, ...about };
}

type Around = Omit<Extract<PriceRead, { price: number }>, 'price' | 'odd'>;

/** Currency, unit and words around a figure; null when they say that it is no price (a percentage). */
function readAround(before: string, after: string): Around | null {
  if (before === '' && after === '')
    return { currency: null, sharedSign: null, per: '', perCount: 1, words: '' };
  if (/%/.test(before) || /^\s*%/.test(after)) return null;
  const slash = /^(.*?)\s*(?:\/|\bper\b|\bpro\b|\bpar\b|\bza\b|\bза\b|\bpr\.?\s|\bje\b)\s*(.*)$/isu.exec(
    after,
  );
  const per = slash === null ? '' : slash[2]!.trim();
  const words: string[] = [];
  let currency: string | null = null;
  let sharedSign: string | null = null;
  for (const word of [before, slash === null ? after : slash[1]!].join(' ').split(/[\s()[\]*]+/)) {
    const text = word.replace(/^[,;:]+|[,;:]+$/g, '');
    if (text === '') continue;
    const money = moneyOf(text) ?? moneyOf(text.replace(/\.$/, ''));
    if (money === undefined) words.push(text);
    else if (money.code === null) sharedSign = money.sign;
    else currency = money.code;
  }
  const unit = words.length === 1 && per === '' && isUnitWord(words[0]!) ? words.pop()! : per;
  return { currency, sharedSign, per: unit.replace(/[.,;]+$/, ''), perCount: 1, words: words.join(' ') };
}

function isUnitWord(word: string): boolean {
  return /^(?:ea|each|pcs?|pc|stk|stck|st|pair|set|kit|m|mtr|kg|l|szt|шт|paire|paar|par|pack|pk|box|ft|in)\.?$/i.test(
    word,
  );
}

/** A field with several figures: a range, two prices, or no price at all. */
function severalFigures(text: string): NoPrice {
  const figures = text.match(new RegExp(FIGURE, 'gu')) ?? [];
  if (figures.length < 2) {
    // '24,80/46,00' has two; '12.5.2026' is one run of digits, and a date.
    return 'not-a-price';
  }
  if (moneyIn(text).length > 1) return 'two-prices';
  if (
    /\d\s*(?:\p{Sc}|[A-Za-z]{1,3}\.?)?\s*(?:[-–—…~]|\.\.+|\b(?:to|bis|a|à|al|tot|do|до|till|til)\b)\s*(?:\p{Sc}|[A-Z]{1,3}\.?)?\s*\d/iu.test(
      text,
    )
  ) {
    return /^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}$/.test(text) ? 'not-a-price' : 'price-range';
  }
  if (
    /\d\s*(?:\p{Sc}|\p{L}{1,4}\.?)?\s*(?:\/|\||;|&|\+|,\s|\bor\b|\boder\b|\bou\b|\bo\b|\bof\b|\blub\b|\bили\b|\()/iu.test(
      text,
    )
  )
    return 'two-prices';
  return 'not-a-price';
}
