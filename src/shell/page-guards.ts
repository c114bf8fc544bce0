import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { EditError } from '../notebook/edit-error.ts';
import type { Session } from './session/session.ts';

interface Guarded extends ReactiveControllerHost {
  readonly session: Session | null;
  notice: string;
}

/**
 * Guards the work on the page: keeps at once when the page is hidden, warns before a page is left whose edits
 * could not be kept, and says the sentence of an edit that was refused.
 */
export class PageGuards implements ReactiveController {
  readonly #page: Guarded;

  constructor(page: Guarded) {
    this.#page = page;
    page.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('visibilitychange', this.#hidden);
    addEventListener('beforeunload', this.#leaving);
    addEventListener('error', this.#refused);
    addEventListener('unhandledrejection', this.#refusedLater);
  }

  hostDisconnected(): void {
    document.removeEventListener('visibilitychange', this.#hidden);
    removeEventListener('beforeunload', this.#leaving);
    removeEventListener('error', this.#refused);
    removeEventListener('unhandledrejection', this.#refusedLater);
  }

  readonly #hidden = (): void => {
    if (document.visibilityState === 'hidden') void this.#page.session?.keeper.flush();
  };

  readonly #leaving = (event: Event): void => {
    if (this.#page.session?.keeper.state.kind === 'failed') event.preventDefault();
  };

  /** An edit made in any cell may be refused; nothing has changed then, and the reason is for the user. */
  readonly #refused = (event: ErrorEvent): void => {
    this.#sayRefusal(event, event.error);
  };

  /** The same for an edit made once something else was there, such as a pasted block. */
  readonly #refusedLater = (event: PromiseRejectionEvent): void => {
    this.#sayRefusal(event, event.reason);
  };

  #sayRefusal(event: Event, error: unknown): void {
    if (!(error instanceof EditError)) return;
    event.preventDefault();
    this.#page.notice = `Nothing was changed: ${error.message}`;
  }
}
