import { html, nothing, svg, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import type { PlanTotals } from '../../src/plan/plan-result.ts';
import { setProperty } from '../shared/set-property.ts';
import type { LimitRow } from './plan-limits.ts';
import type { LateOffer, Order, OrderLine } from './plan-orders.ts';
import { daysWords, orderByWords, type Verdict } from './plan-words.ts';

/** The sign of a verdict: a nut with a tick when proven, open when not, an octagon with a bar when it fails. */
function verdictSign(kind: Verdict['kind']): TemplateResult {
  const nut = 'M6 1.5h8l4.5 4.3v8.4L14 18.5H6L1.5 14.2V5.8z';
  const inside = {
    proven: svg`<path d=${nut} fill="var(--ink)"/><path d="M5.6 10.2l3 3 5.6-6.2" fill="none" stroke="var(--sheet)" stroke-width="2"/>`,
    found: svg`<path d=${nut} fill="none" stroke="var(--ink)" stroke-width="2"/><path d="M6.5 10h7" stroke="var(--ink)" stroke-width="2"/>`,
    waits: svg`<path d=${nut} fill="none" stroke="var(--ink-2)" stroke-width="1.6" stroke-dasharray="4 3"/>`,
    short: svg`<path d=${nut} fill="var(--fault)"/><path d="M10 5v6M10 13v2" stroke="var(--sheet)" stroke-width="2.2"/>`,
    none: svg`<path d=${nut} fill="var(--fault)"/><path d="M10 5v6M10 13v2" stroke="var(--sheet)" stroke-width="2.2"/>`,
  }[kind];
  return html`<svg viewBox="0 0 20 20" aria-hidden="true" focusable="false">${inside}</svg>`;
}

/** How much the plan is to be trusted. */
export function verdictView(verdict: Verdict): TemplateResult {
  return html`<div class="verdict" data-kind=${verdict.kind} part="verdict">${verdictSign(verdict.kind)}
    <p><b>${verdict.word}.</b>${verdict.sentence}</p></div>`;
}

/** What the plan comes to. */
export function sumsView(totals: PlanTotals, money: string): TemplateResult {
  const kg = totals.packs.reduce((sum, pack) => sum + pack.mass_kg, 0);
  const litres = totals.packs.reduce((sum, pack) => sum + pack.volume_L, 0);
  const sums: readonly (readonly [string, string, string])[] = [
    ['Cash', showNumber(totals.cash, 2), money],
    ['of it freight', showNumber(totals.freight, 2), money],
    ['Pack weight', showNumber(kg, 2), 'kg'],
    ['Pack volume', showNumber(litres, 2), 'L'],
    ['Shed hours', showNumber(totals.shed_hours, 2), 'h'],
    ['Expected cost', showNumber(totals.expected_cost, 2), money],
    ['Chance of a recovery', showNumber(totals.trip_risk * 100, 1), '%'],
  ];
  return html`<dl class="sums">${sums.map(
    ([name, figure, unit]) => html`<div><dt>${name}</dt><dd>${figure} <small>${unit}</small></dd></div>`,
  )}</dl>`;
}

/** The limits of all parts together, each with what is used of it and what one more unit would save. */
export function limitsView(
  rows: readonly LimitRow[],
  note: TemplateResult | string,
): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  return html`<section class="part flush" aria-labelledby="limits"><h3 id="limits" class="one-line">Limits<span class="beside">${note}</span></h3>
    <div class="scroll" role="group" aria-label="Limits of the plan" tabindex="0"><table class="limits"><caption class="sr">Limits of the plan</caption>
      <thead><tr><th scope="col">Limit</th><th scope="col" class="num worked">Used</th><th scope="col" class="num">Of</th>
        <th scope="col" class="g"><span class="sr">Share used</span></th><th scope="col" class="more-saves">One more</th></tr></thead>
      <tbody>${rows.map(
        (
          row,
        ) => html`<tr class=${row.level}><th scope="row">${row.name}${moreToo(row)}</th><td class="num worked">${row.used}</td><td class="num">${row.limit} ${row.unit}</td>
          <td class="g"><span class="gauge" data-level=${row.level} role="meter" aria-label=${row.name} aria-valuemin="0" aria-valuemax="100"
            aria-valuenow=${Math.round(100 * Math.min(1, row.share))} aria-valuetext="${row.used} of ${row.limit} ${row.unit}"><b ${setProperty('--u', `${100 * Math.min(1, row.share)}%`)}></b></span></td>
          <td class="more-saves">${row.more}</td></tr>`,
      )}</tbody></table></div></section>`;
}

/** What one more would save, on a narrow card; its line is kept until that is worked out. */
const moreToo = ({ kind, more }: LimitRow): TemplateResult | typeof nothing =>
  kind === 'trip_risk'
    ? nothing
    : html`<small class="more-too" aria-hidden="true">${more === '' ? '\u00a0' : more}</small>`;

/** The purchases by supplier. */
export function ordersView(
  orders: readonly Order[],
  totals: PlanTotals,
  money: string,
  today: string | null,
): TemplateResult {
  if (orders.length === 0)
    return html`<section class="part"><h3>To buy</h3><p>Nothing: every call is made with what is on hand.</p></section>`;
  return html`<section class="part flush" aria-labelledby="buy"><h3 id="buy">To buy<span class="beside">by supplier, the one to be ordered first in front</span></h3>
    <div class="scroll" role="group" aria-label="What the plan buys" tabindex="0"><table class="shopping"><caption class="sr">What the plan buys</caption>
      <thead><tr><th scope="col">Covers</th><th scope="col" class="code">Part number</th><th scope="col" class="num">Packs</th>
        <th scope="col" class="num each">Each<span class="u">${money}</span></th><th scope="col" class="num worked">Sum<span class="u">${money}</span></th></tr></thead>
      ${orders.map((order) => orderView(order, today))}
      <tfoot><tr><th scope="row">Goods and freight</th><td class="code"></td><td></td><td class="each"></td><td class="num">${showNumber(totals.cash, 2)}</td></tr></tfoot>
    </table></div></section>`;
}

function orderView(order: Order, today: string | null): TemplateResult {
  const arrives =
    order.arrivesInDays === null ? 'to be had at once' : `arrives in ${daysWords(order.arrivesInDays)}`;
  const by = order.orderWithinDays === null ? '' : orderByWords(order.orderWithinDays, today);
  return html`<tbody class="order">
    <tr><th scope="rowgroup" colspan="2">${order.supplier}<span class="when">${arrives}${by === '' ? nothing : html`, <span class="by">${by}</span>`}</span></th>
      <td class="code"></td><td class="each"></td><td class="num">${showNumber(order.goods + order.freight, 2)}</td></tr>
    ${order.lines.map(lineView)}
    <tr><td class="covers freight">Freight${freightWords(order)}</td><td class="code"></td><td></td><td class="each"></td>
      <td class="num worked">${order.free ? 'free' : showNumber(order.freight, 2)}</td></tr>
  </tbody>`;
}

function freightWords({ free, freeFrom, freight }: Order): string {
  if (free) return `, free from ${showNumber(freeFrom ?? 0, 2)}`;
  return freeFrom === null || freight === 0 ? '' : `, free only from ${showNumber(freeFrom, 2)}`;
}

function lineView(line: OrderLine): TemplateResult {
  return html`<tr><td class="covers">${line.isKit ? html`<span class="kit">kit</span>` : nothing}${line.covers.join('; ')}<span class="code-too">${line.partNumber}</span></td>
    <td class="code">${line.partNumber}</td><td class="num">${line.packs}</td><td class="num each">${showNumber(line.each, 2)}</td>
    <td class="num worked">${showNumber(line.sum, 2)}</td></tr>`;
}

/** What comes too late, folded. */
export function lateView(late: readonly LateOffer[]): TemplateResult | typeof nothing {
  if (late.length === 0) return nothing;
  const count = late.length === 1 ? '1 offer comes too late' : `${late.length} offers come too late`;
  return html`<details class="late"><summary>${count} and ${late.length === 1 ? 'is' : 'are'} left out</summary>
    <ul>${late.map(
      (
        offer,
      ) => html`<li><span>${offer.covers.join('; ')}</span><span>${offer.supplier}, ${offer.partNumber}</span>
        <span>arrives in ${daysWords(offer.arrivesInDays)}, ${daysWords(offer.lateByDays)} late</span></li>`,
    )}</ul></details>`;
}
