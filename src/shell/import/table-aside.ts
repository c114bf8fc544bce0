import { html, nothing, type TemplateResult } from 'lit';
import { faultIcon } from '../../../cells/shared/icons.ts';
import type { TableAside, TableRemark } from '../../import/read-table.ts';
import { asideHead, lostWords, SHOWN, saveAside, shortened } from './aside-parts.ts';
import type { ImportDesk } from './import-desk.ts';
import { mayBeRow } from './mend-offers.ts';
import { countWords } from './offer-words.ts';
import type { TableList } from './table-list.ts';

/** A field of a record that can be typed in place. */
interface TypedField {
  readonly name: string;
  readonly title: string;
  /** As the file has it. */
  readonly text: string;
}

/** For any table but offers: the fields that could not be read, and the lines set aside; each can be mended. */
export function tableAside(desk: ImportDesk, list: TableList): TemplateResult | typeof nothing {
  const { rows, lostMends } = list;
  if (rows === null || rows.remarks.length + rows.aside.length + lostMends.length === 0) return nothing;
  const cutOff = rows.aside.filter(({ reason }) => reason === 'cut-off');
  const others = rows.aside.filter(({ reason }) => reason !== 'cut-off');
  return html`<section class="aside">
    ${cutOff.length > 0 || rows.remarks.length === 0 ? asideHead(cutOff.length) : nothing} ${lostWords(lostMends)}
    <ul class="rej">${cutOff.map((one) => asideRow(desk, list, one))}</ul>
    ${rows.remarks.length > 0 ? remarkList(desk, list, rows.remarks) : nothing}
    ${
      others.length > 0
        ? html`<details class="others">
            <summary>${countWords(others.length, 'line is', 'lines are')} no row: headings, totals, notes, empty lines</summary>
            <ul class="rej quiet">${others.slice(0, SHOWN).map((one) => asideRow(desk, list, one))}</ul>
            ${more(others.length)}
          </details>`
        : nothing
    }
    ${rows.aside.length > 0 ? saveAside(list, rows.aside.length) : nothing}
  </section>`;
}

function more(count: number): TemplateResult | typeof nothing {
  if (count <= SHOWN) return nothing;
  return html`<p class="hint">${countWords(count - SHOWN, 'more follows', 'more follow')} as these are mended; saved as CSV they are all there.</p>`;
}

function remarkList(desk: ImportDesk, list: TableList, remarks: readonly TableRemark[]): TemplateResult {
  return html`<h3 class="bad"><span class="mark">${faultIcon()}</span>${countWords(remarks.length, 'field', 'fields')} not understood
      <small>as they stand they come in as their text, to be mended in the table</small></h3>
    <ul class="rej">${remarks.slice(0, SHOWN).map((one) => {
      const field = { name: one.column, title: titleOf(list, one.column), text: one.text };
      return html`<li>
        <span class="why">${one.sentence}</span>
        <span class="mends">${fieldsForm(desk, list, one, [field])}</span>
      </li>`;
    })}</ul>
    ${
      remarks.length > SHOWN
        ? html`<p class="hint">${countWords(remarks.length - SHOWN, 'more follows', 'more follow')} as these are mended.</p>`
        : nothing
    }`;
}

function asideRow(desk: ImportDesk, list: TableList, one: TableAside): TemplateResult {
  const form = (): TemplateResult => fieldsForm(desk, list, one, fieldsOf(list, one));
  return html`<li>
    <code>line ${one.line}: ${shortened(one.raw)}</code>
    <span class="why">${one.sentence}</span>
    ${
      mayBeRow(one.reason)
        ? html`<span class="mends"><button class="btn slim" aria-label="Take as a row: line ${one.line}" @click=${() => mend(desk, list, one.record, {})}>Take as a row</button></span>`
        : one.reason === 'cut-off'
          ? html`<span class="fill">${form()}</span>`
          : html`<details class="fill"><summary>Fill in line ${one.line}</summary>${form()}</details>`
    }
  </li>`;
}

/** The columns of the table that the file fills, with what the record has for them. */
function fieldsOf(list: TableList, { fields }: TableAside): readonly TypedField[] {
  return (list.match?.columns ?? []).flatMap(({ name, column }) =>
    column === null ? [] : [{ name, title: titleOf(list, name), text: fields[column] ?? '' }],
  );
}

const titleOf = (list: TableList, name: string): string =>
  list.match?.wanted.find((one) => one.name === name)?.title ?? name;

function mend(
  desk: ImportDesk,
  list: TableList,
  record: number,
  typed: Readonly<Record<string, string>>,
): void {
  void desk.change(() => list.mend(record, typed), 'rows');
}

function fieldsForm(
  desk: ImportDesk,
  list: TableList,
  { record, line }: { readonly record: number; readonly line: number },
  fields: readonly TypedField[],
): TemplateResult {
  const take = (event: Event): void => {
    event.preventDefault();
    const given = new FormData(event.target as HTMLFormElement);
    const typed = fields.flatMap(({ name, text }) => {
      const now = String(given.get(name) ?? '').trim();
      return now === text.trim() ? [] : [[name, now]];
    });
    if (typed.length > 0) mend(desk, list, record, Object.fromEntries(typed));
  };
  return html`<form @submit=${take}>
    ${fields.map(
      ({ name, title, text }) =>
        html`<label>${fields.length > 1 ? html`<span>${title}</span>` : nothing}<input
            name=${name}
            autocomplete="off"
            maxlength="200"
            .value=${text}
            aria-label="${title} for line ${line}"
          /></label>`,
    )}<button class="btn slim">Take</button>
  </form>`;
}
