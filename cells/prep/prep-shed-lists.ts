import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import { callGlyph } from '../calls/call-glyph.ts';
import { cautionIcon } from '../shared/icons.ts';
import type { PrepReading } from './prep-reading.ts';
import { moneyWords, opensWords, orderWords } from './prep-words.ts';
import type { JobGroup } from './shed-jobs.ts';
import type { Order, ShoppingLine } from './shopping.ts';

/** An empty box to be ticked by hand. */
export const tick = html`<td class="tick"><i></i></td>`;

/** What to buy, order by order, with part numbers, pieces and landed prices. */
export function shoppingTable(prep: PrepReading): TemplateResult {
  return html`<table class="wide shop">
    <caption class="sr">Shopping list by supplier</caption>
    <thead>
      <tr>
        <th scope="col" class="tick"><span class="sr">Ticked off</span></th>
        <th scope="col">Part</th>
        <th scope="col">Number</th>
        <th scope="col">Call</th>
        <th scope="col" class="num">Pieces</th>
        <th scope="col" class="num">Each<span class="u">${prep.money}</span></th>
        <th scope="col" class="num">Sum<span class="u">${prep.money}</span></th>
      </tr>
    </thead>
    ${prep.shopping.orders.map(orderRows)}
    <tfoot>
      ${
        prep.shopping.freight > 0
          ? html`<tr><td></td><th scope="row" colspan="5">Freight</th><td class="num">${moneyWords(prep.shopping.freight)}</td></tr>`
          : nothing
      }
      <tr><td></td><th scope="row" colspan="5">In all</th><td class="num">${moneyWords(prep.shopping.sum)}</td></tr>
    </tfoot>
  </table>`;
}

function orderRows(order: Order): TemplateResult {
  return html`<tbody>
    <tr class="group">
      <th scope="rowgroup" colspan="6"><b>${order.supplier}</b> ${orderWords(order)}</th>
      <td class="num">${moneyWords(order.sum)}</td>
    </tr>
    ${order.lines.map(shoppingRow)}
  </tbody>`;
}

function shoppingRow(line: ShoppingLine): TemplateResult {
  const pack = line.pack > 1 ? html` <small>pack of ${showNumber(line.pack)}</small>` : nothing;
  return html`<tr>
    ${tick}
    <th scope="row">${line.part}</th>
    <td class="nr">${line.number}</td>
    <td class="do">${line.call ? html`${callGlyph(line.call.kind)} ${line.call.words}` : 'kit'}</td>
    <td class="num pieces">${showNumber(line.pieces)}${pack}</td>
    <td class="num each">${moneyWords(line.each)}</td>
    <td class="num sum">${moneyWords(line.sum)}</td>
  </tr>`;
}

/** What to fit, what comes off once for several jobs, with hours, cautions and room for readings. */
export function jobsTable(prep: PrepReading): TemplateResult {
  return html`<table class="wide jobs">
    <caption class="sr">Jobs in the shed, in the order of their turns</caption>
    <thead>
      <tr>
        <th scope="col" class="tick"><span class="sr">Ticked off</span></th>
        <th scope="col">Job, in this order</th>
        <th scope="col">Mind</th>
        <th scope="col" class="num">Hours<span class="u">h</span></th>
        <th scope="col" class="write">Reading after</th>
        <th scope="col" class="write">Done by</th>
      </tr>
    </thead>
    ${prep.jobs.map(jobRows)}
    <tfoot>
      <tr>
        <td></td><th scope="row" colspan="2">In all</th><td class="num">${showNumber(prep.hours, 2)}</td><td></td><td></td>
      </tr>
    </tfoot>
  </table>`;
}

function jobRows(group: JobGroup): TemplateResult {
  return html`<tbody>
    <tr class="group">
      <th scope="rowgroup" colspan="3"><b>${opensWords(group.opens, group.jobs.length)}</b></th>
      <td class="num">${showNumber(group.hours, 2)}</td><td></td><td></td>
    </tr>
    ${group.jobs.map(
      (job) => html`<tr>
        ${tick}
        <th scope="row">${job.part}${job.call.critical ? cautionIcon() : nothing}</th>
        <td class="mind">${job.hint}</td>
        <td class="num">${showNumber(job.hours, 2)}</td>
        <td class="write">${job.unit ? html`<i></i><small>${job.unit}</small>` : nothing}</td>
        <td class="write"><i></i></td>
      </tr>`,
    )}
  </tbody>`;
}
