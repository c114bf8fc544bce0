import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { shownKey } from '../../src/notebook/shown-units.ts';
import { drawWhenSeen, followSight } from './out-of-sight.ts';

/**
 * Ties an element to a live notebook: asks for an update only when a change concerns the element, and for one
 * that is out of sight only when there is time, unless the document itself was edited.
 * The notebook may be replaced at any time (another file was opened); the subscription follows.
 *
 * @example new NotebookController(this, () => this.notebook, (change) => change.nodes.has('budget'))
 */
export class NotebookController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #notebook: () => LiveNotebook | undefined;
  readonly #concerns: (change: NotebookChange) => boolean;
  #subscribedTo: LiveNotebook | undefined;
  #stop: (() => void) | undefined;
  #endSight: (() => void) | undefined;
  #connected = false;
  /** The units and money in which the notebook showed its figures last. */
  #shown = '';

  constructor(
    host: ReactiveControllerHost,
    notebook: () => LiveNotebook | undefined,
    concerns: (change: NotebookChange) => boolean,
  ) {
    this.#host = host;
    this.#notebook = notebook;
    this.#concerns = concerns;
    host.addController(this);
  }

  hostConnected(): void {
    this.#connected = true;
    this.#endSight = followSight(this.#host);
    this.#follow();
  }

  hostDisconnected(): void {
    this.#connected = false;
    this.#endSight?.();
    this.#leave();
  }

  hostUpdate(): void {
    // An update may still be under way when the element has left the page: nothing to follow then.
    if (this.#connected) this.#follow();
  }

  #follow(): void {
    const notebook = this.#notebook();
    if (notebook === this.#subscribedTo) return;
    this.#leave();
    this.#subscribedTo = notebook;
    this.#shown = notebook === undefined ? '' : shownKey(notebook.document);
    this.#stop = notebook?.subscribe((change) => {
      const shown = shownKey(notebook.document);
      const isShownAnew = shown !== this.#shown;
      this.#shown = shown;
      // Asked in any case: it may remember what it was told.
      if (!this.#concerns(change) && !isShownAnew) return;
      if (change.document) this.#host.requestUpdate();
      else drawWhenSeen(this.#host);
    });
  }

  #leave(): void {
    this.#stop?.();
    this.#stop = undefined;
    this.#subscribedTo = undefined;
  }
}
