import { numberLocale } from '../../formula/show.ts';
import { ImportClient } from '../../import/import-client.ts';
import type { ImportPort } from '../../import/import-protocol.ts';
import importWorkerAddress from '../../import/import-worker.ts?worker&url';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { Edit } from '../../notebook/edit.ts';
import { ownScript } from '../own-script.ts';
import type { EffectAnswer, EffectQuestion } from '../planning/trial-messages.ts';
import trialWorkerAddress from '../planning/trial-worker.ts?worker&url';
import type { GpxTable } from './gpx-table.ts';
import type { GpxQuestion } from './gpx-worker.ts';
import gpxWorkerAddress from './gpx-worker.ts?worker&url';
import type { ImportEffect } from './import-effect.ts';

const startWorker = (address: string): Worker =>
  new Worker(ownScript(new URL(address, import.meta.url)), { type: 'module' });

/** The reader of one file, in a worker of its own. */
export class FileReaderDesk {
  readonly #worker = startWorker(importWorkerAddress);
  readonly client = new ImportClient(this.#worker as unknown as ImportPort);

  dispose(): void {
    this.client.dispose();
    this.#worker.terminate();
  }
}

/** Reads a GPX file in a worker that ends with it. Rejects with the signal's reason when given up. */
export function readGpxAside(
  text: string,
  way: number,
  signal: AbortSignal,
): Promise<GpxTable | { readonly refusal: string }> {
  const worker = startWorker(gpxWorkerAddress);
  return new Promise<GpxTable | { readonly refusal: string }>((done, failed) => {
    worker.onmessage = ({ data }) => done(data);
    worker.onerror = (event) => failed(new Error(event.message));
    signal.addEventListener('abort', () => failed(signal.reason), { once: true });
    worker.postMessage({ text, way, locale: numberLocale() } satisfies GpxQuestion);
  }).finally(() => worker.terminate());
}

/** Tries imports on a notebook in a worker. Only the last question is answered. */
export class EffectDesk {
  #worker: Worker | null = null;
  #last = 0;

  /** @returns null when another question came meanwhile. Rejects with an Error when the edit does not fit. */
  ask(document: NotebookDocument, edit: Edit): Promise<ImportEffect | null> {
    const worker = this.#worker ?? startWorker(trialWorkerAddress);
    this.#worker = worker;
    this.#last += 1;
    const id = this.#last;
    return new Promise((done, failed) => {
      const listen = ({ data }: { readonly data: EffectAnswer }): void => {
        if (data.id !== id) return;
        worker.removeEventListener('message', listen);
        if (id !== this.#last) done(null);
        else if ('effect' in data) done(data.effect);
        else failed(new Error(data.error));
      };
      worker.addEventListener('message', listen);
      worker.onerror = (event) => failed(new Error(event.message));
      worker.postMessage({ id, document, edit, locale: numberLocale() } satisfies EffectQuestion);
    });
  }

  dispose(): void {
    this.#worker?.terminate();
    this.#worker = null;
  }
}
