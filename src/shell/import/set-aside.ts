import { html, nothing, type TemplateResult } from 'lit';
import { columnsOf } from '../../import/match-columns.ts';
import type { AsideRow } from '../../import/price-row.ts';
import { asideHead, lostWords, SHOWN, saveAside, shortened } from './aside-parts.ts';
import type { ImportDesk } from './import-desk.ts';
import { isNoRow, mayBeRow, mendOffer } from './mend-offers.ts';
import { countWords } from './offer-words.ts';
import { type Mended, MOST_ASIDE, type PriceList } from './price-list.ts';
import { rawFields } from './raw-fields.ts';

/** The rows that were set aside: line, text, reason, and the one step that mends it. */
export function setAside(desk: ImportDesk, list: PriceList): TemplateResult | typeof nothing {
  const { counts, aside } = list;
  if (counts === null || counts.aside + counts.lostMends.length === 0) return nothing;
  const wrong = aside.filter(({ reason }) => !isNoRow(reason));
  const other = aside.filter(({ reason }) => isNoRow(reason));
  const noRows = Object.entries(counts.asideByReason)
    .filter(([reason]) => isNoRow(reason as AsideRow['reason']))
    .reduce((sum, [, count]) => sum + count, 0);
  const wrongCount = counts.aside - noRows;
  return html`<section class="aside">
    ${asideHead(wrongCount)} ${lostWords(counts.lostMends)}
    <ul class="rej">${wrong.slice(0, SHOWN).map((row) => asideRow(desk, list, row))}</ul>
    ${
      wrongCount > SHOWN
        ? html`<p class="hint">${countWords(wrongCount - SHOWN, 'more is', 'more are')} not shown${aside.length === MOST_ASIDE ? ' yet' : ''}; saved as CSV they are all there.</p>`
        : nothing
    }
    ${
      noRows > 0
        ? html`<details class="others">
            <summary>${countWords(noRows, 'line is', 'lines are')} no row: headings, totals, notes</summary>
            <ul class="rej quiet">${other.slice(0, SHOWN).map((row) => asideRow(desk, list, row))}</ul>
          </details>`
        : nothing
    }
    ${saveAside(list, counts.aside)}
  </section>`;
}

function asideRow(desk: ImportDesk, list: PriceList, row: AsideRow): TemplateResult {
  const { separator } = desk.summary!;
  const column = list.match === null ? undefined : columnsOf(list.match, 'price')[0];
  const priceField = column === undefined ? '' : (rawFields(row.raw, separator.value)[column] ?? '');
  const { prices, types } = mendOffer(row.reason, priceField);
  const isMisread = mayBeRow(row.reason);
  const mend = (what: Mended, text: string): void => {
    void desk.change(async () => {
      const trouble = await list.mend(desk.notebook.document, row, what, text);
      if (trouble !== '') desk.trouble = trouble;
    });
  };
  return html`<li>
    <code>line ${row.line}: ${shortened(row.raw)}</code>
    <span class="why">${row.sentence}</span>
    ${
      prices.length === 0 && types === null && !isMisread
        ? nothing
        : html`<span class="mends">
            ${prices.map((price) => html`<button class="btn slim" @click=${() => mend('price', price)}>Read as ${price}</button>`)}
            ${isMisread ? html`<button class="btn slim" aria-label="Take as a row: line ${row.line}" @click=${() => mend('row', '')}>Take as a row</button>` : nothing}
            ${types === null || prices.length > 0 ? nothing : typed(row, types, mend)}
          </span>`
    }
  </li>`;
}

function typed(
  row: AsideRow,
  what: 'price' | 'name',
  mend: (what: Mended, text: string) => void,
): TemplateResult {
  return html`<form @submit=${(event: Event) => {
    event.preventDefault();
    const text = new FormData(event.target as HTMLFormElement).get('text');
    if (typeof text === 'string' && text.trim() !== '') mend(what, text.trim());
  }}>
    <input
      name="text"
      autocomplete="off"
      maxlength="200"
      inputmode=${what === 'price' ? 'decimal' : 'text'}
      placeholder=${what === 'price' ? 'price' : 'name'}
      aria-label="${what === 'price' ? 'Price' : 'Name'} for line ${row.line}"
    /><button class="btn slim">Take</button>
  </form>`;
}

/** For lists with prices by quantity: how many pieces are wanted. */
export function piecesQuestion(desk: ImportDesk, list: PriceList): TemplateResult | typeof nothing {
  if (!list.counts?.asideByReason['quantity-scale']) return nothing;
  return html`<form class="ask" @submit=${(event: Event) => {
    event.preventDefault();
    const pieces = Number(new FormData(event.target as HTMLFormElement).get('pieces'));
    if (!Number.isFinite(pieces) || pieces <= 0) return;
    void desk.change(() => {
      list.pieces = pieces;
    }, 'rows');
  }}>
    <label for="pieces">The list has prices by quantity. For how many pieces?</label>
    <input id="pieces" name="pieces" inputmode="numeric" autocomplete="off" /><button class="btn slim">Take</button>
  </form>`;
}
