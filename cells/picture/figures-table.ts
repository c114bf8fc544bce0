import { html, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import { type Band, bandDecimals } from './band-reading.ts';
import type { Bars } from './bars-reading.ts';

/** The figures behind a band, point by point. `lit` is the point that is pointed at. */
export function bandTable(
  band: Band,
  lit: number | null,
  point: (at: number | null) => void,
): TemplateResult {
  const decimals = bandDecimals(band);
  return html`<table>
    <caption class="sr">${band.one}, figures of the picture</caption>
    <thead>
      <tr>
        <th scope="col">Place</th>
        <th scope="col" class="num">At<span class="u">${band.alongUnit}</span></th>
        <th scope="col" class="num">Likely<span class="u">${band.unit}</span></th>
        <th scope="col" class="num">From<span class="u">1 in 10 below</span></th>
        <th scope="col" class="num">To<span class="u">1 in 10 above</span></th>
      </tr>
    </thead>
    <tbody>
      ${band.points.map(
        (
          one,
          at,
        ) => html`<tr class=${at === lit ? 'lit' : ''} @pointerenter=${() => point(at)} @pointerleave=${() => point(null)}>
          <th scope="row">${one.place}</th>
          <td class="num">${showNumber(one.along, 0)}</td>
          <td class="num">${showNumber(one.middle, decimals)}</td>
          <td class="num">${showNumber(one.low, decimals)}</td>
          <td class="num">${showNumber(one.high, decimals)}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

/** The figures behind bars of single figures. */
export function barsTable(bars: Bars): TemplateResult {
  return html`<table>
    <caption class="sr">Figures of the picture</caption>
    <thead>
      <tr>
        <th scope="col">Figure</th>
        <th scope="col" class="num">Now</th>
        <th scope="col">Unit</th>
      </tr>
    </thead>
    <tbody>
      ${bars.measures.flatMap((measure) =>
        measure.bars.map(
          (bar) => html`<tr>
            <th scope="row">${bar.name}</th>
            <td class="num">${bar.shown}</td>
            <td>${measure.unit}</td>
          </tr>`,
        ),
      )}
    </tbody>
  </table>`;
}
