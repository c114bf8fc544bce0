import { html, nothing, type TemplateResult } from 'lit';
import { showCount } from '../../formula/show.ts';
import type { Quote } from '../../import/cut-piece.ts';
import { LETTER_CHOICES } from '../../import/find-letters.ts';
import type { Found, ReadChoices } from '../../import/reading.ts';
import { cellHead, columnHead, isEntered } from '../../notebook/lookup.ts';
import type { Separator } from '../../tables/csv-layout.ts';
import { sizeWords } from '../size-words.ts';
import type { ImportDesk } from './import-desk.ts';
import { countWords } from './offer-words.ts';
import { suppliersThere } from './offers-there.ts';
import { BY_ROW, PriceList } from './price-list.ts';
import { columnsFor, FIELD_WORDS, PRICE_FIELDS, type PriceField } from './price-target.ts';
import { earlierImport } from './source-note.ts';
import { moneyOfSupplier, moneyTable } from './supplier-money.ts';
import { supplierTerms } from './supplier-terms.ts';

/** Choice of a supplier that the notebook does not know. */
export const NEW_SUPPLIER = '\u0000new';

interface Choice {
  readonly value: string;
  readonly words: string;
}

interface FieldSpec {
  readonly id: string;
  readonly label: string;
  readonly how: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly choose: (value: string) => void;
}

/** A labelled drop-down list with how its value was found. */
function field({ id, label, how, value, choices, choose }: FieldSpec): TemplateResult {
  return html`<div class="field">
    <label for=${id}>${label}<em>${how}</em></label>
    <span class="pick">
      <select id=${id} @change=${(event: Event) => choose((event.target as HTMLSelectElement).value)}>
        ${choices.map((one) => html`<option value=${one.value} ?selected=${one.value === value}>${one.words}</option>`)}
      </select>
    </span>
  </div>`;
}

const how = (found: Found<unknown>): string => (found.by === 'reader' ? 'set by hand' : 'found in file');

/** Left side of the dialog: the file, what was found in it, and whose it is; each can be changed. */
export function fileSide(
  desk: ImportDesk,
  actions: {
    readonly choose: () => void;
    readonly newSupplier: boolean;
    readonly askNewSupplier: (asked: boolean) => void;
  },
): TemplateResult {
  const { list } = desk;
  return html`<div class="side">
    ${fileSlip(desk, actions.choose)}
    ${tableField(desk)}
    ${list instanceof PriceList ? supplierFields(desk, list, actions) : nothing}
    ${readingFields(desk)}
    ${list instanceof PriceList ? moneyField(desk, list) : nothing}
    ${list instanceof PriceList ? targetColumns(desk, list) : nothing}
  </div>`;
}

function fileSlip({ file, summary }: ImportDesk, choose: () => void): TemplateResult {
  const lines = summary ? `${showCount(summary.recordCount)} lines, ` : '';
  const time = file?.at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return html`<div class="drop">
    <b>${file?.name ?? ''}</b>
    <span>${lines}${sizeWords(file?.bytes ?? 0)}, taken ${time}</span>
    ${file?.remarks.map((remark) => html`<span>${remark}</span>`)}
    <span class="alt">Drop another file here, or<br /><button class="plain" @click=${choose}>choose from this device</button></span>
  </div>`;
}

function tableField(desk: ImportDesk): TemplateResult {
  const here = desk.list instanceof PriceList ? desk.list.target.cell : desk.list?.cell;
  return html`${field({
    id: 'into',
    label: 'Goes into',
    how: 'table',
    value: here?.id ?? '',
    choices: desk.tables.map((cell) => ({ value: cell.id, words: cellHead(cell) })),
    choose: (id) => void desk.chooseTable(id),
  })}
  ${
    desk.file && desk.file.ways.length > 1
      ? field({
          id: 'way',
          label: 'Track or route',
          how: `${showCount(desk.file.ways.length)} in the file`,
          value: String(desk.file.way),
          choices: desk.file.ways.map((words, at) => ({ value: String(at), words })),
          choose: (way) => void desk.chooseWay(Number(way)),
        })
      : nothing
  }`;
}

function supplierFields(
  desk: ImportDesk,
  list: PriceList,
  actions: { readonly newSupplier: boolean; readonly askNewSupplier: (asked: boolean) => void },
): TemplateResult {
  const known = suppliersThere(list.target);
  const isNew = list.supplier !== '' && list.supplier !== BY_ROW && !known.includes(list.supplier);
  const choices: Choice[] = [
    ...(list.supplier === '' ? [{ value: '', words: 'Choose one' }] : []),
    ...known.map((name) => ({ value: name, words: name })),
    ...(isNew ? [{ value: list.supplier, words: list.supplier }] : []),
    ...(list.match?.columns.some(({ role }) => role === 'supplier')
      ? [{ value: BY_ROW, words: 'As each row says' }]
      : []),
    { value: NEW_SUPPLIER, words: 'A new supplier…' },
  ];
  const earlier = earlierImport(list.target.cell.source ?? '', list.supplier);
  return html`${field({
    id: 'supplier',
    label: 'Supplier',
    how: list.supplier === '' ? 'not told' : list.supplierReason,
    value: actions.newSupplier ? NEW_SUPPLIER : list.supplier,
    choices,
    choose: (supplier) => {
      actions.askNewSupplier(supplier === NEW_SUPPLIER);
      if (supplier !== NEW_SUPPLIER) void desk.change(() => list.setSupplier(supplier), 'fit');
    },
  })}
  ${
    actions.newSupplier
      ? html`<form class="field new" @submit=${(event: Event) => {
          event.preventDefault();
          const name = new FormData(event.target as HTMLFormElement).get('name');
          actions.askNewSupplier(false);
          if (typeof name === 'string' && name.trim())
            void desk.change(() => list.setSupplier(name.trim()), 'fit');
        }}>
          <label for="new-supplier">Name of the new supplier</label>
          <span class="line"><input id="new-supplier" name="name" maxlength="100" autocomplete="off" /><button class="btn slim">Take</button></span>
        </form>`
      : nothing
  }
  ${supplierTerms(desk, list)}
  ${earlier ? html`<p class="hint">Earlier import: ${earlier.date}, ${countWords(earlier.rows, 'row', 'rows')}, ${earlier.fileName}.</p>` : nothing}`;
}

const SEPARATORS: readonly (readonly [Separator, string])[] = [
  [';', 'semicolon ;'],
  [',', 'comma ,'],
  ['\t', 'tab'],
  ['|', 'upright stroke |'],
];

const QUOTES: readonly (readonly [Quote, string])[] = [
  ['"', 'double "'],
  ["'", "single '"],
  ['none', 'none: signs like any other'],
];

function readingFields(desk: ImportDesk): TemplateResult {
  const { summary } = desk;
  if (summary === null) return html``;
  const choose = (choices: ReadChoices) => void desk.rechoose(choices);
  const { separator, quote, decimal, letters, frame } = summary;
  return html`${field({
    id: 'separator',
    label: 'Between columns',
    how: how(separator),
    value: separator.value,
    choices: SEPARATORS.map(([value, words]) => ({ value, words })),
    choose: (value) => choose({ separator: value as Separator }),
  })}
  ${field({
    id: 'quote',
    label: 'Quotes',
    how: how(quote),
    value: quote.value,
    choices: QUOTES.map(([value, words]) => ({ value, words })),
    choose: (value) => choose({ quote: value as Quote }),
  })}
  ${field({
    id: 'decimal',
    label: 'Decimal mark',
    how: decimal.value === null ? 'not told' : how(decimal),
    value: decimal.value ?? '',
    choices: [
      ...(decimal.value === null ? [{ value: '', words: 'none seen' }] : []),
      { value: ',', words: 'comma, as in 1.031,50' },
      { value: '.', words: 'point, as in 1,031.50' },
    ],
    choose: (value) => value !== '' && choose({ decimal: value as ',' | '.' }),
  })}
  ${headField(desk)}
  ${field({
    id: 'letters',
    label: 'Letters',
    how: how(letters),
    value: letters.value,
    choices: LETTER_CHOICES.map((one) => ({ value: one.letters, words: one.words })),
    choose: (value) => choose({ letters: value as typeof letters.value }),
  })}
  <p class="sr">${separator.reason}. ${decimal.reason}. ${letters.reason}. ${frame.value.reason}.</p>`;
}

/** Where the names of the columns stand: on a record of the top of the file, on two, or nowhere. */
function headField(desk: ImportDesk): TemplateResult {
  const { frame } = desk.summary!;
  const { headAt, headRows } = frame.value;
  const value = `${headRows === 0 ? 0 : headAt}/${headRows}`;
  const choices: Choice[] = [{ value: '0/0', words: 'nowhere, rows only' }];
  for (let at = 0; at < Math.max(8, headAt + 3); at += 1)
    choices.push({ value: `${at}/1`, words: `record ${at + 1}` });
  for (let at = Math.max(0, headAt - 1); at <= headAt + 1; at += 1)
    choices.push({ value: `${at}/2`, words: `records ${at + 1} and ${at + 2}` });
  return field({
    id: 'head',
    label: 'Column names on',
    how: how(frame),
    value,
    choices,
    choose: (text) => {
      const [at, rows] = text.split('/').map(Number);
      void desk.rechoose({ head: { at: at!, rows: rows as 0 | 1 | 2 } });
    },
  });
}

function moneyField(desk: ImportDesk, list: PriceList): TemplateResult {
  const table = moneyTable(desk.notebook.document, list.target.cell.id);
  const kept = list.supplier === BY_ROW ? null : moneyOfSupplier(table, list.supplier);
  const codes = table?.currency.entries.filter((code): code is string => typeof code === 'string') ?? [];
  const question = list.match?.questions.find(({ kind }) => kind === 'currency');
  const asked = question?.kind === 'currency' ? question.candidates : [];
  const named = list.match?.currency ?? null;
  const all = [
    ...new Set([
      ...(named ? [named] : []),
      ...asked,
      ...codes,
      desk.notebook.document.money,
      'EUR',
      'USD',
      'GBP',
    ]),
  ];
  return html`${field({
    id: 'money',
    label: 'Money',
    how:
      list.match?.currencyReason === 'set by hand'
        ? 'set by hand'
        : named
          ? 'found in file'
          : question
            ? 'not told'
            : 'row by row',
    value: named ?? '',
    choices: [
      ...(named ? [] : [{ value: '', words: question ? 'Choose one' : 'as each row says' }]),
      ...all.map((code) => ({ value: code, words: code })),
    ],
    choose: (code) => code !== '' && void desk.change(() => list.setCurrency(code), 'rows'),
  })}
  ${
    kept !== null && named !== null && kept !== named
      ? html`<p class="hint">${list.supplier} is kept in ${kept}: the prices are turned from ${named} at the notebook’s rates of exchange.</p>`
      : nothing
  }`;
}

/** Which column of the notebook's table takes what; folded away, for it is mostly found. */
function targetColumns(desk: ImportDesk, list: PriceList): TemplateResult {
  const { cell, columns } = list.target;
  const one = (name: PriceField): TemplateResult =>
    field({
      id: `column-${name}`,
      label: FIELD_WORDS[name],
      how: 'goes to',
      value: columns[name] ?? '',
      choices: [
        { value: '', words: 'nowhere' },
        ...columnsFor(cell, name).map((column) => ({ value: column.id, words: columnHead(column) })),
      ],
      choose: (id) => void desk.change(() => list.setColumn(name, id || null), 'fit'),
    });
  const count = PRICE_FIELDS.filter((name) => columns[name]).length;
  return html`<details>
    <summary>Columns of ${cellHead(cell)} <em>${count} of ${cell.columns.filter(isEntered).length} filled</em></summary>
    ${PRICE_FIELDS.map(one)}
  </details>`;
}
