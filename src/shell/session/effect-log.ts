import { differenceWords, keptFigure } from '../../../cells/tally/tally-reading.ts';
import { tryUnit } from '../../formula/unit-text.ts';
import { describeEdit } from '../../notebook/describe-edit.ts';
import type { NotebookDocument, TallyCell, TallyFigure } from '../../notebook/document.ts';
import { isOfFigures } from '../../notebook/edit.ts';
import type { LiveNotebook, NotebookChange } from '../../notebook/live-notebook.ts';
import { shownAs } from '../../notebook/shown-units.ts';

/** What an edit did to one figure of the tally. */
export interface Effect {
  readonly figure: TallyFigure;
  readonly difference: number;
  /** `−46 EUR`, `no change`, `no figure`. */
  readonly words: string;
}

/** One line of the road log. */
export interface LogEntry {
  readonly number: number;
  readonly at: Date;
  readonly way: 'edit' | 'undo' | 'redo';
  readonly what: string;
  readonly change: string;
  /** Effects on the tally so far; grows until all is settled. */
  readonly effects: readonly Effect[];
}

/** Words of an effect where there is no difference to give: the edit took the figure away, or gave it back. */
export const NO_FIGURE = 'no figure';
export const FIGURE_AGAIN = 'a figure again';

/** Lines kept; older ones leave the log (undo itself goes back without end). */
const MOST_LINES = 200;

/** The first tally of a notebook: it fills the strip. */
export function firstTally(document: NotebookDocument): TallyCell | undefined {
  return document.cells.find((cell) => cell.kind === 'tally');
}

/**
 * The figure that stands for the whole decision: the first of the tally that has no limit and is no chance.
 */
export function mainFigure(tally: TallyCell | undefined): TallyFigure | undefined {
  return tally?.figures.find((one) => one.limit === undefined && !one.percent) ?? tally?.figures[0];
}

/**
 * Writes down each edit of a notebook and what it did to the figures of the tally: the difference between
 * the figures before the edit and the figures now.
 */
export class EffectLog {
  readonly #notebook: LiveNotebook;
  readonly #listeners = new Set<() => void>();
  readonly #stop: () => void;
  #document: NotebookDocument;
  #entries: readonly LogEntry[] = [];
  #told: readonly LogEntry[] = [];
  #before: ReadonlyMap<string, number>;
  #last: ReadonlyMap<string, number>;
  #way: LogEntry['way'] = 'edit';
  #count = 0;

  constructor(notebook: LiveNotebook) {
    this.#notebook = notebook;
    this.#document = notebook.document;
    this.#last = this.#figures();
    this.#before = this.#last;
    this.#stop = notebook.subscribe((change) => this.#hear(change));
  }

  /** Newest first, as they were when listeners were last told. */
  get entries(): readonly LogEntry[] {
    return this.#told;
  }

  /** Say that the edit about to come is an undo or a redo. */
  mark(way: LogEntry['way']): void {
    this.#way = way;
  }

  subscribe(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  dispose(): void {
    this.#stop();
    this.#listeners.clear();
  }

  #hear(change: NotebookChange): void {
    if (change.edit) this.#begin(change);
    if (change.nodes.size > 0 || change.edit) this.#measure();
    this.#document = this.#notebook.document;
    // The figures seen come before the log; and one that the edit did not reach yet would be told as unchanged.
    const isFollowed = this.#notebook.working !== null && change.edit !== null && isOfFigures(change.edit);
    if (change.isPartial || isFollowed) return;
    this.#told = this.#entries;
    for (const listener of this.#listeners) listener();
  }

  #begin(change: NotebookChange): void {
    if (!change.edit) return;
    this.#before = this.#last;
    const { what, change: how } = describeEdit(this.#document, change.edit);
    this.#count += 1;
    const entry: LogEntry = {
      number: this.#count,
      at: new Date(),
      way: this.#way,
      what,
      change: how,
      effects: [],
    };
    this.#entries = [entry, ...this.#entries].slice(0, MOST_LINES);
    this.#way = 'edit';
  }

  #measure(): void {
    this.#last = this.#figures();
    const [newest, ...older] = this.#entries;
    if (newest) this.#entries = [{ ...newest, effects: this.#effects() }, ...older];
  }

  /** Figures of the tally that are known now; one that is being worked out keeps its old figure. */
  #figures(): ReadonlyMap<string, number> {
    const figures = new Map<string, number>();
    for (const figure of firstTally(this.#notebook.document)?.figures ?? []) {
      // As they are kept: showing another unit is no change of a figure.
      const { value, working } = keptFigure(this.#notebook, figure.figure);
      const held = working ? this.#last?.get(figure.figure) : value;
      if (held !== null && held !== undefined) figures.set(figure.figure, held);
    }
    return figures;
  }

  #effects(): readonly Effect[] {
    const effects: Effect[] = [];
    for (const figure of firstTally(this.#notebook.document)?.figures ?? []) {
      const [was, is] = [this.#before.get(figure.figure), this.#last.get(figure.figure)];
      const type = this.#notebook.typeOf(figure.figure);
      if (was === undefined && is === undefined) continue;
      if (was === undefined || is === undefined) {
        effects.push({ figure, difference: Number.NaN, words: is === undefined ? NO_FIGURE : FIGURE_AGAIN });
      } else if (type) {
        const as = shownAs(this.#notebook.document, type.unit?.text ?? '');
        const difference = as === null ? is - was : as.toShown(is - was);
        const unit = as === null ? type.unit : tryUnit(as.unit);
        effects.push({ figure, difference, words: differenceWords(difference, figure, { ...type, unit }) });
      }
    }
    return effects;
  }
}
