import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import { callGlyph } from '../../../cells/calls/call-glyph.ts';
import type { CallKind } from '../../../cells/calls/call-kind.ts';
import { callStyles } from '../../../cells/calls/call-styles.ts';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { sheetStyles } from '../../../cells/shared/sheet-styles.ts';
import { lettersOff, setLettersOff } from '../letters.ts';
import { waymark, waymarkStyles } from '../road/waymark.ts';
import { panelStyles } from './panel-styles.ts';
import { sidePanelStyles } from './side-panel.styles.ts';

const CALLS: readonly (readonly [CallKind, string, string])[] = [
  ['leave', 'Leave', 'old part stays on'],
  ['replace', 'Replace now', 'new part on, here or sent out'],
  ['carry', 'Carry a spare', 'old part on, new in pack'],
  ['keep', 'Replace, keep old', 'new part on, old in pack'],
  ['way', 'Change on the way', 'new part on at a shop'],
];

const KEYS: readonly (readonly [string, string])[] = [
  ['Tab', 'the next card'],
  ['Enter', 'into the card; Escape out of it'],
  ['[ and ]', 'a card that feeds it, a card it feeds'],
  ['F', 'the next fault'],
  ['P', 'between card and panel'],
  ['Ctrl+Z', 'undo; with Shift redo'],
  ['Alt+Up', 'the card up the road; Alt+Down, down it'],
];

/** How to read a card: shown in the panel while nothing is picked. */
export class CardKey extends LitElement {
  static override properties: PropertyDeclarations = {};
  static override styles = [
    baseStyles,
    controlStyles,
    sheetStyles,
    callStyles,
    waymarkStyles,
    panelStyles,
    sidePanelStyles,
  ];

  override render(): TemplateResult {
    return html`<div class="slip">
      <header><div><h2>How to read a card</h2></div></header>
      <section>
        <p class="legend-fig"><span><span class="pen">140</span></span><span>Blue on a ruled line: written by hand. Change it where it stands.</span></p>
      </section>
      <section>
        <p class="legend-fig"><span>1,138</span><span>Black: worked out. Select it to see from what.</span></p>
      </section>
      <section>
        <h3>Calls</h3>
        <ul class="calls-key">
          ${CALLS.map(([kind, word, gist]) => html`<li><span class="call" data-call=${kind}>${callGlyph(kind)}${word}</span>${gist}</li>`)}
        </ul>
      </section>
      <section>
        <h3>Waymarks on the road</h3>
        <ul class="marks-key">
          <li>${waymark('settled', false)}settled: figures are up to date</li>
          <li>${waymark('working', false)}working: still being worked out</li>
          <li>${waymark('waiting', false)}waiting: reads a figure that has a fault</li>
          <li>${waymark('fault', false)}fault: stops here until put right</li>
        </ul>
      </section>
      <section>
        <button class="plain" @click=${this.#walk}>Show me round</button>
      </section>
      <section>
        <h3>Keyboard</h3>
        <div class="keys">${KEYS.map(([key, does]) => html`<kbd>${key}</kbd><span>${does}</span>`)}</div>
        <label class="letters"><input type="checkbox" .checked=${!lettersOff()} @change=${(event: Event) => setLettersOff(!(event.target as HTMLInputElement).checked)} />single letters act</label>
      </section>
    </div>`;
  }

  #walk(): void {
    this.dispatchEvent(new CustomEvent('sw-walk', { bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-card-key': CardKey;
  }
}
