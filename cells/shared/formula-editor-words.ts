import { FUNCTIONS } from '../../src/formula/functions/registry.ts';
import { isFaulty, type Known, type Scope } from '../../src/formula/scope.ts';
import { showUnit } from '../../src/formula/show.ts';
import { signatureOf } from './formula-editor-help.ts';

/** What is offered for the word at the cursor. */
export interface Offer {
  /** The word as it is shown. */
  readonly label: string;
  /** What is written in its place, where it differs from the label. */
  readonly apply?: string;
  /** What it is, in a few words: `number in km`, `function`. */
  readonly detail: string;
  /** One sentence about it. */
  readonly about?: string;
  readonly sort: 'column' | 'name' | 'table' | 'function' | 'unit' | 'word' | 'choice';
}

export interface Offers {
  /** Where the word begins that an offer replaces. */
  readonly from: number;
  readonly offers: readonly Offer[];
}

/** Units offered by name; every other unit of the language can be typed as well. */
const UNITS: readonly (readonly [string, string])[] = [
  ['km', 'length'],
  ['mi', 'length, 1.609344 km'],
  ['m', 'length'],
  ['cm', 'length'],
  ['mm', 'length'],
  ['inch', 'length, 25.4 mm'],
  ['kg', 'mass'],
  ['g', 'mass'],
  ['lb', 'mass'],
  ['L', 'volume'],
  ['mL', 'volume'],
  ['galUS', 'volume'],
  ['galUK', 'volume'],
  ['h', 'time'],
  ['minute', 'time'],
  ['day', 'time'],
  ['week', 'time'],
  ['month', 'time'],
  ['bar', 'pressure'],
  ['psi', 'pressure'],
  ['degC', 'temperature'],
  ['degF', 'temperature'],
];

const WORDS: readonly (readonly [string, string])[] = [
  ['and', 'both are so'],
  ['or', 'one of them is so'],
  ['not', 'it is not so'],
  ['to', 'in another unit: distance to mi'],
  ['mod', 'what is left after dividing'],
  ['missing', 'no figure'],
  ['pi', '3.14159…'],
];

function typeWords(known: Known): string {
  if (isFaulty(known)) return `waits for ${known.root}`;
  if (known.kind !== 'number') return known.kind === 'yes_no' ? 'yes or no' : known.kind;
  const unit = known.unit?.text ?? '';
  return unit === '' ? 'plain number' : `in ${showUnit(unit)}`;
}

function memberOffers(scope: Scope, table: string): Offer[] {
  return [...scope.columnNames(table)].flatMap((name): Offer[] => {
    const meaning = scope.member(table, name);
    return meaning === null ? [] : [{ label: name, detail: typeWords(meaning.known), sort: 'column' }];
  });
}

function plainOffers(scope: Scope): Offer[] {
  const offers: Offer[] = [];
  for (const name of scope.plainNames()) {
    const [meaning] = name.includes('.') ? [] : scope.plain(name);
    if (meaning === undefined) continue;
    const sort = meaning.table === null ? 'name' : 'column';
    offers.push({ label: name, detail: typeWords(meaning.known), sort });
  }
  for (const table of scope.tableNames()) {
    if (table !== scope.here)
      offers.push({ label: table, apply: `${table}.`, detail: 'table', sort: 'table' });
  }
  for (const held of FUNCTIONS.values()) {
    offers.push({
      label: held.name,
      apply: `${held.name}(`,
      detail: `(${signatureOf(held)})`,
      about: held.about,
      sort: 'function',
    });
  }
  return [
    ...offers,
    // Alone a unit is no figure: it is written with its number.
    ...unitOffers(scope).map((offer) => ({ ...offer, apply: `1 ${offer.label}` })),
    ...wordOffers(),
  ];
}

const wordOffers = (): Offer[] => WORDS.map(([label, detail]): Offer => ({ label, detail, sort: 'word' }));

function unitOffers(scope: Scope): Offer[] {
  const units: readonly (readonly [string, string])[] = [...UNITS, [scope.money, 'money']];
  return units.map(([label, detail]) => ({ label, detail: `${detail}, unit`, sort: 'unit' }));
}

/** The texts that a figure can be, when a text that it is compared with is being written. */
function choiceOffers(scope: Scope, before: string): Offers | null {
  const found = /([A-Za-z]\w*)(?:\.([A-Za-z]\w*))?\s*[=!]=\s*"([^"]*)$/.exec(before);
  if (found === null) return null;
  const [, first = '', second, written = ''] = found;
  const meaning = second === undefined ? scope.plain(first)[0] : scope.member(first, second);
  const known = meaning?.known;
  if (known === undefined || isFaulty(known) || known.options === undefined) return null;
  const offers = known.options.map(
    (option): Offer => ({ label: option, apply: `${option}"`, detail: 'choice', sort: 'choice' }),
  );
  return { from: before.length - written.length, offers };
}

/** Whether a word is one of the offers already, and the beginning of no other: Escape then leaves at once. */
function isWhole(word: string, offers: readonly Offer[]): boolean {
  const begun = offers.filter(({ label }) => label.startsWith(word));
  return begun.length > 0 && begun.every(({ label }) => label === word);
}

/** Whether the place is inside a text in double quotes. */
const isInText = (before: string): boolean => (before.match(/"/g)?.length ?? 0) % 2 === 1;

/**
 * What can be written at a place of a formula: names of this table's columns and of single figures, tables,
 * columns after `table.`, functions, units, words of the language, and choices inside a text.
 *
 * @param asked the user asked for offers; else they come only once a word has begun
 * @returns null when nothing is offered there
 * @example offersAt('2 * route.dis', 13, scope, false) // { from: 10, offers: [{ label: 'distance', ... }, ...] }
 */
export function offersAt(formula: string, place: number, scope: Scope, asked: boolean): Offers | null {
  const before = formula.slice(0, place);
  if (isInText(before)) return choiceOffers(scope, before);
  const member = /([A-Za-z]\w*)\.(\w*)$/.exec(before);
  if (member !== null) {
    const [, table = '', written = ''] = member;
    return scope.isTable(table) ? { from: place - written.length, offers: memberOffers(scope, table) } : null;
  }
  const word = /[A-Za-z]\w*$/.exec(before)?.[0] ?? '';
  if (word === '' && !asked) return null;
  if (!asked && isWhole(word, plainOffers(scope))) return null;
  return {
    from: place - word.length,
    offers: offersAfter(before.slice(0, before.length - word.length), scope),
  };
}

/** After a figure such as `3 ` or `to ` only a unit can follow, or a word; after `500 km/` a unit or a name. */
function offersAfter(before: string, scope: Scope): Offer[] {
  if (/(?:\d|\bto)\s*$/.test(before)) return [...unitOffers(scope), ...wordOffers()];
  if (!/\d\s*[A-Za-z]+\s*\/\s*$/.test(before)) return plainOffers(scope);
  return [...unitOffers(scope), ...plainOffers(scope).filter(({ sort }) => sort !== 'unit')];
}
