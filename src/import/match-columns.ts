import { type ColumnProfile, profileColumn } from './column-profile.ts';
import { candidatesOf } from './currency-signs.ts';
import type { Reading } from './reading.ts';
import { ROLES, type Role } from './roles.ts';
import { type ColumnScore, PROPOSED_FROM, scoreColumn, setWords } from './score-column.ts';

/** What a column of the file is taken for. */
export interface ColumnMatch {
  readonly column: number;
  /** 'ignore' where nothing speaks for a role. */
  readonly role: Role;
  readonly score: number;
  readonly reason: string;
  readonly by: 'proposal' | 'hand' | 'memory';
}

/** Something that the file does not tell, asked once. */
export type MatchQuestion =
  | { readonly kind: 'currency'; readonly sentence: string; readonly candidates: readonly string[] }
  | { readonly kind: 'price-column'; readonly sentence: string; readonly columns: readonly number[] }
  | { readonly kind: 'no-price-column'; readonly sentence: string }
  | { readonly kind: 'no-name-column'; readonly sentence: string };

/** Which column is what. Plain data: it is what `readRows` goes by, and it can be changed and kept. */
export interface Match {
  readonly headerKey: string;
  /** One a column of the file, in order. */
  readonly columns: readonly ColumnMatch[];
  /** Currency where a row itself names none, ISO 4217; null: not known, asked. */
  readonly currency: string | null;
  readonly currencyReason: string;
  readonly questions: readonly MatchQuestion[];
}

/** What the reader has set, or an earlier file with the same header has left. */
export interface MatchChoices {
  /** Role by column. */
  readonly roles?: Readonly<Record<number, Role>>;
  readonly currency?: string;
}

/** Choices for one header, kept as plain data between files. */
export interface RememberedMatch {
  readonly headerKey: string;
  readonly roles: readonly Role[];
  readonly currency: string | null;
}

/**
 * Proposes what each column of a price list is, from the words of its head (in many languages) and from what
 * it holds. What is remembered for this header, and what is set by hand, goes before.
 *
 * @example matchColumns(readFile(bytes)).columns[0]
 * // { column: 0, role: 'part_number', score: 1.5, reason: "Its head says 'art nr'.", by: 'proposal' }
 */
export function matchColumns(
  reading: Reading,
  choices: MatchChoices = {},
  remembered: readonly RememberedMatch[] = [],
): Match {
  const profiles = reading.heads.map((_, column) => profileColumn(reading, column));
  const memory = remembered.find(
    (held) => held.headerKey === reading.headerKey && held.roles.length === reading.heads.length,
  );
  const columns = fixedColumns(reading, choices, memory);
  const rivals = proposeRest(reading, profiles, columns);
  const money = findMoney(reading, profiles, columns, choices.currency ?? memory?.currency ?? null, choices);
  return {
    headerKey: reading.headerKey,
    columns: columns.map((held, column) => held ?? unmatched(column)),
    currency: money.currency,
    currencyReason: money.reason,
    questions: [...columnQuestions(reading, columns, rivals), ...money.questions],
  };
}

/** What is to be remembered of a match, once the rider has accepted it. */
export function rememberMatch(match: Match): RememberedMatch {
  return {
    headerKey: match.headerKey,
    roles: match.columns.map((column) => column.role),
    currency: match.currency,
  };
}

/** Columns that have a role, in order; the description may stand in several. */
export function columnsOf(match: Match, role: Role): readonly number[] {
  return match.columns.filter((column) => column.role === role).map((column) => column.column);
}

function unmatched(column: number): ColumnMatch {
  return { column, role: 'ignore', score: 0, reason: 'Nothing in it speaks for a role.', by: 'proposal' };
}

function fixedColumns(
  reading: Reading,
  choices: MatchChoices,
  memory: RememberedMatch | undefined,
): (ColumnMatch | null)[] {
  return reading.heads.map((_, column) => {
    const byHand = choices.roles?.[column];
    const role = byHand ?? memory?.roles[column];
    if (role === undefined || !ROLES.includes(role)) return null;
    const by = byHand === undefined ? 'memory' : 'hand';
    return { column, role, score: 1, reason: setWords(role, by), by };
  });
}

/** Gives the open columns the roles that speak for them most; returns the prices that came close. */
function proposeRest(
  reading: Reading,
  profiles: readonly ColumnProfile[],
  columns: (ColumnMatch | null)[],
): readonly (ColumnScore & { readonly column: number })[] {
  const pairs: (ColumnScore & { column: number })[] = [];
  columns.forEach((held, column) => {
    if (held !== null) return;
    for (const role of ROLES) {
      if (role === 'ignore') continue;
      const scored = scoreColumn(reading.heads[column]!, profiles[column]!, role);
      // Earlier columns go first where all else is equal.
      if (scored.score >= PROPOSED_FROM)
        pairs.push({ ...scored, score: scored.score - column * 0.002, column });
    }
  });
  pairs.sort((a, b) => b.score - a.score);
  const taken = new Set(columns.flatMap((held) => (held === null ? [] : [held.role])));
  let describing = columns.filter((held) => held?.role === 'description').length;
  for (const { column, role, score, reason } of pairs) {
    if (columns[column] !== null) continue;
    // A name and a description, both headed so, are one description together.
    const isSecond = role === 'description' && score >= 1 && describing === 1;
    if (taken.has(role) && !isSecond) continue;
    if (role === 'description') describing += 1;
    columns[column] = { column, role, score, reason, by: 'proposal' };
    taken.add(role);
  }
  return pairs.filter((pair) => pair.role === 'price');
}

function columnQuestions(
  reading: Reading,
  columns: readonly (ColumnMatch | null)[],
  prices: readonly (ColumnScore & { readonly column: number })[],
): MatchQuestion[] {
  const questions: MatchQuestion[] = [];
  const price = columns.find((held) => held?.role === 'price');
  if (price === undefined || price === null) {
    questions.push({
      kind: 'no-price-column',
      sentence: 'No column of the file looks like prices. Which one is it?',
    });
  } else if (price.by === 'proposal') {
    const rivals = prices.filter(
      ({ column, score }) =>
        column === price.column || (score > price.score - 0.45 && columns[column]?.role === undefined),
    );
    const isByFiguresAlone =
      reading.heads[price.column]!.words !== '' && !price.reason.startsWith('Its head') && price.score < 0.55;
    if (rivals.length > 1 || isByFiguresAlone) {
      const labels = rivals.map(({ column }) => `'${reading.heads[column]!.label}'`).join(', ');
      questions.push({
        kind: 'price-column',
        sentence:
          rivals.length > 1
            ? `Several columns could be the price: ${labels}. '${reading.heads[price.column]!.label}' is taken; is that right?`
            : `The column ${labels} is taken for the price by its figures alone; is that right?`,
        columns: rivals.map(({ column }) => column),
      });
    }
  }
  const isNamed = columns.some((held) => held?.role === 'part_number' || held?.role === 'description');
  if (!isNamed) {
    questions.push({
      kind: 'no-name-column',
      sentence: 'No column of the file looks like part numbers or descriptions. Which one names the parts?',
    });
  }
  return questions;
}

interface FoundMoney {
  readonly currency: string | null;
  readonly reason: string;
  readonly questions: readonly MatchQuestion[];
}

/** The currency of rows that name none: chosen, or named in the head, or the one that the other rows name. */
function findMoney(
  reading: Reading,
  profiles: readonly ColumnProfile[],
  columns: readonly (ColumnMatch | null)[],
  chosen: string | null,
  choices: MatchChoices,
): FoundMoney {
  if (chosen !== null) {
    const by = choices.currency === undefined ? 'as for the last file with this header' : 'set by hand';
    return { currency: chosen, reason: by, questions: [] };
  }
  const price = columns.findIndex((held) => held?.role === 'price');
  if (price === -1) return { currency: null, reason: 'no column of prices is known', questions: [] };
  const head = reading.heads[price]!;
  if (head.currency !== null) {
    return { currency: head.currency, reason: `the head says '${head.title}'`, questions: [] };
  }
  if (columns.some((held) => held?.role === 'currency')) {
    return { currency: null, reason: 'a column gives the currency row by row', questions: [] };
  }
  const named = profiles[price]!.money;
  const counted = named.reduce((sum, { count }) => sum + count, 0);
  const { shares, filled } = profiles[price]!;
  const isThroughout = counted >= filled * (shares.money + shares.figure + shares.measure) * 0.95;
  if (isThroughout && named.length > 0 && named.every(({ code }) => code !== null)) {
    return { currency: null, reason: 'each price names its currency', questions: [] };
  }
  const shared = named.find(({ code }) => code === null);
  const elsewhere = reading.heads.find((other) => other.currency !== null)?.currency ?? null;
  return {
    currency: null,
    reason: 'the file does not tell',
    questions: [askMoney(shared?.sign, named, elsewhere)],
  };
}

function askMoney(
  shared: string | undefined,
  named: ColumnProfile['money'],
  elsewhere: string | null,
): MatchQuestion {
  const codes = named.flatMap(({ code }) => (code === null ? [] : [code]));
  const candidates = [...new Set([...codes, ...(elsewhere === null ? [] : [elsewhere])])];
  if (shared !== undefined) {
    return {
      kind: 'currency',
      sentence: `The prices have the sign ${shared}, which several currencies share. Which currency is it?`,
      candidates: [...candidates, ...candidatesOf(shared)],
    };
  }
  const sentence =
    codes.length > 0
      ? `Some prices name ${codes.join(' or ')}, others no currency. In which currency are those?`
      : 'The file names no currency. In which currency are its prices?';
  return { kind: 'currency', sentence, candidates };
}
