import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import { riskGrid } from './risk-grid.ts';
import {
  mapWords,
  type RiskCell,
  type RiskLeg,
  type RiskMap,
  type RiskPart,
  readRisk,
  riskWords,
} from './risk-reading.ts';

/** Parts shown before all are asked for: those with most at stake. */
const FIRST = 14;

interface Pointed {
  readonly part: RiskPart;
  readonly leg: RiskLeg;
  readonly cell: RiskCell;
}

/** The map of parts by legs. Its figures are its own cells, so that no table stands beside it. */
export function mapPicture(host: PictureHost): Picture {
  let all = false;
  let calls: RiskMap['calls'] = 'left';
  let map: RiskMap | null = null;
  let pointed: Pointed | null = null;

  const pointedAt = (event: Event): Pointed | null => {
    const box = (event.target as Element).closest<HTMLTableCellElement>('td.h');
    const part = map?.parts[Number(box?.closest<HTMLElement>('tr')?.dataset.part)];
    const at = box ? box.cellIndex - 1 : -1;
    const [leg, cell] = [map?.legs[at], part?.cells[at]];
    return part && leg && cell ? { part, leg, cell } : null;
  };
  const point = (event: Event): void => {
    const next = pointedAt(event);
    if (next?.cell === pointed?.cell) return;
    pointed = next;
    host.requestUpdate();
  };

  const choice = (which: RiskMap['calls'], words: string): TemplateResult =>
    html`<button type="button" aria-pressed=${calls === which} @click=${() => {
      calls = which;
      pointed = null;
      host.requestUpdate();
    }}>${words}</button>`;

  return {
    head({ reads }): TemplateResult | typeof nothing {
      if (!reads.chance_called || !reads.cost_called) return nothing;
      return html`<span class="seg" role="group" aria-label="Which calls are drawn">${choice('left', 'All left')}${choice('called', 'As called')}</span>`;
    },
    body(cell): TemplateResult {
      // A map that is no longer told what the calls do goes back to all left.
      if (!cell.reads.chance_called || !cell.reads.cost_called) calls = 'left';
      map = readRisk(host.notebook, cell, calls);
      const count = map.parts.length;
      return html`<figure aria-label="Map">
        <p class="sr">${mapWords(map)}</p>
        <div class="scroll" role="group" aria-label="Map of parts by legs" tabindex="0" id="map"
          @pointerover=${point} @pointerleave=${point}
          @click=${(event: Event) => {
            const at = pointedAt(event);
            const node = calls === 'left' ? cell.reads.chance : cell.reads.chance_called;
            if (at && node) host.pickRow(node, at.cell.row);
          }}></div>
        <figcaption>
          <p class="readout">${pointed && map ? riskWords(map, pointed.part, pointed.leg, pointed.cell) : hintOf(calls)}</p>
          ${shadeKey(map)}
        </figcaption>
      </figure>
      ${
        count > FIRST
          ? html`<div class="more"><span>${all ? `all ${count} parts` : `${FIRST} parts with most at stake, of ${count}`}</span><span class="grow"><button class="plain" @click=${() => {
              all = !all;
              host.requestUpdate();
            }}>${all ? 'Show fewer' : `Show all ${count}`}</button></span></div>`
          : nothing
      }`;
    },
    drawn(cell: PictureCell): void {
      const place = host.renderRoot.querySelector('#map');
      if (!place || !map) return;
      const parts = all ? map.parts : map.parts.slice(0, FIRST);
      const scrolled = place.scrollLeft;
      const key = stampOf(map, parts);
      if ((place as { stamp?: string } & Element).stamp !== key) {
        (place as { stamp?: string } & Element).stamp = key;
        place.replaceChildren(
          riskGrid(map, parts, `${cell.title}: chance in percent to give up, part by leg`),
        );
        // Setting it lays the page out at once: only where it would have moved.
        if (scrolled > 0) place.scrollLeft = scrolled;
      }
      light(place, pointed);
    },
  };
}

const hintOf = (calls: RiskMap['calls']): string =>
  calls === 'left'
    ? 'Figures: chance in % to give up on that leg if left, from half a percent on. Shade: money at stake there.'
    : 'Figures: chance in % to give up on that leg with the calls as they stand. Shade: money at stake there, a planned change on the way included.';

/** All that the table shows, so that it is built again only when something in it has changed. */
function stampOf(map: RiskMap, parts: readonly RiskPart[]): string {
  const figures = parts.map(
    (part) =>
      `${part.name}:${part.cells.map((cell) => `${Math.round(cell.chance * 100)}.${cell.step}`).join()}:${part.chance.toFixed(3)}:${part.cost.toFixed(0)}`,
  );
  return `${map.calls}|${map.legs.map((leg) => `${leg.name},${leg.length},${leg.far}`).join(';')}|${figures.join(';')}`;
}

function light(place: Element, pointed: Pointed | null): void {
  for (const lit of place.querySelectorAll('.lit')) lit.classList.remove('lit');
  if (!pointed) return;
  for (const row of place.querySelectorAll('tbody tr'))
    if (row.querySelector('th')?.textContent === pointed.part.name) row.classList.add('lit');
}

function shadeKey(map: RiskMap): TemplateResult {
  return html`<p class="key">
    <span>at stake, ${map.money}</span>
    ${map.bounds.map((bound, at) => html`<span><i data-h=${at + 1}></i>from ${showNumber(bound)}</span>`)}
    <span><i class="peak"></i>likeliest leg</span>
  </p>`;
}
