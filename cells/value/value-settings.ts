import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { FormulaFault } from '../../src/formula/fault.ts';
import { parseUnit } from '../../src/formula/unit-text.ts';
import type { Entry, ValueCell, ValueContent } from '../../src/notebook/document.ts';
import { replaceCell, valueEdit } from '../../src/notebook/edits.ts';
import { baseStyles } from '../shared/base-styles.ts';
import { NotebookController } from '../shared/notebook-controller.ts';
import { NotebookElement } from '../shared/notebook-element.ts';
import { settingLine, settingStyles } from '../shared/setting-line.ts';
import type { Refusal } from './value-limits.ts';

type NumberContent = Extract<ValueContent, { type: 'number' }>;

const KINDS: Readonly<Record<ValueContent['type'], string>> = {
  number: 'number',
  choice: 'choice',
  date: 'date',
  yes_no: 'yes or no',
};

/**
 * The settings of one value, in the panel: what kind it is, its unit, lowest and highest, decimals, choices.
 *
 * @prop notebook  @prop cellId
 */
export class ValueSettings extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
  };
  static override styles = [baseStyles, settingStyles];

  declare cellId: string;

  constructor() {
    super();
    this.cellId = '';
    new NotebookController(
      this,
      () => this.notebook,
      (change) => change.document,
    );
  }

  get #cell(): ValueCell | undefined {
    const cell = this.notebook?.document.cells.find((one) => one.id === this.cellId);
    return cell?.kind === 'value' ? cell : undefined;
  }

  override render(): unknown {
    const cell = this.#cell;
    if (!cell) return nothing;
    const { content } = cell;
    return html`<div class="settings">
      ${settingLine({
        label: 'Kind',
        entry: KINDS[content.type],
        column: { kind: 'choice', options: Object.values(KINDS) },
        keep: (entry) => this.#setKind(content, entry),
      })}
      ${content.type === 'number' ? this.#number(content) : nothing}
      ${content.type === 'choice' ? this.#choices(content) : nothing}
      ${settingLine({ label: 'On the form', entry: cell.form ?? null, keep: (entry) => this.#setForm(cell, entry) })}
    </div>`;
  }

  #number(content: NumberContent): TemplateResult {
    const bound = (label: string, key: 'low' | 'high' | 'step' | 'decimals'): TemplateResult =>
      settingLine({
        label,
        entry: content[key] ?? null,
        column: { kind: 'number', unit: key === 'decimals' ? '' : content.unit },
        check: (entry) => (key === 'decimals' ? wrongDecimals(entry) : null),
        keep: (entry) => this.#set({ ...content, [key]: typeof entry === 'number' ? entry : undefined }),
      });
    return html`${settingLine({
      label: 'Unit',
      entry: content.unit === '' ? null : content.unit,
      check: wrongUnit,
      keep: (entry) => this.#set({ ...content, unit: entry === null ? '' : String(entry) }),
    })}
    ${bound('Lowest', 'low')} ${bound('Highest', 'high')} ${bound('Step', 'step')} ${bound('Decimals', 'decimals')}
    ${settingLine({
      label: 'Shown as',
      entry: content.control,
      column: { kind: 'choice', options: ['field', 'slider'] },
      keep: (entry) => this.#set({ ...content, control: entry === 'slider' ? 'slider' : 'field' }),
    })}`;
  }

  #choices(content: Extract<ValueContent, { type: 'choice' }>): TemplateResult {
    return settingLine({
      label: 'Choices',
      entry: content.options.join(', '),
      keep: (entry) => {
        const options = [
          ...new Set(
            String(entry ?? '')
              .split(',')
              .map((one) => one.trim())
              .filter(Boolean),
          ),
        ];
        this.#set({ ...content, options });
      },
    });
  }

  #setKind(content: ValueContent, entry: Entry): void {
    const type = (Object.keys(KINDS) as ValueContent['type'][]).find((one) => KINDS[one] === entry);
    if (!type || type === content.type) return;
    if (type === 'number') this.#set({ type, unit: '', value: null, control: 'field' });
    else if (type === 'choice') this.#set({ type, options: [], value: null });
    else this.#set({ type, value: null });
  }

  #set(content: ValueContent): void {
    const cell = this.#cell;
    if (cell) this.notebook.apply(valueEdit(this.notebook.document, cell.id, content));
  }

  #setForm(cell: ValueCell, entry: Entry): void {
    const { form: _before, ...rest } = cell;
    const after = entry === null ? rest : { ...rest, form: String(entry) };
    this.notebook.apply(replaceCell(this.notebook.document, cell.id, after));
  }
}

function wrongUnit(entry: Entry): Refusal | null {
  if (entry === null) return null;
  try {
    parseUnit(String(entry));
    return null;
  } catch (error) {
    if (!(error instanceof FormulaFault)) throw error;
    return {
      reason: error.fault.message,
      mend: error.fault.mend ?? 'Write a unit such as km, mm or EUR/day.',
    };
  }
}

function wrongDecimals(entry: Entry): Refusal | null {
  const fits =
    entry === null || (typeof entry === 'number' && Number.isInteger(entry) && entry >= 0 && entry <= 9);
  return fits ? null : { reason: 'Decimals are a whole number from 0 to 9.', mend: 'Write 0, 1 or 2.' };
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-value-settings': ValueSettings;
  }
}
