import { html, nothing, type TemplateResult } from 'lit';
import { setProperty } from '../shared/set-property.ts';
import { barsHeight, barsPlot } from './bars-plot.ts';
import { type Bars, barsWords, readBars, rowsByWeight } from './bars-reading.ts';
import { barsTable } from './figures-table.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import { loadPlot } from './plot-drawing.ts';
import { rowBars } from './row-bars.ts';

/** Rows shown before all are asked for. */
const FIRST = 12;

/** Bars of single figures, or of columns row by row. */
export function barsPicture(host: PictureHost): Picture {
  let bars: Bars | null = null;
  let all = false;
  let stamp = '';

  const draw = async (): Promise<void> => {
    const Plot = await loadPlot();
    if (!bars || host.widthPx === 0) return;
    bars.measures.forEach((measure, at) => {
      const place = host.renderRoot.querySelector(`#plot-${at}`);
      place?.replaceChildren(barsPlot(Plot, measure, Math.max(240, host.widthPx - 34)));
    });
  };
  const turn = (): void => {
    all = !all;
    host.requestUpdate();
  };
  const byRow = (now: Bars): TemplateResult => {
    const count = rowsByWeight(now).length;
    const shown = all ? count : Math.min(FIRST, count);
    return html`<figure aria-label="Picture">
        <p class="words">${barsWords(now)}</p>
        ${rowBars(now, shown, (measure, row) => host.pickRow(measure.node, row))}
      </figure>
      ${
        count > FIRST
          ? html`<div class="more">
              <span>${all ? `all ${count} rows` : `the first ${FIRST} of ${count} rows`}</span>
              <span class="grow"><button class="plain" @click=${turn}>${all ? 'Show fewer' : `Show all ${count}`}</button></span>
            </div>`
          : nothing
      }`;
  };
  const single = (now: Bars): TemplateResult => html`<figure aria-label="Picture">
      <p class="words">${barsWords(now)}</p>
      ${now.measures.map((measure, at) => {
        return html`<div id="plot-${at}" class="plot" aria-hidden="true" ${setProperty('--height', `${barsHeight(measure.bars.length)}px`)}></div>
          ${measure.unit ? html`<p class="unit">${measure.unit}</p>` : nothing}`;
      })}
    </figure>
    ${
      now.measures.length === 0
        ? nothing
        : html`<details class="figures"><summary>Its figures</summary><div class="scroll">${barsTable(now)}</div></details>`
    }`;

  return {
    head: () => nothing,
    body(cell): TemplateResult {
      bars = readBars(host.notebook, cell);
      return bars.byRow ? byRow(bars) : single(bars);
    },
    drawn(): void {
      if (!bars || bars.byRow || host.widthPx === 0) return;
      const now = `${host.widthPx}|${JSON.stringify(bars)}`;
      if (now === stamp) return;
      stamp = now;
      // What cannot be drawn leaves the words and the figures, which say the same.
      draw().catch(() => {
        stamp = '';
      });
    },
  };
}
