import { html, nothing, type TemplateResult } from 'lit';
import { showCount } from '../../formula/show.ts';
import type { PriceRow } from '../../import/price-row.ts';
import type { ImportDesk } from './import-desk.ts';
import { countWords, offerWords, priceWords } from './offer-words.ts';
import { isLikely, type PartLine, type PriceList } from './price-list.ts';

/** What follows the word on a part's button in its name. */
const ACT_NAMES = { Close: ' the search for', Search: ' a row for', Another: ' row for' } as const;

export interface PartActions {
  /** Part whose finder is open; null for none. */
  readonly searching: string | null;
  readonly search: (part: string | null) => void;
}

/** Fits the file's rows to the notebook's parts: what is taken, what is proposed, and the rest to be searched. */
export function partLines(desk: ImportDesk, list: PriceList, actions: PartActions): TemplateResult {
  const { lines } = list;
  const open = lines.filter(({ proposed }) => proposed !== null);
  const proposals = open.filter(({ proposed }) => isLikely(proposed!)).length;
  const told = [
    `${countWords(list.takenCount, 'row', 'rows')} taken`,
    proposals > 0 ? `${showCount(proposals)} proposed by their words` : '',
    open.length > proposals ? `${showCount(open.length - proposals)} perhaps` : '',
  ];
  const found = lines.filter(({ taken, proposed }) => taken.length > 0 || proposed !== null);
  const others = lines.filter(({ taken, proposed }) => taken.length === 0 && proposed === null);
  return html`<section class="fits">
    <h3>Fit to your parts
      <small>${told.filter((words) => words !== '').join(', ')}</small>
      ${
        proposals > 0
          ? html`<button class="btn slim confirm" @click=${() => desk.change(() => list.takeProposed())}>Take all ${showCount(proposals)} proposed</button>`
          : nothing
      }
    </h3>
    <ul class="lines">${found.map((line) => partLine(desk, list, line, actions))}</ul>
    ${
      others.length === 0
        ? nothing
        : html`<details class="others" ?open=${found.length === 0}>
            <summary>${countWords(others.length, 'part', 'parts')} with nothing in this file</summary>
            <ul class="lines">${others.map((line) => partLine(desk, list, line, actions))}</ul>
          </details>`
    }
    <label class="all"><input type="checkbox" .checked=${list.isAll} @change=${(event: Event) => {
      const { checked } = event.target as HTMLInputElement;
      void desk.change(() => list.takeAll(checked));
    }} /> Bring in all ${countWords((list.counts?.taken ?? 0) + (list.counts?.remarked ?? 0), 'row', 'rows')}, those that fit no part as well</label>
  </section>`;
}

function partLine(desk: ImportDesk, list: PriceList, line: PartLine, actions: PartActions): TemplateResult {
  const { part, taken, proposed } = line;
  const isOpen = actions.searching === part;
  const rows = taken.length > 0 ? taken : proposed ? [proposed.offer] : [];
  const act = isOpen ? 'Close' : rows.length === 0 ? 'Search' : 'Another';
  return html`<li>
    <b>${part}</b>
    <div class="offers">
      ${rows.map((row) => offerLine(desk, list, line, row))}
      ${rows.length === 0 ? html`<span class="quiet">nothing found</span>` : nothing}
    </div>
    <button class="plain" aria-expanded=${isOpen ? 'true' : 'false'} aria-label="${act}${ACT_NAMES[act]} ${part}" @click=${() => actions.search(isOpen ? null : part)}>
      ${act}
    </button>
    ${
      isOpen
        ? html`<sw-part-finder
            .list=${list}
            .partName=${part}
            .candidates=${line.candidates}
            @sw-found=${(event: CustomEvent<PriceRow>) => {
              actions.search(null);
              void desk.change(() => list.take(event.detail, part));
            }}
          ></sw-part-finder>`
        : nothing
    }
  </li>`;
}

function offerLine(desk: ImportDesk, list: PriceList, line: PartLine, row: PriceRow): TemplateResult {
  const isTaken = line.taken.includes(row);
  const turn = (): void =>
    void desk.change(() => (isTaken ? list.leave(row.record) : list.take(row, line.part)));
  const why = isTaken ? '' : (line.proposed?.reason ?? '');
  return html`<label class=${isTaken ? 'taken' : 'maybe'} title=${why}>
    <input type="checkbox" .checked=${isTaken} @change=${turn} />
    <span class="what">${offerWords(row)}${isTaken ? nothing : html` <em>${isLikely(line.proposed!) ? 'proposed' : 'perhaps'}</em>`}
      ${row.remarks.length > 0 ? html`<small>${row.remarks.join(' ')}</small>` : nothing}
    </span>
    <span class="num">${priceWords(row)}</span>
  </label>`;
}
