import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { closeIcon, faultIcon } from '../../../cells/shared/icons.ts';
import type { NotebookDocument } from '../../notebook/document.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import type { OwnTripDesk } from './own-trip-desk.ts';
import { ownTripDialogStyles } from './own-trip-dialog.styles.ts';
import { partsStep } from './parts-step.ts';
import { doneStep, pricesStep, routeStep, type StepActions } from './route-step.ts';
import { STEPS, saidOn } from './steps.ts';
import { tripStep } from './trip-step.ts';

/** `sw-own-trip`: the notebook that was made. */
export interface OwnTripDetail {
  readonly document: NotebookDocument;
}

/**
 * Begins a notebook of one's own, step by step: each can be skipped, gone back to and changed. Closed before
 * its end, it goes on where it was when it is opened again.
 *
 * @prop desk what has been said  @prop bringIn opens the dialog for files on a notebook
 * @fires sw-own-trip {OwnTripDetail} at the end
 * @fires sw-begin-again when all that was said is to be put away
 */
export class OwnTripDialog extends LitElement {
  static override properties: PropertyDeclarations = {
    desk: { attribute: false },
    bringIn: { attribute: false },
    at: { state: true },
    trouble: { state: true },
  };

  static override styles = [baseStyles, controlStyles, ownTripDialogStyles];

  declare desk: OwnTripDesk | null;
  declare bringIn: (draft: LiveNotebook) => Promise<void>;
  declare private at: number;
  declare private trouble: string;
  #stopDraft: (() => void) | null = null;

  constructor() {
    super();
    this.desk = null;
    this.bringIn = () => Promise.resolve();
    this.at = 0;
    this.trouble = '';
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  async show(): Promise<void> {
    await this.updateComplete;
    if (this.#dialog?.open === false) this.#dialog.showModal();
    this.#focusHeading();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stopDraft?.();
  }

  override render(): TemplateResult {
    const step = STEPS[this.at]!;
    return html`<dialog aria-labelledby="heading" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <header role="none">
        <h2 id="heading">Start your own trip</h2>
        <button type="button" class="x" aria-label="Close" @click=${() => this.#dialog?.close()}>${closeIcon()}</button>
      </header>
      ${this.desk === null ? nothing : this.#steps(this.desk)}
      <section class="step" aria-labelledby="step">
        <h3 id="step" tabindex="-1">${step.title}</h3>
        <p class="gist">${step.gist}</p>
        ${this.desk === null ? html`<p role="status">Fetching the parts…</p>` : this.#body(this.desk)}
        <div role="status">${this.trouble === '' ? nothing : html`<p class="bad">${faultIcon()}${this.trouble}</p>`}</div>
      </section>
      ${this.desk === null ? nothing : this.#foot(this.desk)}
    </dialog>`;
  }

  #steps(desk: OwnTripDesk): TemplateResult {
    return html`<nav aria-label="Steps"><ol>${STEPS.map((step, at) => {
      const said = saidOn(step, desk);
      return html`<li><button type="button" aria-current=${at === this.at ? 'step' : 'false'} @click=${() => this.#go(at)}>
        <b>${at + 1}</b> <i class="step-name">${step.title}</i>${said === '' ? nothing : html` <span>${said}</span>`}</button></li>`;
    })}</ol></nav>`;
  }

  #body(desk: OwnTripDesk): TemplateResult {
    const changed = (): void => this.requestUpdate();
    const actions: StepActions = {
      changed,
      bringIn: () => void this.#bringInto(desk),
      goToLeg: (at) =>
        void this.updateComplete.then(() =>
          this.renderRoot.querySelector<HTMLElement>(`[data-leg='${at}'] input`)?.focus(),
        ),
    };
    switch (STEPS[this.at]!.id) {
      case 'trip':
        return tripStep(desk, changed);
      case 'parts':
        return partsStep(desk, changed);
      case 'route':
        return routeStep(desk, actions);
      case 'prices':
        return pricesStep(desk, actions);
      case 'done':
        return doneStep(desk);
    }
  }

  #foot(desk: OwnTripDesk): TemplateResult {
    const isLast = this.at === STEPS.length - 1;
    const word = saidOn(STEPS[this.at]!, desk) === '' ? 'Skip this step' : 'Next';
    return html`<footer>
      <button type="button" class="plain again" @click=${this.#beginAgain}>Begin again</button>
      <button type="button" class="btn" ?disabled=${this.at === 0} @click=${() => this.#go(this.at - 1)}>Back</button>
      ${
        isLast
          ? html`<button type="button" class="btn solid" @click=${() => this.#make(desk)}>Make the notebook</button>`
          : html`<button type="button" class="btn solid" @click=${() => this.#go(this.at + 1)}>${word}</button>`
      }
    </footer>`;
  }

  #go(at: number): void {
    this.trouble = '';
    this.at = Math.max(0, Math.min(STEPS.length - 1, at));
    void this.updateComplete.then(() => this.#focusHeading());
  }

  #focusHeading(): void {
    this.renderRoot.querySelector<HTMLElement>('#step')?.focus();
    this.renderRoot.querySelector('.step')?.scrollTo({ top: 0 });
  }

  /** What a file changes is taken over as soon as it is brought in; the draft ends with the next one. */
  async #bringInto(desk: OwnTripDesk): Promise<void> {
    this.#stopDraft?.();
    this.trouble = '';
    const draft = desk.draft();
    const before = draft.document;
    const stop = draft.subscribe(({ document }) => {
      if (!document) return;
      const leftOut = desk.takeFrom(draft.document, before);
      if (leftOut.length > 0)
        this.trouble = `Rows for ${leftOut.join(', ')} are left out here: import them once the notebook is made.`;
      this.requestUpdate();
    });
    this.#stopDraft = () => {
      stop();
      draft.dispose();
      this.#stopDraft = null;
    };
    await this.bringIn(draft);
  }

  #make(desk: OwnTripDesk): void {
    this.#stopDraft?.();
    this.#dialog?.close();
    this.at = 0;
    this.dispatchEvent(new CustomEvent<OwnTripDetail>('sw-own-trip', { detail: { document: desk.made() } }));
  }

  #beginAgain(): void {
    this.#stopDraft?.();
    this.dispatchEvent(new CustomEvent('sw-begin-again'));
    this.#go(0);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-own-trip-dialog': OwnTripDialog;
  }
  interface HTMLElementEventMap {
    'sw-own-trip': CustomEvent<OwnTripDetail>;
    'sw-begin-again': CustomEvent;
  }
}
