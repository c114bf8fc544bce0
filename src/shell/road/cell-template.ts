import { html, type TemplateResult } from 'lit';
import type { CardLink } from '../../../cells/shared/cell-element.ts';
import type { PickDetail } from '../../../cells/shared/cell-events.ts';
import type { LiveNotebook } from '../../notebook/live-notebook.ts';
import type { Stop } from './stops.ts';

export interface CardProperties {
  readonly notebook: LiveNotebook;
  readonly selected: boolean;
  readonly link: CardLink | null;
  readonly picked: PickDetail | null;
}

/** The element of a card, by the kind of its cell. */
export function cellTemplate(stop: Stop, card: CardProperties): TemplateResult {
  const { notebook, selected, link, picked } = card;
  switch (stop.cells[0]?.kind) {
    case 'note':
      return html`<sw-note-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link}></sw-note-cell>`;
    case 'value':
      return html`<sw-value-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link} .picked=${picked}></sw-value-cell>`;
    case 'formula':
      return html`<sw-formula-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link}></sw-formula-cell>`;
    case 'table':
      return html`<sw-table-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link} .picked=${picked}></sw-table-cell>`;
    case 'pairing':
      return html`<sw-pairing-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link} .picked=${picked}></sw-pairing-cell>`;
    case 'tally':
      return html`<sw-tally-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link}></sw-tally-cell>`;
    case 'calls':
      return html`<sw-calls-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link} .picked=${picked}></sw-calls-cell>`;
    case 'plan':
      return html`<sw-plan-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link}></sw-plan-cell>`;
    case 'picture':
      return html`<sw-picture-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link} .picked=${picked}></sw-picture-cell>`;
    case 'prep':
      return html`<sw-prep-cell class="card" .notebook=${notebook} .cellId=${stop.id} .selected=${selected} .link=${link}></sw-prep-cell>`;
    case undefined:
      return html``;
  }
}
