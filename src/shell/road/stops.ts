import type { Cell, NotebookDocument } from '../../notebook/document.ts';

/** One card on the road: a cell, or the values that share a form. */
export interface Stop {
  /** Id of the first cell. */
  readonly id: string;
  readonly cells: readonly Cell[];
  /** What other cards call it: `feeds Calls`. */
  readonly title: string;
}

/**
 * The cards of a notebook in road order. Values that follow one another under the same form share one.
 *
 * @example stopsOf(document).map((stop) => stop.title) // ['About this notebook', 'Limits', 'Legs', ...]
 */
export function stopsOf(document: NotebookDocument): readonly Stop[] {
  const stops: Stop[] = [];
  let form: string | undefined;
  for (const cell of document.cells) {
    const own = cell.kind === 'value' ? cell.form : undefined;
    const last = stops.at(-1);
    if (own !== undefined && own === form && last) {
      stops[stops.length - 1] = { ...last, cells: [...last.cells, cell] };
    } else {
      stops.push({ id: cell.id, cells: [cell], title: own ?? cell.title });
    }
    form = own;
  }
  return stops;
}

/** The stop a cell stands on. */
export function stopOf(stops: readonly Stop[], cellId: string | null): Stop | undefined {
  return cellId === null ? undefined : stops.find((stop) => stop.cells.some((cell) => cell.id === cellId));
}

export interface StopLinks {
  /** Ids of the stops that feed this one, in road order. */
  readonly fedBy: readonly string[];
  readonly feeds: readonly string[];
}

/**
 * Which cards feed a card and which it feeds, told from the links of its cells. A card does not feed itself.
 */
export function linksOf(
  stops: readonly Stop[],
  stop: Stop,
  linksOfCell: (cellId: string) => { readonly fedBy: readonly string[]; readonly feeds: readonly string[] },
): StopLinks {
  const gather = (way: 'fedBy' | 'feeds'): readonly string[] => {
    const cells = new Set(stop.cells.flatMap((cell) => linksOfCell(cell.id)[way]));
    return stops
      .filter((one) => one !== stop && one.cells.some((cell) => cells.has(cell.id)))
      .map((one) => one.id);
  };
  return { fedBy: gather('fedBy'), feeds: gather('feeds') };
}
