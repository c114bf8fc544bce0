import { html, nothing, type TemplateResult } from 'lit';
import { NO_CHANGE } from '../../../cells/tally/tally-reading.ts';
import { showCount } from '../../formula/show.ts';
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
    return html`<span><b>${showCount(count)}</b> of ${countWords(taken + remarked + aside, 'row', 'rows')} come in</span>`;
  }
  return html`<span><b>${showCount(count)}</b> ${count === 1 ? 'row' : 'rows'}, ${list?.words}</span>`;
}

/** Without the unit that a label may end in, as the words have it: `Pack, kg` is `pack`. */
const bareLabel = (label: string): string => label.replace(/, \S+$/, '').toLowerCase();

function effectWords({ effect, notebook }: ImportDesk): TemplateResult | typeof nothing {
  if (effect === null) return html`<span class="quiet">working</span>`;
  const { main, others, calls, hasCalls } = effect;
  const isPlanned = notebook.document.cells.some(({ kind }) => kind === 'plan');
  const named = calls
    .slice(0, NAMED)
    .map(({ part, before, after }) => `${part}: ${before || 'no call'} → ${after || 'no call'}`);
  const more = calls.length > NAMED ? `, and ${showCount(calls.length - NAMED)} more` : '';
  return html`
    ${main === null ? nothing : html`<span><b>${main.words}</b> ${main.words === NO_CHANGE ? 'of ' : ''}${main.label.toLowerCase()}</span>`}
    ${others.length === 0 ? nothing : html`<span>${others.map(({ label, words }) => `${bareLabel(label)} ${words}`).join('; ')}</span>`}
    ${
      !hasCalls
        ? nothing
        : calls.length === 0
          ? html`<span><b>No call changes</b></span>`
          : html`<span><b>${countWords(calls.length, 'call changes', 'calls change')}</b> ${named.join('; ')}${more}</span>`
    }
    ${(main !== null || hasCalls) && isPlanned ? html`<span class="quiet">each part for itself, before the plan is made anew</span>` : nothing}`;
}
