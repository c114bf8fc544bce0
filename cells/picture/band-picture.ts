import { html, nothing, type TemplateResult } from 'lit';
import type { PictureCell } from '../../src/notebook/document.ts';
import { setProperty } from '../shared/set-property.ts';
import { type BandSvg, bandHeight, bandPlot } from './band-plot.ts';
import { type Band, bandWords, pointWords, readBand } from './band-reading.ts';
import { bandTable } from './figures-table.ts';
import { keepReading } from './keep-reading.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import { loadPlot } from './plot-drawing.ts';

/** A reading along the road, with its 80% band, its limit and the places. */
export function bandPicture(host: PictureHost): Picture {
  const reading = keepReading(readBand);
  let band: Band | null = null;
  let svg: BandSvg | null = null;
  let stamp = '';
  let lit: number | null = null;
  const moved = pointerMoves();

  const point = (at: number | null): void => {
    if (at === lit) return;
    lit = at;
    host.requestUpdate();
  };
  /** The place nearest to the pointer; null outside the drawing. */
  const nearest = (event: PointerEvent): number | null => {
    const scale = svg?.scale('x');
    if (!svg || !scale?.invert || !band) return null;
    const along = Number(scale.invert(event.clientX - svg.getBoundingClientRect().left));
    let best: number | null = null;
    band.points.forEach((one, at) => {
      const before =
        best === null ? Number.POSITIVE_INFINITY : Math.abs((band?.points[best]?.along ?? 0) - along);
      if (Math.abs(one.along - along) < before) best = at;
    });
    return best;
  };
  const key = (event: KeyboardEvent): void => {
    const step = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (step === undefined || !band) return;
    event.preventDefault();
    event.stopPropagation();
    point(
      Math.min(band.points.length - 1, Math.max(0, (lit ?? (step > 0 ? -1 : band.points.length)) + step)),
    );
  };
  const choose = (cell: PictureCell): void => {
    const at = lit === null ? undefined : band?.points[lit];
    if (at && cell.reads.middle) host.pickRow(cell.reads.middle, at.row);
  };
  const draw = async (): Promise<void> => {
    const Plot = await loadPlot();
    const place = host.renderRoot.querySelector('#plot');
    if (!place || !band || host.widthPx === 0) return;
    svg = bandPlot(Plot, band, innerWidth(host));
    place.replaceChildren(svg);
    mark(place, svg, band, lit);
  };

  return {
    head(cell): TemplateResult | typeof nothing {
      const names = reading(host.notebook, cell, undefined);
      if (names.names.length < 2) return nothing;
      return html`<span class="pick"><select aria-label="Which one is drawn" @change=${(event: Event) => host.keep({ ...cell, one: (event.target as HTMLSelectElement).value })}>
        ${names.names.map((name) => html`<option ?selected=${name === names.one}>${name}</option>`)}
      </select></span>`;
    },
    body(cell): TemplateResult {
      band = reading(host.notebook, cell, undefined);
      const at = lit === null ? undefined : band.points[lit];
      return html`<figure aria-label="Picture">
          <p class="words two">${bandWords(band)}</p>
          <div id="plot" class="plot" ${setProperty('--height', `${bandHeight()}px`)} tabindex="0" role="group"
            aria-label="${band.one} along the road; arrows move from place to place"
            @pointermove=${(event: PointerEvent) => moved(event) && point(nearest(event))}
            @pointerleave=${(event: PointerEvent) => moved(event) && point(null)}
            @click=${() => choose(cell)}
            @keydown=${key}></div>
          <figcaption>
            <p class="readout" aria-live="polite">${at ? pointWords(band, at) : 'Line: the likely reading. Band: eight trips in ten. Point at a place for its figures.'}</p>
          </figcaption>
        </figure>
        <details class="figures"><summary>Its figures</summary>
          <div class="scroll tall" role="group" aria-label="Figures" tabindex="0">${bandTable(band, lit, point)}</div>
        </details>`;
    },
    drawn(): void {
      const place = host.renderRoot.querySelector('#plot');
      if (!band || !place || host.widthPx === 0) return;
      const now = `${host.widthPx}|${JSON.stringify(band.points)}|${band.limit}|${band.unit}`;
      if (now === stamp) {
        if (!svg) return;
        // A card that was folded and opened again has another place.
        if (svg.parentNode !== place) place.replaceChildren(svg);
        mark(place, svg, band, lit);
        return;
      }
      stamp = now;
      // What cannot be drawn leaves the words and the figures, which say the same.
      draw().catch(() => {
        stamp = '';
      });
    },
  };
}

/**
 * Whether a pointer has moved since it was asked last, or has left. A browser tells of a move too where the page has
 * moved under a pointer at rest: what a key chose meanwhile stays.
 */
function pointerMoves(): (event: PointerEvent) => boolean {
  let at = '';
  return (event) => {
    const before = at;
    at = event.type === 'pointerleave' ? '' : `${event.clientX} ${event.clientY}`;
    return at === '' || at !== before;
  };
}

const innerWidth = (host: PictureHost): number => Math.max(240, host.widthPx - 34);

/** A hair line and a ring at the place that is pointed at. */
function mark(place: Element, svg: BandSvg, band: Band, lit: number | null): void {
  const [x, y] = [svg.scale('x'), svg.scale('y')];
  const old = place.querySelector('.pointer');
  const at = lit === null ? undefined : band.points[lit];
  const drawing = svg instanceof SVGSVGElement ? svg : svg.querySelector('svg');
  if (!at || !x || !y || !drawing) {
    old?.remove();
    return;
  }
  const ns = 'http://www.w3.org/2000/svg';
  const group = old ?? document.createElementNS(ns, 'g');
  group.setAttribute('class', 'pointer');
  const line = group.querySelector('line') ?? group.appendChild(document.createElementNS(ns, 'line'));
  const ring = group.querySelector('circle') ?? group.appendChild(document.createElementNS(ns, 'circle'));
  const [bottom, top] = [...(y.range ?? [bandHeight(), 0])].map(String) as [string, string];
  const [px, py] = [String(x.apply(at.along)), String(y.apply(at.middle))];
  for (const [name, value] of [
    ['x1', px],
    ['x2', px],
    ['y1', top],
    ['y2', bottom],
  ] as const)
    line.setAttribute(name, value);
  for (const [name, value] of [
    ['cx', px],
    ['cy', py],
    ['r', '5'],
  ] as const)
    ring.setAttribute(name, value);
  if (!old) drawing.append(group);
}
