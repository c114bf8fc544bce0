import type { NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import type { FigureTrial, TrialPoint } from '../../notebook/trial/trial.ts';
import type { ImportEffect } from '../import/import-effect.ts';

/** To the worker: one trial. The document is sent only when it is another than the last one sent. */
export interface TrialMessage {
  readonly id: number;
  readonly document: NotebookDocument | null;
  readonly trial: FigureTrial;
}

/** From the worker: the points, or why there are none. */
export type PointsMessage =
  | { readonly id: number; readonly points: readonly TrialPoint[] }
  | { readonly id: number; readonly error: string };

/** To the worker: an import that is tried before it is accepted. */
export interface EffectQuestion {
  readonly id: number;
  readonly document: NotebookDocument;
  readonly edit: Edit;
  /** In which the page writes numbers. */
  readonly locale: string;
}

/** From the worker: what the import would do, or why it cannot be told. */
export type EffectAnswer = { readonly id: number } & (
  | { readonly effect: ImportEffect }
  | { readonly error: string }
);
