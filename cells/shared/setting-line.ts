import { css, html, type TemplateResult } from 'lit';
import type { Entry } from '../../src/notebook/document.ts';
import type { EntryColumn, EntryDetail } from './figure-field.ts';

export interface SettingLine {
  readonly label: string;
  readonly entry: Entry;
  readonly column?: EntryColumn;
  readonly unit?: string;
  /** Why an entry may not stand; null when it may. */
  readonly check?: (entry: Entry) => { readonly reason: string; readonly mend: string } | null;
  readonly keep: (entry: Entry) => void;
}

/** One labelled setting in the panel, written in place. */
export function settingLine(setting: SettingLine): TemplateResult {
  return html`<div class="setting">
    <span class="what" aria-hidden="true">${setting.label}</span>
    <sw-figure-field
      size="line"
      .label=${setting.label}
      .entry=${setting.entry}
      .shown=${setting.entry === null ? '' : String(setting.entry)}
      .column=${setting.column ?? { kind: 'text' }}
      .unit=${setting.unit ?? ''}
      .check=${setting.check ?? null}
      @sw-entry=${(event: CustomEvent<EntryDetail>) => setting.keep(event.detail.entry)}
    ></sw-figure-field>
  </div>`;
}

export const settingStyles = css`
  .settings {
    padding-top: 4px;
    display: grid;
    gap: 4px;
  }
  .setting {
    display: grid;
    grid-template-columns: 92px minmax(0, 1fr);
    gap: 10px;
    align-items: baseline;
  }
  .setting .what {
    font: 500 var(--t-2) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
`;
