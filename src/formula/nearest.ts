/** Edit distance of two words (Levenshtein 1966), letters of either case alike. */
export function distance(a: string, b: string): number {
  const left = a.toLowerCase();
  const right = b.toLowerCase();
  let above = Array.from({ length: right.length + 1 }, (_, j) => j);
  for (let i = 1; i <= left.length; i++) {
    const row = [i];
    for (let j = 1; j <= right.length; j++) {
      const swap = (above[j - 1] as number) + (left[i - 1] === right[j - 1] ? 0 : 1);
      row.push(Math.min(swap, (above[j] as number) + 1, (row[j - 1] as number) + 1));
    }
    above = row;
  }
  return above[right.length] as number;
}

/** Up to three of `words` that `word` may have been meant to be, nearest first. */
export function nearest(word: string, words: Iterable<string>): string[] {
  const bound = Math.max(1, Math.floor(word.length / 3));
  const short = word.slice(0, 60);
  return [...new Set(words)]
    .filter((other) => Math.abs(other.length - short.length) <= bound)
    .map((other) => [distance(short, other), other] as const)
    .filter(([steps]) => steps <= bound)
    .sort((a, b) => a[0] - b[0] || a[1].localeCompare(b[1]))
    .slice(0, 3)
    .map(([, other]) => other);
}
