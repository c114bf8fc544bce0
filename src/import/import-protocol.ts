import type { ImportSession, ReadingSummary } from './import-session.ts';
import type { Progress } from './in-steps.ts';
import type { ReadChoices } from './reading.ts';
import type { Refusal } from './split-records.ts';

/** What a session does, as called from the page: the result of steps is what they return. */
type Calls = {
  readonly [Name in keyof ImportSession]: ImportSession[Name] extends (...given: infer Given) => infer Result
    ? { readonly given: Given; readonly result: Result extends Generator<unknown, infer End> ? End : Result }
    : never;
};

export type CallName = keyof Calls;
export type Given<Name extends CallName> = Calls[Name]['given'];
export type Result<Name extends CallName> = Calls[Name]['result'];

/** From the page to the worker. Each question has a number, under which its answers come back. */
export type ImportRequest =
  | {
      readonly id: number;
      readonly kind: 'open';
      readonly bytes: Uint8Array;
      readonly choices: ReadChoices;
      /** In which the page writes numbers: sentences are made here. */
      readonly locale: string;
    }
  | {
      readonly id: number;
      readonly kind: 'call';
      readonly name: CallName;
      readonly given: readonly unknown[];
    }
  /** Ends what runs under this number; its answer is `cancelled`. */
  | { readonly id: number; readonly kind: 'cancel' };

/** From the worker to the page: any number of `progress`, then one of the others. */
export type ImportReply =
  | { readonly id: number; readonly kind: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly kind: 'done'; readonly result: unknown }
  | { readonly id: number; readonly kind: 'cancelled' }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };

export type Opened = ReadingSummary | Refusal;

/** One end of a channel: a Worker as the page sees it, the worker's own scope, or a MessagePort. */
export interface ImportPort {
  postMessage(message: unknown, transfer: ArrayBuffer[]): void;
  addEventListener(type: 'message', listener: (event: { readonly data: unknown }) => void): void;
  removeEventListener(type: 'message', listener: (event: { readonly data: unknown }) => void): void;
}
