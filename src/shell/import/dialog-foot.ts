import { html, nothing, type TemplateResult } from 'lit';
import type { ImportDesk } from './import-desk.ts';
import { countWords } from './offer-words.ts';
import { PriceList } from './price-list.ts';

/** Calls that are named in the foot; the others are counted. */
const NAMED = 2;

/** What will happen, and the two ways out. */
export function dialogFoot(
  desk: ImportDesk,
  actions: { cancel: () => void; accept: () => void },
): TemplateResult {
  const { count, obstacle, trouble, list } = desk;
  const stopped = trouble || obstacle;
  return html`<div class="foot">
    <div class="sum" role="status">
      ${stopped ? html`<span class="stopped">${stopped}</span>` : html`${counts(desk)} ${effectWords(desk)}`}
    </div>
    <button class="btn" @click=${actions.cancel}>Cancel</button>
    <button class="btn solid" ?disabled=${stopped !== '' || list === null} @click=${actions.accept}>
      Bring in ${countWords(count, 'row', 'rows')}
    </button>
  </div>`;
}

function counts({ list, count }: ImportDesk): TemplateResult {
  if (list instanceof PriceList) {
    const { taken = 0, remarked = 0, aside = 0 } = list.counts ?? {};
    return html`<span><b>${count.toLocaleString('en')}</b> of ${countWords(taken + remarked + aside, 'row', 'rows')} come in</span>`;
  }
  return html`<span><b>${count.toLocaleString('en')}</b> rows, ${list?.words}</span>`;
}

function effectWords({ effect }: ImportDesk): TemplateResult | typeof nothing {
  if (effect === null) return html`<span class="quiet">working</span>`;
  const { label, total, calls, hasCalls } = effect;
  const named = calls
    .slice(0, NAMED)
    .map(({ part, before, after }) => `${part}: ${before || 'no call'} → ${after || 'no call'}`);
  const more = calls.length > NAMED ? `, and ${calls.length - NAMED} more` : '';
  return html`
    ${total === '' ? nothing : html`<span><b>${total}</b> ${total === 'no change' ? 'of ' : ''}${label.toLowerCase()}</span>`}
    ${
      !hasCalls
        ? nothing
        : calls.length === 0
          ? html`<span><b>No call changes</b></span>`
          : html`<span><b>${countWords(calls.length, 'call changes', 'calls change')}</b> ${named.join('; ')}${more}</span>`
    }
    ${total !== '' || hasCalls ? html`<span class="quiet">each part for itself, before the plan is made anew</span>` : nothing}`;
}
