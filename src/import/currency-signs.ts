import { CURRENCY_CODES } from '../formula/currencies.ts';

/**
 * Signs and words for money, and the one currency each stands for (ISO 4217); '' when several currencies use
 * it, so that the reader is asked. Longer ones first: A$ before $.
 */
const SIGNS: readonly (readonly [string, string])[] = [
  ['AU$', 'AUD'],
  ['A$', 'AUD'],
  ['CA$', 'CAD'],
  ['C$', 'CAD'],
  ['NZ$', 'NZD'],
  ['US$', 'USD'],
  ['HK$', 'HKD'],
  ['S$', 'SGD'],
  ['R$', 'BRL'],
  ['€', 'EUR'],
  ['£', 'GBP'],
  ['₽', 'RUB'],
  ['₴', 'UAH'],
  ['₹', 'INR'],
  ['₺', 'TRY'],
  ['₪', 'ILS'],
  ['₩', 'KRW'],
  ['₫', 'VND'],
  ['฿', 'THB'],
  ['₱', 'PHP'],
  ['₸', 'KZT'],
  ['円', 'JPY'],
  ['元', 'CNY'],
  ['$', ''],
  ['¥', ''],
  ['euros', 'EUR'],
  ['euro', 'EUR'],
  ['рублей', 'RUB'],
  ['руб.', 'RUB'],
  ['руб', 'RUB'],
  ['р.', 'RUB'],
  ['грн.', 'UAH'],
  ['грн', 'UAH'],
  ['zł', 'PLN'],
  ['zl', 'PLN'],
  ['Kč', 'CZK'],
  ['Ft', 'HUF'],
  ['lei', 'RON'],
  ['SFr.', 'CHF'],
  ['Fr.', 'CHF'],
  ['лв.', 'BGN'],
  ['лв', 'BGN'],
  ['kr.', ''],
  ['kr', ''],
  ['Rs.', ''],
  ['Rs', ''],
];

const byFold = new Map(SIGNS.map(([sign, code]) => [sign.toLowerCase(), code]));

const escaped = (text: string): string => text.replace(/[$.]/g, '\\$&');
const isWord = (sign: string): boolean => /^\p{L}/u.test(sign) && /[\p{L}.]$/u.test(sign);
const longestFirst = [...SIGNS].map(([sign]) => sign).sort((a, b) => b.length - a.length);

/** A sign or word for money, or three capitals that may be a code, standing alone. */
const MONEY = new RegExp(
  [
    ...longestFirst.filter((sign) => !isWord(sign)).map(escaped),
    ...longestFirst.filter(isWord).map((sign) => `(?<!\\p{L})${escaped(sign)}(?!\\p{L})`),
    '(?<!\\p{L})[A-Za-z]{3}(?!\\p{L})',
  ].join('|'),
  'giu',
);

/** Money named in a text. `code` is null for a sign that several currencies share. */
export interface NamedMoney {
  readonly sign: string;
  readonly code: string | null;
}

/**
 * The currency that a whole word or sign means; undefined when it means none.
 *
 * @example moneyOf('eur') // { sign: 'eur', code: 'EUR' }
 * @example moneyOf('$') // { sign: '$', code: null }
 */
export function moneyOf(word: string): NamedMoney | undefined {
  const code = byFold.get(word.toLowerCase());
  if (code !== undefined) return { sign: word, code: code === '' ? null : code };
  const upper = word.toUpperCase();
  return /^[A-Z]{3}$/.test(upper) && CURRENCY_CODES.has(upper) ? { sign: word, code: upper } : undefined;
}

/**
 * Every currency named in a text, each once. Three small letters count only where they stand by themselves
 * and spell a code; 'all' and 'try' are words in a head, so a code in a longer text must be in capitals.
 *
 * @example moneyIn('Preis (EUR)') // [{ sign: 'EUR', code: 'EUR' }]
 */
export function moneyIn(text: string): readonly NamedMoney[] {
  if (!mayNameMoney(text)) return NO_MONEY;
  const found = new Map<string, NamedMoney>();
  MONEY.lastIndex = 0;
  // Not matchAll, which makes a new expression each time.
  for (let match = MONEY.exec(text); match !== null; match = MONEY.exec(text)) {
    const word = match[0];
    if (/^[a-z]{3}$/i.test(word) && word !== word.toUpperCase() && !byFold.has(word.toLowerCase())) {
      if (text.trim() !== word) continue;
    }
    const money = moneyOf(word);
    if (money !== undefined) found.set(money.code ?? money.sign, money);
  }
  return [...found.values()];
}

const NO_MONEY: readonly NamedMoney[] = Object.freeze([]);
const PLAIN_WORDS = new Set([...byFold.keys()].map((sign) => sign.replace(/\.$/, '')));

/** A quick look: plain letters name money only by a whole word that is a sign, or of three letters. */
function mayNameMoney(text: string): boolean {
  if (/[^\x20-\x7e]|\$/.test(text)) return true;
  const words = text.match(/[A-Za-z]+/g);
  return words?.some((word) => word.length === 3 || PLAIN_WORDS.has(word.toLowerCase())) ?? false;
}

/** What a sign that several currencies share may stand for, the likeliest first. */
export function candidatesOf(sign: string): readonly string[] {
  switch (sign.toLowerCase()) {
    case '$':
      return ['USD', 'AUD', 'CAD', 'NZD', 'SGD', 'HKD', 'MXN'];
    case '¥':
      return ['JPY', 'CNY'];
    case 'kr':
    case 'kr.':
      return ['SEK', 'NOK', 'DKK', 'ISK'];
    case 'rs':
    case 'rs.':
      return ['INR', 'PKR', 'LKR', 'NPR'];
    default:
      return [];
  }
}
