import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import { callGlyph } from '../calls/call-glyph.ts';
import { callKindOf } from '../calls/call-kind.ts';
import { cautionIcon } from '../shared/icons.ts';
import type { PrepReading } from './prep-reading.ts';
import { tick } from './prep-shed-lists.ts';
import { spareWords } from './prep-words.ts';
import type { RoadCheck } from './road-checks.ts';

/** What goes along, bag by bag. */
export function packTable(prep: PrepReading): TemplateResult {
  return html`<table>
    <caption class="sr">Pack list by bag</caption>
    <thead>
      <tr>
        <th scope="col" class="tick"><span class="sr">Ticked off</span></th>
        <th scope="col">Spare</th>
        <th scope="col">Carried by</th>
        <th scope="col" class="num">Weight<span class="u">${prep.massUnit}</span></th>
        <th scope="col" class="num">Bulk<span class="u">${prep.volumeUnit}</span></th>
      </tr>
    </thead>
    ${prep.bags.map(
      (bag) => html`<tbody>
        <tr class="group">
          <th scope="rowgroup" colspan="3"><b>${bag.bag || 'no bag named'}</b></th>
          <td class="num">${showNumber(bag.mass, 2)}</td><td class="num">${showNumber(bag.volume, 2)}</td>
        </tr>
        ${bag.lines.map(
          (line) => html`<tr>
            ${tick}
            <th scope="row">${spareWords(line)}</th>
            <td class="who">${line.carrier}</td>
            <td class="num">${showNumber(line.mass, 2)}</td>
            <td class="num">${showNumber(line.volume, 2)}</td>
          </tr>`,
        )}
      </tbody>`,
    )}
  </table>`;
}

/** Where to look, and what to change, by distance from the start. */
export function checksTable(prep: PrepReading): TemplateResult {
  return html`<table>
    <caption class="sr">Checks on the road by distance</caption>
    <thead>
      <tr>
        <th scope="col" class="tick"><span class="sr">Ticked off</span></th>
        <th scope="col">Part</th>
        <th scope="col" class="num">Likely</th>
        <th scope="col" class="num">Change at</th>
        <th scope="col" class="write">Reading</th>
      </tr>
    </thead>
    ${prep.checks.map(
      (stop) => html`<tbody>
        <tr class="group">
          <th scope="rowgroup" colspan="5"><b>At ${stop.shownAt} ${stop.unit}</b> ${stop.place}</th>
        </tr>
        ${stop.checks.map(checkRow)}
      </tbody>`,
    )}
  </table>`;
}

function checkRow(check: RoadCheck): TemplateResult {
  const part = html`${check.part}${check.critical ? cautionIcon() : nothing}`;
  if (check.change)
    return html`<tr>${tick}<th scope="row" colspan="3">${part} <small>change it here</small></th><td class="write"><i></i></td></tr>`;
  return html`<tr>
    ${tick}
    <th scope="row">${part} <small>${check.gauge}</small></th>
    <td class="num">${check.expected}</td>
    <td class="num">${check.limit}</td>
    <td class="write"><i></i><small>${check.unit}</small></td>
  </tr>`;
}

/** Litres to leave each place with. */
export function refillsTable(prep: PrepReading): TemplateResult {
  const { refills } = prep;
  return html`<table>
    <caption class="sr">Fuel and water to leave each place with</caption>
    <thead>
      <tr>
        <th scope="col">Leaving</th>
        <th scope="col" class="num">At<span class="u">${refills.distanceUnit}</span></th>
        <th scope="col" class="num">Fuel<span class="u">${refills.fuelUnit}</span></th>
        <th scope="col" class="num">Water<span class="u">${refills.waterUnit}</span></th>
      </tr>
    </thead>
    <tbody>
      ${refills.stops.map(
        (stop) => html`<tr>
          <th scope="row">${stop.place}${stop.says ? html` <b class="gap-says">${stop.says}</b>` : nothing}</th>
          <td class="num">${stop.shownAt}</td>
          <td class="num">${stop.fuel}</td>
          <td class="num">${stop.water}</td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Parts that stay on, with what they read now and their limits. */
export function leftOnTable(prep: PrepReading): TemplateResult {
  return html`<table>
    <caption class="sr">Parts that stay on</caption>
    <thead>
      <tr>
        <th scope="col" class="tick"><span class="sr">Ticked off</span></th>
        <th scope="col">Part</th>
        <th scope="col" class="num">Now</th>
        <th scope="col" class="num">Limit</th>
        <th scope="col" class="write">Reading</th>
      </tr>
    </thead>
    <tbody>
      ${prep.leftOn.map(
        (left) => html`<tr>
          ${tick}
          <th scope="row" class="hang">${callGlyph(callKindOf(left.call, null))} <span class="sr">${left.words}: </span>${left.part}${left.critical ? cautionIcon() : nothing}</th>
          <td class="num">${left.now}</td>
          <td class="num">${left.limit}</td>
          <td class="write"><i></i><small>${left.unit}</small></td>
        </tr>`,
      )}
    </tbody>
  </table>`;
}
