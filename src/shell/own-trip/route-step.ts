import { html, nothing, type TemplateResult } from 'lit';
import type { EntryDetail } from '../../../cells/shared/figure-field.ts';
import type { TypedLeg } from '../../starter/own-trip/choices.ts';
import type { OwnTripDesk } from './own-trip-desk.ts';

/** What the dialog does for a step. */
export interface StepActions {
  readonly changed: () => void;
  /** Opens the dialog for files on the notebook as it would be now. */
  readonly bringIn: () => void;
  /** Puts the keyboard into the first field of a leg. */
  readonly goToLeg: (at: number) => void;
}

/** The legs: from a file, or typed one after the other. */
export function routeStep(desk: OwnTripDesk, actions: StepActions): TemplateResult {
  const { broughtLegs } = desk;
  return html`<p class="bring"><button type="button" class="btn" @click=${actions.bringIn}>Bring in a track or a table</button>
      <span class="hint">GPX, or rows with a length and a surface</span></p>
    ${
      broughtLegs === ''
        ? typedLegs(desk, actions)
        : html`<p class="brought">${broughtLegs}, from a file. <button type="button" class="plain" @click=${() => {
            desk.dropLegs();
            actions.changed();
          }}>Take them out again</button></p>`
    }`;
}

function typedLegs(desk: OwnTripDesk, actions: StepActions): TemplateResult {
  const { legs } = desk.choices;
  return html`${legs.map((leg, at) => legFields(desk, leg, at, actions))}
    <p class="bring"><button type="button" class="btn" @click=${() => {
      desk.addLeg();
      actions.changed();
      actions.goToLeg(desk.choices.legs.length - 1);
    }}>${legs.length === 0 ? 'Type the first leg' : 'Another leg'}</button></p>`;
}

function legFields(desk: OwnTripDesk, leg: TypedLeg, at: number, { changed }: StepActions): TemplateResult {
  const say = (said: Partial<TypedLeg>): void => {
    desk.setLeg(at, said);
    changed();
  };
  const place = (field: 'start' | 'end', words: string): TemplateResult =>
    html`<label class="field"><span class="label">${words}</span>
      <input class="written" .value=${leg[field]} maxlength="120" autocomplete="off"
        @change=${(event: Event) => say({ [field]: (event.target as HTMLInputElement).value.trim() })} /></label>`;
  const tick = (field: 'shop' | 'fuel' | 'water', words: string): TemplateResult =>
    html`<label class="tick"><input type="checkbox" .checked=${leg[field]}
      @change=${(event: Event) => say({ [field]: (event.target as HTMLInputElement).checked })} /><span>${words}</span></label>`;
  return html`<fieldset class="leg" data-leg=${at}>
    <legend>Leg ${at + 1}</legend>
    <button type="button" class="plain all" @click=${() => {
      desk.removeLeg(at);
      changed();
    }}>Remove<span class="sr"> leg ${at + 1}</span></button>
    <div class="fields">
      ${place('start', 'From')} ${place('end', 'To')} ${figureOf(leg, 'distanceKm', 'Length', 'km', say)}
      <label class="field"><span class="label">Surface</span><span class="pick">
        <select @change=${(event: Event) => say({ surface: (event.target as HTMLSelectElement).value || null })}>
          <option value="" ?selected=${leg.surface === null}>not said</option>
          ${desk.surfaces.map((surface) => html`<option value=${surface} ?selected=${surface === leg.surface}>${surface}</option>`)}
        </select></span></label>
      ${figureOf(leg, 'helpKm', 'To help', 'km', say)} ${figureOf(leg, 'waitDays', 'Wait for a part', 'days', say)}
    </div>
    <p class="ticks">At its end: ${tick('fuel', 'fuel')} ${tick('water', 'water')} ${tick('shop', 'a shop that fits parts')}</p>
  </fieldset>`;
}

function figureOf(
  leg: TypedLeg,
  field: 'distanceKm' | 'helpKm' | 'waitDays',
  words: string,
  unit: string,
  say: (said: Partial<TypedLeg>) => void,
): TemplateResult {
  return html`<div class="field"><span class="label" aria-hidden="true">${words}</span>
    <sw-figure-field size="line" .label=${`${words}, ${unit}`} .entry=${leg[field]} .column=${{ kind: 'number', unit }} .unit=${unit}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => say({ [field]: event.detail.entry as number | null })}></sw-figure-field></div>`;
}

/** Suppliers' lists that were brought in. */
export function pricesStep(desk: OwnTripDesk, { changed, bringIn }: StepActions): TemplateResult {
  const { suppliers } = desk;
  return html`<p class="bring"><button type="button" class="btn" @click=${bringIn}>Bring in ${suppliers.length === 0 ? 'a price list' : 'another price list'}</button>
      <span class="hint">CSV with any separator, decimal mark and letters</span></p>
    ${
      suppliers.length === 0
        ? nothing
        : html`<ul class="suppliers">${suppliers.map(
            ({ name, offers, fitting }) =>
              html`<li><b>${name}</b> ${offers} ${offers === 1 ? 'offer' : 'offers'}, ${fitting} for parts that you have ticked</li>`,
          )}</ul>
          <p class="brought"><button type="button" class="plain" @click=${() => {
            desk.dropPrices();
            changed();
          }}>Take them all out again</button></p>`
    }
    ${desk.choices.parts.length === 0 ? html`<p class="hint">No part is ticked yet, so no offer can be fitted to one.</p>` : nothing}`;
}

/** What was said, and what is left. */
export function doneStep(desk: OwnTripDesk): TemplateResult {
  const { title, parts, legs } = desk.choices;
  const offers = desk.suppliers.reduce((sum, line) => sum + line.offers, 0);
  return html`<dl class="said">
      <div><dt>Name</dt><dd>${title || 'My trip'}</dd></div>
      <div><dt>Parts</dt><dd>${parts.length === 0 ? 'none yet' : parts.length}</dd></div>
      <div><dt>Legs</dt><dd>${desk.broughtLegs || (legs.length === 0 ? 'none yet' : legs.length)}</dd></div>
      <div><dt>Offers</dt><dd>${offers === 0 ? 'none yet' : offers}</dd></div>
    </dl>
    <h4>Can be put in afterwards</h4>
    <ul class="left">${desk.left.map(({ what, words }) => html`<li><b>${what}:</b> ${words}</li>`)}</ul>`;
}
