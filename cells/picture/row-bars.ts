import { html, type TemplateResult } from 'lit';
import { setProperty } from '../shared/set-property.ts';
import { type Bars, type BarsMeasure, rowsByWeight } from './bars-reading.ts';

/** Bars by row: a table whose figures have their bars under them, each column on a scale of its own. */
export function rowBars(
  bars: Bars,
  shownRows: number,
  picked: (measure: BarsMeasure, row: number) => void,
): TemplateResult {
  const all = rowsByWeight(bars);
  const rows = all.slice(0, shownRows);
  const most = bars.measures.map((measure) =>
    Math.max(
      0,
      ...all.map((at) => Math.abs(measure.bars[at]?.value ?? 0)).filter((value) => !Number.isNaN(value)),
    ),
  );
  const first = bars.measures[0];
  return html`<div class="scroll" role="group" aria-label="Bars by row" tabindex="0"><table class="rows">
    <caption class="sr">Figures by row, with bars</caption>
    <thead>
      <tr>
        <th scope="col">Part</th>
        ${bars.measures.map((measure) => html`<th scope="col" class="num">${measure.title}<span class="u">${measure.unit}</span></th>`)}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (at) => html`<tr>
          <th scope="row">${first?.bars[at]?.name ?? ''}</th>
          ${bars.measures.map((measure, place) => {
            const bar = measure.bars[at];
            const share = bar && most[place] ? Math.abs(bar.value) / most[place] : 0;
            return html`<td class="num bar" @click=${() => picked(measure, bar?.row ?? 0)}>
              ${bar && bar.value !== 0 ? bar.shown : html`<span class="gap">–</span>`}
              <i ${setProperty('--share', `${Math.round((Number.isNaN(share) ? 0 : share) * 100)}%`)}></i>
            </td>`;
          })}
        </tr>`,
      )}
    </tbody>
  </table></div>`;
}
