import { css, html, LitElement, nothing, type PropertyDeclarations } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import type { WalkStep } from './walk-steps.ts';

/**
 * The walk over the screen: one slip of paper at the foot of the page, stop by stop. The page stays usable
 * under it; Escape or Leave ends it at any stop.
 *
 * @prop steps the stops; none while nobody walks
 * @fires sw-walk-at {WalkStep} a stop was reached: the page shows what it is about
 * @fires sw-walk-end the walk was left or is over
 */
export class WalkGuide extends LitElement {
  static override properties: PropertyDeclarations = {
    steps: { attribute: false },
    at: { state: true },
  };

  static override styles = [
    baseStyles,
    controlStyles,
    css`
      section {
        position: fixed;
        z-index: 70;
        left: 50%;
        bottom: 18px;
        transform: translateX(-50%);
        width: min(560px, calc(100vw - 20px));
        padding: 12px 16px 12px;
        background: var(--sheet);
        border: 2px solid var(--ink);
        border-radius: var(--r-3);
        box-shadow: var(--lift-2);
      }
      h2 {
        font: 600 var(--t-5) / 1.2 var(--face-sign);
      }
      h2 small {
        float: right;
        font: 500 var(--t-2) / 1.6 var(--face-sign);
        color: var(--ink-2);
      }
      p {
        margin: 5px 0 10px;
        font-size: var(--t-4);
        line-height: 1.45;
      }
      .acts {
        display: flex;
        gap: 8px;
        align-items: center;
      }
      .acts .plain {
        margin-left: auto;
      }
      @media (max-width: 720px) {
        .btn {
          min-height: var(--touch);
        }
      }
      @media print {
        section {
          display: none;
        }
      }
    `,
  ];

  declare steps: readonly WalkStep[];
  declare private at: number;

  constructor() {
    super();
    this.steps = [];
    this.at = 0;
  }

  override willUpdate(changed: Map<PropertyKey, unknown>): void {
    if (!changed.has('steps') || this.steps.length === 0) return;
    this.at = 0;
    void this.#reached();
  }

  override render(): unknown {
    const step = this.steps[this.at];
    if (!step) return nothing;
    const last = this.at === this.steps.length - 1;
    return html`<section role="dialog" aria-labelledby="title" aria-describedby="words" @keydown=${this.#key}>
      <h2 id="title">${step.title}<small>${this.at + 1} of ${this.steps.length}</small></h2>
      <p id="words" aria-live="polite">${step.words}</p>
      <div class="acts">
        <button class="btn" ?disabled=${this.at === 0} @click=${() => this.#go(-1)}>Back</button>
        <button class="btn solid next" @click=${() => (last ? this.#end() : this.#go(1))}>${last ? 'Done' : 'Next'}</button>
        ${last ? nothing : html`<button class="plain" @click=${this.#end}>Leave the walk</button>`}
      </div>
    </section>`;
  }

  #go(by: number): void {
    this.at = Math.min(this.steps.length - 1, Math.max(0, this.at + by));
    void this.#reached();
  }

  async #reached(): Promise<void> {
    await this.updateComplete;
    const step = this.steps[this.at];
    if (!step) return;
    this.renderRoot.querySelector<HTMLElement>('.next')?.focus({ preventScroll: true });
    this.dispatchEvent(
      new CustomEvent<WalkStep>('sw-walk-at', { detail: step, bubbles: true, composed: true }),
    );
  }

  #key(event: KeyboardEvent): void {
    event.stopPropagation();
    if (event.key === 'Escape') this.#end();
  }

  #end(): void {
    this.dispatchEvent(new CustomEvent('sw-walk-end', { bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-walk-guide': WalkGuide;
  }
  interface HTMLElementEventMap {
    'sw-walk-at': CustomEvent<WalkStep>;
    'sw-walk-end': CustomEvent;
  }
}
