import { writeNumbersAs } from '../formula/show.ts';
import type { ImportPort, ImportReply, ImportRequest } from './import-protocol.ts';
import { ImportSession } from './import-session.ts';
import { runInSteps, type Steps } from './in-steps.ts';

/** Between two tellings of progress, milliseconds. */
const TELL_MS = 80;

/**
 * Answers the page's questions about one file. Questions are answered one after another, in the order they
 * came; a cancel ends what runs at once, and the session stays as it was before.
 */
export function hostImport(port: ImportPort): void {
  let session: ImportSession | null = null;
  let queue: Promise<void> = Promise.resolve();
  const running = new Map<number, AbortController>();
  const reply = (message: ImportReply): void => port.postMessage(message, []);

  const answer = async (request: Exclude<ImportRequest, { kind: 'cancel' }>): Promise<unknown> => {
    const { signal } = running.get(request.id)!;
    let toldMs = 0;
    const run = <Result>(steps: Steps<Result>): Promise<Result> =>
      runInSteps(steps, {
        signal,
        onProgress: (progress) => {
          const nowMs = performance.now();
          if (nowMs - toldMs < TELL_MS) return;
          toldMs = nowMs;
          reply({ id: request.id, kind: 'progress', progress });
        },
      });
    signal.throwIfAborted();
    if (request.kind === 'open') {
      writeNumbersAs(request.locale);
      const opened = await run(ImportSession.open(request.bytes, request.choices));
      if (!(opened instanceof ImportSession)) return opened;
      session = opened;
      return opened.summary();
    }
    if (session === null) throw new Error('No file is open.');
    const result = callSession(session, request.name, request.given);
    return isSteps(result) ? await run(result) : result;
  };

  port.addEventListener('message', ({ data }) => {
    const request = data as ImportRequest;
    if (request.kind === 'cancel') {
      running.get(request.id)?.abort();
      return;
    }
    running.set(request.id, new AbortController());
    queue = queue.then(async () => {
      const { id } = request;
      try {
        reply({ id, kind: 'done', result: await answer(request) });
      } catch (error) {
        const isCancelled = running.get(id)?.signal.aborted === true;
        const message = error instanceof Error ? error.message : String(error);
        reply(isCancelled ? { id, kind: 'cancelled' } : { id, kind: 'failed', message });
      } finally {
        running.delete(id);
      }
    });
  });
}

/** Only what the class itself does can be called: names come over the channel. */
function callSession(session: ImportSession, name: string, given: readonly unknown[]): unknown {
  const isOwn = name !== 'constructor' && Object.hasOwn(ImportSession.prototype, name);
  if (!isOwn) throw new Error(`A session has no call '${name}'.`);
  const call = session[name as keyof ImportSession] as (...given: readonly unknown[]) => unknown;
  return call.apply(session, [...given]);
}

function isSteps(result: unknown): result is Steps<unknown> {
  return (
    typeof result === 'object' && result !== null && 'next' in result && typeof result.next === 'function'
  );
}
