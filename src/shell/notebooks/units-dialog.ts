import { css, html, nothing, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { showNumber } from '../../formula/show.ts';
import type { Measures } from '../../notebook/document.ts';
import { notebookEdit } from '../../notebook/edits.ts';
import { moneysToShow, worthOfMoney } from '../../notebook/shown-units.ts';
import { NotebookDialog } from './notebook-dialog.ts';
import { notebooksDialogStyles } from './notebooks-dialog.styles.ts';

const MEASURES: readonly { readonly is: Measures | ''; readonly name: string; readonly gist: string }[] = [
  { is: '', name: 'As kept', gist: 'each figure in the unit of its column' },
  { is: 'metric', name: 'Metric', gist: 'kilometres, millimetres, kilograms, litres' },
  { is: 'imperial', name: 'Miles and US gallons', gist: 'with inches and pounds' },
  { is: 'imperial_uk', name: 'Miles and imperial gallons', gist: 'with inches and pounds' },
];

/**
 * The notebook's own choice of measures and money: its figures are shown and typed in them, and stay kept as
 * they are. Each choice is an edit, which Undo takes back.
 *
 * @prop notebook
 */
export class UnitsDialog extends NotebookDialog {
  static override styles = [
    baseStyles,
    controlStyles,
    notebooksDialogStyles,
    css`
      .body {
        padding: 4px 24px 20px;
      }
      fieldset {
        margin-top: 14px;
      }
      legend,
      .label {
        padding: 0;
        font: 600 var(--t-4b) / 1.3 var(--face-sign);
      }
      label.one {
        display: flex;
        gap: 10px;
        align-items: center;
        min-height: 36px;
        cursor: pointer;
      }
      label.one input {
        flex: none;
        width: 18px;
        height: 18px;
        min-height: 0;
        margin: 0;
        accent-color: var(--pen);
      }
      label.one span span,
      .rate,
      .note {
        color: var(--ink-2);
      }
      .pick {
        max-width: 320px;
        margin: 6px 0 4px;
      }
      .note {
        margin-top: 16px;
        line-height: 1.45;
      }
      @media (max-width: 720px) {
        .body {
          padding-inline: 14px;
        }
        label.one {
          min-height: var(--touch);
        }
      }
    `,
  ];

  override render(): TemplateResult {
    const { document } = this.notebook;
    return this.frame(
      'Units and money',
      html`<fieldset>
          <legend>Measures</legend>
          ${MEASURES.map(
            ({ is, name, gist }) =>
              html`<label class="one"><input type="radio" name="measures" .checked=${(document.measures ?? '') === is}
                @change=${() => this.#choose('measures', is)} /><span><b>${name}</b> <span>${gist}</span></span></label>`,
          )}
        </fieldset>
        ${this.#money()}
        <p class="note">Figures are shown and typed so; one can be typed in any other unit by writing the unit behind it. What is kept and the formulas stay as they are. Gauge readings stay in the unit of their row, the plan’s own account and the working of a figure in theirs.</p>
`,
    );
  }

  #money(): TemplateResult {
    const { document } = this.notebook;
    const { money, shown_money: shown = money } = document;
    const offered = [...new Set([...moneysToShow(document), shown])];
    const worth = worthOfMoney(document, shown);
    const rate =
      shown === money
        ? nothing
        : worth === null
          ? `Rates of exchange no longer say what one ${shown} is worth: sums are shown in ${money}.`
          : `1 ${shown} is ${showNumber(worth)} ${money}, by the rates of exchange`;
    return html`<fieldset>
      <legend>Money</legend>
      <div class="pick"><select aria-label="Money in which sums are shown" @change=${(event: Event) => {
        const { value } = event.target as HTMLSelectElement;
        this.#choose('shown_money', value === money ? '' : value);
      }}>${offered.map((code) => html`<option value=${code} .selected=${code === shown}>${code}${code === money ? ', as kept' : ''}</option>`)}</select></div>
      <p class="rate" role="status">${rate}</p>
      ${offered.length === 1 ? html`<p class="rate">Another money can be chosen once its worth stands in the table rates_of_exchange.</p>` : nothing}
    </fieldset>`;
  }

  #choose(field: 'measures' | 'shown_money', word: string): void {
    if ((this.notebook.document[field] ?? '') !== word)
      this.notebook.apply(notebookEdit(this.notebook.document, field, word));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-units': UnitsDialog;
  }
}
