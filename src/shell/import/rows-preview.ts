import { html, nothing, type TemplateResult } from 'lit';
import { faultIcon } from '../../../cells/shared/icons.ts';
import type { PreviewRecord } from '../../import/import-session.ts';
import { ROLE_WORDS, ROLES, type Role } from '../../import/roles.ts';
import { columnHead } from '../../notebook/lookup.ts';
import { type ImportDesk, PREVIEW_ROWS } from './import-desk.ts';
import { isNoRow } from './mend-offers.ts';
import { countWords } from './offer-words.ts';
import { PriceList } from './price-list.ts';
import type { TableList } from './table-list.ts';

const FIGURES: ReadonlySet<Role> = new Set([
  'price',
  'pack_quantity',
  'discount',
  'lead_time',
  'tax',
  'price_for',
  'from_quantity',
]);
const capital = (words: string): string => `${words[0]!.toUpperCase()}${words.slice(1)}`;

/** The file's own rows under the pickers of their columns, with where each row goes. */
export function rowsPreview(desk: ImportDesk): TemplateResult {
  const { summary, preview, list } = desk;
  if (summary === null || list === null) return html``;
  const isPrices = list instanceof PriceList;
  const matched = isPrices
    ? (list.match?.columns.filter(({ role }) => role !== 'ignore').length ?? 0)
    : list.filled.length;
  const [first, last] = [preview[0]?.line, preview.at(-1)?.line];
  const words = `${countWords(summary.heads.length, 'column', 'columns')}, ${matched} matched${first === undefined ? '' : `; lines ${first} to ${last} shown`}`;
  return html`<section class="rows">
    <h3 id="match">Match the columns <small>${words}</small>
      ${summary.recordCount - summary.bodyFrom > PREVIEW_ROWS ? turns(desk) : nothing}
    </h3>
    <div class="csv" tabindex="0" role="region" aria-labelledby="match">
      <table>
        <thead>
          <tr>
            <th scope="col"><span class="sr">Line</span></th>
            ${summary.heads.map((head, column) => columnHeadCell(desk, column, head.label))}
            <th scope="col" class="to"><b>Goes to</b><span class="orig read">${isPrices ? 'part of the notebook' : 'the table'}</span></th>
          </tr>
        </thead>
        <tbody>${preview.map((record) => row(desk, record))}</tbody>
      </table>
    </div>
  </section>`;
}

function turns(desk: ImportDesk): TemplateResult {
  const { bodyFrom, recordCount } = desk.summary!;
  const isLast = desk.previewFrom + PREVIEW_ROWS >= recordCount;
  return html`<span class="turns">
    <button class="plain" ?disabled=${desk.previewFrom <= bodyFrom} @click=${() => desk.turnPreview(-PREVIEW_ROWS)}>Earlier rows</button>
    <button class="plain" ?disabled=${isLast} @click=${() => desk.turnPreview(PREVIEW_ROWS)}>Later rows</button>
  </span>`;
}

function columnHeadCell(desk: ImportDesk, column: number, label: string): TemplateResult {
  const { list } = desk;
  const picker =
    list instanceof PriceList
      ? rolePicker(desk, list, column, label)
      : list
        ? tablePicker(desk, list, column, label)
        : nothing;
  return html`<th scope="col" class="${isLeft(desk, column) ? 'off' : ''} ${isFigure(desk, column) ? 'num' : ''}">
    ${picker}<span class="orig" title=${label}>${label}</span>
  </th>`;
}

function rolePicker(desk: ImportDesk, list: PriceList, column: number, label: string): TemplateResult {
  const role = list.match?.columns[column]?.role ?? 'ignore';
  const choose = (event: Event): void => {
    const chosen = (event.target as HTMLSelectElement).value as Role;
    void desk.change(() => list.setRole(column, chosen), 'rows');
  };
  return html`<span class="pick"><select aria-label="Column ${label} is" @change=${choose}>
    ${ROLES.map((one) => html`<option value=${one} ?selected=${one === role}>${capital(ROLE_WORDS[one])}</option>`)}
  </select></span>`;
}

function tablePicker(desk: ImportDesk, list: TableList, column: number, label: string): TemplateResult {
  const name = list.match?.columns.find((one) => one.column === column)?.name ?? '';
  const titles = list.match?.wanted ?? [];
  const choose = (event: Event): void => {
    const chosen = (event.target as HTMLSelectElement).value;
    void desk.change(() => list.setColumn(column, chosen || null), 'rows');
  };
  return html`<span class="pick"><select aria-label="Column ${label} goes to" @change=${choose}>
    <option value="" ?selected=${name === ''}>Leave out</option>
    ${titles.map((one) => html`<option value=${one.name} ?selected=${one.name === name}>${one.title ?? one.name}</option>`)}
  </select></span>`;
}

function isLeft({ list }: ImportDesk, column: number): boolean {
  if (list instanceof PriceList) return (list.match?.columns[column]?.role ?? 'ignore') === 'ignore';
  return !list?.match?.columns.some((one) => one.column === column);
}

function isFigure({ list }: ImportDesk, column: number): boolean {
  if (list instanceof PriceList) return FIGURES.has(list.match?.columns[column]?.role ?? 'ignore');
  const name = list?.match?.columns.find((one) => one.column === column)?.name;
  return list?.match?.wanted.find((one) => one.name === name)?.kind === 'number';
}

function row(desk: ImportDesk, record: PreviewRecord): TemplateResult {
  const goes = goesTo(desk, record);
  return html`<tr class=${goes.isOut ? 'out' : ''}>
    <td class="ln">line ${record.line}</td>
    ${desk.summary!.heads.map(
      (_, column) =>
        html`<td class="${isLeft(desk, column) ? 'off' : ''} ${isFigure(desk, column) ? 'num' : ''}" title=${record.fields[column] ?? ''}>
          ${record.fields[column] ?? ''}
        </td>`,
    )}
    <td class="to">${goes.words}</td>
  </tr>`;
}

function goesTo(
  desk: ImportDesk,
  { record, kind }: PreviewRecord,
): { words: TemplateResult; isOut: boolean } {
  const { list } = desk;
  if (list instanceof PriceList) {
    const part = list.partOf(record);
    if (part !== null) return { words: html`${part}`, isOut: false };
    const aside = list.aside.find((one) => one.record === record);
    const isRow = kind === 'row' && !(aside && isNoRow(aside.reason));
    if (aside !== undefined && isRow)
      return { words: html`<span class="fault-line">${faultIcon()}turned away</span>`, isOut: true };
    if (!isRow) return { words: html`<span class="quiet">no row</span>`, isOut: false };
    const proposed = list.lines.find((line) => line.proposed?.offer.record === record);
    if (proposed) return { words: html`<span class="quiet">${proposed.part}?</span>`, isOut: false };
    return { words: html`<span class="quiet">${list.isAll ? 'no part' : 'left out'}</span>`, isOut: false };
  }
  const aside = list?.rows?.aside.some((one) => one.record === record);
  return {
    words: html`<span class="quiet">${aside ? 'set aside' : (list && columnOfKey(list)) || 'a row'}</span>`,
    isOut: false,
  };
}

const columnOfKey = (list: TableList): string => {
  const column = list.cell.columns.find(({ name }) => name === list.key);
  return column && list.way === 'update' ? `by its ${columnHead(column).toLowerCase()}` : 'a row';
};
