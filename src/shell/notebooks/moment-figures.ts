import { readTally } from '../../../cells/tally/tally-reading.ts';
import type { NotebookDocument, TallyFigure } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';

/** A line of figures, one for each state of the notebook that stands side by side; '–' where one has none. */
export interface FigureLine {
  readonly label: string;
  readonly figures: readonly string[];
}

/** All figures that some tally of some of the states keeps in sight, by name, in order. */
function tallyFigures(documents: readonly NotebookDocument[]): readonly TallyFigure[] {
  const found = new Map<string, TallyFigure>();
  for (const document of documents) {
    for (const cell of document.cells) {
      if (cell.kind !== 'tally') continue;
      for (const figure of cell.figures) if (!found.has(figure.figure)) found.set(figure.figure, figure);
    }
  }
  return [...found.values()];
}

/**
 * The tallies of several states of a notebook side by side, the risk among them.
 *
 * @example totalsBeside([now, then])[0] // { label: 'Cash', figures: ['443 EUR', '388 EUR'] }
 */
export function totalsBeside(notebooks: readonly LiveNotebook[]): readonly FigureLine[] {
  return tallyFigures(notebooks.map((notebook) => notebook.document)).map((figure) => ({
    label: figure.label,
    figures: notebooks.map((notebook) => {
      const { shown, unit, state } = readTally(notebook, figure);
      if (state === 'working') return 'working';
      return unit === '' || shown === '–' ? shown : `${shown} ${unit}`;
    }),
  }));
}

/** Call of each part in each calls cell: `Front pads` to `carry 1`. */
function callsOf(notebook: LiveNotebook): ReadonlyMap<string, string> {
  const calls = new Map<string, string>();
  for (const cell of notebook.document.cells) {
    if (cell.kind !== 'calls') continue;
    const [parts, called] = [textsOf(notebook, `${cell.name}.part`), textsOf(notebook, `${cell.name}.call`)];
    parts.forEach((part, row) => {
      if (part !== null) calls.set(part, called[row] ?? '–');
    });
  }
  return calls;
}

function textsOf(notebook: LiveNotebook, node: string): readonly (string | null)[] {
  const read = notebook.read(node);
  const known = read.state === 'settled' ? read : read.state === 'working' ? read.last : null;
  return known?.column.kind === 'text' ? known.column.values : [];
}

/** The parts whose calls are not the same in all states, with their calls side by side. */
export function callsThatDiffer(notebooks: readonly LiveNotebook[]): readonly FigureLine[] {
  const calls = notebooks.map(callsOf);
  const parts = new Set(calls.flatMap((each) => [...each.keys()]));
  return [...parts]
    .map((part) => ({ label: part, figures: calls.map((each) => each.get(part) ?? '–') }))
    .filter(({ figures }) => new Set(figures).size > 1);
}
