import type { NotebookDocument } from '../../notebook/document.ts';
import type { FigureTrial, TrialPoint } from '../../notebook/trial/trial.ts';

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
