/** Things that moved that are named; more are counted. */
const MOST_NAMED = 3;

/**
 * What stands elsewhere in another order of the same things, in words: the fewest that have to be moved to come
 * from the one to the other. '' where nothing moved.
 *
 * @param names in the first order  @param places where each of them stands in the other order
 * @example movedInWords(['chain', 'pads', 'tyre'], [2, 0, 1]) // 'chain now after tyre'
 */
export function movedInWords(names: readonly string[], places: readonly number[]): string {
  const stay = longestRising(places);
  const byPlace = places.map((_, at) => at).sort((a, b) => places[a]! - places[b]!);
  const moved = byPlace.filter((at) => !stay.has(at));
  const words = moved.slice(0, MOST_NAMED).map((at) => {
    const before = byPlace[byPlace.indexOf(at) - 1];
    return before === undefined ? `${names[at]} now first` : `${names[at]} now after ${names[before]}`;
  });
  const more = moved.length - words.length;
  return more > 0 ? `${words.join(', ')}, and ${more} more` : words.join(', ');
}

/** Places in the list of a longest row of ever larger ones among its numbers (patience sorting, Fredman 1975). */
function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  const ends: number[] = [];
  const behind = new Array<number>(numbers.length).fill(-1);
  numbers.forEach((number, at) => {
    let [low, high] = [0, ends.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (numbers[ends[middle]!]! < number) low = middle + 1;
      else high = middle;
    }
    behind[at] = low === 0 ? -1 : ends[low - 1]!;
    ends[low] = at;
  });
  const rising = new Set<number>();
  for (let at = ends.at(-1) ?? -1; at !== -1; at = behind[at]!) rising.add(at);
  return rising;
}
