import { html, type TemplateResult } from 'lit';
import { faultIcon } from '../../../cells/shared/icons.ts';
import { fileWord, saveText } from '../../../cells/shared/save-text.ts';
import type { LostMend } from '../../import/mends.ts';
import { countWords } from './offer-words.ts';

/** Rows that are drawn at once; the rest follow as these are mended. */
export const SHOWN = 12;
const RAW_SHOWN = 160;

/** A line of the file, short enough to be shown. */
export function shortened(raw: string): string {
  const line = raw.replaceAll(/\s+/g, ' ');
  return line.length > RAW_SHOWN ? `${line.slice(0, RAW_SHOWN)}…` : line;
}

/** Over the rows set aside: how many were turned away. */
export function asideHead(wrongCount: number): TemplateResult {
  return html`<h3 class=${wrongCount > 0 ? 'bad' : ''}>
    ${wrongCount > 0 ? html`<span class="mark">${faultIcon()}</span>` : ''}
    ${wrongCount > 0 ? `${countWords(wrongCount, 'row', 'rows')} turned away` : 'Nothing turned away'}
  </h3>`;
}

/** What was typed and does not hold any more. */
export function lostWords(lost: readonly LostMend[]): readonly TemplateResult[] {
  return lost.map(
    ({ sentence }) => html`<p class="lost" role="status">${faultIcon()}<span>${sentence}</span></p>`,
  );
}

/** A button that saves all that was set aside. */
export function saveAside(
  list: { readonly fileName: string; asideCsv(): Promise<string> },
  count: number,
): TemplateResult {
  const save = async (): Promise<void> => {
    const name = fileWord(list.fileName.replace(/\.\w+$/, ''));
    saveText(`${name}-set-aside.csv`, 'text/csv', await list.asideCsv());
  };
  return html`<button class="plain" @click=${() => void save()}>Save the ${countWords(count, 'line', 'lines')} set aside as CSV</button>`;
}
