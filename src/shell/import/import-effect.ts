import { differenceWords, readTally } from '../../../cells/tally/tally-reading.ts';
import type { CallsCell, NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { firstTally, mainFigure } from '../session/effect-log.ts';

/** A call that an import changes. */
export interface ChangedCall {
  readonly part: string;
  /** '' where there was, or will be, none. */
  readonly before: string;
  readonly after: string;
}

/** What an import would do to the notebook. */
export interface ImportEffect {
  /** Label of the figure that stands for the whole: `Expected total`; '' when the notebook has none. */
  readonly label: string;
  /** `+3 EUR`, `no change`; '' when it cannot be told. */
  readonly total: string;
  readonly calls: readonly ChangedCall[];
  /** Whether the notebook has calls at all. */
  readonly hasCalls: boolean;
}

/**
 * Tries an edit on a second notebook, which has no planner: each part is called for itself, before and after.
 *
 * @throws EditError when the edit does not fit
 */
export async function importEffect(document: NotebookDocument, edit: Edit): Promise<ImportEffect> {
  const trial = LiveNotebook.open(document);
  try {
    await trial.settled();
    const figure = mainFigure(firstTally(document));
    const cell = document.cells.find((one): one is CallsCell => one.kind === 'calls');
    const totalOf = (): number | null => (figure ? readTally(trial, figure).value : null);
    const [totalBefore, callsBefore] = [totalOf(), callsOf(trial, cell)];
    trial.apply(edit);
    await trial.settled();
    const [totalAfter, callsAfter] = [totalOf(), callsOf(trial, cell)];
    const type = figure ? trial.typeOf(figure.figure) : null;
    const isKnown = figure && type && totalBefore !== null && totalAfter !== null;
    const parts = new Set([...callsBefore.keys(), ...callsAfter.keys()]);
    return {
      label: figure?.label ?? '',
      total: isKnown ? differenceWords(totalAfter - totalBefore, figure, type) : '',
      calls: [...parts]
        .map((part) => ({ part, before: callsBefore.get(part) ?? '', after: callsAfter.get(part) ?? '' }))
        .filter(({ before, after }) => before !== after),
      hasCalls: cell !== undefined,
    };
  } finally {
    trial.dispose();
  }
}

function callsOf(notebook: LiveNotebook, cell: CallsCell | undefined): ReadonlyMap<string, string> {
  if (cell === undefined) return new Map();
  const texts = (column: string): readonly (string | null)[] => {
    const read = notebook.read(`${cell.name}.${column}`);
    return read.state === 'settled' && read.column.kind === 'text' ? read.column.values : [];
  };
  const calls = texts('call');
  return new Map(texts('part').map((part, row) => [part ?? '', calls[row] ?? '']));
}
