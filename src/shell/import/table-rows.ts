import { html, nothing, type TemplateResult } from 'lit';
import { cellHead } from '../../notebook/lookup.ts';
import type { ImportDesk } from './import-desk.ts';
import { countWords } from './offer-words.ts';
import { tableAside } from './table-aside.ts';
import type { TableWay } from './table-edit.ts';
import type { TableList } from './table-list.ts';

/** For any table but offers: what becomes of the rows there, units that the file does not name, and remarks. */
export function tableRows(desk: ImportDesk, list: TableList): TemplateResult {
  const { rows, match } = list;
  return html`<section class="fits">
    <h3>Into ${cellHead(list.cell)} <small>${countWords(rows?.rows ?? 0, 'row', 'rows')} of the file</small></h3>
    <fieldset>
      <legend class="sr">What becomes of the rows in the table</legend>
      ${list.key !== null ? way(desk, list, 'update', 'Over the rows of the same name; others are added') : nothing}
      ${way(desk, list, 'replace', 'In the place of all rows there')} ${way(desk, list, 'below', 'Below the rows there')}
    </fieldset>
    ${match?.questions.map(
      (question) =>
        html`<form class="ask" @submit=${(event: Event) => {
          event.preventDefault();
          const unit = new FormData(event.target as HTMLFormElement).get('unit');
          if (typeof unit === 'string')
            void desk.change(() => list.setUnit(question.name, unit.trim()), 'rows');
        }}>
          <label for="unit-${question.name}">${question.sentence}</label>
          <input id="unit-${question.name}" name="unit" autocomplete="off" .value=${match.columns.find(({ name }) => name === question.name)?.unit ?? ''} /><button class="btn slim">Take</button>
        </form>`,
    )}
  </section>
  ${tableAside(desk, list)}`;
}

function way(desk: ImportDesk, list: TableList, value: TableWay, words: string): TemplateResult {
  return html`<label class="all"><input type="radio" name="way" .checked=${list.way === value} @change=${() => desk.change(() => list.setWay(value))} /> ${words}</label>`;
}
