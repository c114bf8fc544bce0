import { html, nothing, type TemplateResult } from 'lit';
import { setProperty } from '../../../cells/shared/set-property.ts';
import { showAmount, showCount } from '../../formula/show.ts';
import type { OfferChange } from '../../import/compare-lists.ts';
import type { ImportDesk } from './import-desk.ts';
import { type ComparedOffer, type ListChanges, listChanges } from './list-changes.ts';
import { countWords, offerWords, shareWords } from './offer-words.ts';
import type { PriceList } from './price-list.ts';

const SHOWN = 14;
/** A change of this share fills half the strip. */
const FULL_SHARE = 0.15;

/** What a newer file of the same supplier changes, before it is accepted. */
export function changeTable(desk: ImportDesk, list: PriceList): TemplateResult | typeof nothing {
  const changes = listChanges(desk.notebook.document, list);
  if (changes === null || list.takenCount === 0) return nothing;
  const moved = [...changes.dearer, ...changes.cheaper];
  return html`<section class="changes">
    <h3>${moved.length === 0 ? 'No price changed' : countWords(moved.length, 'price changed', 'prices changed')}
      <small>${[changes.money, tallyWords(changes)].filter((words) => words).join('; ')}</small>
    </h3>
    ${
      moved.length === 0
        ? nothing
        : html`<div class="scroll" tabindex="0" role="region" aria-label="Prices that changed"><table class="diff">
            <thead class="sr"><tr><th scope="col">Offer</th><th scope="col">Before</th><th scope="col">After</th><th scope="col">Change</th><th scope="col">Drawn</th><th scope="col">Now</th></tr></thead>
            <tbody>${moved.slice(0, SHOWN).map((change) => changeRow(desk, list, change))}</tbody>
          </table></div>`
    }
    ${moved.length > SHOWN ? html`<p class="hint">${countWords(moved.length - SHOWN, 'more price', 'more prices')} changed.</p>` : nothing}
    ${named('New', changes.added)} ${named('Gone from the list', changes.gone)}
    ${named('Turned away: without a price they leave the table', changes.turnedAway)}
    ${named('In the list, but not taken: they leave the table', changes.left)}
    ${changes.unclear.slice(0, 5).map(({ sentence }) => html`<p class="hint">${sentence}</p>`)}
  </section>`;
}

function tallyWords({ dearer, cheaper, unchanged }: ListChanges): string {
  const parts = [
    dearer.length > 0 ? `${showCount(dearer.length)} dearer` : '',
    cheaper.length > 0 ? `${showCount(cheaper.length)} cheaper` : '',
    unchanged.length > 0 ? `${showCount(unchanged.length)} as before` : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}

function changeRow(desk: ImportDesk, list: PriceList, change: OfferChange<ComparedOffer>): TemplateResult {
  const { before, after, share } = change;
  const isBest = isBestNow(desk, list, before.row);
  const width = `${Math.min(50, (Math.abs(share) / FULL_SHARE) * 50)}%`;
  return html`<tr>
    <th scope="row" title=${offerWords(after)}>${after.fits || offerWords(after)}</th>
    <td class="num old">${showAmount(before.price)}</td>
    <td class="num">${showAmount(after.price)}</td>
    <td class="num">${shareWords(share)}</td>
    <td class="bartd"><span class="pm ${share < 0 ? 'down' : 'up'}"><i ${setProperty('--w', width)}></i></span></td>
    <td class=${isBest ? '' : 'quiet'}>${isBest === null ? '' : isBest ? 'cheapest now' : 'not cheapest'}</td>
  </tr>`;
}

/** Whether the notebook holds an offer for the best of its part; null where it does not say. */
function isBestNow({ notebook }: ImportDesk, list: PriceList, row: number | null): boolean | null {
  const { name } = list.target.cell;
  for (const cell of notebook.document.cells) {
    const best = cell.kind === 'prep' ? cell.reads.offer_best : undefined;
    if (best === undefined || !best.startsWith(`${name}.`) || row === null) continue;
    const read = notebook.read(best);
    return read.state === 'settled' && read.column.kind !== 'text' ? read.column.values[row] === 1 : null;
  }
  return null;
}

function named(label: string, offers: readonly ComparedOffer[]): TemplateResult | typeof nothing {
  if (offers.length === 0) return nothing;
  const names = offers.slice(0, 6).map((offer) => offer.fits || offerWords(offer));
  const more = offers.length > names.length ? ` and ${showCount(offers.length - names.length)} more` : '';
  return html`<p class="named"><b>${label}: ${showCount(offers.length)}</b> ${names.join('; ')}${more}</p>`;
}
