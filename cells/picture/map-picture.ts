import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { setProperty } from '../shared/set-property.ts';
import { keepReading } from './keep-reading.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import { textScale } from './plot-drawing.ts';
import { RiskDrawing, type RiskPlace } from './risk-drawing.ts';
import { MAP } from './risk-frame.ts';
import { mapWords, type RiskMap, type RiskPart, readRisk, riskWords } from './risk-reading.ts';
import { riskTable } from './risk-table.ts';

/** Parts shown before all are asked for: those with most at stake. */
const FIRST = 14;

/** Room for the names of the parts, px at the usual text size, and the most of the card that it may take. */
const NAMES_PX = 170;
const NAMES_SHARE = 0.38;

/** The map of parts by legs. */
export function mapPicture(host: PictureHost): Picture {
  const drawing = new RiskDrawing();
  const reading = keepReading(readRisk);
  let all = false;
  let calls: RiskMap['calls'] = 'left';
  let map: RiskMap | null = null;
  let pointed: RiskPlace | null = null;
  let tabled: RiskMap | null = null;

  const shownParts = (): readonly RiskPart[] => (all ? map?.parts : map?.parts.slice(0, FIRST)) ?? [];
  const point = (next: RiskPlace | null): void => {
    if (next?.row === pointed?.row && next?.leg === pointed?.leg) return;
    pointed = next;
    host.requestUpdate();
  };
  const choose = (cell: PictureCell): void => {
    const row = pointed ? map?.parts[pointed.row]?.cells[pointed.leg]?.row : undefined;
    const node = calls === 'left' ? cell.reads.chance : cell.reads.chance_called;
    if (row !== undefined && row >= 0 && node) host.pickRow(node, row);
  };
  const key = (event: KeyboardEvent, cell: PictureCell): void => {
    const step = STEPS[event.key];
    if (event.key === 'Enter' && pointed) choose(cell);
    else if (step === undefined || !map) return;
    else if (!pointed) point({ row: 0, leg: 0 });
    else {
      point({
        row: within(pointed.row + step[0], shownParts().length),
        leg: within(pointed.leg + step[1], map.legs.length),
      });
    }
    event.preventDefault();
    event.stopPropagation();
    bringInSight(event.currentTarget as HTMLElement, drawing.ring(pointed));
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
      map = reading(host.notebook, cell, calls);
      const [part, leg] = pointed ? [map.parts[pointed.row], map.legs[pointed.leg]] : [];
      const at = pointed ? part?.cells[pointed.leg] : undefined;
      return html`<figure aria-label="Map">
        <p class="sr">${mapWords(map)}</p>
        <div class="scroll" id="map" role="group" tabindex="0" aria-label="Map of parts by legs; arrows move from cell to cell"
          @pointermove=${(event: PointerEvent) => point(drawing.placeAt(event.clientX, event.clientY))}
          @pointerleave=${() => point(null)}
          @click=${(event: MouseEvent) => {
            point(drawing.placeAt(event.clientX, event.clientY));
            choose(cell);
          }}
          @keydown=${(event: KeyboardEvent) => key(event, cell)}>
          <div class="heat" ${setProperty('--names', `${namesPx(host)}px`)}>
            ${namesOf(map, shownParts(), part)}
            <div id="grid"></div>
          </div>
        </div>
        <figcaption>
          <p class="readout" aria-live="polite">${part && leg && at ? riskWords(map, part, leg, at) : hintOf(calls)}</p>
          ${shadeKey(map)}
        </figcaption>
      </figure>
      ${moreLine(map.parts.length, all, () => {
        all = !all;
        pointed = null;
        host.requestUpdate();
      })}
      <details class="figures" @toggle=${() => host.requestUpdate()}><summary>Its figures</summary>
        <div class="scroll tall" id="figures" role="group" aria-label="Figures" tabindex="0"></div>
      </details>`;
    },
    drawn(cell: PictureCell, atOnce = false): void {
      const place = host.renderRoot.querySelector('#grid');
      if (!place || !map || host.widthPx === 0) return;
      const roomPx = host.widthPx - 2 - namesPx(host);
      drawing.draw(map, shownParts(), roomPx, textScale(), atOnce);
      if (drawing.svg.parentNode !== place) place.replaceChildren(drawing.svg);
      drawing.ring(pointed);
      const figures = host.renderRoot.querySelector('details[open] > #figures');
      if (figures && (tabled !== map || !figures.firstChild))
        figures.replaceChildren(riskTable(map, `${cell.title}, figures of the picture`));
      tabled = figures ? map : null;
    },
  };
}

/** Rows and legs that an arrow moves by. */
const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
};

const within = (at: number, count: number): number => Math.max(0, Math.min(count - 1, at));

const namesPx = (host: PictureHost): number =>
  Math.round(Math.min(NAMES_PX * textScale(), host.widthPx * NAMES_SHARE));

/** Names of the parts, which stay in sight while the legs are scrolled. */
function namesOf(map: RiskMap, parts: readonly RiskPart[], lit: RiskPart | undefined): TemplateResult {
  const hasHelp = map.legs.some((leg) => !Number.isNaN(leg.far));
  return html`<div class="names" aria-hidden="true">
    <p class="corner">Part</p>
    ${hasHelp ? html`<p class="far">Help is, ${map.farUnit}</p>` : nothing}
    ${parts.map((part) => html`<p class=${part === lit ? 'lit' : ''}><span>${part.name}</span></p>`)}
  </div>`;
}

/** Scrolls the map sideways to where the keyboard has moved. */
function bringInSight(place: HTMLElement, edges: readonly [number, number] | null): void {
  if (!edges) return;
  const names = place.querySelector('.names')?.clientWidth ?? 0;
  const [left, right] = [edges[0] - MAP.gap, edges[1] + MAP.gap + names];
  if (left < place.scrollLeft) place.scrollLeft = left;
  else if (right > place.scrollLeft + place.clientWidth) place.scrollLeft = right - place.clientWidth;
}

/** How many of the parts are drawn, and the way to the others. */
function moreLine(count: number, all: boolean, turn: () => void): TemplateResult | typeof nothing {
  if (count <= FIRST) return nothing;
  return html`<div class="more"><span>${all ? `all ${count} parts` : `${FIRST} parts with most at stake, of ${count}`}</span><span class="grow"><button class="plain" @click=${turn}>${all ? 'Show fewer' : `Show all ${count}`}</button></span></div>`;
}

const hintOf = (calls: RiskMap['calls']): string =>
  calls === 'left'
    ? 'Figures: chance in % to give up on that leg if left, from half a percent on. Shade: money at stake there.'
    : 'Figures: chance in % to give up on that leg with the calls as they stand. Shade: money at stake there, a planned change on the way included.';

function shadeKey(map: RiskMap): TemplateResult {
  return html`<p class="key">
    <span>at stake, ${map.money}</span>
    ${map.bounds.map((bound, at) => html`<span><i data-h=${at + 1}></i>from ${showNumber(bound)}</span>`)}
    <span><i class="peak"></i>likeliest leg</span>
  </p>`;
}
