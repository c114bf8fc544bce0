import { partKey } from './part-key.ts';
import type { PriceRow } from './price-row.ts';
import type { RowName } from './price-rows.ts';
import { rowKey } from './quantity-scale.ts';
import { Search } from './search.ts';

/** A part of the notebook that is looked for in a price list. */
export interface WantedPart {
  readonly name: string;
  /** Part numbers of it that are known. */
  readonly partNumbers?: readonly string[];
  /** More words for it than its name has: size, maker's term, another language. */
  readonly words?: string;
}

/** A choice that the rider has confirmed, kept as plain data between files. */
export interface ConfirmedFit {
  readonly supplier: string;
  readonly part: string;
  /** Key of the offer: its part number, else its words; null: this supplier has nothing for the part. */
  readonly offer: string | null;
}

/** Rows of a price list: an array of them, or a list that reads a row when it is asked for. */
export interface RowList {
  readonly length: number;
  at(row: number): PriceRow | undefined;
  /** What names a row, where that is quicker to have than the whole of it. */
  name?(row: number): RowName;
}

export interface PossibleFit {
  /** Place in the list of rows. */
  readonly row: number;
  /** 1: the part number is the same, or the rider confirmed it. Words alone give less. */
  readonly score: number;
  readonly by: 'confirmed' | 'part-number' | 'words';
  /** A sentence on why. */
  readonly reason: string;
}

export interface PartFits {
  readonly part: string;
  /** Best first. */
  readonly fits: readonly PossibleFit[];
  /** The rider said that this supplier has nothing for the part. */
  readonly hasNone: boolean;
}

export interface FitOptions {
  readonly supplier?: string;
  readonly confirmed?: readonly ConfirmedFit[];
  /** Most rows proposed for a part; 5 if absent. */
  readonly limit?: number;
  /** The words' index, if it is made already. */
  readonly search?: Search;
}

/** Words alone are never sure: their score stays below this. */
const WORDS_AT_MOST = 0.9;
/** Below this share of the words nothing is proposed. */
const WORDS_AT_LEAST = 0.35;

/**
 * Finds the rows of a price list for each part: those that the rider confirmed before, then those with its part
 * number, then those with its words, ranked. Nothing is taken: it is for the rider to confirm.
 *
 * @example fitParts(rows, [{ name: 'Rear tyre', partNumbers: ['NG 1104'] }])[0]!.fits[0]
 * // { row: 0, score: 1, by: 'part-number', reason: 'Its part number NG-1104 is the same.' }
 */
export function fitParts(
  rows: RowList,
  parts: readonly WantedPart[],
  options: FitOptions = {},
): readonly PartFits[] {
  const { supplier = '', confirmed = [], limit = 5 } = options;
  const search = options.search ?? Search.of(namesOf(rows));
  const numbers = new Set(parts.flatMap(({ partNumbers = [] }) => partNumbers.map(partKey)));
  const byNumber = indexBy(rows, numbers, ({ partNumber }) =>
    partNumber === null ? '' : partKey(partNumber),
  );
  const offers = new Set(confirmed.flatMap(({ offer }) => (offer === null ? [] : [offer])));
  const byKey = indexBy(rows, offers, rowKey);
  return parts.map((part) => {
    const fixed = confirmed.filter((held) => held.part === part.name && held.supplier === supplier);
    const fits: PossibleFit[] = [];
    const seen = new Set<number>();
    const add = (row: number, fit: Omit<PossibleFit, 'row'>): void => {
      if (seen.has(row) || fits.length >= limit) return;
      seen.add(row);
      fits.push({ row, ...fit });
    };
    for (const held of fixed) {
      if (held.offer === null) continue;
      for (const row of byKey.get(held.offer) ?? []) {
        add(row, { score: 1, by: 'confirmed', reason: 'It was confirmed for this part before.' });
      }
    }
    for (const number of part.partNumbers ?? []) {
      for (const row of byNumber.get(partKey(number)) ?? []) {
        const shown = nameOf(rows, row).partNumber!;
        add(row, { score: 1, by: 'part-number', reason: `Its part number ${shown} is the same.` });
      }
    }
    for (const fit of byWords(search, rows, part, limit)) add(fit.row, fit);
    return { part: part.name, fits, hasNone: fixed.some((held) => held.offer === null) };
  });
}

/**
 * What is to be remembered of a choice, once the rider has confirmed it.
 *
 * @param row the offer; null: this supplier has nothing for the part
 */
export function confirmFit(supplier: string, part: string, row: PriceRow | null): ConfirmedFit {
  return { supplier, part, offer: row === null ? null : rowKey(row) };
}

function byWords(search: Search, rows: RowList, part: WantedPart, limit: number): readonly PossibleFit[] {
  const words = `${part.name} ${part.words ?? ''}`;
  return search
    .find(words, limit * 2)
    .filter(({ score }) => score >= WORDS_AT_LEAST)
    .map(({ row, score }) => {
      const shown = wordsOf(nameOf(rows, row)).slice(0, 60);
      return {
        row,
        score: score * WORDS_AT_MOST,
        by: 'words' as const,
        reason: `'${shown}' has ${Math.round(score * 100)}% of the words, rare ones counting more.`,
      };
    });
}

const nameOf = (rows: RowList, row: number): RowName => rows.name?.(row) ?? rows.at(row)!;
const wordsOf = ({ description, partNumber }: RowName): string => description ?? partNumber ?? '';

function namesOf(rows: RowList): RowName[] {
  return Array.from({ length: rows.length }, (_, row) => rows.at(row)!);
}

/** The rows of some keys. */
function indexBy(
  rows: RowList,
  wanted: ReadonlySet<string>,
  keyOf: (row: RowName) => string,
): Map<string, number[]> {
  const index = new Map<string, number[]>();
  for (let at = 0; wanted.size > 0 && at < rows.length; at += 1) {
    const key = keyOf(nameOf(rows, at));
    if (key === '' || !wanted.has(key)) continue;
    const held = index.get(key);
    if (held === undefined) index.set(key, [at]);
    else held.push(at);
  }
  return index;
}
