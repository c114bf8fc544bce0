import { html, type TemplateResult } from 'lit';
import { callGlyph } from '../calls/call-glyph.ts';
import type { CallKind } from '../calls/call-kind.ts';
import { cautionIcon } from '../shared/icons.ts';

const SIGNS: readonly (readonly [CallKind, string])[] = [
  ['replace', 'new part on'],
  ['keep', 'new on, old in the pack'],
  ['carry', 'old on, new in the pack'],
  ['way', 'changed on the way'],
  ['leave', 'left on'],
];

/** What the signs of the sheet mean; they are told apart without colour. */
export function prepLegend(): TemplateResult {
  return html`<p class="legend">
    ${SIGNS.map(([kind, words]) => html`<span>${callGlyph(kind)} ${words}</span>`)}
    <span>${cautionIcon()} safety-critical</span>
  </p>`;
}
