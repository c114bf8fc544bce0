import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { COLUMN_FUNCTIONS } from '../../src/formula/functions/columns.ts';
import { FAILURE_FUNCTIONS } from '../../src/formula/functions/failure.ts';
import { HIT_FUNCTIONS } from '../../src/formula/functions/hits.ts';
import { LATER_FUNCTIONS } from '../../src/formula/functions/later.ts';
import { MISSING_FUNCTIONS } from '../../src/formula/functions/missing.ts';
import { PLAIN_FUNCTIONS } from '../../src/formula/functions/plain.ts';
import type { FormulaFunction } from '../../src/formula/functions/registry.ts';
import { SHARED_FUNCTIONS } from '../../src/formula/functions/shared.ts';
import { WEAR_FUNCTIONS } from '../../src/formula/functions/wear.ts';
import { baseStyles } from './base-styles.ts';
import { controlStyles } from './control-styles.ts';
import { parametersOf, signatureOf } from './formula-editor-help.ts';
import { referenceStyles } from './formula-editor-reference.styles.ts';
import { closeIcon } from './icons.ts';
import { typeset } from './typeset.ts';
import { typesetStyles } from './typeset-styles.ts';

/** Every function of the language under the heading where a reader would look for it. */
export const REFERENCE: readonly (readonly [string, readonly FormulaFunction[]])[] = [
  ['Single figures', PLAIN_FUNCTIONS],
  ['Whole columns and other tables', COLUMN_FUNCTIONS],
  ['Missing figures', MISSING_FUNCTIONS],
  ['Wear and its limit', WEAR_FUNCTIONS],
  ['Sudden failure', FAILURE_FUNCTIONS],
  ['Chance hits', HIT_FUNCTIONS],
  ['What may follow later', LATER_FUNCTIONS],
  ['Spares that bikes share', SHARED_FUNCTIONS],
];

/** `sw-take`: the name of a function that is to be written where the cursor is. */
export interface TakeDetail {
  readonly name: string;
}

/**
 * Whether a function answers to what was typed into the search: its name, or what it says of itself.
 *
 * @example answersTo(survival, 'sudden') // true
 */
export function answersTo(held: FormulaFunction, typed: string): boolean {
  const wanted = typed.trim().toLowerCase();
  if (wanted === '') return true;
  const words = [held.name, held.about, ...parametersOf(held).map(({ name, about }) => `${name} ${about}`)];
  return words.join(' ').toLowerCase().includes(wanted);
}

const exampleValue = ({ example }: FormulaFunction): string => {
  if (typeof example.value === 'boolean') return example.value ? 'yes' : 'no';
  return typeof example.value === 'number'
    ? String(Number(example.value.toPrecision(6)))
    : `“${example.value}”`;
};

/**
 * The functions of the formula language, each as it describes itself to the checker: what it gives, its
 * parameters with their units, where it is defined, its source, and an example that the tests run.
 *
 * @fires sw-take {TakeDetail} a function was chosen to be written; does not leave the editor
 */
export class FunctionReference extends LitElement {
  static override properties = { typed: { state: true } };
  static override styles = [baseStyles, controlStyles, typesetStyles, referenceStyles];

  declare private typed: string;

  constructor() {
    super();
    this.typed = '';
  }

  show(name = ''): void {
    this.typed = name;
    void this.updateComplete.then(() => {
      const dialog = this.renderRoot.querySelector('dialog');
      if (dialog?.open === false) dialog.showModal();
      this.renderRoot.querySelector('input')?.focus();
    });
  }

  override render(): TemplateResult {
    const groups = REFERENCE.map(
      ([heading, functions]) => [heading, functions.filter((held) => answersTo(held, this.typed))] as const,
    ).filter(([, functions]) => functions.length > 0);
    return html`<dialog aria-labelledby="heading" @keydown=${(event: KeyboardEvent) => event.stopPropagation()}>
      <header>
        <h2 id="heading">Functions</h2>
        <label><span class="sr">Find a function</span>
          <input type="search" placeholder="find a function" autocomplete="off" spellcheck="false" .value=${this.typed}
            @input=${(event: Event) => {
              this.typed = (event.target as HTMLInputElement).value;
            }} /></label>
        <button type="button" class="x" aria-label="Close the functions" @click=${this.#close}>${closeIcon()}</button>
      </header>
      <div class="list" tabindex="0" role="region" aria-label="List of functions">
        ${groups.map(
          ([heading, functions]) => html`<section>
            <h3>${heading}</h3>
            ${functions.map((held) => this.#entry(held))}
          </section>`,
        )}
        ${groups.length === 0 ? html`<p class="none" role="status">No function says anything of ${this.typed}.</p>` : nothing}
      </div>
    </dialog>`;
  }

  #entry(held: FormulaFunction): TemplateResult {
    return html`<article>
      <h4><code>${held.name}<span>(${signatureOf(held)})</span></code>
        <button type="button" class="plain" @click=${() => this.#take(held.name)}>Write it<span class="sr">: ${held.name}</span></button></h4>
      <p>${held.about}</p>
      <dl>${parametersOf(held).map(
        (each) => html`<div><dt><code>${each.name}</code></dt>
          <dd>${each.about}${each.unit === '' ? nothing : html` <span class="unit">${each.unit}</span>`}${each.optional ? html` <span class="unit">may be left out</span>` : nothing}</dd></div>`,
      )}</dl>
      <p class="small">${held.domain}</p>
      <p class="example"><span class="fx">${typeset(held.example.formula)}</span> <span>gives ${exampleValue(held)}</span></p>
      <p class="small">Source: ${held.source}.</p>
    </article>`;
  }

  #take(name: string): void {
    this.#close();
    this.dispatchEvent(new CustomEvent<TakeDetail>('sw-take', { detail: { name } }));
  }

  #close(): void {
    this.renderRoot.querySelector('dialog')?.close();
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-function-reference': FunctionReference;
  }
  interface HTMLElementEventMap {
    'sw-take': CustomEvent<TakeDetail>;
  }
}
