import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import type { PictureCell } from '../../src/notebook/document.ts';
import { setProperty } from '../shared/set-property.ts';
import type { Picture, PictureHost } from './picture-host.ts';
import {
  placeOnStrip,
  readTaken,
  type Taken,
  type TakenReading,
  takenDecimals,
  takenWords,
} from './taken-reading.ts';

/**
 * Readings that were taken, each beside what was expected of it at the same distance. Gauges differ in their
 * units, so every reading has a strip of its own on which its band is the middle third; its figures stand beside.
 */
export function takenPicture(host: PictureHost): Picture {
  return {
    head: () => nothing,
    body(cell): TemplateResult {
      const taken = readTaken(host.notebook, cell);
      return html`<figure aria-label="Picture">
        <p class="words">${takenWords(taken)}</p>
        ${taken.readings.length === 0 ? nothing : strips(taken, (row) => pickReading(host, cell, row))}
      </figure>`;
    },
    drawn(): void {},
  };
}

function pickReading(host: PictureHost, cell: PictureCell, row: number): void {
  if (cell.reads.middle) host.pickRow(cell.reads.middle, row);
}

function strips(taken: Taken, picked: (row: number) => void): TemplateResult {
  return html`<div class="scroll" role="group" aria-label="Readings against what was expected" tabindex="0"><table class="taken">
      <caption class="sr">Readings taken, with what was expected</caption>
      <thead><tr>
        <th scope="col">Part</th><th scope="col">Place</th><th scope="col" class="num">At<span class="u">${taken.alongUnit}</span></th>
        <th scope="col" class="num">Likely</th><th scope="col" class="num">Eight in ten between</th><th scope="col" class="num">Read</th>
        <th scope="col" class="strip"><span class="sr">Drawn</span></th><th scope="col">In the band</th>
      </tr></thead>
      <tbody>${taken.readings.map((one) => stripRow(one, picked))}</tbody>
    </table></div>
    <p class="key"><span><i data-h="2"></i>band of eight in ten</span><span>bar: likely reading</span><span>disc: read, within the band; diamond: outside it</span></p>`;
}

function stripRow(one: TakenReading, picked: (row: number) => void): TemplateResult {
  const decimals = takenDecimals(one);
  const known = one.held !== null;
  const band = known ? `${showNumber(one.low, decimals)} and ${showNumber(one.high, decimals)}` : '–';
  const share = (figure: number): string => `${(100 * placeOnStrip(one, figure)).toFixed(1)}%`;
  return html`<tr @click=${() => picked(one.row)}>
    <th scope="row">${one.part}</th><td>${one.place}</td><td class="num">${Number.isNaN(one.along) ? '–' : showNumber(one.along, 0)}</td>
    <td class="num">${Number.isNaN(one.middle) ? '–' : showNumber(one.middle, decimals)}</td><td class="num">${band}</td>
    <td class="num">${showNumber(one.taken, decimals)}<span class="u">${one.unit}</span></td>
    <td class="strip">${known ? html`<span class="track" aria-hidden="true"><b ${setProperty('--at', share(one.middle))}></b><i class=${one.held ? 'in' : 'out'} ${setProperty('--at', share(one.taken))}></i></span>` : nothing}</td>
    <td>${one.held === null ? 'nothing expected' : one.held ? 'yes' : one.taken < one.low ? 'no, below' : 'no, above'}</td>
  </tr>`;
}
