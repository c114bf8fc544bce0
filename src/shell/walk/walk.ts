import {
  html,
  nothing,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';
import type { NotebookDocument } from '../../notebook/document.ts';
import { keepInSight } from '../road/keep-in-sight.ts';
import { rememberWalk, walkSeen } from './walk-seen.ts';
import type { WalkStep } from './walk-steps.ts';

/** The page as the walk needs it. */
export interface WalkedPage extends ReactiveControllerHost {
  readonly renderRoot: HTMLElement | DocumentFragment;
  /** Where the cards stand, opened if they were folded. */
  readonly road: { cardOf(cell: string): HTMLElement | null } | null;
}

/** Offers the walk at a first visit, leads it, and marks what it is about. */
export class Walk implements ReactiveController {
  readonly #page: WalkedPage;
  #offered = !walkSeen();
  #steps: readonly WalkStep[] = [];
  #marked: HTMLElement | null = null;

  constructor(page: WalkedPage) {
    this.#page = page;
    page.addController(this);
  }

  hostDisconnected(): void {
    this.#mark(null);
  }

  start(document: NotebookDocument): void {
    rememberWalk();
    this.#offered = false;
    this.#page.requestUpdate();
    import('./walk-steps.ts').then(
      ({ walkSteps }) => {
        this.#steps = walkSteps(document);
        this.#page.requestUpdate();
      },
      // The page tells by itself that a part of it could not be fetched, and may be asked again.
      () => {
        this.#offered = true;
        this.#page.requestUpdate();
      },
    );
  }

  /** A line over the road at a first visit; it stands there from the first drawing on, so that nothing moves. */
  offer(document: NotebookDocument): TemplateResult | typeof nothing {
    if (!this.#offered) return nothing;
    const decline = (): void => {
      rememberWalk();
      this.#offered = false;
      this.#page.requestUpdate();
    };
    return html`<p class="walk-offer">
      <span>New here? Seven stops over this page show how it works.</span>
      <button class="btn slim" @click=${() => this.start(document)}>Show me round</button>
      <button class="plain" @click=${decline}>Not now</button>
    </p>`;
  }

  guide(): TemplateResult | typeof nothing {
    if (this.#steps.length === 0) return nothing;
    return html`<sw-walk-guide
      .steps=${this.#steps}
      @sw-walk-at=${(event: CustomEvent<WalkStep>) => this.#show(event.detail)}
      @sw-walk-end=${this.end}
    ></sw-walk-guide>`;
  }

  readonly end = (): void => {
    this.#mark(null);
    this.#steps = [];
    this.#page.requestUpdate();
  };

  #show({ at }: WalkStep): void {
    const shown =
      at === 'tally'
        ? this.#page.renderRoot.querySelector<HTMLElement>('sw-tally-strip')
        : at !== null && typeof at === 'object'
          ? (this.#page.road?.cardOf(at.cell) ?? null)
          : null;
    this.#mark(shown);
    if (shown && at !== 'tally') keepInSight(shown, 'start');
  }

  /** A pen line round what the stop is about. */
  #mark(shown: HTMLElement | null): void {
    this.#marked?.style.removeProperty('outline');
    this.#marked?.style.removeProperty('outline-offset');
    this.#marked = shown;
    shown?.style.setProperty('outline', '3px solid var(--pen)');
    shown?.style.setProperty('outline-offset', shown.localName === 'sw-tally-strip' ? '-3px' : '3px');
  }
}
