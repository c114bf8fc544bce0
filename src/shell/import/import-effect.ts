import { NO_CHANGE } from '../../../cells/tally/tally-reading.ts';
import type { CallsCell, NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { type Effect, EffectLog, firstTally, mainFigure } from '../session/effect-log.ts';

/** A call that an import changes. */
export interface ChangedCall {
  readonly part: string;
  /** '' where there was, or will be, none. */
  readonly before: string;
  readonly after: string;
}

/** What an import would do to a figure of the tally. */
export interface FigureEffect {
  /** Label of the figure: `Expected total`. */
  readonly label: string;
  /** `+3 EUR`, `no change`. */
  readonly words: string;
}

/** What an import would do to the notebook. */
export interface ImportEffect {
  /** The figure that stands for the whole; null when the notebook has none, or it cannot be told. */
  readonly main: FigureEffect | null;
  /** The other figures of the tally that change. */
  readonly others: readonly FigureEffect[];
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
  const log = new EffectLog(trial);
  try {
    await trial.settled();
    const cell = document.cells.find((one): one is CallsCell => one.kind === 'calls');
    const callsBefore = callsOf(trial, cell);
    trial.apply(edit);
    await trial.settled();
    const callsAfter = callsOf(trial, cell);
    const main = mainFigure(firstTally(document));
    const effects = (log.entries[0]?.effects ?? []).filter(({ difference }) => !Number.isNaN(difference));
    const told = ({ figure, words }: Effect): FigureEffect => ({ label: figure.label, words });
    const whole = effects.find(({ figure }) => figure === main);
    const parts = new Set([...callsBefore.keys(), ...callsAfter.keys()]);
    return {
      main: whole ? told(whole) : null,
      others: effects.filter((one) => one !== whole && one.words !== NO_CHANGE).map(told),
      calls: [...parts]
        .map((part) => ({ part, before: callsBefore.get(part) ?? '', after: callsAfter.get(part) ?? '' }))
        .filter(({ before, after }) => before !== after),
      hasCalls: cell !== undefined,
    };
  } finally {
    log.dispose();
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
