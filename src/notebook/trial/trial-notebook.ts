import type { NotebookDocument, PlanCell } from '../document.ts';
import { group } from '../edits.ts';
import { LiveNotebook } from '../live-notebook.ts';
import type { FigureTrial, TrialPoint } from './trial.ts';
import { scalingEdits, type TrialDocument, trialDocument } from './trial-document.ts';

/**
 * A second notebook at work beside the one that is shown, without a planner: what its formulas give when one
 * figure is another. Nobody sees its edits.
 *
 * Example: `const trial = TrialNotebook.open(document, 'plan');` then
 * `await trial.tryFigure({ plan: 'plan', part: 'Battery', figure: 'price', shares: [1, 1.5] })`
 */
export class TrialNotebook {
  readonly #live: LiveNotebook;
  readonly #plan: PlanCell;
  readonly #trial: TrialDocument;

  private constructor(plan: PlanCell, trial: TrialDocument) {
    this.#plan = plan;
    this.#trial = trial;
    this.#live = LiveNotebook.open(trial.document);
  }

  /** null when the notebook has no plan of this name. */
  static open(document: NotebookDocument, name: string): TrialNotebook | null {
    const plan = document.cells.find((cell) => cell.kind === 'plan' && cell.name === name);
    return plan?.kind === 'plan' ? new TrialNotebook(plan, trialDocument(document, plan)) : null;
  }

  /** One point for each share, in their order; none for a figure that cannot be multiplied. */
  async tryFigure({ part, figure, shares }: FigureTrial): Promise<readonly TrialPoint[]> {
    if (this.#trial.scaled[figure].length === 0) return [];
    await this.#live.settled();
    const isOwn = this.#ownRows(part);
    const points: TrialPoint[] = [];
    for (const share of shares) {
      while (this.#live.canUndo) this.#live.undo();
      this.#live.apply(group('On trial', scalingEdits(this.#trial, figure, share, isOwn)));
      await this.#live.settled();
      points.push({ share, calls: this.#callsOf(part) });
    }
    return points;
  }

  #callsOf(part: string): TrialPoint['calls'] {
    const calls = this.#live.planOf(this.#plan.name).solution?.instance.calls ?? [];
    return calls
      .filter((call) => call.part === part)
      .map(({ name, cost_without_cash, held_back }) => ({
        name,
        cost: cost_without_cash,
        barred: held_back !== null,
      }));
  }

  /** Rows of a table that are about the part: the part itself in the table of parts, what fits it in the offers. */
  #ownRows(part: string): (cellId: string, row: number) => boolean {
    const { cells } = this.#live.document;
    const named = (name: string) => cells.find((cell) => 'name' in cell && cell.name === name);
    const calls = named(this.#plan.calls);
    const pairing = calls?.kind === 'calls' ? named(calls.pairing) : undefined;
    const names = new Map<string, readonly (string | null)[]>();
    const note = (written: string): void => {
      const read = this.#live.read(written);
      const table = named(written.slice(0, written.indexOf('.')));
      if (table !== undefined && read.state === 'settled' && read.column.kind === 'text')
        names.set(table.id, read.column.values);
    };
    note(this.#plan.reads.offer_fits);
    if (calls?.kind === 'calls' && pairing?.kind === 'pairing') note(`${pairing.left}.${calls.part}`);
    return (cellId, row) => names.get(cellId)?.[row] === part;
  }

  dispose(): void {
    this.#live.dispose();
  }
}
