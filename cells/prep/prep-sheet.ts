import { html, nothing, type TemplateResult } from 'lit';
import { dateWords } from '../../src/formula/day-words.ts';
import { showNumber } from '../../src/formula/show.ts';
import type { TallyReading } from '../tally/tally-reading.ts';
import { prepLegend } from './prep-legend.ts';
import type { PrepReading } from './prep-reading.ts';
import { checksTable, leftOnTable, packTable, refillsTable } from './prep-road-lists.ts';
import { jobsTable, shoppingTable } from './prep-shed-lists.ts';
import { CAUTION, moneyWords, unfinishedWords } from './prep-words.ts';

/** The whole sheet, as on paper. */
export function prepSheet(prep: PrepReading): TemplateResult {
  const mass = prep.bags.reduce((sum, bag) => sum + bag.mass, 0);
  const volume = prep.bags.reduce((sum, bag) => sum + bag.volume, 0);
  const checks = prep.checks.reduce((sum, stop) => sum + stop.checks.length, 0);
  const oil = prep.refills.oil ? `oil for the whole trip ${prep.refills.oil}` : '';
  const unfinished = unfinishedWords(prep.figures);
  return html`<div class="page">
    <header class="top">
      <div>
        <h3>${prep.title}</h3>
        <p>${prep.notebook}${prep.gist ? `, ${prep.gist}` : ''}</p>
      </div>
      ${prep.cutOff > 0 ? html`<p class="cut">Cut-off <b>${dateWords(prep.cutOff)}</b></p>` : nothing}
    </header>
    ${unfinished ? html`<p class="unfinished">${unfinished}</p>` : nothing}
    <div class="sight">${prep.figures.map(figureInSight)}</div>
    ${list('Shopping', `${moneyWords(prep.shopping.sum)} ${prep.money}`, prep.shopping.orders.length, 'Nothing has to be bought.', () => shoppingTable(prep))}
    ${list('Shed jobs', `${showNumber(prep.hours, 2)} h`, prep.jobs.length, 'Nothing is fitted before the start.', () => jobsTable(prep))}
    ${prepLegend()}
    <div class="pair">
      ${list('Pack', `${showNumber(mass, 2)} ${prep.massUnit}, ${showNumber(volume, 2)} ${prep.volumeUnit}`, prep.bags.length, 'No spare is carried.', () => packTable(prep))}
      ${list('Checks on the road', checks === 1 ? '1 check' : `${checks} checks`, checks, 'No part is likely to come near its limit. Look at brakes, tyres, chain and bolts every day all the same.', () => checksTable(prep))}
      ${prep.refills.stops.length === 0 ? nothing : list('Fuel and water', oil, 1, '', () => refillsTable(prep))}
      ${prep.leftOn.length === 0 ? nothing : list('Left on', 'check each before you go', 1, '', () => leftOnTable(prep))}
    </div>
    <div class="warn"><p><b>Brakes, tyres, bearings, steering.</b> ${CAUTION}</p></div>
    <div class="sign"><span>Rider</span><span>Safety-critical jobs checked by</span><span>Date</span></div>
  </div>`;
}

function list(
  title: string,
  note: string,
  count: number,
  empty: string,
  table: () => TemplateResult,
): TemplateResult {
  return html`<section class="list">
    <h4><span>${title}</span>${count > 0 && note ? html`<small>${note}</small>` : nothing}</h4>
    ${count > 0 ? html`<div class="scroll" role="group" aria-label=${title} tabindex="0">${table()}</div>` : html`<p class="none">${empty}</p>`}
  </section>`;
}

function figureInSight(figure: TallyReading): TemplateResult {
  const of = figure.limit ? `of ${figure.limit.shown} ` : '';
  return html`<div class="fig">
    <span>${figure.label}</span>
    <b>${figure.shown}</b> <small>${of}${figure.unit}</small>
  </div>`;
}
