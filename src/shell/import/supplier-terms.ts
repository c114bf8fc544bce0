import { html, nothing, type TemplateResult } from 'lit';
import type { EnteredColumn, Entry } from '../../notebook/document.ts';
import { columnHead, isEntered } from '../../notebook/lookup.ts';
import { readEntry } from '../../tables/read-entry.ts';
import type { ImportDesk } from './import-desk.ts';
import { BY_ROW, type PriceList } from './price-list.ts';
import { type MoneyTable, moneyTable } from './supplier-money.ts';

/** What the table of suppliers keeps of one in figures: freight, free from, lead time, tax. */
export function termColumns({ cell }: MoneyTable): readonly EnteredColumn[] {
  return cell.columns.filter(isEntered).filter(({ kind }) => kind === 'number');
}

/** The figures of a supplier that the notebook does not know yet, typed with the prices and brought in with them. */
export function supplierTerms(desk: ImportDesk, list: PriceList): TemplateResult | typeof nothing {
  const money = moneyTable(desk.notebook.document, list.target.cell.id);
  const { supplier } = list;
  if (money === null || supplier === '' || supplier === BY_ROW) return nothing;
  if (money.supplier.entries.includes(supplier)) return nothing;
  const columns = termColumns(money);
  if (columns.length === 0) return nothing;
  return html`<fieldset class="field terms">
    <legend>New here: the terms of ${supplier}</legend>
    ${columns.map((column) => term(desk, list, column))}
    <p class="hint">They go into the table of suppliers with the prices. Without them, landed prices wait.</p>
  </fieldset>`;
}

function term(desk: ImportDesk, list: PriceList, column: EnteredColumn): TemplateResult {
  const id = `term-${column.id}`;
  const trouble = list.termTroubles.get(column.id) ?? '';
  const take = (event: Event): void => {
    const read = readEntry((event.target as HTMLInputElement).value, column);
    const words = 'entry' in read ? '' : `${read.reason}. ${read.mend}`;
    void desk.change(() => list.setTerm(column.id, 'entry' in read ? read.entry : null, words));
  };
  return html`<label for=${id}>${columnHead(column)}${column.unit ? html`<em>${column.unit}</em>` : nothing}</label>
    <input
      id=${id}
      inputmode="decimal"
      autocomplete="off"
      maxlength="40"
      .value=${shown(list.terms[column.id])}
      aria-invalid=${trouble === '' ? 'false' : 'true'}
      aria-describedby=${trouble === '' ? nothing : `${id}-trouble`}
      @change=${take}
    />
    ${trouble === '' ? nothing : html`<p class="trouble" id="${id}-trouble" role="alert">${trouble}</p>`}`;
}

const shown = (entry: Entry | undefined): string => (typeof entry === 'number' ? String(entry) : '');
