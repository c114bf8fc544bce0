import { foldText } from './fold-words.ts';
import { type SearchText, searchTextOf } from './search-text.ts';
import { WordScan } from './word-scan.ts';

/** What is searched: one text a row. */
export interface SearchRow {
  readonly partNumber: string | null;
  readonly description: string | null;
  readonly fits?: string | null;
}

export interface SearchHit {
  /** Place of the row in the list that was indexed. */
  readonly row: number;
  /** Share of the words' weight that the row has, 0 to 1; rare words weigh more. */
  readonly score: number;
}

/** A word that was asked for: the rows that have it or a word beginning with it, and how much it weighs. */
interface Asked {
  readonly weight: number;
  readonly matches: readonly { readonly rows: Uint32Array; readonly share: number }[];
  readonly count: number;
}

/** Rows that are weighed in one search: what only very common words bring beyond that is left. */
const MOST_WEIGHED = 20_000;
/** What each word of a row takes from its place among others with the same score. */
const WORD_WEIGHT = 1e-4;
/** Longer words that one beginning may stand for. */
const MOST_WORDS = 2000;

/**
 * Searches the words of a price list as one types: 50,000 rows take some milliseconds a word. Any word may be
 * unfinished; capitals and accents do not count.
 */
export class Search {
  private readonly words: WordScan;
  private readonly rows: number;
  private readonly scores: Float64Array;
  /** Word of the present search that last counted for a row, so that it counts once. */
  private readonly counted: Uint8Array;

  constructor(text: SearchText) {
    this.words = new WordScan(text);
    this.rows = text.rows;
    this.scores = new Float64Array(text.rows);
    this.counted = new Uint8Array(text.rows);
  }

  /** @example Search.of([{ partNumber: 'NG-1104', description: 'Rear tyre' }]).find('tyre', 5)[0]!.row // 0 */
  static of(rows: readonly SearchRow[]): Search {
    const fields = rows.flatMap(({ partNumber, description, fits }) => [
      partNumber ?? '',
      description ?? '',
      fits ?? '',
    ]);
    return new Search(searchTextOf(fields, 3, 0));
  }

  /**
   * The rows that have most of the words, best first; equal ones in the order of the list.
   *
   * @param words as typed; the last one may be unfinished
   * @param limit most hits
   */
  find(words: string, limit: number): readonly SearchHit[] {
    const folded = foldText(words).split(' ');
    const asked = [...new Set(folded.filter((word) => word !== ''))].slice(0, 12);
    if (asked.length === 0 || limit < 1) return [];
    const weighed = asked.map((word) => this.weigh(word)).sort((a, b) => a.count - b.count);
    const whole = weighed.reduce((sum, { weight }) => sum + weight, 0);
    const touched: number[] = [];
    for (const [order, word] of weighed.entries()) this.addUp(word, order + 1, touched);
    return this.best(touched, whole, limit);
  }

  private weigh(word: string): Asked {
    const matches: { rows: Uint32Array; share: number }[] = [];
    let count = 0;
    for (const { word: longer, rows } of this.words.beginningWith(word)) {
      const share = longer.length === word.length ? 1 : 0.6 + 0.3 * (word.length / longer.length);
      matches.push({ rows, share });
      count += rows.length;
      if (matches.length >= MOST_WORDS) break;
    }
    // The whole word first: a row counts at its best match.
    matches.sort((a, b) => b.share - a.share);
    return { weight: Math.log(1 + this.rows / (1 + count)) + 0.1, matches, count };
  }

  private addUp({ weight, matches }: Asked, order: number, touched: number[]): void {
    const { scores, counted } = this;
    const isFull = touched.length >= MOST_WEIGHED;
    for (const { rows, share } of matches) {
      if (isFull || rows.length > MOST_WEIGHED) {
        // A word that nearly every row has only ranks the rows that the rarer words have found.
        this.rankFound(rows, weight * share, order, touched);
        if (touched.length > 0) continue;
      }
      for (const row of rows) {
        if (counted[row] === order) continue;
        if (scores[row] === 0) {
          if (touched.length >= MOST_WEIGHED) continue;
          touched.push(row);
        }
        counted[row] = order;
        scores[row]! += weight * share;
      }
    }
  }

  /** Adds to the rows already found that are among `rows`, which are in rising order. */
  private rankFound(rows: Uint32Array, points: number, order: number, touched: readonly number[]): void {
    const { scores, counted } = this;
    for (const row of touched) {
      if (counted[row] === order || !has(rows, row)) continue;
      counted[row] = order;
      scores[row]! += points;
    }
  }

  private best(touched: readonly number[], whole: number, limit: number): readonly SearchHit[] {
    const { scores, counted } = this;
    const found = touched.map((row) => {
      const score = Math.min(1, scores[row]! / whole);
      scores[row] = 0;
      counted[row] = 0;
      return { row, score };
    });
    // Of rows with the same words, the one with fewer others is nearer.
    const kept = (found.length > limit * 4 ? atLeast(found, limit) : found).map(({ row, score }) => ({
      row,
      score,
      order: score - this.words.wordsIn(row) * WORD_WEIGHT,
    }));
    kept.sort((a, b) => b.order - a.order || a.row - b.row);
    return kept.slice(0, limit).map(({ row, score }) => ({ row, score }));
  }
}

/** Those of many hits that may be among the best `limit`: a sort of all would take longer than the search. */
function atLeast(hits: readonly SearchHit[], limit: number): SearchHit[] {
  const counts = new Uint32Array(1025);
  const bin = ({ score }: SearchHit): number => Math.min(1024, Math.floor(score * 1000));
  for (const hit of hits) counts[bin(hit)]! += 1;
  let least = 1024;
  let above = counts[1024]!;
  while (above < limit && least > 0) {
    least -= 1;
    above += counts[least]!;
  }
  // A row's other words, 50 at most, take less than six bins from its score.
  return hits.filter((hit) => bin(hit) >= least - 6);
}

function has(rows: Uint32Array, row: number): boolean {
  let low = 0;
  let high = rows.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rows[middle]! < row) low = middle + 1;
    else high = middle;
  }
  return rows[low] === row;
}
