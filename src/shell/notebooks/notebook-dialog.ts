import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { closeIcon } from '../../../cells/shared/icons.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';

/** A dialog about the notebook on the page: its frame, and drawn again with every edit while it is open. */
export abstract class NotebookDialog extends LitElement {
  static override properties: PropertyDeclarations = { notebook: { attribute: false } };

  declare notebook: LiveNotebook;
  #stop: (() => void) | null = null;

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  async show(): Promise<void> {
    await this.updateComplete;
    this.#stop?.();
    this.#stop = this.notebook.subscribe(({ document }) => {
      if (document) this.requestUpdate();
    });
    if (this.#dialog?.open === false) this.#dialog.showModal();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#stop?.();
  }

  protected frame(heading: string, body: TemplateResult): TemplateResult {
    return html`<dialog aria-labelledby="heading" @close=${() => this.#stop?.()}
      @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <header role="none">
        <h2 id="heading">${heading}</h2>
        <button type="button" class="x" aria-label="Close" @click=${() => this.#dialog?.close()}>${closeIcon()}</button>
      </header>
      <div class="body">${body}</div>
    </dialog>`;
  }
}
