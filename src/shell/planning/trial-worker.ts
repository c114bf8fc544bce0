import { writeNumbersAs } from '../../formula/show.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { TrialPoint } from '../../notebook/trial/trial.ts';
import { TrialNotebook } from '../../notebook/trial/trial-notebook.ts';
import { importEffect } from '../import/import-effect.ts';
import type { EffectAnswer, EffectQuestion, PointsMessage, TrialMessage } from './trial-messages.ts';

/** What this file needs of the worker it runs in. */
interface WorkerScope {
  onmessage: ((event: { readonly data: TrialMessage | EffectQuestion }) => void) | null;
  postMessage(message: PointsMessage | EffectAnswer): void;
}

const scope = globalThis as unknown as WorkerScope;

/** The notebook of the last trial, kept for the next: opening one costs more than a trial. */
let open: {
  readonly document: NotebookDocument;
  readonly plan: string;
  readonly notebook: TrialNotebook | null;
} | null = null;
let last: Promise<void> = Promise.resolve();

async function tryIn({ document, trial }: TrialMessage): Promise<readonly TrialPoint[]> {
  const wanted = document ?? open?.document;
  if (wanted === undefined) throw new Error('A figure cannot be tried before the notebook is there.');
  if (open === null || open.document !== wanted || open.plan !== trial.plan) {
    open?.notebook?.dispose();
    open = { document: wanted, plan: trial.plan, notebook: TrialNotebook.open(wanted, trial.plan) };
  }
  return (await open.notebook?.tryFigure(trial)) ?? [];
}

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function answerTrial(message: TrialMessage): void {
  const { id } = message;
  // One after another: they all edit the same notebook.
  last = last
    .then(() => tryIn(message))
    .then(
      (points) => scope.postMessage({ id, points }),
      (error: unknown) => scope.postMessage({ id, error: wordsOf(error) }),
    );
}

function answerEffect({ id, document, edit, locale }: EffectQuestion): void {
  writeNumbersAs(locale);
  importEffect(document, edit).then(
    (effect) => scope.postMessage({ id, effect }),
    (error: unknown) => scope.postMessage({ id, error: wordsOf(error) }),
  );
}

// Figures and imports are tried by the same code, so that the page keeps one file of it. Each desk starts its own.
scope.onmessage = ({ data }) => ('edit' in data ? answerEffect(data) : answerTrial(data));
