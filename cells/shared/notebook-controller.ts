import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { isOfFigures } from '../../src/notebook/edit.ts';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { shownKey } from '../../src/notebook/shown-units.ts';
import { drawWhenSeen, followSight, isOnScreen } from './out-of-sight.ts';

interface Shower {
  readonly host: object;
  readonly notebook: LiveNotebook | undefined;
  readonly figures: () => Iterable<string>;
}

/** Elements of the page that show figures of a notebook. */
const showers = new Set<Shower>();

/** Names of the figures of a notebook that can be seen on the screen now. */
export function figuresSeen(notebook: LiveNotebook): ReadonlySet<string> {
  const seen = new Set<string>();
  for (const shower of showers)
    if (shower.notebook === notebook && isOnScreen(shower.host))
      for (const figure of shower.figures()) seen.add(figure);
  return seen;
}

/** Whether more of the document was edited than its figures. */
export const isRedrawn = ({ document, edit }: NotebookChange): boolean =>
  document && !(edit && isOfFigures(edit));

/**
 * What concerns an element that shows something of everything: once for an edit of figures, when all are told. Also
 * when those told last are none: of what an edit before it changed, only a part was told then.
 */
export const concernsAll = (change: NotebookChange): boolean =>
  isRedrawn(change) || !(change.document || change.isPartial);

/**
 * Ties an element to a live notebook: asks for an update only when a change concerns the element, and for one
 * that is out of sight only when there is time, unless more than figures was edited.
 * What the element shows is worked out before what nobody sees, if it says by `figures` what that is.
 * The notebook may be replaced at any time (another file was opened); the subscription follows.
 *
 * @example new NotebookController(this, () => this.notebook, (change) => change.nodes.has('budget'))
 */
export class NotebookController implements ReactiveController {
  readonly #host: ReactiveControllerHost;
  readonly #notebook: () => LiveNotebook | undefined;
  readonly #concerns: (change: NotebookChange) => boolean;
  readonly #shower: Shower;
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
    figures: () => Iterable<string> = () => [],
  ) {
    this.#host = host;
    this.#notebook = notebook;
    this.#concerns = concerns;
    this.#shower = {
      host,
      figures,
      get notebook() {
        return notebook();
      },
    };
    host.addController(this);
  }

  hostConnected(): void {
    this.#connected = true;
    this.#endSight = followSight(this.#host);
    showers.add(this.#shower);
    this.#follow();
  }

  hostDisconnected(): void {
    this.#connected = false;
    this.#endSight?.();
    showers.delete(this.#shower);
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
      if (isRedrawn(change) || isShownAnew) this.#host.requestUpdate();
      else drawWhenSeen(this.#host);
    });
  }

  #leave(): void {
    this.#stop?.();
    this.#stop = undefined;
    this.#subscribedTo = undefined;
  }
}
