/** How far a long task has come. */
export interface Progress {
  readonly stage: 'letters' | 'records' | 'figures' | 'rows';
  /** Of `of`, in whatever the stage counts: bytes, letters, columns, rows. */
  readonly done: number;
  readonly of: number;
}

/**
 * A long task in short steps: it yields how far it is, a few milliseconds of work apart, and returns its
 * result. The same steps are run at once by `finish` and with pauses by `runInSteps`.
 */
export type Steps<Result> = Generator<Progress, Result, void>;

export interface StepOptions {
  /** Aborting it ends the task with the signal's reason (an AbortError by default). */
  readonly signal?: AbortSignal;
  readonly onProgress?: (progress: Progress) => void;
  /** Work between two pauses, milliseconds; 16 if absent. */
  readonly sliceMs?: number;
}

/** Runs a task to its end without a pause. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * Runs a task and lets others have their turn (messages, drawing, a cancel) about every `sliceMs`.
 *
 * @throws the signal's reason when it is aborted
 * @example await runInSteps(readSteps(bytes), { onProgress: (at) => show(at.done / at.of) })
 */
export async function runInSteps<Result>(steps: Steps<Result>, options: StepOptions = {}): Promise<Result> {
  const { signal, onProgress, sliceMs = 16 } = options;
  let pausedAtMs = performance.now();
  for (;;) {
    if (signal?.aborted === true) {
      steps.return(undefined as never);
      throw signal.reason;
    }
    const step = steps.next();
    if (step.done === true) return step.value;
    if (performance.now() - pausedAtMs < sliceMs) continue;
    onProgress?.(step.value);
    await new Promise<void>((resume) => setTimeout(resume, 0));
    pausedAtMs = performance.now();
  }
}

/** The same as an async generator, for a caller that wants to loop over the progress itself. */
export async function* progressOf<Result>(
  steps: Steps<Result>,
  options: Omit<StepOptions, 'onProgress'> = {},
): AsyncGenerator<Progress, Result, void> {
  const { signal, sliceMs = 16 } = options;
  let pausedAtMs = performance.now();
  for (;;) {
    if (signal?.aborted === true) {
      steps.return(undefined as never);
      throw signal.reason;
    }
    const step = steps.next();
    if (step.done === true) return step.value;
    if (performance.now() - pausedAtMs < sliceMs) continue;
    yield step.value;
    await new Promise<void>((resume) => setTimeout(resume, 0));
    pausedAtMs = performance.now();
  }
}
