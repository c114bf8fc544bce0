import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { closeIcon, faultIcon } from '../../../cells/shared/icons.ts';
import { showCount } from '../../formula/show.ts';
import { differences } from '../../notebook/compare.ts';
import { LiveNotebook } from '../../notebook/live-notebook.ts';
import { goTo, MOMENT_NAME_LENGTH, type Moment } from '../../notebook/moments.ts';
import type { PastStore } from '../../notebook/storage/past-store.ts';
import { callsThatDiffer, type FigureLine, totalsBeside } from './moment-figures.ts';
import { momentsDialogStyles } from './moments-dialog.styles.ts';
import { changedWords } from './notebook-shelf.ts';
import { notebooksDialogStyles } from './notebooks-dialog.styles.ts';

/** Differences of inputs that are listed; more are counted. */
const MOST_LISTED = 60;

type Beside = { readonly moment: Moment; readonly live: LiveNotebook; dispose(): void };

/**
 * Moments of the notebook under names of the user's own, and what-ifs: any number of them stand beside what is
 * on the page now, in figures; one is gone back to in one step, which Undo takes back.
 *
 * @prop notebook  @prop store  @prop planned opens a state of the notebook with its plan found as on the page
 */
export class MomentsDialog extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    store: { attribute: false },
    planned: { attribute: false },
    moments: { state: true },
    beside: { state: true },
    trouble: { state: true },
  };

  static override styles = [baseStyles, controlStyles, notebooksDialogStyles, momentsDialogStyles];

  declare notebook: LiveNotebook;
  declare store: Pick<PastStore, 'moments' | 'keepMoment' | 'removeMoment'>;
  declare planned: (moment: Moment) => { readonly live: LiveNotebook; dispose(): void };
  declare private moments: readonly Moment[];
  declare private beside: readonly Beside[];
  declare private trouble: string;

  #stop: (() => void)[] = [];

  constructor() {
    super();
    this.planned = (moment) => {
      const live = LiveNotebook.open(moment.document);
      return { live, dispose: () => live.dispose() };
    };
    this.moments = [];
    this.beside = [];
    this.trouble = '';
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#clear();
  }

  get #dialog(): HTMLDialogElement | null {
    return this.renderRoot.querySelector('dialog');
  }

  async show(): Promise<void> {
    await this.updateComplete;
    this.#clear();
    this.trouble = '';
    if (this.#dialog?.open === false) this.#dialog.showModal();
    this.#stop = [this.notebook.subscribe(() => this.requestUpdate())];
    await this.#refresh();
  }

  #clear(): void {
    for (const stop of this.#stop) stop();
    this.#stop = [];
    for (const each of this.beside) each.dispose();
    this.beside = [];
  }

  async #refresh(): Promise<void> {
    await this.#try(async () => {
      this.moments = await this.store.moments(this.notebook.document.id);
    });
  }

  override render(): TemplateResult {
    return html`<dialog aria-labelledby="heading" @close=${this.#clear}
      @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <header role="none">
        <h2 id="heading">Moments and what-ifs</h2>
        <button type="button" class="x" aria-label="Close the moments" @click=${() => this.#dialog?.close()}>${closeIcon()}</button>
      </header>
      <form @submit=${this.#note}>
        <label><span class="label">Name of what stands on the page now</span>
          <input id="name" maxlength=${MOMENT_NAME_LENGTH} autocomplete="off" placeholder="before the second order" /></label>
        <button class="btn solid">Note it</button>
      </form>
      ${this.moments.length === 0 ? html`<p class="none">Note how the notebook stands, try something else, note that too: here they stand side by side, to keep or to drop.</p>` : this.#list()}
      ${this.beside.length === 0 ? nothing : this.#comparison()}
      <div role="status">${this.trouble === '' ? nothing : html`<p class="bad">${faultIcon()}${this.trouble}</p>`}</div>
    </dialog>`;
  }

  #list(): TemplateResult {
    return html`<ul>${this.moments.map((moment) => {
      const isBeside = this.beside.some((each) => each.moment.id === moment.id);
      const name = html`<span class="sr"> ${moment.name}</span>`;
      return html`<li>
        <div class="what"><b>${moment.name}</b><span>noted ${changedWords(moment.at, new Date())}</span></div>
        <div class="acts">
          <label class="tick"><input type="checkbox" .checked=${isBeside} @change=${() => this.#setBeside(moment, !isBeside)} />compare with now${name}</label>
          <button type="button" class="plain" @click=${() => this.#goTo(moment)}>Go to it${name}</button>
          <button type="button" class="plain" @click=${() => this.#drop(moment)}>Drop it${name}</button>
        </div>
      </li>`;
    })}</ul>`;
  }

  #comparison(): TemplateResult {
    const notebooks = [this.notebook, ...this.beside.map(({ live }) => live)];
    const calls = callsThatDiffer(notebooks);
    return html`<div class="beside">
      ${this.#table('Totals', 'Figure', totalsBeside(notebooks))}
      ${calls.length === 0 ? html`<p class="none">All calls are the same.</p>` : this.#table('Calls that differ', 'Part', calls, 'words')}
      ${this.beside.map(({ moment }) => this.#inputs(moment))}
    </div>`;
  }

  #table(
    caption: string,
    first: string,
    lines: readonly FigureLine[],
    holds: 'figures' | 'words' = 'figures',
  ): TemplateResult {
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${caption}><table class=${holds}>
      <caption>${caption}</caption>
      <thead><tr><th scope="col">${first}</th><th scope="col">now</th>${this.beside.map(({ moment }) => html`<th scope="col">${moment.name}</th>`)}</tr></thead>
      <tbody>${lines.map(
        ({ label, figures }) =>
          html`<tr><th scope="row">${label}</th>${figures.map(
            (figure, i) => html`<td class=${i > 0 && figure !== figures[0] ? 'differs' : ''}>${figure}</td>`,
          )}</tr>`,
      )}</tbody>
    </table></div>`;
  }

  #inputs(moment: Moment): TemplateResult {
    const { listed, more } = differences(moment.document, this.notebook.document, MOST_LISTED);
    if (listed.length === 0) return html`<p class="none">Nothing was changed since ${moment.name}.</p>`;
    return html`<section>
      <h3>Changed since ${moment.name}</h3>
      <ul class="plainly">${listed.map(({ what, change }) => html`<li><span>${what}</span> <span>${change}</span></li>`)}</ul>
      ${more > 0 ? html`<p class="none">and ${showCount(more)} more</p>` : nothing}
    </section>`;
  }

  #setBeside(moment: Moment, isBeside: boolean): void {
    if (!isBeside) {
      this.beside.find((each) => each.moment.id === moment.id)?.dispose();
      this.beside = this.beside.filter((each) => each.moment.id !== moment.id);
      return;
    }
    const { live, dispose } = this.planned(moment);
    const stop = live.subscribe(() => this.requestUpdate());
    this.beside = [
      ...this.beside,
      {
        moment,
        live,
        dispose: () => {
          stop();
          dispose();
        },
      },
    ];
  }

  #note = (event: Event): void => {
    event.preventDefault();
    const input = this.renderRoot.querySelector<HTMLInputElement>('#name');
    const name = input?.value.trim() ?? '';
    if (input === null || name === '') {
      this.trouble = 'A moment needs a name, such as before the second order.';
      return;
    }
    const { document } = this.notebook;
    const id = crypto.randomUUID();
    void this.#try(async () => {
      await this.store.keepMoment(document.id, { id, name, at: new Date().toISOString(), document });
      input.value = '';
      await this.#refresh();
    });
  };

  #goTo(moment: Moment): void {
    const edit = goTo(this.notebook.document, moment);
    if (edit === null) {
      this.trouble = `The notebook stands at ${moment.name} already.`;
      return;
    }
    this.notebook.apply(edit);
    this.#dialog?.close();
  }

  #drop(moment: Moment): void {
    this.#setBeside(moment, false);
    void this.#try(async () => {
      await this.store.removeMoment(this.notebook.document.id, moment.id);
      await this.#refresh();
    });
  }

  async #try(work: () => Promise<void>): Promise<void> {
    this.trouble = '';
    try {
      await work();
    } catch (error) {
      this.trouble =
        error instanceof Error && error.message !== '' ? error.message : 'The browser did not say why.';
    }
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-moments': MomentsDialog;
  }
}
