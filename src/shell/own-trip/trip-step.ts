import { html, type TemplateResult } from 'lit';
import type { EntryDetail } from '../../../cells/shared/figure-field.ts';
import { CURRENCY_CODES } from '../../formula/currencies.ts';
import { showNumber, showUnit } from '../../formula/show.ts';
import type { ValueCell } from '../../notebook/document.ts';
import type { OwnTripDesk } from './own-trip-desk.ts';

const names = new Intl.DisplayNames('en', { type: 'currency' });

/** Name, money, dates, limits, and what things are worth. */
export function tripStep(desk: OwnTripDesk, changed: () => void): TemplateResult {
  const { title, money } = desk.choices;
  const say = (name: string, said: number | string | null): void => {
    desk.setValue(name, said);
    changed();
  };
  return html`<div class="fields">
      <label class="field"><span class="label">Name of the trip</span>
        <input class="written" .value=${title} maxlength="200" autocomplete="off" placeholder="My trip"
          @change=${(event: Event) => {
            desk.setTitle((event.target as HTMLInputElement).value.trim());
            changed();
          }} /></label>
      <label class="field"><span class="label">Money of the notebook</span>
        <span class="pick"><select @change=${(event: Event) => {
          desk.setMoney((event.target as HTMLSelectElement).value);
          changed();
        }}>${[...CURRENCY_CODES].map((code) => html`<option value=${code} ?selected=${code === money}>${code}, ${names.of(code)}</option>`)}</select></span></label>
    </div>
    ${desk.forms.map(
      ({ form, cells }) => html`<fieldset>
        <legend>${form}</legend>
        <div class="fields">${cells.map((cell) => field(cell, say))}</div>
      </fieldset>`,
    )}`;
}

function field(cell: ValueCell, say: (name: string, said: number | string | null) => void): TemplateResult {
  const { content, name, title, gist = '' } = cell;
  const [unit, decimals] = content.type === 'number' ? [content.unit, content.decimals] : ['', undefined];
  const column = content.type === 'date' ? { kind: 'date' as const } : { kind: 'number' as const, unit };
  return html`<div class="field">
    <span class="label" aria-hidden="true">${title}</span>
    <sw-figure-field size="line" .label=${unit === '' ? title : `${title}, ${showUnit(unit)}`}
      .entry=${content.value} .shown=${typeof content.value === 'number' ? showNumber(content.value, decimals) : ''} .column=${column} .unit=${showUnit(unit)}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => say(name, event.detail.entry as number | string | null)}></sw-figure-field>
    <span class="hint">${gist}</span>
  </div>`;
}
