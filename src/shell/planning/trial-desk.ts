import type { NotebookDocument } from '../../notebook/document.ts';
import type { FigureTrial, TrialPoint } from '../../notebook/trial/trial.ts';
import type { PointsMessage, TrialMessage } from './trial-messages.ts';

/** What is needed of a web worker, so that tests can bring their own. */
export interface TrialWorkerLike {
  postMessage(message: TrialMessage): void;
  terminate(): void;
  onmessage: ((event: { readonly data: PointsMessage }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
}

interface Asked {
  readonly resolve: (points: readonly TrialPoint[]) => void;
  readonly reject: (reason: unknown) => void;
}

/** Has figures tried by a notebook in a worker, which is started on the first trial and then kept. */
export class TrialDesk {
  readonly #start: () => TrialWorkerLike;
  readonly #asked = new Map<number, Asked>();
  #worker: TrialWorkerLike | null = null;
  #sent: NotebookDocument | null = null;
  #lastId = 0;

  /** @param start makes a worker that runs trial-worker.ts */
  constructor(start: () => TrialWorkerLike) {
    this.#start = start;
  }

  /** Rejects with the signal's reason when given up, or with an Error when the worker failed. */
  tryFigure(
    document: NotebookDocument,
    trial: FigureTrial,
    signal: AbortSignal,
  ): Promise<readonly TrialPoint[]> {
    if (signal.aborted) return Promise.reject(signal.reason);
    return new Promise((resolve, reject) => {
      const worker = this.#running();
      this.#lastId += 1;
      const id = this.#lastId;
      this.#asked.set(id, { resolve, reject });
      // A trial takes milliseconds, so its work is let run; its answer then finds nobody waiting.
      signal.addEventListener('abort', () => this.#settle(id)?.reject(signal.reason), { once: true });
      worker.postMessage({ id, document: document === this.#sent ? null : document, trial });
      this.#sent = document;
    });
  }

  #running(): TrialWorkerLike {
    if (this.#worker !== null) return this.#worker;
    const worker = this.#start();
    worker.onmessage = ({ data }) => {
      const asked = this.#settle(data.id);
      if ('points' in data) asked?.resolve(data.points);
      else asked?.reject(new Error(data.error));
    };
    worker.onerror = (event) =>
      this.#end(new Error(event.message ?? 'The worker that tries figures failed.'));
    this.#worker = worker;
    return worker;
  }

  #settle(id: number): Asked | undefined {
    const asked = this.#asked.get(id);
    this.#asked.delete(id);
    return asked;
  }

  /** A worker that failed answers nothing more: the next trial gets a new one. */
  #end(reason: Error): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#sent = null;
    for (const id of [...this.#asked.keys()]) this.#settle(id)?.reject(reason);
  }

  dispose(): void {
    this.#end(new Error('The notebook was closed.'));
  }
}
