import type { Programme, SolveProgramme } from '../programme.ts';

/** Plans lately found that are tried as a start. */
const MOST_KEPT = 8;

/** Rows are held to 1e-9 by the solver; a start that misses by rounding it mends by itself. */
const ROUNDING = 1e-7;

/**
 * The given solver, begun from the cheapest of the columns found lately that the new programme allows. Questions
 * about a plan, and edits, ask for programmes that differ in a few figures: with a good start most of the search
 * falls away. A start is a hint and no more: what is optimal stays what the solver says.
 *
 * Programmes are told apart by their number of columns alone: columns of another plan that happen to be as many
 * are tried against the rows like any other.
 */
export function withRememberedStarts(solve: SolveProgramme): SolveProgramme {
  const kept: (readonly number[])[] = [];
  return async (programme, options) => {
    const start = options.start ?? cheapest(programme, kept);
    const answer = await solve(programme, start === undefined ? options : { ...options, start });
    if (answer.columns !== null) {
      kept.unshift(answer.columns);
      kept.length = Math.min(kept.length, MOST_KEPT);
    }
    return answer;
  };
}

function cheapest(programme: Programme, kept: readonly (readonly number[])[]): readonly number[] | undefined {
  let least = Number.POSITIVE_INFINITY;
  let found: readonly number[] | undefined;
  for (const columns of kept) {
    if (!allows(programme, columns)) continue;
    const cost = programme.cost.reduce((sum, factor, column) => sum + factor * columns[column]!, 0);
    if (cost >= least) continue;
    least = cost;
    found = columns;
  }
  return found;
}

/** Whether columns keep all bounds and rows of a programme. */
export function allows({ cost, lower, upper, rows }: Programme, columns: readonly number[]): boolean {
  if (columns.length !== cost.length) return false;
  const inside = (figure: number, least: number, most: number): boolean => {
    const slack = ROUNDING * Math.max(1, Math.abs(figure));
    return figure >= least - slack && figure <= most + slack;
  };
  return (
    columns.every((figure, column) => inside(figure, lower[column]!, upper[column]!)) &&
    rows.every((row) =>
      inside(
        row.terms.reduce((sum, [column, factor]) => sum + factor * columns[column]!, 0),
        row.lower,
        row.upper,
      ),
    )
  );
}
