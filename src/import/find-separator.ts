import type { Separator } from '../tables/csv-layout.ts';
import type { Quote } from './cut-piece.ts';
import { sampleRecords } from './split-records.ts';

export interface FoundSeparator {
  readonly separator: Separator;
  readonly quote: Quote;
  readonly reason: string;
}

/** Signs of the text that are looked at. */
const SAMPLE = 60_000;

/** Signs that may part fields; where two serve equally well, the one that stands less often in words leads. */
const LEAD: readonly (readonly [Separator, number])[] = [
  ['\t', 1.12],
  [';', 1.08],
  ['|', 1.08],
  [',', 1],
];

const WORDS: Readonly<Record<Separator, string>> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'upright strokes',
};

/** The separator in words, for sentences: 'semicolons'. */
export function separatorWords(separator: Separator): string {
  return WORDS[separator];
}

/**
 * The sign that parts the fields: the one that gives most rows the same number of columns. Commas between
 * digits may be decimal commas, so a comma must do better than another sign that serves.
 *
 * @param quote left out: found as well
 * @example findSeparator('part;price\nChain;48,50\n').separator // ';'
 */
export function findSeparator(text: string, quote?: Quote): FoundSeparator {
  // A first line that names the sign: some programs write one.
  const named = /^sep=([,;\t|])\r?\n/i.exec(text);
  const mark = quote ?? findQuote(text);
  if (named !== null) {
    return { separator: named[1] as Separator, quote: mark, reason: 'the first line of the file names it' };
  }
  const between = commasBetweenDigits(text.slice(0, SAMPLE));
  let best: { separator: Separator; score: number; width: number; share: number } | null = null;
  for (const [separator, lead] of LEAD) {
    const records = sampleRecords(text, separator, mark, SAMPLE);
    const { width, share } = consistency(records);
    // One or two lines are always consistent: there, more columns say more.
    const weight = records.length < 3 ? 0.3 : 0.06;
    // Commas between digits may be decimal ones: another sign that serves as well goes before.
    const doubt: number = separator === ',' && between > 0.6 && best !== null && best.share > 0.9 ? 0.7 : 1;
    const score: number =
      width < 2 ? 0 : doubt * share * lead * (1 + weight * Math.log2(Math.min(width, 16)));
    if (score > 0 && (best === null || score > best.score)) best = { separator, score, width, share };
  }
  if (best === null) {
    return { separator: ',', quote: mark, reason: 'no sign parts the lines: the file has one column' };
  }
  const percent = Math.round(best.share * 100);
  return {
    separator: best.separator,
    quote: mark,
    reason: `${WORDS[best.separator]} give ${best.width} columns in ${percent}% of the rows`,
  };
}

/** Share of the commas that stand between two digits. */
function commasBetweenDigits(text: string): number {
  const all = text.split(',').length - 1;
  return all === 0 ? 0 : (text.match(/\d,(?=\d)/g)?.length ?? 0) / all;
}

/** The width that most records have, and the share of them that have it. Lone fields are titles and notes. */
function consistency(records: readonly (readonly string[])[]): { width: number; share: number } {
  const counts = new Map<number, number>();
  for (const record of records) counts.set(record.length, (counts.get(record.length) ?? 0) + 1);
  let width = 1;
  let most = 0;
  for (const [held, count] of counts) {
    if (held > 1 && count > most) [width, most] = [held, count];
  }
  return { width, share: records.length === 0 ? 0 : most / records.length };
}

/** Double quotes, unless fields are held by single ones alone. */
function findQuote(text: string): Quote {
  const sample = text.slice(0, SAMPLE);
  if (sample.includes('"')) return '"';
  const single = sample.match(/(?:^|[,;\t|\n\r])'[^'\r\n]*'(?=[,;\t|\r\n]|$)/g)?.length ?? 0;
  const openings = sample.match(/(?:^|[,;\t|\n\r])'/g)?.length ?? 0;
  return single >= 4 && single >= openings * 0.9 ? "'" : '"';
}
