import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';

/** A sentence with what can be done about it. */
export interface Slip {
  readonly says: string;
  readonly actions: readonly { readonly words: string; readonly run: () => void }[];
  /** Word of the button that puts the slip away. */
  readonly away: string;
}

/** Distance of the lowest slip from the foot of the page. */
const FROM_EDGE_PX = 16;

/**
 * Slips at the foot of the page: offers that can wait, one below the other. They lie over the page and move
 * nothing on it; the page has room for them after its last card, so that nothing stays under them for good.
 */
export class Slips extends LitElement {
  static override properties: PropertyDeclarations = { slips: { state: true } };

  static override styles = [
    baseStyles,
    controlStyles,
    css`
      :host {
        position: fixed;
        left: 16px;
        bottom: 16px;
        /* Over the panel, under the menu. */
        z-index: 50;
        width: min(520px, calc(100vw - 32px));
      }
      .slip {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 8px 12px;
        margin-top: 8px;
        padding: 12px 16px;
        background: var(--sheet);
        color: var(--ink);
        border: 1px solid var(--rule-2);
        border-top: 3px solid var(--ink);
        border-radius: var(--r-2);
        box-shadow: var(--lift-2);
        font-size: var(--t-3);
        line-height: 1.4;
      }
      .says {
        flex: 1 1 100%;
      }
      @media (max-width: 720px) {
        :host {
          left: 8px;
          bottom: 8px;
          width: calc(100vw - 16px);
        }
        .slip {
          gap: 0 8px;
          padding: 7px 10px 0;
          font-size: var(--t-2);
          line-height: 1.35;
        }
        .btn.slim {
          padding: 0 8px;
        }
        .btn.slim,
        .plain {
          margin-block: 4px 6px;
        }
      }
      @media print {
        :host {
          display: none;
        }
      }
    `,
  ];

  declare private slips: ReadonlyMap<string, Slip>;
  /**
   * Leaves the page room for what lies over its foot. Not by a custom property of the page: those are inherited,
   * and a new one has the browser work out the style of all elements again.
   */
  readonly #room = new ResizeObserver(() => {
    const height = this.slips.size === 0 ? 0 : Math.ceil(this.getBoundingClientRect().height) + FROM_EDGE_PX;
    leaveRoom(`${height}px`);
  });

  constructor() {
    super();
    this.slips = new Map();
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#room.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#room.disconnect();
    leaveRoom('');
  }

  /** Shows a slip under a name, in place of the one that has this name; null puts it away. */
  show(name: string, slip: Slip | null): void {
    const slips = new Map(this.slips);
    if (slip) slips.set(name, slip);
    else slips.delete(name);
    this.slips = slips;
  }

  override render(): unknown {
    // The live region stands before its words come, or they would not be read out.
    return html`<div role="status">${[...this.slips].map(([name, slip]) => this.#slip(name, slip))}</div>`;
  }

  #slip(name: string, { says, actions, away }: Slip): TemplateResult {
    return html`<div class="slip" data-slip=${name}>
      <span class="says">${says}</span>
      ${actions.map(({ words, run }) => html`<button class="btn slim" @click=${run}>${words}</button>`)}
      ${away ? html`<button class="plain" @click=${() => this.show(name, null)}>${away}</button>` : nothing}
    </div>`;
  }
}

customElements.define('sw-slips', Slips);

function leaveRoom(height: string): void {
  // What is gone to by the keyboard stands above the slips too.
  document.documentElement.style.scrollPaddingBottom = height;
  document.body.style.paddingBottom = height;
  // On a phone the panel lies at the foot as well.
  const panel = document.querySelector('sparewell-app')?.shadowRoot?.querySelector('sw-side-panel');
  panel?.style.setProperty('--slips', height);
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-slips': Slips;
  }
}
