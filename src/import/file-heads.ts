import { tryUnit } from '../formula/unit-text.ts';
import { freeName } from '../tables/plain-name.ts';
import { moneyIn } from './currency-signs.ts';
import { foldWords } from './fold-words.ts';

/** What the head of a column in a file says. */
export interface FileHead {
  /** As the file has it, two lines joined, on one line; '' when it has none. */
  readonly title: string;
  /** For people, unlike the other columns' labels: 'Price', 'Price (2)', 'Column 4'. */
  readonly label: string;
  /** Plain word, unlike the other columns' names, whatever the head says: 'price_2', 'proto'. */
  readonly name: string;
  /** Its words without unit and currency, through foldWords. */
  readonly words: string;
  /** Unit that formulas know, as in 'Distance [km]'; '' when the head gives none. */
  readonly unit: string;
  /** Currency that the head names, as in 'Preis (EUR)'; null when it names none, or several share the sign. */
  readonly currency: string | null;
}

/**
 * The heads of all columns, header lines joined, empty and doubled ones kept apart.
 *
 * @param headRows the header's records, none, one or two
 * @param width columns of the table
 * @example fileHeads([['Price', 'Price']], 2).map((head) => head.label) // ['Price', 'Price (2)']
 */
export function fileHeads(headRows: readonly (readonly string[])[], width: number): FileHead[] {
  const names = new Set<string>();
  const labels = new Set<string>();
  const heads: FileHead[] = [];
  for (let column = 0; column < width; column += 1) {
    const parts = headRows
      .map((row) => (row[column] ?? '').replace(/\s+/g, ' ').trim())
      .filter((part) => part !== '');
    const title = [...new Set(parts)].join(' ');
    const { rest, unit } = splitUnit(title);
    const money = moneyIn(title).filter(({ code }) => code !== null);
    const bare = money.reduce((text, { sign }) => text.replace(sign, ' '), rest);
    const name = freeName(title === '' ? `column_${column + 1}` : rest, names);
    names.add(name);
    const label = freeLabel(title === '' ? `Column ${column + 1}` : title, labels);
    labels.add(label);
    const words = foldWords(bare) || foldWords(rest);
    heads.push({ title, label, name, words, unit, currency: money.length === 1 ? money[0]!.code : null });
  }
  return heads;
}

function freeLabel(title: string, taken: ReadonlySet<string>): string {
  const base = title.slice(0, 80);
  if (!taken.has(base)) return base;
  let count = 2;
  while (taken.has(`${base} (${count})`)) count += 1;
  return `${base} (${count})`;
}

/** Units that stand in heads in words. */
const UNIT_WORDS: Readonly<Record<string, string>> = {
  kilometer: 'km',
  kilometre: 'km',
  kilometers: 'km',
  kilometres: 'km',
  kms: 'km',
  miles: 'mi',
  mile: 'mi',
  meter: 'm',
  metre: 'm',
  metres: 'm',
  meters: 'm',
  days: 'day',
  tage: 'day',
  jours: 'day',
  hours: 'h',
  hrs: 'h',
  stunden: 'h',
  weeks: 'week',
  wochen: 'week',
};

/** Splits 'Distance (km)', 'Distance [km]', 'Distance in km', 'distance_km' and 'km' into words and unit. */
function splitUnit(title: string): { rest: string; unit: string } {
  const inBrackets = /^(.*?)\s*[([]\s*([^()[\]]+(?:\([^()]*\)[^()[\]]*)?)\s*[)\]]\s*$/.exec(title);
  if (inBrackets !== null) {
    const unit = knownUnit(inBrackets[2]!);
    if (unit !== '') return { rest: inBrackets[1]! || title, unit };
  }
  const behind = /^(.+?)(?:\s+in\s+|[_,/]\s*)([A-Za-z%°]{1,10})$/.exec(title);
  if (behind !== null) {
    const unit = knownUnit(behind[2]!);
    if (unit !== '') return { rest: behind[1]!, unit };
  }
  const whole = title.length <= 10 ? knownUnit(title) : '';
  return { rest: title, unit: isMeasure(whole) ? whole : '' };
}

function knownUnit(text: string): string {
  const bare = text.trim();
  const word = UNIT_WORDS[bare.toLowerCase()];
  if (word !== undefined) return word;
  if (!/^[A-Za-z%/\d\s,.()^*°]+$/.test(bare) || /^\d+$/.test(bare)) return '';
  // 'KM' is km; 'T' and 'M' are left as they are, for a letter may stand for anything.
  for (const text of [bare, bare.length > 1 ? bare.toLowerCase() : bare]) {
    if (tryUnit(text) !== null) return text;
  }
  return '';
}

/** A whole head that is a unit of measure ('km'), not a word that happens to be one ('day', 'stone', 'b'). */
function isMeasure(unit: string): boolean {
  return /^(?:km|mi|mm|cm|kg|lb|bar|psi|degC|degF)$/.test(unit);
}
