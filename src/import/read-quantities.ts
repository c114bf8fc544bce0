import type { DecimalMark } from '../tables/number-policy.ts';
import { foldText } from './fold-words.ts';
import { readMarkedNumber } from './marked-number.ts';

/** A figure read from a field, perhaps with a remark; null when the field cannot be read. */
export interface QuantityRead {
  readonly figure: number;
  readonly remark?: string;
}

const FIGURE = /\d(?:[\d.,'’\u00a0\u202f ]*\d)?/;

/** Words that are a number of pieces by themselves. */
const PACK_WORDS: Readonly<Record<string, number>> = {
  pair: 2,
  paar: 2,
  paire: 2,
  par: 2,
  para: 2,
  coppia: 2,
  пара: 2,
  dozen: 12,
  dutzend: 12,
  each: 1,
  ea: 1,
  single: 1,
  piece: 1,
  pc: 1,
  stk: 1,
  stuck: 1,
  szt: 1,
  шт: 1,
};

/**
 * Pieces in a pack: '10', '10 pcs', 'VE 10', 'pack of 10', '10er', 'pair'. Null when it cannot be read.
 *
 * @example readPack('VE 10', ',') // { figure: 10 }
 */
export function readPack(text: string, decimal: DecimalMark | null): QuantityRead | null {
  const folded = foldText(text);
  const word = PACK_WORDS[folded];
  if (word !== undefined && Object.hasOwn(PACK_WORDS, folded)) return { figure: word };
  const figures = text.match(new RegExp(FIGURE, 'g')) ?? [];
  if (figures.length !== 1) return null;
  const read = readMarkedNumber(figures[0]!, decimal);
  if (!('figure' in read) || read.figure <= 0) return null;
  return Number.isInteger(read.figure)
    ? { figure: read.figure }
    : { figure: read.figure, remark: `The pack quantity ${text.trim()} is not a whole number.` };
}

/** Days in the unit that a field or a head names. Working days are days here; the remark says so. */
const DAY_WORDS: readonly (readonly [RegExp, number])[] = [
  [/\b(?:months?|monate?n?|mois|mes(?:es)?|mesi|maanden?|miesiac\w*|мес\w*|manader?|manad|mies)\b/, 30.4375],
  [
    /\b(?:weeks?|wks?|wochen?|woche|wo|semaines?|sem|semanas?|settiman\w|weken|week|tydzien|tygodni\w*|tyg|недел\w*|нед|veckor|vecka|uger|viikko\w*|tydny?|tyden)\b/,
    7,
  ],
  [/\b(?:hours?|hrs?|h|std|stunden|heures|horas|ore|uur|godzin\w*|час\w*)\b/, 1 / 24],
  [
    /\b(?:days?|d|tagen?|tage|jours?|j|dias?|giorni|gg|dagen|dag|dni|dzien|дн\w*|день|дней|dagar|dage|paivaa?|pv|at|wd|bd|working|business|werktage?)\b/,
    1,
  ],
];

/**
 * Lead time in days: '5', '5 days', '2-3 weeks' (the longer, with a remark), '48 h'. Null when it cannot be read.
 *
 * @param headWords words of the column's head, which may name the unit: 'lieferzeit wochen'
 * @example readLeadDays('2-3 Wochen', '', ',') // { figure: 21, remark: "..." }
 */
export function readLeadDays(
  text: string,
  headWords: string,
  decimal: DecimalMark | null,
): QuantityRead | null {
  const bare = text.trim();
  const figures = bare.replace(/(\d)\s*[-–]\s*(\d)/g, '$1 - $2').match(/\d+(?:[.,]\d+)?/g) ?? [];
  if (figures.length === 0 || figures.length > 2 || /\d[./-]\d+[./-]\d/.test(bare)) return null;
  const reads = figures.map((figure) => readMarkedNumber(figure, decimal));
  const days: number[] = [];
  const factor = dayFactor(foldText(bare)) ?? dayFactor(headWords) ?? (/[a-z]/i.test(bare) ? null : 1);
  if (factor === null) return null;
  for (const read of reads) {
    if (!('figure' in read)) return null;
    days.push(read.figure * factor);
  }
  const longest = Math.max(...days);
  if (figures.length === 1) return { figure: longest };
  return { figure: longest, remark: `The lead time ${bare} is a range; the longer time is taken.` };
}

function dayFactor(folded: string): number | null {
  const ascii = folded.replace(/\d+/g, ' ');
  for (const [pattern, days] of DAY_WORDS) {
    if (pattern.test(ascii) || (/[\u0400-\u04ff]/.test(ascii) && cyrillicUnit(ascii, days))) return days;
  }
  return null;
}

/** \b knows no Cyrillic letters. */
function cyrillicUnit(folded: string, days: number): boolean {
  if (days === 7) return folded.includes('нед');
  if (days === 1 / 24) return folded.includes('час');
  if (days === 1) return /дн|день|дне/.test(folded);
  return folded.includes('мес');
}

/**
 * A share of 1 from '15 %', '15' under a head with %, '0.15': what a discount or a tax is. Null when it cannot
 * be read, or is no share from 0 to 1.
 *
 * @param headHasPercent the column's head has the sign %: its figures are percent however small
 * @example readShare('15 %', '.') // { figure: 0.15 }
 */
export function readShare(
  text: string,
  decimal: DecimalMark | null,
  headHasPercent = false,
): QuantityRead | null {
  const parts = /^\s*[-−+]?\s*([\d.,]+)\s*(%?)\s*$/.exec(text);
  if (parts === null) return null;
  const read = readMarkedNumber(parts[1]!, decimal);
  if (!('figure' in read)) return null;
  // 0.15 without a sign is a share; 15 is percent.
  const isPercent = parts[2] === '%' || headHasPercent || read.figure >= 1;
  const share = isPercent ? Number((read.figure / 100).toPrecision(15)) : read.figure;
  return share >= 0 && share <= 1 ? { figure: share } : null;
}

/** Pieces in stock, where the field is a plain figure; null where it is words such as 'yes' or '> 10'. */
export function readStock(text: string, decimal: DecimalMark | null): number | null {
  const parts = /^\s*(-?[\d.,'’\u00a0\u202f ]*\d)\s*(?:pcs?|stk|st|szt|шт|ea|x)?\.?\s*$/i.exec(text);
  if (parts === null) return null;
  const read = readMarkedNumber(parts[1]!, decimal);
  return 'figure' in read ? read.figure : null;
}
