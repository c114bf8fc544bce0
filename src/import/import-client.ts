import { numberLocale } from '../formula/show.ts';
import type {
  CallName,
  Given,
  ImportPort,
  ImportReply,
  ImportRequest,
  Opened,
  Result,
} from './import-protocol.ts';
import type { Progress } from './in-steps.ts';
import type { ReadChoices } from './reading.ts';

export interface AskOptions {
  /** Aborting it cancels the work; the promise is rejected with the signal's reason. */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
}

interface Waiting {
  readonly done: (result: unknown) => void;
  readonly failed: (error: unknown) => void;
  readonly onProgress: ((progress: Progress) => void) | undefined;
  readonly signal: AbortSignal | undefined;
}

/**
 * The page's end of an import that runs in a worker. The caller makes the worker and ends it.
 *
 * @example
 * const client = new ImportClient(worker);
 * const opened = await client.open(bytes, {}, { signal, onProgress });
 * const match = await client.call('proposeMatch', [{}, remembered]);
 * const counts = await client.call('readRows', [match]);
 * const hits = await client.call('find', ['chain 520', 20]);
 */
export class ImportClient {
  private readonly port: ImportPort;
  private readonly waiting = new Map<number, Waiting>();
  private last = 0;
  private readonly listen = ({ data }: { readonly data: unknown }): void => this.receive(data as ImportReply);

  constructor(port: ImportPort) {
    this.port = port;
    port.addEventListener('message', this.listen);
  }

  /**
   * Reads a file. The bytes are handed over, not copied: the caller's array is empty afterwards.
   *
   * @returns what was found, or why the file cannot be read
   */
  open(bytes: Uint8Array, choices: ReadChoices = {}, options: AskOptions = {}): Promise<Opened> {
    // Only a whole buffer can be handed over; a part of one would take its neighbours along.
    const isWhole = bytes.byteLength === bytes.buffer.byteLength && bytes.buffer instanceof ArrayBuffer;
    const own = isWhole ? bytes : Uint8Array.from(bytes);
    const request = { kind: 'open', bytes: own, choices, locale: numberLocale() } as const;
    return this.ask(request, options, [own.buffer as ArrayBuffer]) as Promise<Opened>;
  }

  /** Calls the session of the open file; the names and answers are those of ImportSession. */
  call<Name extends CallName>(
    name: Name,
    given: Given<Name>,
    options: AskOptions = {},
  ): Promise<Result<Name>> {
    return this.ask({ kind: 'call', name, given }, options) as Promise<Result<Name>>;
  }

  /** Stops listening; whatever still waits is rejected. The worker is the caller's to end. */
  dispose(): void {
    this.port.removeEventListener('message', this.listen);
    for (const { failed } of this.waiting.values()) failed(new Error('The import was closed.'));
    this.waiting.clear();
  }

  private ask(
    request:
      | Omit<Extract<ImportRequest, { kind: 'open' }>, 'id'>
      | Omit<Extract<ImportRequest, { kind: 'call' }>, 'id'>,
    { signal, onProgress }: AskOptions,
    transfer: ArrayBuffer[] = [],
  ): Promise<unknown> {
    if (signal?.aborted === true) return Promise.reject(signal.reason);
    this.last += 1;
    const id = this.last;
    return new Promise((done, failed) => {
      const cancel = (): void => this.port.postMessage({ id, kind: 'cancel' }, []);
      const settle = (end: (value: unknown) => void) => (value: unknown) => {
        signal?.removeEventListener('abort', cancel);
        end(value);
      };
      this.waiting.set(id, { done: settle(done), failed: settle(failed), onProgress, signal });
      signal?.addEventListener('abort', cancel, { once: true });
      this.port.postMessage({ id, ...request }, transfer);
    });
  }

  private receive(reply: ImportReply): void {
    const waiting = this.waiting.get(reply.id);
    if (waiting === undefined) return;
    if (reply.kind === 'progress') {
      waiting.onProgress?.(reply.progress);
      return;
    }
    this.waiting.delete(reply.id);
    if (reply.kind === 'done') waiting.done(reply.result);
    else if (reply.kind === 'cancelled')
      waiting.failed(waiting.signal?.reason ?? new Error('The import was cancelled.'));
    else waiting.failed(new Error(`The import failed: ${reply.message}`));
  }
}
