import { html, nothing, type TemplateResult } from 'lit';
import type { Fault } from '../../src/formula/fault.ts';
import { faultIcon } from './icons.ts';

export interface FaultActions {
  /** Take the one-step mend; the button shows only when the fault offers one. */
  readonly fix?: (formula: string) => void;
  /** Go to the figure or the field that is at fault. */
  readonly edit?: () => void;
  /** Have what failed worked out once more. */
  readonly again?: () => void;
}

/** Where a fault is, in words: `wear.rate, row 4`. Rows are counted from 1 for people. */
export function placeInWords(fault: Fault): string {
  const { node, row } = fault.place;
  if (!node) return '';
  return row === undefined ? node : `${node}, row ${row + 1}`;
}

/** One fault in its card: what is wrong, what mends it, at most one button that mends it. */
export function faultBox(fault: Fault, actions: FaultActions = {}, place = ''): TemplateResult {
  const { fix } = fault;
  return html`<div class="fault-box" part="fault">
    ${faultIcon()}
    <span class="says">${place ? html`<b>${place}</b> ` : nothing}<b>${fault.message}</b> ${fault.mend ?? ''}</span>
    <span class="acts">
      ${fix && actions.fix ? html`<button class="btn slim fix" @click=${() => actions.fix?.(fix.formula)}>${fix.label}</button>` : nothing}
      ${actions.again ? html`<button class="btn slim" @click=${() => actions.again?.()}>Work it out again</button>` : nothing}
      ${actions.edit ? html`<button class="plain" @click=${() => actions.edit?.()}>Edit</button>` : nothing}
    </span>
  </div>`;
}
