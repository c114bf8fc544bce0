import { html, nothing, type TemplateResult } from 'lit';
import type { EntryDetail } from '../../../cells/shared/figure-field.ts';
import { cautionIcon } from '../../../cells/shared/icons.ts';
import { showNumber, showUnit } from '../../formula/show.ts';
import { asksAge } from '../../starter/own-trip/choices.ts';
import type { CataloguePart } from '../../starter/own-trip/part-catalogue.ts';
import type { OwnTripDesk } from './own-trip-desk.ts';

/** Every part of the reference data, to be ticked, with the one figure that it asks for. */
export function partsStep(desk: OwnTripDesk, changed: () => void): TemplateResult {
  const tick = (parts: readonly CataloguePart[], isTicked: boolean): void => {
    desk.tick(parts, isTicked);
    changed();
  };
  return html`${[...desk.groups].map(([group, parts]) => {
    const count = parts.filter((part) => desk.ticked(part)).length;
    const all = count === parts.length;
    return html`<fieldset class="parts">
      <legend>${group} <span class="count">${count} of ${parts.length}</span></legend>
      <button type="button" class="plain all" @click=${() => tick(parts, !all)}>${all ? 'None' : 'All'}<span class="sr"> of ${group}</span></button>
      <ul>${parts.map((part) => line(desk, part, tick, changed))}</ul>
    </fieldset>`;
  })}`;
}

function line(
  desk: OwnTripDesk,
  part: CataloguePart,
  tick: (parts: readonly CataloguePart[], isTicked: boolean) => void,
  changed: () => void,
): TemplateResult {
  const ticked = desk.ticked(part);
  return html`<li>
    <label class="tick"><input type="checkbox" .checked=${ticked !== undefined}
      @change=${(event: Event) => tick([part], (event.target as HTMLInputElement).checked)} /><span>${part.name}</span></label>
    ${part.critical ? cautionIcon() : nothing}
    ${ticked === undefined ? nothing : html`<div class="now">${asked(desk, part, changed)}</div>`}
  </li>`;
}

function asked(desk: OwnTripDesk, part: CataloguePart, changed: () => void): TemplateResult {
  if (part.judgedBy === 'chance')
    return html`<span class="hint">Goes by chance: there is nothing to measure.</span>`;
  const ticked = desk.ticked(part);
  if (asksAge(part)) {
    return html`<sw-figure-field size="line" .label=${`${part.name}, age in km`} .entry=${ticked?.ageKm ?? null}
        .column=${{ kind: 'number', unit: 'km' }} .unit=${'km old'}
        @sw-entry=${(event: CustomEvent<EntryDetail>) => {
          desk.tell(part, { ageKm: event.detail.entry as number | null });
          changed();
        }}></sw-figure-field>
      <span class="hint">${part.gauge}; counted since it was fitted, in sealed km</span>`;
  }
  const unit = showUnit(part.unit);
  return html`<sw-figure-field size="line" .label=${`${part.name}, now, ${unit}`} .entry=${ticked?.now ?? null}
      .column=${{ kind: 'number', unit: part.unit }} .unit=${unit}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => {
        desk.tell(part, { now: event.detail.entry as number | null });
        changed();
      }}></sw-figure-field>
    <span class="hint">${part.gauge}; new ${figure(part.newReading)}, limit ${figure(part.limit)} ${unit}</span>`;
}

const figure = (reading: number | null): string => (reading === null ? 'not known' : showNumber(reading));
