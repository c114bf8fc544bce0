import type { NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { type ImportEffect, importEffect } from './import-effect.ts';

export interface EffectQuestion {
  readonly id: number;
  readonly document: NotebookDocument;
  readonly edit: Edit;
}

export type EffectAnswer = { readonly id: number } & (
  | { readonly effect: ImportEffect }
  | { readonly error: string }
);

/** What this file needs of the worker it runs in. */
interface WorkerScope {
  onmessage: ((event: { readonly data: EffectQuestion }) => void) | null;
  postMessage(message: EffectAnswer): void;
}

const scope = globalThis as unknown as WorkerScope;

scope.onmessage = ({ data: { id, document, edit } }) => {
  void importEffect(document, edit).then(
    (effect) => scope.postMessage({ id, effect }),
    (error: unknown) =>
      scope.postMessage({ id, error: error instanceof Error ? error.message : String(error) }),
  );
};
