import { css, html, LitElement, type TemplateResult } from 'lit';
import { baseStyles } from '../../cells/shared/base-styles.ts';
import { controlStyles } from '../../cells/shared/control-styles.ts';
import { dialogStyles } from './dialog.styles.ts';

/** What a new notebook begins with. */
export type NewFrom = 'own-trip' | 'demo' | 'empty';

/**
 * Asks what a new notebook begins with. The notebook open now stays kept on this device and in its file.
 *
 * @fires sw-new {NewFrom}
 */
export class NewNotebookDialog extends LitElement {
  static override styles = [
    baseStyles,
    controlStyles,
    dialogStyles,
    css`
      dialog {
        width: min(520px, calc(100vw - 24px));
      }
      h2 {
        padding: 16px 24px 4px;
      }
      p {
        padding: 0 24px 12px;
        color: var(--ink-2);
        line-height: 1.45;
      }
      ul {
        border-top: 1px solid var(--ink-2);
      }
      li {
        display: grid;
        grid-template-columns: minmax(0, 1fr) auto;
        gap: 14px;
        align-items: center;
        padding: 12px 24px;
        border-bottom: 1px solid var(--rule);
      }
      b {
        display: block;
        font: 600 var(--t-4b) / 1.3 var(--face-sign);
      }
      li span {
        color: var(--ink-2);
      }
      .btn {
        min-width: 104px;
      }
      footer {
        display: flex;
        justify-content: flex-end;
        padding: 12px 24px 14px;
      }
    `,
  ];

  show(): void {
    this.renderRoot.querySelector('dialog')?.showModal();
  }

  override render(): TemplateResult {
    return html`<dialog aria-labelledby="heading" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <h2 id="heading">A new notebook</h2>
      <p>The one open now stays kept on this device.</p>
      <ul>
        <li>
          <div><b>Your own trip, step by step</b><span>Every formula, with your parts, your route, your prices.</span></div>
          <button class="btn solid" @click=${() => this.#choose('own-trip')}>Start</button>
        </li>
        <li>
          <div><b>From the worked example</b><span>A filled trip with every formula, to look round.</span></div>
          <button class="btn" @click=${() => this.#choose('demo')}>Take it</button>
        </li>
        <li>
          <div><b>Empty</b><span>Nothing in it; four ways to begin.</span></div>
          <button class="btn" @click=${() => this.#choose('empty')}>Begin</button>
        </li>
      </ul>
      <footer><button class="plain" @click=${this.#close}>Leave</button></footer>
    </dialog>`;
  }

  #close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }

  #choose(from: NewFrom): void {
    this.#close();
    this.dispatchEvent(new CustomEvent<NewFrom>('sw-new', { detail: from, bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-new-notebook-dialog': NewNotebookDialog;
  }
  interface HTMLElementEventMap {
    'sw-new': CustomEvent<NewFrom>;
  }
}
